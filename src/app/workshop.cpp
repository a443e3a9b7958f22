#include "app/workshop.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <ctime>
#include <exception>
#include <set>

#include "app/booked_day.h"
#include "app/data_folder.h"
#include "base/text.h"

namespace furnish {
namespace {
/// Of a page of no pet: the sheets'.
const SheetKind& asked_kind(const Options& options) {
  switch (options.command) {
    case Command::rules:
      return kinds::rules;
    case Command::day:
      return kinds::day;
    case Command::book:
      return kinds::book;
    case Command::due:
    case Command::expiring:
    case Command::find:
      return kinds::list;
    default:
      return options.sheet->kind;
  }
}
}  // namespace

Date local_today(const Options& options) {
  if (options.on) return *options.on;
  const std::time_t now = std::time(nullptr);
  std::tm parts{};
  ::localtime_r(&now, &parts);
  return make_date(parts.tm_year + 1900, static_cast<unsigned>(parts.tm_mon + 1),
                   static_cast<unsigned>(parts.tm_mday))
      .value_or(Date{});
}

Workshop::Workshop(const Options& options, const Files& files, const Disk& disk)
    : options_(options),
      files_(files),
      disk_(disk),
      context_{files, sources_, sink_},
      today_(local_today(options)),
      data_(find_data_folder(options.data)),
      voices_(options, sink_) {}

std::vector<PetPath> Workshop::booked_pets(bool& complete) {
  std::vector<PetPath> found;
  const std::string root = options_.root();
  const std::size_t errors = sink_.error_count();
  const Day* const day = folder(root).day(today_);
  if (day == nullptr) {
    complete = false;
    if (sink_.error_count() == errors) {
      sink_.error("no-day", {}, fmt::format("nothing is booked on {}", to_iso(today_))).hint =
          fmt::format("bookings of a day stand in {}",
                      path_in(path_in(root, "days"), to_iso(today_) + ".toml"));
    }
    return found;
  }
  std::vector<Booking> bookings = day->bookings;
  std::ranges::stable_sort(bookings, {}, &Booking::at);
  std::set<std::string> seen;
  for (const Booking& booking : bookings) {
    if (!seen.insert(booking.pet.value).second) continue;
    if (auto pet = find_pet(files_, booking.pet.value, root, sink_)) {
      found.push_back(std::move(*pet));
    } else {
      complete = false;
    }
  }
  // Whoever stands in a booking with a fault comes all the same; that was told.
  for (const UnreadBooking& one : day->unread) {
    complete = false;
    if (one.pet.empty() || !seen.insert(one.pet).second) continue;
    DiagnosticSink unheard;
    if (auto pet = find_pet(files_, one.pet, root, unheard)) found.push_back(std::move(*pet));
  }
  return found;
}

std::vector<PetPath> Workshop::pets(bool& complete) {
  if (options_.booked) return booked_pets(complete);
  std::vector<PetPath> found;
  if (options_.pets.empty()) {
    const std::string root = options_.root();
    bool read = true;
    found = all_pets(context_, root, read);
    complete = complete && read;
    if (found.empty() && read) {
      sink_.error("no-pet", {}, fmt::format("there are no pets in {}", path_in(root, "pets")))
          .hint = "name a pet's file, or the salon's folder with --salon";
      complete = false;
    }
    return found;
  }
  for (const std::string& argument : options_.pets) {
    if (auto pet = find_pet(files_, argument, options_.salon, sink_)) {
      found.push_back(std::move(*pet));
    } else {
      complete = false;
    }
  }
  return found;
}

SalonFolder& Workshop::folder(const std::string& root) {
  auto& made = folders_[root];
  if (made) return *made;
  made = std::make_unique<SalonFolder>(context_, root, path_in(data_, "styles"));
  if (options_.look) made->leave_out_contact();
  return *made;
}

FontSet* Workshop::fonts() {
  if (!fonts_asked_) {
    fonts_asked_ = true;
    if (data_.empty()) {
      sink_.error("fonts-missing", {}, "the program's fonts/ and styles/ are not where it looks")
          .hint = "name their folder with --data";
    } else {
      fonts_ = FontSet::open(path_in(data_, "fonts"), sink_);
    }
  }
  return fonts_.get();
}

std::optional<Case> Workshop::open(const PetPath& path, Date day, DiagnosticSink& sink) {
  auto one = work_out(path, day, sink);
  if (one) hold_against_day(*one, sink);
  return one;
}

std::optional<Case> Workshop::work_out(const PetPath& path, Date day, DiagnosticSink& sink) {
  SalonFolder& salon = folder(path.root);
  if (!salon.good()) return std::nullopt;
  auto pet = salon.pet(path.file, sink);
  if (!pet) return std::nullopt;
  bool complete = true;
  std::vector<Visit> visits = salon.visits(*pet, complete, sink);
  bool all_bookings = true;
  PetBookings bookings = salon.bookings(*pet, day, all_bookings);
  Plan plan = make_plan(salon.salon(), *pet, visits, bookings, day, sink);
  if (!complete) lacks_visits(plan);
  return Case{&salon, std::move(*pet),     std::move(visits), complete, std::move(plan),
              day,    std::move(bookings), all_bookings};
}

namespace {
/// Perhaps it is this pet that comes today: what comes next is not known.
void booked_by_another_name(Case& one) {
  one.all_bookings = false;
  std::vector<Date>& unread = one.bookings.unread;
  if (!unread.empty() && unread.front() == one.today) return;
  unread.insert(unread.begin(), one.today);
  DiagnosticSink unheard;  // the plan before has said it already
  one.plan = make_plan(one.salon(), one.pet, one.visits, one.bookings, one.today, unheard);
  if (!one.all_visits) lacks_visits(one.plan);
}
}  // namespace

void Workshop::hold_against_day(Case& one, DiagnosticSink& sink) {
  const auto place = [&](const SourceSpan& span) {
    return span.file == SourceSpan::no_file ? std::string()
                                            : fmt::format("{}:{}:{}", sources_.at(span.file).path(),
                                                          span.begin.line, span.begin.column);
  };
  for (const DayWarning& warning : day_warnings_about(one, context_)) {
    if (warning.meant == one.pet.key) booked_by_another_name(one);
    DiagnosticSink about;
    report({&warning, 1}, about);
    for (Diagnostic said : about.all()) {
      said.once = fmt::format("{} {} {}", said.code, place(warning.span), place(warning.other));
      sink.add(std::move(said));
    }
  }
}

bool Workshop::nothing_to_show(const Case& one) const {
  return options_.sheet->kind.about == AboutVisit::always && chosen_visit(one, options_) == nullptr;
}

std::optional<Paper> Workshop::paper(const Salon& salon, DiagnosticSink& sink) const {
  return paper(salon, asked_kind(options_), sink);
}

std::optional<Paper> Workshop::paper(const Salon& salon, const SheetKind& kind,
                                     DiagnosticSink& sink) const {
  if (options_.paper.empty()) return salon.paper.*kind.paper;
  const auto found = parse_paper(options_.paper);
  if (found) return found;
  auto& fault = sink.error("no-paper", {}, fmt::format("there is no paper '{}'", options_.paper));
  std::vector<std::string> names;
  for (const std::string_view name : paper_names()) names.emplace_back(name);
  fault.hint = "one of " + listed(names, " or ");
  return std::nullopt;
}

std::optional<SheetVoice> Workshop::voice(SalonFolder& salon, const Pet& pet,
                                          DiagnosticSink& sink) {
  FontSet* const opened = fonts();
  if (opened == nullptr) return std::nullopt;
  const auto found = voices_.voice(*opened, salon, pet, options_.sheet->kind.reader);
  if (found) found->shaper.report_to(sink);
  return found;
}

std::optional<Made> Workshop::sheet(const Case& one, DiagnosticSink& sink,
                                    std::string arrangement) {
  return sheet(one, *options_.sheet, sink, std::move(arrangement));
}

std::optional<Made> Workshop::sheet(const Case& one, const SheetMaker& wanted, DiagnosticSink& sink,
                                    std::string arrangement) {
  if (fonts() == nullptr) return std::nullopt;
  const auto on = paper(one.salon(), wanted.kind, sink);
  if (!on) return std::nullopt;
  const auto speaker = voice(*one.folder, one.pet, sink);
  if (!speaker) return std::nullopt;
  speaker->shaper.forget();
  try {
    return wanted.make(
        one,
        {wanted.kind, options_, *on, *speaker, {files_, sources_, sink}, std::move(arrangement)});
  } catch (const std::exception& fault) {
    // What nobody foresaw of one pet keeps no other from its sheet.
    sink.error("unforeseen", one.pet.span,
               fmt::format("its {} could not be made: {}", wanted.kind.name, fault.what()))
        .hint = "please report this with the files that cause it";
    return std::nullopt;
  }
}
}  // namespace furnish
