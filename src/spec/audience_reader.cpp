#include "spec/audience_reader.h"

#include "spec/trim_format.h"

namespace furnish {
Audience read_audience(Fields& fields) {
  const auto audience = fields.choice(keys::audience);
  return audience ? audience->value : Audience::staff;
}
}  // namespace furnish
