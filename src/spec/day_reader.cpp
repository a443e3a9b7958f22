#include "spec/day_reader.h"

#include <fmt/format.h>

#include "spec/day_format.h"
#include "spec/fields.h"
#include "spec/name_date.h"
#include "spec/offer.h"

namespace furnish {
namespace {
/// A file's name in pets/, so that it cannot lead elsewhere.
bool names_a_file(std::string_view key) {
  return key.find('/') == std::string_view::npos && key.find('\\') == std::string_view::npos &&
         key.front() != '.';
}

Booking read_booking(Fields& fields) {
  Booking out;
  out.span = fields.span();
  out.at = fields.time(keys::booking::at).value_or(TimeOfDay{});
  out.collect = fields.time(keys::booking::collect);
  if (auto pet = fields.text(keys::booking::pet)) {
    if (pet->value.ends_with(".toml")) {
      offer_words(fields.sink().error("pet-key", pet->span, "a pet is named without .toml"),
                  stem(pet->value));
    } else if (!names_a_file(pet->value)) {
      offer_words(fields.sink().error("pet-key", pet->span, "a pet is named without folders"),
                  stem(pet->value));
    }
    out.pet = *std::move(pet);
  }
  out.groomer = fields.words(keys::booking::groomer);
  out.note = fields.words(keys::booking::note);
  if (out.collect && fields.find(keys::booking::at) != nullptr && *out.collect <= out.at) {
    fields.sink()
        .error("collect-before", fields.find(keys::booking::collect)->node.span,
               "the pet is collected before it comes")
        .notes.emplace_back(fields.find(keys::booking::at)->node.span, "it comes here");
  }
  fields.finish();
  return out;
}
}  // namespace

std::optional<Day> read_day_text(const ReadContext& context, std::string path, std::string text) {
  const auto document = read_document(context, path, std::move(text),
                                      "a day needs its date = 2026-11-24 and its [[booking]]s");
  if (!document) return std::nullopt;
  Fields file(*document, keys::day_file::file, context.sink);
  Day day;
  if (const auto date = file.date(keys::day_file::date)) {
    day.date = date->value;
    day.span = date->span;
    check_name_date(*date, path, context.sink);
  }
  for (Fields& booking : file.tables(keys::day_file::booking)) {
    day.bookings.push_back(read_booking(booking));
    day.bookings.back().date = day.date;
  }
  file.finish();
  if (!no_errors_in(document->file, context.sink)) return std::nullopt;
  return day;
}

std::optional<Day> read_day(const ReadContext& context, const std::string& path) {
  auto bytes = read_bytes(context, path);
  if (!bytes) return std::nullopt;
  return read_day_text(context, path, *std::move(bytes));
}
}  // namespace furnish
