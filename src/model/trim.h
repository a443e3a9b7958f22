#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/source.h"
#include "model/free_text.h"
#include "trade/region.h"
#include "trade/tools.h"

namespace furnish {

/// What one key of a `[trim]` table asks for.
struct TrimEntry {
  Tool tool;
  std::optional<Length> leave;  ///< stated length; blades and combs need none
  Lay lay = Lay::with;
  bool lay_given = false;    ///< else `lay` is only what is usual
  bool before_bath = false;  ///< cut on the unwashed coat
  std::string note;
  FreeText why;  ///< in a visit: why it was not as planned; for staff unless it says otherwise
  std::string written;  ///< the key as written: "body", "left hock"
  SourceSpan span;      ///< of that key
};

/// True if the same is done, whoever wrote it: tool, length, lay, note, and on which side of the
/// bath.
bool same_work(const TrimEntry&, const TrimEntry&);

struct PlacedEntry {
  Place place;
  TrimEntry entry;
};

/// One file's trim, groups already spread over their regions, each place once, in order of place.
/// A side stands beside `both`: "hocks" and "left hock" may both be there, and the side wins.
using TrimRules = std::vector<PlacedEntry>;

enum class SaidBy : std::uint8_t { style, pet };

/// What is done to one place, and who says so.
struct TrimPart {
  Place place;
  TrimEntry entry;
  SaidBy said_by = SaidBy::style;
  std::optional<TrimEntry> house;  ///< what the style says here, if it says anything
  /// The direction of the cut, where somebody says it.
  std::optional<Lay> lay() const {
    return entry.lay_given ? std::optional(entry.lay) : std::nullopt;
  }
  /// True if a groomer who only knows the style would do something else here.
  bool differs() const { return said_by == SaidBy::pet && (!house || !same_work(*house, entry)); }
};

/// The whole trim, in order of place. A paired region stands once for both sides where they are
/// alike, else once for each side. Regions that nobody names are left alone and do not appear.
using ResolvedTrim = std::vector<TrimPart>;

/// The pet's rules over the style's: the more specific wins within a file, the pet's file wins over
/// the style's. Pure.
ResolvedTrim resolve_trim(const TrimRules& style, const TrimRules& pet);

/// The part that says what happens at `place`; null if it is left alone. A side finds its own part
/// or the one for both; `both` finds the first that meets it.
const TrimPart* find_part(const ResolvedTrim&, Place place);

/// Later rules replace earlier ones place by place: a style over the one it extends. A rule for
/// both sides also replaces the sides' own.
TrimRules overlay(const TrimRules& lower, const TrimRules& upper);
}  // namespace furnish
