#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>

#include "base/length.h"
#include "base/measures.h"

namespace furnish {

/// `skip` teeth leave gaps that catch thin or folded skin; `finish` is a skip blade's full-tooth
/// twin; `close` is full-toothed and short.
enum class Teeth : std::uint8_t { close, skip, finish };

/// A clipper blade and the coat it leaves when cutting against the lay. The bigger the number, the
/// shorter the coat.
struct Blade {
  std::string_view name;
  int numerator, denominator;  ///< of an inch
  Teeth teeth;
  std::string_view note;
  constexpr Length length() const { return Length::inches(numerator, denominator); }
};

/// From short to long; names unique. Lengths by number: common practice, no source (charts
/// disagree, so a salon's kit can override each with what it measured).
std::span<const Blade> blades();
/// "10", "#10", "7f", "8 1/2", "8½", "8.5"; null if there is none. Points into blades().
const Blade* find_blade(std::string_view name);
/// The full-tooth blade of the same length, if the blade skips teeth and has one.
const Blade* finish_twin(const Blade&);
/// True for #30, #40 and #50: closer than skin stands without a guard comb over them.
bool skin_close(const Blade&);
/// True for #30 and #40: what a guard comb is made to go over. Common practice, no source.
bool guard_comb_base(const Blade&);

/// Usual guard combs, short to long. Named by length, never by number: numbers differ between
/// makers.
std::span<const Length> guard_combs();
/// A comb is known by its length; two within this of each other are the same comb (1/2 in, 13 mm).
inline constexpr Length comb_tolerance = Length::micrometres(350);

enum class Shears : std::uint8_t { straight, curved, thinning, blending };
/// "thinners" and "chunking" are the trade's other words for thinning and blending shears.
std::optional<Shears> parse_shears(std::string_view);
std::string_view to_text(Shears);
std::span<const std::string_view> shears_words();

enum class Strip : std::uint8_t { hand, knife };

/// The direction of the cut, seen from the lay of the coat.
enum class Lay : std::uint8_t { with, across, against };
std::optional<Lay> parse_lay(std::string_view);
std::string_view to_text(Lay);

/// What is done to a region.
struct Brush {
  friend constexpr bool operator==(Brush, Brush) = default;
};
struct Clip {
  const Blade* blade = nullptr;  ///< never null in a checked value
  friend constexpr bool operator==(Clip, Clip) = default;
};
struct CombOver {
  Length comb;
  const Blade* base = nullptr;  ///< never null in a checked value
  friend constexpr bool operator==(CombOver, CombOver) = default;
};
struct Scissor {
  Shears shears{};
  friend constexpr bool operator==(Scissor, Scissor) = default;
};
struct HandStrip {
  Strip with{};
  friend constexpr bool operator==(HandStrip, HandStrip) = default;
};
using Tool = std::variant<Brush, Clip, CombOver, Scissor, HandStrip>;

/// "brush", "#10", "½ in comb over #30", "thinning shears", "strip by hand".
std::string to_text(const Tool&, Units = Units::us);

/// What a bare blade leaves: against the lay the nominal length; with it, up to twice that; across,
/// up to one and a half times. Common practice, no source.
LengthRange left_by_blade(Length nominal, Lay);
/// What a guard comb leaves: it holds the coat up, so that with the lay it is one quarter more at
/// most, and half of that across. Common practice, no source.
LengthRange left_by_comb(Length nominal, Lay);
}  // namespace furnish
