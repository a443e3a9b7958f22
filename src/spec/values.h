#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "base/diagnostic.h"
#include "spec/bounds.h"
#include "spec/document.h"

namespace furnish {

/// What stands there, for people: `the string "13,5"`, `the number 13`, `a list`.
std::string found_text(const TomlNode&);
/// The one thing in a list of one; else the node itself.
const TomlNode& only_one(const TomlNode&);
/// "'a', 'b' or 'c'".
std::string quoted_list(std::span<const std::string_view>);

// One value each; empty after a fault at the value. `what` is the key, for messages.

/// A string, or a list of one. Trimmed; not blank, at most bounds::text_length code points, no
/// control characters.
std::optional<std::string> as_text(const TomlNode&, std::string_view what, DiagnosticSink&);
/// True or false; "yes" and "no" too.
std::optional<bool> as_flag(const TomlNode&, std::string_view what, DiagnosticSink&);
/// A date within bounds::day; in quotes too.
std::optional<Date> as_date(const TomlNode&, std::string_view what, DiagnosticSink&);
/// A time of day; in quotes too: "9:30", "2:30 pm".
std::optional<TimeOfDay> as_time(const TomlNode&, std::string_view what, DiagnosticSink&);
/// Whole or with a point; never NaN or infinite.
std::optional<double> as_number(const TomlNode&, std::string_view what, const Range<double>&,
                                DiagnosticSink&);
std::optional<int> as_whole(const TomlNode&, std::string_view what, const Range<double>&,
                            DiagnosticSink&);
/// A quantity with its unit, in a string.
std::optional<Length> as_quantity(const TomlNode&, std::string_view what, const Range<Length>&,
                                  DiagnosticSink&);
std::optional<Mass> as_quantity(const TomlNode&, std::string_view what, const Range<Mass>&,
                                DiagnosticSink&);
std::optional<Volume> as_quantity(const TomlNode&, std::string_view what, const Range<Volume>&,
                                  DiagnosticSink&);
std::optional<std::chrono::seconds> as_quantity(const TomlNode&, std::string_view what,
                                                const Range<std::chrono::seconds>&,
                                                DiagnosticSink&);
std::optional<std::chrono::days> as_quantity(const TomlNode&, std::string_view what,
                                             const Range<std::chrono::days>&, DiagnosticSink&);
std::optional<CalendarSpan> as_quantity(const TomlNode&, std::string_view what,
                                        const Range<CalendarSpan>&, DiagnosticSink&);
std::optional<Dilution> as_dilution(const TomlNode&, std::string_view what, DiagnosticSink&);
/// A list of at most bounds::list_length; null after a fault.
const TomlList* as_list(const TomlNode&, std::string_view what, DiagnosticSink&);

/// "expected …, found …", at the value; the hint is for the commonest slip, if there is one.
Diagnostic& report_type(const TomlNode&, std::string_view what, std::string_view expected,
                        DiagnosticSink&);
/// "no … 'word'", with the nearest of `words`; where none is near, all of them if they are few,
/// else some.
Diagnostic& report_unknown(std::string_view code, SourceSpan, std::string_view noun,
                           std::string_view word, std::span<const std::string_view> words,
                           DiagnosticSink&);
}  // namespace furnish
