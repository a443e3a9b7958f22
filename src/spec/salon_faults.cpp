#include "spec/salon_faults.h"

#include <algorithm>
#include <array>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/text.h"
#include "spec/product_reader.h"
#include "spec/salon_format.h"

namespace furnish {
namespace {
struct PartName {
  std::string_view section, key;  ///< no key: all of the section
  SalonPart part;
};
constexpr std::array part_names{PartName{"salon", "closed", SalonPart::closed},
                                PartName{"salon", "rules", SalonPart::rules},
                                PartName{"kit", "", SalonPart::kit},
                                PartName{"products", "", SalonPart::products},
                                PartName{"vaccinations", "", SalonPart::vaccinations},
                                PartName{"blends", "", SalonPart::blends},
                                PartName{"time", "", SalonPart::time},
                                PartName{"mixing", "", SalonPart::mixing}};

/// The key of that name, or the one it was meant for; empty if it is near none.
std::string_view meant_key(std::string_view word, std::span<const KeyInfo* const> keys) {
  std::vector<std::string_view> names;
  for (const KeyInfo* const key : keys) names.push_back(key->name);
  const std::string lower = lower_ascii(word);
  const auto same = std::ranges::find(names, lower);
  return same != names.end() ? *same : nearest(lower, names).value_or(std::string_view());
}

/// Where a key stands: its section, which is empty of a section itself.
struct Stand {
  Position at;
  std::string_view section, key;
  bool table = false;  ///< the section is one, not a key outside of any
};

class SalonFaults {
 public:
  SalonFaults(const Document& document, const SourceText& text) : document_(document), text_(text) {
    for (const TomlEntry& section : document.root) {
      const auto* const table = std::get_if<TomlTable>(&section.node.value);
      stands_.push_back({section.key_span.begin, section.key, "", table != nullptr});
      if (table == nullptr) continue;
      for (const TomlEntry& entry : *table) {
        stands_.push_back({entry.key_span.begin, section.key, entry.key, true});
        add_inner(entry, section.key, entry.key);
      }
    }
    std::ranges::stable_sort(stands_, {}, &Stand::at);
  }

  void take(Position fault) {
    const auto after = std::ranges::upper_bound(stands_, fault, {}, &Stand::at);
    if (after == stands_.begin()) return all_missing();
    const Stand& at = *std::prev(after);
    in_section(at.section, at.key, at.table, false);
  }

  /// A line that was left out: by the heading above it, or its own, and its first word.
  void take_line(std::uint32_t line) {
    const std::string_view words = trimmed(text_.line(line));
    const std::string_view first = words.substr(0, words.find_first_of(". \t=#"));
    for (std::uint32_t n = line; n > 0; --n) {
      const std::string_view name = heading(n);
      if (!name.empty()) return in_section(name, n == line ? "" : first, true, true);
    }
    in_section(first, "", true, true);
  }

  /// In their order, each once.
  std::vector<SalonPart> found() && {
    std::ranges::sort(found_);
    const auto again = std::ranges::unique(found_);
    found_.erase(again.begin(), again.end());
    return std::move(found_);
  }

 private:
  /// Products may be written with headings below one another.
  void add_inner(const TomlEntry& entry, std::string_view section, std::string_view key) {
    const auto* const table = std::get_if<TomlTable>(&entry.node.value);
    if (table == nullptr) return;
    for (const TomlEntry& one : *table) {
      stands_.push_back({one.key_span.begin, section, key, true});
      add_inner(one, section, key);
    }
  }

  std::string_view heading(std::uint32_t line) const {
    std::string_view name = trimmed(text_.line(line));
    if (!name.starts_with('[')) return {};
    while (name.starts_with('[')) name.remove_prefix(1);
    name = trimmed(name);
    return name.substr(0, name.find_first_of(".] \t#="));
  }

  /// What a table that nobody knows may have been meant for.
  void all_missing() {
    for (const PartName& one : part_names) {
      const bool there =
          std::ranges::find(document_.root, one.section, &TomlEntry::key) != document_.root.end();
      if (one.key.empty() && !there) found_.push_back(one.part);
    }
  }

  /// A key that stands elsewhere than it should: of those sections that have such a one. False if
  /// none has.
  bool key_of_any(std::string_view key) {
    bool found = false;
    for (const KeyInfo* const section : keys::salon_file::list) {
      const auto& all = section->table->keys;
      if (std::ranges::find(all, key, &KeyInfo::name) == all.end()) continue;
      in_section(section->name, key, true, false);
      found = true;
    }
    return found;
  }

  /// `any`: nobody knows which of the section's keys it is; else a product says by itself that it
  /// has a fault.
  void in_section(std::string_view given, std::string_view key, bool table, bool any) {
    if (!table && key_of_any(given)) return;
    const std::string_view section = meant_key(given, keys::salon_file::list);
    if (section.empty()) {
      if (table) all_missing();
      return;
    }
    const std::string_view salons = meant_key(key, keys::salon::list);
    for (const PartName& one : part_names) {
      const bool told = one.part == SalonPart::products && !any && section == given && !key.empty();
      if (one.section == section && !told && (one.key.empty() || one.key == salons)) {
        found_.push_back(one.part);
      }
    }
    if (section == "salon" && !key.empty() && salons.empty()) key_of_any(key);
  }

  const Document& document_;
  const SourceText& text_;
  std::vector<Stand> stands_;
  std::vector<SalonPart> found_;
};
}  // namespace

void leave_out_faulty(Salon& salon, const Document& document, const ReadContext& context) {
  SalonFaults faults(document, context.sources.at(document.file));
  for (const Diagnostic& one : context.sink.all()) {
    if (one.severity != Severity::error || one.span.file != document.file) continue;
    salon.whole = false;
    // A line that is not in the tree has no place there.
    if (std::ranges::find(document.left_out, one.span.begin.line) == document.left_out.end()) {
      faults.take(one.span.begin);
    }
  }
  for (const std::uint32_t line : document.left_out) faults.take_line(line);
  salon.unread = std::move(faults).found();
  if (salon.unknown(SalonPart::closed)) salon.closed.clear();
  if (salon.unknown(SalonPart::kit)) salon.kit.reset();
  if (salon.unknown(SalonPart::products)) std::ranges::for_each(salon.products, leave_out);
}
}  // namespace furnish
