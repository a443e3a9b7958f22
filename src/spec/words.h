#pragma once

#include <string>

#include "model/audience.h"
#include "model/salon.h"
#include "spec/fields.h"

namespace furnish {

/// A BCP 47 tag; empty after a fault or without the key.
std::string read_language(Fields&, std::string_view key);
/// `for`: staff unless it says everyone.
Audience read_audience(Fields&);
/// A picture's path with forward slashes. It may not lead out of the salon's folder, unless the
/// salon allows that; whether the file is there is for those who open it.
std::optional<Located<std::string>> read_photo_path(Fields&, std::string_view key, const Salon*);
/// A fault if the date in a file is not the one its name begins with.
void check_name_date(const Located<Date>&, std::string_view path, DiagnosticSink&);
/// True if none of the faults lies in this file.
bool no_errors_in(std::uint32_t file, const DiagnosticSink&);
}  // namespace furnish
