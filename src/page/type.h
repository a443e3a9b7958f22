#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <span>
#include <string_view>

#include "base/length.h"

namespace furnish {

/// What a text is for on the page; its size follows from how far away it is read.
enum class Role : std::uint8_t { title, subtitle, heading, alert, action, body, label, foot };
inline constexpr std::size_t role_count = 8;
std::string_view name(Role);

/// Height of capitals that fill `arc_minutes` at `distance`: 2·D·tan(θ/2) (NUREG-0700 rev. 2,
/// 1.3.1-4), to the nearest micrometre.
Length capital_height(Length distance, double arc_minutes);
/// The inverse of capital_height().
double arc_minutes(Length distance, Length capital_height);

/// Legible from 16 minutes of arc, preferred 20 to 22 for running text (NUREG-0700 rev.
/// 2, 1.3.1-4).
inline constexpr double least_arc_minutes = 16, preferred_arc_minutes = 22;

/// A size in quarter points: the page uses no others, so that few scaled fonts are made.
class TypeSize {
 public:
  constexpr TypeSize() = default;
  /// The next quarter point at or above `points`, so that no minimum is undercut.
  static TypeSize at_least(double points);
  static constexpr TypeSize quarters(int n) { return TypeSize(n); }
  constexpr int quarters() const { return quarters_; }
  constexpr double points() const { return quarters_ / 4.0; }
  constexpr Length length() const { return Length::points(points()); }
  friend constexpr auto operator<=>(TypeSize, TypeSize) = default;

 private:
  constexpr explicit TypeSize(int n) : quarters_(n) {}
  int quarters_ = 0;
};

/// How one role is read; data of the sheet and its paper.
struct TypeRole {
  Role role;
  Length distance;
  double most_arc_minutes = preferred_arc_minutes;  ///< where growth ends; a title may have more
  double least_points = 0;                          ///< a floor beside the visual angle, in points
};

/// Sizes of all roles at one growth step. At step 0 all are at 16′ of their distance (or their
/// floor), at step `steps` at their most; between, each grows evenly. Always rounded up to a
/// quarter point. A role that was not given is set as body.
class TypeScale {
 public:
  /// `capital_em` is the font's capital height in em. pre: 0 <= step <= steps, a body is given.
  TypeScale(std::span<const TypeRole>, double capital_em, int step, int steps);
  TypeSize operator[](Role role) const { return sizes_[static_cast<std::size_t>(role)]; }
  friend bool operator==(const TypeScale&, const TypeScale&) = default;

 private:
  std::array<TypeSize, role_count> sizes_{};
};
}  // namespace furnish
