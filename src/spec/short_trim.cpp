#include "spec/short_trim.h"

#include <algorithm>
#include <array>
#include <optional>

#include "spec/trim_writer.h"

namespace furnish {
namespace {
using toml_text::Form;

/// What is done to a region as the text after its key, on each side; none: left alone. A region
/// that is not paired has the same on both.
struct ShortWork {
  std::optional<std::string> left, right;
  bool alike() const { return left == right; }
};
using Works = std::array<ShortWork, region_count>;

/// `.blade="10"`, or `={shears="curved",leave="30mm"}` for more than one key.
std::string after_key(const TrimEntry& entry) {
  const auto fields = entry_fields(entry, Form::short_form);
  if (fields.size() == 1) return "." + fields[0].first + "=" + fields[0].second;
  return "=" + toml_text::table(fields, Form::short_form);
}

Works works_of(const ResolvedTrim& trim) {
  Works out;
  for (const TrimPart& part : trim) {
    ShortWork& work = out.at(static_cast<std::size_t>(part.place.region));
    const std::string text = after_key(part.entry);
    if (part.place.side != Side::right) work.left = text;
    if (part.place.side != Side::left) work.right = text;
  }
  return out;
}

/// What is said of each group, by number; null: the group is not named.
using Said = std::array<const std::string*, group_count>;

struct Line {
  std::string key;
  const std::string* text;
  std::size_t bytes() const { return key.size() + text->size() + 1; }
};

std::size_t bytes(const std::vector<Line>& lines) {
  std::size_t sum = 0;
  for (const Line& line : lines) sum += line.bytes();
  return sum;
}

class Shortest {
 public:
  explicit Shortest(const Works& works) : works_(works) {}

  std::string text() {
    Said said{};
    choose(0, said);
    std::string out;
    for (const Line& line : best_) out += line.key + *line.text + "\n";
    return out;
  }

 private:
  const ShortWork& at(Region region) const { return works_[static_cast<std::size_t>(region)]; }

  /// Every way to name this group and those after it.
  void choose(std::size_t group, Said& said) {
    if (group == group_count) {
      weigh(said);
      return;
    }
    said[group] = nullptr;
    choose(group + 1, said);
    for (const std::string* const text : sayable(groups()[group])) {
      said[group] = text;
      choose(group + 1, said);
    }
    said[group] = nullptr;
  }

  /// What is worth saying of a group: work that two of its members share. Nothing if a member, or a
  /// side of one, is left alone: that cannot be said beside its group.
  std::vector<const std::string*> sayable(const GroupInfo& group) const {
    std::vector<const std::string*> once, out;
    const auto in = [](const std::vector<const std::string*>& texts, const std::string& text) {
      return std::ranges::any_of(texts, [&](const std::string* one) { return *one == text; });
    };
    for (const Region region : group.members) {
      const ShortWork& work = at(region);
      if (!work.left || !work.right) return {};
      if (!work.alike()) continue;
      if (!in(once, *work.left)) {
        once.push_back(&*work.left);
      } else if (!in(out, *work.left)) {
        out.push_back(&*work.left);
      }
    }
    return out;
  }

  void weigh(const Said& said) {
    std::vector<Line> lines;
    for (const GroupInfo& group : groups()) {
      const std::string* const text = said.at(static_cast<std::size_t>(group.group));
      if (text != nullptr) lines.push_back({std::string(group.key), text});
    }
    for (const RegionInfo& row : regions()) add_region(row, said, lines);
    if (const std::size_t size = bytes(lines); !found_ || size < fewest_) {
      found_ = true;
      fewest_ = size;
      best_ = std::move(lines);
    }
  }

  /// What must still be said of one region once the groups are named.
  void add_region(const RegionInfo& row, const Said& said, std::vector<Line>& lines) const {
    const ShortWork& work = at(row.region);
    if (!work.left && !work.right) return;
    const auto own = [&](Side side, const std::string& text) {
      return Line{toml_text::place({row.region, side}, Form::short_form), &text};
    };
    if (!work.left || !work.right) {
      lines.push_back(work.left ? own(Side::left, *work.left) : own(Side::right, *work.right));
      return;
    }
    const std::string* covered = nullptr;
    bool groups_agree = true;
    for (const GroupInfo& group : groups()) {
      const std::string* const text = said.at(static_cast<std::size_t>(group.group));
      if (text == nullptr || !in_group(row.region, group.group)) continue;
      groups_agree = groups_agree && (covered == nullptr || *covered == *text);
      covered = text;
    }
    const bool by_group = covered != nullptr && groups_agree;
    if (work.alike()) {
      if (!by_group || *covered != *work.left) lines.push_back(own(Side::both, *work.left));
      return;
    }
    // The sides differ: one may be left to the group, or to the key for both, the shorter
    // word.
    if (by_group && *covered == *work.left) {
      lines.push_back(own(Side::right, *work.right));
    } else if (by_group && *covered == *work.right) {
      lines.push_back(own(Side::left, *work.left));
    } else {
      lines.push_back(own(Side::both, *work.right));
      lines.push_back(own(Side::left, *work.left));
    }
  }

  const Works& works_;
  std::vector<Line> best_;
  std::size_t fewest_ = 0;
  bool found_ = false;
};
}  // namespace

std::string short_trim(const ResolvedTrim& trim) {
  const Works works = works_of(trim);
  return Shortest(works).text();
}
}  // namespace furnish
