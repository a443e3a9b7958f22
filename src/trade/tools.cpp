#include "trade/tools.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/quantity.h"
#include "base/text.h"

namespace furnish {
namespace {
constexpr std::array blade_table{
    Blade{"50", 1, 125, Teeth::close, "veterinary preparation only"},
    Blade{"40", 1, 100, Teeth::close, "surgical preparation; base under guard combs"},
    Blade{"30", 1, 50, Teeth::close, "pads; base under guard combs"},
    Blade{"15", 3, 64, Teeth::close, "faces, feet of some styles"},
    Blade{"10", 1, 16, Teeth::close, "sanitary area, belly"},
    Blade{"9", 5, 64, Teeth::close, ""},
    Blade{"8½", 7, 64, Teeth::close, ""},
    Blade{"7", 1, 8, Teeth::skip, ""},
    Blade{"7F", 1, 8, Teeth::finish, ""},
    Blade{"6F", 3, 16, Teeth::finish, ""},
    Blade{"5", 1, 4, Teeth::skip, ""},
    Blade{"5F", 1, 4, Teeth::finish, ""},
    Blade{"4", 3, 8, Teeth::skip, ""},
    Blade{"4F", 3, 8, Teeth::finish, ""},
    Blade{"3¾", 1, 2, Teeth::skip, ""},
    Blade{"3", 1, 2, Teeth::skip, ""},
    Blade{"3F", 1, 2, Teeth::finish, ""},
};
static_assert(std::ranges::is_sorted(blade_table, {}, &Blade::length), "short to long");

constexpr std::array comb_table{
    Length::inches(1, 8), Length::inches(1, 4), Length::inches(3, 8), Length::inches(1, 2),
    Length::inches(5, 8), Length::inches(3, 4), Length::inches(7, 8), Length::inches(1),
    Length::inches(5, 4), Length::inches(3, 2),
};
static_assert(std::ranges::is_sorted(comb_table));

constexpr std::array<std::string_view, 4> shears_names{"straight", "curved", "thinning",
                                                       "blending"};
constexpr std::array<std::string_view, 3> lay_names{"with", "across", "against"};

void replace(std::string& text, std::string_view from, std::string_view to) {
  if (const auto at = text.find(from); at != std::string::npos) text.replace(at, from.size(), to);
}

/// A name as typed in one of its several ways, turned into the table's.
std::string blade_key(std::string_view written) {
  std::string out(trimmed(written));
  if (out.starts_with('#')) out.erase(0, 1);
  std::ranges::transform(out, out.begin(), [](char c) { return c == 'f' ? 'F' : c; });
  replace(out, " 1/2", "½");
  replace(out, "-1/2", "½");
  replace(out, ".5", "½");
  replace(out, " 3/4", "¾");
  replace(out, "-3/4", "¾");
  replace(out, ".75", "¾");
  return out;
}

template <typename Enum, std::size_t n>
std::optional<Enum> find(const std::array<std::string_view, n>& names, std::string_view word) {
  const auto found = std::ranges::find(names, word);
  if (found == names.end()) return std::nullopt;
  return static_cast<Enum>(found - names.begin());
}
}  // namespace

std::span<const Blade> blades() {
  return blade_table;
}

const Blade* find_blade(std::string_view written) {
  std::string name = blade_key(written);
  if (name.ends_with("FC") || name.ends_with("Fc"))
    name.pop_back();  // "finish cut" in full; common practice, no source
  const auto* const found = std::ranges::find(blade_table, name, &Blade::name);
  return found == blade_table.end() ? nullptr : &*found;
}

const Blade* finish_twin(const Blade& blade) {
  if (blade.teeth != Teeth::skip) return nullptr;
  for (const Blade& other : blade_table) {
    if (other.teeth == Teeth::finish && other.length() == blade.length()) return &other;
  }
  return nullptr;
}

bool skin_close(const Blade& blade) {
  return blade.length() <= Length::inches(1, 50);
}
bool guard_comb_base(const Blade& blade) {
  return blade.name == "30" || blade.name == "40";
}
std::span<const Length> guard_combs() {
  return comb_table;
}

std::optional<Shears> parse_shears(std::string_view written) {
  const std::string word = lower_ascii(trimmed(written));
  if (word == "thinners") return Shears::thinning;
  if (word == "chunking" || word == "chunkers") return Shears::blending;
  return find<Shears>(shears_names, word);
}
std::string_view to_text(Shears shears) {
  return shears_names[static_cast<std::size_t>(shears)];
}
std::span<const std::string_view> shears_words() {
  return shears_names;
}
std::optional<Lay> parse_lay(std::string_view word) {
  return find<Lay>(lay_names, word);
}
std::string_view to_text(Lay lay) {
  return lay_names[static_cast<std::size_t>(lay)];
}

std::string to_text(const Tool& tool, Units units) {
  struct Text {
    Units units;
    std::string operator()(Brush) const { return "brush"; }
    std::string operator()(Clip c) const { return fmt::format("#{}", c.blade->name); }
    std::string operator()(CombOver c) const {
      return fmt::format("{} comb over #{}", to_text(c.comb, units), c.base->name);
    }
    std::string operator()(Scissor s) const { return fmt::format("{} shears", to_text(s.shears)); }
    std::string operator()(HandStrip s) const {
      return s.with == Strip::hand ? "strip by hand" : "strip with the knife";
    }
  };
  return std::visit(Text{units}, tool);
}

namespace {
/// Against the lay nothing more, with it all of `most`, across half of it.
LengthRange with_more(Length nominal, Length most, Lay lay) {
  if (lay == Lay::against) return {nominal, nominal};
  return {nominal, nominal + (lay == Lay::across ? most / 2 : most)};
}
}  // namespace

LengthRange left_by_blade(Length nominal, Lay lay) {
  return with_more(nominal, nominal, lay);
}
LengthRange left_by_comb(Length nominal, Lay lay) {
  return with_more(nominal, nominal / 4, lay);
}
}  // namespace furnish
