#include "spec/visit_reader.h"

#include <fmt/format.h>

#include <charconv>

#include "base/quantity.h"
#include "spec/free_text.h"
#include "spec/name_date.h"
#include "spec/offer.h"
#include "spec/product_reader.h"
#include "spec/trim_reader.h"
#include "spec/visit_format.h"
#include "spec/visit_sections.h"

namespace furnish {
namespace {
/// 85 or "1 h 25 min".
std::optional<std::chrono::minutes> read_minutes(Fields& file) {
  const TomlEntry* const entry = file.find(keys::visit_file::minutes);
  if (entry == nullptr) return std::nullopt;
  if (std::holds_alternative<std::string>(entry->node.value)) {
    const auto time = as_quantity(entry->node, "minutes", bounds::visit_minutes, file.sink());
    if (!time) return std::nullopt;
    return std::chrono::round<std::chrono::minutes>(*time);
  }
  const auto number = file.whole(keys::visit_file::minutes);
  if (!number) return std::nullopt;
  return std::chrono::minutes(*number);
}

/// The day of the next visit; for a span, the day that lies so far behind this one is offered.
std::optional<Located<Date>> read_next(Fields& file, Date from) {
  const TomlNode* const node = file.peek(keys::visit_file::next);
  const auto* const words = node == nullptr ? nullptr : std::get_if<std::string>(&node->value);
  const auto span = words == nullptr ? Parsed<CalendarSpan>{} : parse_span(*words);
  if (!span || from == Date{} || !bounds::visit_every.holds(*span.value)) {
    return file.date(keys::visit_file::next);
  }
  file.find(keys::visit_file::next);
  offer(report_type(*node, keys::visit_file::next.name, "a date such as 2021-04-09", file.sink()),
        to_iso(after(from, *span.value)));
  return std::nullopt;
}

/// 2 for "2026-11-24-2.toml"; 1 where the name has no number.
int number_in_name(const std::string& path) {
  const std::string name = stem(path);
  constexpr std::size_t date_and_hyphen = 11;
  if (name.size() <= date_and_hyphen) return 1;
  int out = 1;
  std::from_chars(name.data() + date_and_hyphen, name.data() + name.size(), out);
  return out;
}

void check_dates(const Visit& visit, const Pet* pet, const std::string& path,
                 DiagnosticSink& sink) {
  check_name_date(visit.date, path, sink);
  if (pet != nullptr && pet->born && visit.date.value < pet->born->value) {
    sink.error("before-birth", visit.date.span,
               fmt::format("the visit is before {} was born", pet->name.value))
        .notes.emplace_back(pet->born->span, "born here");
  }
  if (visit.next && visit.next->value <= visit.date.value) {
    sink.error("next-visit", visit.next->span, "the next visit is not after this one")
        .notes.emplace_back(visit.date.span, "this one is here");
  }
}

/// Repeated tables go into lists of their own.
void read_lists(Fields& file, const Salon* salon, Visit& visit) {
  for (Fields& product : file.tables(keys::visit_file::product)) {
    auto use = read_product_use(product, ProductKind::other, salon, Mixed::yes);
    if (use) visit.products.push_back(*std::move(use));
  }
  for (Fields& finding : file.tables(keys::visit_file::finding))
    visit.findings.push_back(read_finding(finding));
  for (Fields& photo : file.tables(keys::visit_file::photo))
    visit.photos.push_back(read_photo(photo, salon));
  for (Fields& one : file.tables(keys::visit_file::consent))
    visit.consents.push_back(read_consent(one));
}

/// `headed`: it has a [done] or a [went_out], whatever stands there.
Work read_work(const Fields& file, const Visit& visit, bool headed) {
  if (!visit.not_done.empty()) return Work::not_done;
  if (file.peek(keys::visit_file::unfinished) != nullptr) return visit.work;
  return headed ? Work::done : work_said(visit);
}
}  // namespace

std::optional<Visit> read_visit_text(const ReadContext& context, std::string path, std::string text,
                                     const Salon* salon, const Pet* pet) {
  const auto document =
      read_document(context, path, std::move(text), "a visit needs its date = 2026-11-24");
  if (!document) return std::nullopt;
  Fields file(*document, keys::visit_file::file, context.sink);
  Visit visit;
  if (const auto date = file.date(keys::visit_file::date)) visit.date = *date;
  if (file.flag(keys::visit_file::unfinished, false)) visit.work = Work::unfinished;
  visit.not_done = read_free_text(file, keys::visit_file::not_done);
  visit.groomer = file.words(keys::visit_file::groomer);
  visit.minutes = read_minutes(file);
  visit.weight = file.quantity(keys::visit_file::weight);
  visit.next = read_next(file, visit.date.value);
  visit.told = read_free_text(file, keys::visit_file::told);
  if (auto table = file.table(keys::visit_file::came_in)) visit.came_in = read_came_in(*table);
  bool headed = false;
  if (auto table = file.table(keys::visit_file::done)) {
    headed = true;
    visit.done = read_trim_rules(*table, Why::yes);
  }
  if (auto table = file.table(keys::visit_file::went_out)) {
    headed = true;
    visit.finish = read_free_text(*table, keys::went_out::finish);
    visit.nails = read_free_text(*table, keys::went_out::nails);
    visit.extras = read_free_text(*table, keys::went_out::extras);
    visit.went_out = read_went_out(*table);
  }
  read_lists(file, salon, visit);
  visit.work = read_work(file, visit, headed);
  const TomlNode* const did = file.peek(keys::visit_file::did);
  for (const auto& part : file.choices(keys::visit_file::did)) visit.did.push_back(part.value);
  if (did != nullptr && visit.work == Work::done) {
    context.sink
        .error("did-of-done", did->span, "`did` is for a visit that was not done, and this one was")
        .hint = "take it out, or write `not_done` with the reason";
  }
  file.finish();
  if (visit.date.span.file == document->file) check_dates(visit, pet, path, context.sink);
  if (!no_errors_in(document->file, context.sink)) return std::nullopt;
  visit.number = number_in_name(path);
  return visit;
}

std::optional<Visit> read_visit(const ReadContext& context, const std::string& path,
                                const Salon* salon, const Pet* pet) {
  auto bytes = read_bytes(context, path);
  if (!bytes) return std::nullopt;
  return read_visit_text(context, path, *std::move(bytes), salon, pet);
}
}  // namespace furnish
