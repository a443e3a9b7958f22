#include "spec/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "base/text.h"
#include "spec/language.h"
#include "spec/word_tables.h"

namespace furnish {
namespace {
std::optional<Audience> parse_audience(std::string_view word) {
  if (word == words::word(words::audience, Audience::staff)) return Audience::staff;
  if (word == words::word(words::audience, Audience::everyone)) return Audience::everyone;
  return std::nullopt;
}
}  // namespace

std::string read_language(Fields& fields, std::string_view key) {
  const auto tag = fields.text(key);
  if (!tag) return {};
  if (well_formed_language(tag->value)) return tag->value;
  Diagnostic& fault = fields.sink().error("bad-language", tag->span,
                                          fmt::format("'{}' is not a language tag", tag->value));
  std::string hyphened = tag->value;
  std::ranges::replace(hyphened, '_', '-');
  fault.hint = well_formed_language(hyphened)
                   ? fmt::format("write \"{}\"", hyphened)
                   : "write a code as of BCP 47, such as \"en\", \"en-GB\" or \"es\"";
  return {};
}

Audience read_audience(Fields& fields) {
  const auto audience = fields.choice<Audience>("for", "audience", parse_audience, words::audience);
  return audience ? audience->value : Audience::staff;
}

std::optional<Located<std::string>> read_photo_path(Fields& fields, std::string_view key,
                                                    const Salon* salon) {
  auto path = fields.text(key);
  if (!path) return std::nullopt;
  if (path->value.find('\\') != std::string::npos) {
    std::string slashes = path->value;
    std::ranges::replace(slashes, '\\', '/');
    fields.sink().error("photo-path", path->span, "folders of a path are divided by /").hint =
        fmt::format("write \"{}\"", slashes);
    return std::nullopt;
  }
  if (salon != nullptr && salon->photos_anywhere) return path;
  const auto normal = std::filesystem::path(path->value).lexically_normal();
  if (!normal.is_absolute() && *normal.begin() != "..") return path;
  fields.sink().error("photo-path", path->span, "the photo lies outside the salon's folder").hint =
      "copy it into photos/, or set photos_anywhere = true under [salon] in salon.toml";
  return std::nullopt;
}

void check_name_date(const Located<Date>& date, std::string_view path, DiagnosticSink& sink) {
  const std::string name = stem(path);
  const auto named = parse_date(std::string_view(name).substr(0, 10));
  const std::string_view after =
      std::string_view(name).substr(std::min<std::size_t>(10, name.size()));
  const bool numbered =
      after.size() > 1 && after.size() < 4 && after[0] == '-' &&
      std::ranges::all_of(after.substr(1), [](char c) { return c >= '0' && c <= '9'; });
  if (!named || (!after.empty() && !numbered)) {
    sink.error("name-date", {date.span.file, {}, {}}, "is not named for its date").hint =
        fmt::format("name it {}.toml", to_iso(date.value));
    return;
  }
  if (*named == date.value) return;
  sink.error("name-date", date.span,
             fmt::format("the date is {}, but the file is named for {}", to_iso(date.value),
                         to_iso(*named)))
      .hint = "rename the file, or correct the date";
}

bool no_errors_in(std::uint32_t file, const DiagnosticSink& sink) {
  return std::ranges::none_of(sink.all(), [&](const Diagnostic& d) {
    return d.severity == Severity::error && d.span.file == file;
  });
}
}  // namespace furnish
