#pragma once

#include "model/finish.h"
#include "model/trim.h"
#include "spec/fields.h"

namespace furnish {

/// Whether an entry may say why it is not as planned, which is for visits.
enum class Why : bool { no, yes };

/// Every key of a `[trim]` or `[done]` that was not asked for before: regions, sides and groups.
TrimRules read_trim_rules(Fields& trim, Why);
Finish read_finish(Fields& finish);
/// A blade by its name, in quotes; null after a fault.
const Blade* as_blade(const TomlNode&, std::string_view what, DiagnosticSink&);
const Blade* known_blade(std::string_view written, SourceSpan, DiagnosticSink&);
}  // namespace furnish
