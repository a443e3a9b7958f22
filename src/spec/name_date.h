#pragma once

#include <string_view>

#include "base/date.h"
#include "spec/document.h"

namespace furnish {

/// The visits of one pet on one day that can be told apart by name: 2026-11-24.toml to -99.
inline constexpr int most_visits_a_day = 99;
/// A fault if the date in a file is not the one its name begins with.
void check_name_date(const Located<Date>&, std::string_view path, DiagnosticSink&);
}  // namespace furnish
