#pragma once

#include "model/audience.h"
#include "spec/fields.h"

namespace furnish {

/// `for`: staff unless it says everyone.
Audience read_audience(Fields&);
}  // namespace furnish
