#include "sheet/pattern.h"

#include <fmt/format.h>
#include <unicode/messagepattern.h>

#include <vector>

#include "base/text.h"

namespace furnish {
namespace {
std::string reason(UErrorCode code) {
  switch (code) {
    case U_UNMATCHED_BRACES:
      return "its braces do not match";
    case U_DEFAULT_KEYWORD_MISSING:
      return "a plural has no 'other'";
    case U_INDEX_OUTOFBOUNDS_ERROR:
      return "a number in it is too large";
    default:
      return "it is not a pattern";
  }
}

std::optional<PlaceKind> kind_of(const icu::MessagePattern& pattern, std::int32_t start) {
  switch (pattern.getPart(start).getArgType()) {
    case UMSGPAT_ARG_TYPE_NONE:
      return PlaceKind::plain;
    case UMSGPAT_ARG_TYPE_PLURAL:
      return PlaceKind::counted;
    case UMSGPAT_ARG_TYPE_SIMPLE:
      // The name and the type follow the start of a place.
      if (pattern.getSubstring(pattern.getPart(start + 2)) == icu::UnicodeString(u"number")) {
        return PlaceKind::number;
      }
      return std::nullopt;
    default:
      return std::nullopt;
  }
}
}  // namespace

PatternPlaces read_pattern(std::string_view text) {
  PatternPlaces out;
  // Most texts have no place and nothing else that ICU would look at.
  if (text.find_first_of("{}'|#") == std::string_view::npos) return out;
  UErrorCode code = U_ZERO_ERROR;
  UParseError where{};
  const icu::MessagePattern pattern(
      icu::UnicodeString::fromUTF8({text.data(), static_cast<std::int32_t>(text.size())}), &where,
      code);
  if (U_FAILURE(code)) {
    out.fault = reason(code);
    return out;
  }
  for (std::int32_t i = 0; i < pattern.countParts(); ++i) {
    if (pattern.getPartType(i) != UMSGPAT_PART_TYPE_ARG_START) continue;
    const auto& name = pattern.getPart(i + 1);
    if (name.getType() != UMSGPAT_PART_TYPE_ARG_NUMBER) {
      out.fault = "a place has a name where its number should stand";
      return out;
    }
    const auto kind = kind_of(pattern, i);
    if (!kind) {
      out.fault = "a place is neither plain, a number nor a plural";
      return out;
    }
    PlaceKind& held = out.places.try_emplace(name.getValue(), *kind).first->second;
    held = std::max(held, *kind);
  }
  return out;
}

std::string to_text(const std::map<int, PlaceKind>& places) {
  std::vector<std::string> names;
  for (const auto& [number, kind] : places) names.push_back(fmt::format("{{{}}}", number));
  return names.empty() ? "no places" : listed(names);
}
}  // namespace furnish
