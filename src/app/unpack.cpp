#include "app/unpack.h"

#include <fmt/format.h>

#include <algorithm>
#include <iostream>

#include "app/data_folder.h"
#include "base/text.h"
#include "output/attachments.h"
#include "output/write.h"
#include "spec/document.h"
#include "spec/pet_format.h"
#include "spec/reader.h"

namespace furnish {
namespace {
/// A text and what to call it in messages.
struct Found {
  std::string name, text;
  bool of_a_sheet = false;  ///< was attached to one; else a phone read it, and it is the trim alone
};

/// Whether anything in a table is for staff: a key that always is, or an alert and the like that
/// does not say that it is for everyone.
bool for_staff(const TomlTable& table, const TableInfo& info) {
  const auto inside = [](const TomlNode& node, const TableInfo& inner) {
    const auto* const one = std::get_if<TomlTable>(&node.value);
    return one != nullptr && for_staff(*one, inner);
  };
  const auto has_key = [&](const KeyInfo& key) {
    return std::ranges::find(info.keys, key.name, &KeyInfo::name) != info.keys.end();
  };
  if (has_key(keys::audience)) {
    const auto whom = std::ranges::find(table, keys::audience.name, &TomlEntry::key);
    const auto* const word =
        whom == table.end() ? nullptr : std::get_if<std::string>(&whom->node.value);
    if (word == nullptr || *word != "everyone") return true;
  }
  return std::ranges::any_of(table, [&](const TomlEntry& entry) {
    const auto key = std::ranges::find(info.keys, entry.key, &KeyInfo::name);
    if (key == info.keys.end()) return false;
    if ((*key)->audience == Audience::staff) return true;
    if ((*key)->table == nullptr) return false;
    const auto* const list = std::get_if<TomlList>(&entry.node.value);
    if (list == nullptr) return inside(entry.node, *(*key)->table);
    return std::ranges::any_of(*list,
                               [&](const TomlNode& item) { return inside(item, *(*key)->table); });
  });
}

FileContent standard_input() {
  std::string bytes;
  std::string part(64 * 1024, '\0');
  while (std::cin && bytes.size() <= largest_sheet) {
    std::cin.read(part.data(), static_cast<std::streamsize>(part.size()));
    bytes.append(part, 0, static_cast<std::size_t>(std::cin.gcount()));
  }
  if (bytes.size() > largest_sheet) return {std::nullopt, "has more than 64 MiB"};
  return {std::move(bytes), {}};
}

/// As a person's editor would leave it: phones and mail put a mark in front, and returns and blanks
/// behind.
std::string tidied(std::string_view text) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool line_end = text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n';
    if (!line_end) out += text[i];
  }
  const std::size_t end = out.find_last_not_of(" \t\r\n");
  out.resize(end == std::string::npos ? 0 : end + 1);
  return out.empty() ? out : out + '\n';
}

bool names_toml(const Attachment& one) {
  return one.media_type == "application/toml" || lower_ascii(one.name).ends_with(".toml");
}

class Unpacker {
 public:
  Unpacker(const Options& options, Workshop& shop)
      : options_(options), shop_(shop), sink_(shop.sink()) {}

  bool run() {
    auto found = find();
    if (!found || !reads(*found)) return false;
    if (found->of_a_sheet && !has_staffs_parts(found->text)) tell_staffs_parts_lack(*found);
    const std::string& to = options_.output.empty() ? "-" : options_.output;
    return write_new(to, found->text, sink_, shop_.disk());
  }

 private:
  std::optional<Found> find() {
    const bool piped = options_.input == "-";
    const std::string name = piped ? "standard input" : options_.input;
    FileContent content =
        piped ? standard_input() : shop_.context().files.read_up_to(options_.input, largest_sheet);
    if (!content.bytes) {
      sink_.error("unreadable", {}, fmt::format("{} cannot be read: {}", name, content.fault));
      return std::nullopt;
    }
    if (!content.bytes->starts_with("%PDF-")) return Found{name, tidied(*content.bytes)};
    const std::size_t before = sink_.error_count();
    const std::vector<Attachment> all = attachments_of(*content.bytes, sink_);
    if (sink_.error_count() != before) return std::nullopt;
    return choose(all, name);
  }

