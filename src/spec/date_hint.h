#pragma once

#include <string>

#include "spec/document.h"

namespace furnish {

/// What to write where a date is wanted, for a year, a month of one, or a day in words; empty if it
/// is none of them, or could be two.
std::string date_hint(const TomlNode&);
}  // namespace furnish
