#include "plan/day_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

#include "base/diagnostic.h"
#include "base/quantity.h"
#include "base/text.h"
#include "plan/closed_days.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 5> codes{"no-pet", "booked-closed", "booked-short",
                                                "booked-twice", "groomer-twice"};

struct Time {
  TimeOfDay from, to;  ///< to: not in it
  bool meets(const Time& other) const { return from < other.to && other.from < to; }
};

class DayReader {
 public:
  DayReader(const Salon& salon, const Day& day, std::span<const std::string> pets,
            const std::map<std::string, Duration>& expected)
      : salon_(salon), day_(day), pets_(pets), expected_(expected) {}

  std::vector<DayWarning> all() {
    closed();
    for (std::size_t i = 0; i < day_.bookings.size(); ++i) {
      const Booking& one = day_.bookings[i];
      no_pet(one);
      too_short(one);
      for (std::size_t j = 0; j < i; ++j) at_once(day_.bookings[j], one);
    }
    return std::move(out_);
  }

 private:
  DayWarning& add(DayFault fault, SourceSpan span, std::string says) {
    out_.push_back({fault, {}, span, {}, std::move(says), {}, {}});
    return out_.back();
  }

  void closed() {
    if (day_.bookings.empty() || !closed_on(salon_, day_.date)) return;
    DayWarning& warning =
        add(DayFault::closed_day, day_.span,
            fmt::format("the salon is closed on this day, {}", to_iso(day_.date)));
    warning.hint = "is it the right day? `closed` is under [salon] in salon.toml";
    for (const Booking& one : day_.bookings) warning.pets.push_back(one.pet.value);
  }

  void no_pet(const Booking& one) {
    if (std::ranges::find(pets_, one.pet.value) != pets_.end()) return;
    DayWarning& warning =
        add(DayFault::no_pet, one.pet.span,
            fmt::format("no pet '{0}': there is no pets/{0}.toml", one.pet.value));
    warning.pets = {one.pet.value};
    const std::vector<std::string_view> names(pets_.begin(), pets_.end());
    if (const auto near = nearest(one.pet.value, names)) {
      warning.hint = fmt::format("did you mean '{}'?", *near);
      warning.meant = *near;
    }
  }

  void too_short(const Booking& one) {
    const auto work = expected_.find(one.pet.value);
    if (!one.collect || work == expected_.end()) return;
    if (*one.collect - one.at >= work->second.expected) return;
    DayWarning& warning = add(
        DayFault::short_time, one.span,
        fmt::format("{} is booked from {} to {}, and {} are expected", one.pet.value,
                    clock_time(one.at), clock_time(*one.collect), to_text(work->second.expected)));
    warning.pets = {one.pet.value};
    warning.hint = "collect later, or agree to do less";
  }

  std::optional<TimeOfDay> done_by(const Booking& one) const {
    const auto work = expected_.find(one.pet.value);
    if (work == expected_.end()) return std::nullopt;
    return one.at + work->second.expected;
  }
  /// Until when, where anybody knows.
  std::optional<TimeOfDay> known_stay(const Booking& one) const {
    return one.collect ? one.collect : done_by(one);
  }
  std::optional<TimeOfDay> known_work(const Booking& one) const {
    const auto done = done_by(one);
    return done ? done : one.collect;
  }
  /// Of one that nobody knows the end of at least its beginning is taken.
  Time stay(const Booking& one) const {
    return {one.at, known_stay(one).value_or(one.at + TimeOfDay(1))};
  }
  Time work(const Booking& one) const {
    return {one.at, known_work(one).value_or(one.at + TimeOfDay(1))};
  }

  void at_once(const Booking& first, const Booking& second) {
    if (first.pet.value == second.pet.value) {
      if (!stay(first).meets(stay(second))) return;
      twice(DayFault::pet_twice, first, second,
            fmt::format("{} is booked twice at once", second.pet.value));
      return;
    }
    if (!same_groomer(first, second) || !work(first).meets(work(second))) return;
    twice(
        DayFault::groomer_twice, first, second,
        fmt::format("{} has {} and {} at once", second.groomer, first.pet.value, second.pet.value));
  }

  void twice(DayFault fault, const Booking& first, const Booking& second, std::string says) {
    DayWarning& warning = add(fault, second.span, std::move(says));
    warning.pets = {first.pet.value};
    if (second.pet.value != first.pet.value) warning.pets.push_back(second.pet.value);
    warning.other = first.span;
    const auto until = fault == DayFault::pet_twice ? known_stay(first) : known_work(first);
    warning.hint = fmt::format("the first is from {}{}, this one from {}", clock_time(first.at),
                               until ? " to " + clock_time(*until) : "", clock_time(second.at));
  }

  const Salon& salon_;
  const Day& day_;
  std::span<const std::string> pets_;
  const std::map<std::string, Duration>& expected_;
  std::vector<DayWarning> out_;
};
}  // namespace

bool same_groomer(const Booking& one, const Booking& other) {
  return !one.groomer.empty() &&
         lower_ascii(trimmed(one.groomer)) == lower_ascii(trimmed(other.groomer));
}

std::string clock_time(TimeOfDay time) {
  return fmt::format("{:02}:{:02}", time.count() / 60, time.count() % 60);
}

std::vector<DayWarning> day_warnings(const Salon& salon, const Day& day,
                                     std::span<const std::string> pets,
                                     const std::map<std::string, Duration>& expected) {
  return DayReader(salon, day, pets, expected).all();
}

void report(std::span<const DayWarning> warnings, DiagnosticSink& sink) {
  for (const DayWarning& one : warnings) {
    const std::string_view code = codes[static_cast<std::size_t>(one.fault)];
    Diagnostic& said = one.fault == DayFault::no_pet ? sink.error(code, one.span, one.says)
                                                     : sink.warning(code, one.span, one.says);
    said.hint = one.hint;
    if (one.other.file != SourceSpan::no_file) said.notes.emplace_back(one.other, "booked here");
  }
}
}  // namespace furnish
