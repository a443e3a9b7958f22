#include "spec/day_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <span>
#include <utility>
#include <variant>
#include <vector>

#include "base/text.h"
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
  const TomlEntry* const named = fields.find(keys::booking::pet);
  if (named != nullptr && std::holds_alternative<TomlList>(named->node.value)) {
    only_tell(fields.sink().error("one-pet", named->node.span, "a booking is of one pet"),
              "write a [[booking]] for each");
  } else if (auto pet = fields.text(keys::booking::pet)) {
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

/// Whose a booking is that has these faults. Where a heading is one of them nobody knows what
/// belongs to which.
std::string whose(const Booking& booking, std::span<const SourceSpan> faults,
                  const SourceText& text) {
  const bool heading = std::ranges::any_of(faults, [&](const SourceSpan& at) {
    return at.begin.line != booking.span.begin.line &&
           trimmed(text.line(at.begin.line)).starts_with("[");
  });
  return heading ? std::string() : stem(booking.pet.value);
}

/// The pet that a booking names whose heading has a fault: all up to the next heading is its own.
std::string pet_below(std::uint32_t heading, const SourceText& text) {
  const auto lines = static_cast<std::uint32_t>(std::ranges::count(text.text(), '\n') + 1);
  for (std::uint32_t n = heading + 1; n <= lines; ++n) {
    const std::string_view line = trimmed(text.line(n));
    if (line.starts_with('[')) break;
    const std::size_t equals = line.find('=');
    if (trimmed(line.substr(0, equals)) != keys::booking::pet.name || equals == line.npos) continue;
    const std::string_view value = trimmed(line.substr(equals + 1));
    const std::size_t end = value.find('"', 1);
    return value.starts_with('"') && end != value.npos ? std::string(value.substr(1, end - 1))
                                                       : std::string();
  }
  return {};
}

/// Takes the bookings that have faults out of the day's. Each reaches from its heading to the next;
/// a fault before the first may be a booking too, and a heading that was left out begins another.
void part_from_unread(Day& day, const Document& document, const ReadContext& context) {
  const SourceText& text = context.sources.at(document.file);
  std::vector<SourceSpan> faults;
  for (const Diagnostic& one : context.sink.all()) {
    if (one.severity != Severity::error || one.span.file != document.file) continue;
    const std::uint32_t line = one.span.begin.line;
    const bool out = std::ranges::count(document.left_out, line) > 0;
    if (out && trimmed(text.line(line)).starts_with('[')) {
      day.unread.push_back({one.span, pet_below(line, text)});
    } else {
      faults.push_back(one.span);
    }
  }
  if (faults.empty()) return;
  std::ranges::sort(faults);
  std::ranges::stable_sort(day.bookings, {}, &Booking::span);
  std::vector<Booking> good;
  auto fault = faults.begin();
  const auto before = [&](Position end) {
    const auto first = fault;
    while (fault != faults.end() && fault->begin < end) ++fault;
    return std::span(first, fault);
  };
  const auto begin_of = [&](std::size_t i) {
    return i < day.bookings.size() ? day.bookings[i].span.begin
                                   : Position{std::numeric_limits<std::uint32_t>::max(), 0};
  };
  if (const auto first = before(begin_of(0)); !first.empty()) {
    day.unread.push_back({first.front(), {}});
  }
  for (std::size_t i = 0; i < day.bookings.size(); ++i) {
    const auto own = before(begin_of(i + 1));
    if (own.empty()) {
      good.push_back(std::move(day.bookings[i]));
    } else {
      day.unread.push_back({own.front(), whose(day.bookings[i], own, text)});
    }
  }
  day.bookings = std::move(good);
  std::ranges::stable_sort(day.unread, {}, &UnreadBooking::span);
}
}  // namespace

std::optional<Day> read_day_text(const ReadContext& context, std::string path, std::string text) {
  const auto document = read_document(context, path, std::move(text),
                                      "a day needs its date = 2026-11-24 and its [[booking]]s");
  if (!document) return std::nullopt;
  Fields file(*document, keys::day_file::file, context.sink);
  Day day;
  bool dated = false;
  if (const auto date = file.date(keys::day_file::date)) {
    day.date = date->value;
    day.span = date->span;
    const std::size_t errors = context.sink.error_count();
    check_name_date(*date, path, context.sink);
    dated = context.sink.error_count() == errors;
  }
  for (Fields& booking : file.tables(keys::day_file::booking)) {
    day.bookings.push_back(read_booking(booking));
    day.bookings.back().date = day.date;
  }
  file.finish();
  if (!dated) return std::nullopt;
  part_from_unread(day, *document, context);
  return day;
}

std::optional<Day> read_day(const ReadContext& context, const std::string& path) {
  auto bytes = read_bytes(context, path);
  if (!bytes) return std::nullopt;
  return read_day_text(context, path, *std::move(bytes));
}
}  // namespace furnish
