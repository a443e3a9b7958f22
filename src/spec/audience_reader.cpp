#include "spec/audience_reader.h"

#include "spec/word_tables.h"

namespace furnish {
namespace {
std::optional<Audience> parse_audience(std::string_view word) {
  if (word == words::word(words::audience, Audience::staff)) return Audience::staff;
  if (word == words::word(words::audience, Audience::everyone)) return Audience::everyone;
  return std::nullopt;
}
}  // namespace

Audience read_audience(Fields& fields) {
  const auto audience = fields.choice<Audience>("for", "audience", parse_audience, words::audience);
  return audience ? audience->value : Audience::staff;
}
}  // namespace furnish
