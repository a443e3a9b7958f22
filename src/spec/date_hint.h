#pragma once

#include <string>
#include <string_view>

#include "spec/document.h"

namespace furnish {

/// What to write where a date is wanted, for a year, a month of one, or a day in words; empty if it
/// is none of them, or could be two.
std::string date_hint(const TomlNode&);
/// The same for "9.4.2021", "04/09/2021", "2021-4-9"; where day and month may be either, both.
std::string date_hint_of_numbers(std::string_view);
/// What to write where a time of day is wanted, for 9, "9" and 9.30; empty for anything else.
std::string time_hint(const TomlNode&);
}  // namespace furnish