  std::optional<Found> choose(const std::vector<Attachment>& all, const std::string& pdf) {
    std::vector<const Attachment*> pets;
    for (const Attachment& one : all) {
      const bool wanted = options_.only_pet.empty() || stem(one.name) == options_.only_pet;
      if (names_toml(one) && wanted) pets.push_back(&one);
    }
    // One alone is the pet's file, or says itself why it is none.
    if (pets.size() > 1) {
      std::erase_if(pets, [](const Attachment* one) { return !has_pet(one->bytes); });
    }
    if (pets.size() == 1) {
      return Found{fmt::format("{} in {}", pets.front()->name, pdf), pets.front()->bytes, true};
    }
    if (pets.empty()) {
      sink_.error("no-pet", {}, fmt::format("no pet's file is attached to {}", pdf)).hint =
          "the text of a sheet's code is read with: furnish unpack -";
      return std::nullopt;
    }
    std::vector<std::string> names;
    for (const Attachment* one : pets) names.push_back(stem(one->name));
    sink_
        .error("several-pets", {},
               fmt::format("several pets' files are attached to {}: {}", pdf, listed(names)))
        .hint = "choose one with --pet";
    return std::nullopt;
  }

  static std::optional<Document> parsed(const std::string& text) {
    const MemoryFiles none({});
    SourceSet sources;
    DiagnosticSink unheard;
    return read_document({none, sources, unheard}, "", text, "");
  }

  static bool has_staffs_parts(const std::string& text) {
    const auto document = parsed(text);
    return document && for_staff(document->root, keys::pet_file::file);
  }

  /// Who keeps the file would take it for all there is.
  void tell_staffs_parts_lack(Found& found) {
    constexpr std::string_view mark = "\xEF\xBB\xBF";
    found.text.insert(found.text.starts_with(mark) ? mark.size() : 0,
                      "# Out of a sheet that carries what is for everyone: staff's parts are not "
                      "in this file.\n");
    sink_
        .warning("staff-left-out", {},
                 fmt::format("staff's parts are not in {}: no alerts for staff, no handling, no "
                             "notes on health, no number to call",
                             found.name))
        .hint =
        "take them over from the pet's own file; a sheet has them made with --with-spec "
        "staff";
  }

  static bool has_pet(const std::string& text) {
    const auto document = parsed(text);
    return document && std::ranges::any_of(document->root,
                                           [](const TomlEntry& one) { return one.key == "pet"; });
  }

  /// What a salon allows its photos; its products and rules are no concern of another's pet.
  Salon salon(const std::string& root) const {
    const Files& files = shop_.context().files;
    DiagnosticSink unheard;
    const std::string path = path_in(root, "salon.toml");
    auto read = files.exists(path) ? read_salon({files, shop_.sources(), unheard}, path)
                                   : std::optional<Salon>();
    Salon out = read ? *std::move(read) : default_salon();
    out.products.clear();
    out.vaccinations.clear();
    return out;
  }

  /// Faults of the text itself are errors. That a style is missing here, or faulty, is a warning:
  /// it says nothing of the file that is to be saved.
  bool reads(const Found& found) {
    const std::string root = options_.root();
    const Salon own = salon(root);
    DiagnosticSink heard;
    const ReadContext context{shop_.context().files, shop_.sources(), heard};
    StyleLibrary styles(context, path_in(find_data_folder(options_.data), "styles"),
                        path_in(root, "styles"));
    const SourceSet& sources = shop_.sources();
    const std::size_t before = sources.size();
    const auto in_the_text = [&](const SourceSpan& at) {
      return at.file >= before && at.file < sources.size() &&
             sources.at(at.file).path() == found.name;
    };
    read_pet_text(context, found.name, found.text, &own, styles);
    bool good = true;
    for (const Diagnostic& one : heard.all()) {
      const bool of_style = one.code == "unknown-style" || one.code == "style-has-faults";
      if (of_style) {
        sink_.warning(one.code, one.span, one.message).hint =
            "the trim is whole only with that style's file; the code on a style sheet needs none";
      } else if (in_the_text(one.span) && one.severity == Severity::error) {
        Diagnostic& fault = sink_.error(one.code, one.span, one.message);
        fault.hint = one.hint;
        fault.notes = one.notes;
        good = false;
      }
    }
    return good;
  }

  const Options& options_;
  Workshop& shop_;
  DiagnosticSink& sink_;
};
}  // namespace

Exit unpack(const Options& options, Workshop& shop, Console& console) {
  const bool done = Unpacker(options, shop).run();
  console.show_reports();
  if (done && !options.output.empty()) console.say(options.output);
  return done ? Exit::ok : Exit::faults;
}
}  // namespace furnish
