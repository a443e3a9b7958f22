#include "app/desk_day.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "app/day.h"
#include "base/text.h"
#include "sheet/day_lists.h"

namespace furnish {
namespace {
using Json = nlohmann::ordered_json;

Json minutes(const std::optional<std::chrono::minutes>& span) {
  return span ? Json(span->count()) : Json();
}

/// What is said of a booking, in the order of the day's checks; null: nothing.
Json clash(const Booking& booking, const std::vector<DayWarning>& warnings) {
  std::vector<std::string> said;
  for (const DayWarning& one : warnings) {
    if (one.span == booking.span || one.other == booking.span) said.push_back(one.says);
  }
  return said.empty() ? Json() : Json(joined(said, "; "));
}

/// The worst of what its alerts say.
std::string gravest(const DayPet* pet) {
  if (pet == nullptr || pet->pet.alerts.empty()) return {};
  return std::string(to_text(std::ranges::min(pet->pet.alerts, {}, &Alert::level).level));
}

Json row_json(const DayRow& row, const std::vector<DayWarning>& warnings) {
  const Booking& booking = *row.booking;
  return {{"time", clock_time(booking.at)},
          {"groomer", booking.groomer},
          {"id", booking.pet.value},
          {"pet", row.pet != nullptr ? row.pet->pet.name.value : booking.pet.value},
          {"minutes", minutes(row.booked)},
          {"expected", minutes(row.expected)},
          {"pickup", booking.collect ? Json(clock_time(*booking.collect)) : Json()},
          {"note", booking.note},
          {"gravest", gravest(row.pet)},
          {"readable", row.pet != nullptr},
          {"clash", clash(booking, warnings)}};
}
}  // namespace

Json desk_day(DeskShop& kept, Date date) {
  Workshop& shop = kept.shop();
  SalonFolder& folder = shop.folder(kept.root());
  Json out{{"date", to_iso(date)}, {"exists", false},           {"readable", true},
           {"closed", false},      {"bookings", Json::array()}, {"mix", Json::array()},
           {"ring", Json::array()}};
  const auto* const files = folder.day_files();
  const std::string name = to_iso(date) + ".toml";
  out["exists"] = files == nullptr || std::ranges::find(*files, name) != files->end();
  const Day* const day = folder.day(date);
  const std::chrono::weekday weekday(date);
  out["closed"] = std::ranges::find(folder.salon().closed, weekday) != folder.salon().closed.end();
  if (day == nullptr) {
    out["readable"] = !out["exists"].get<bool>();
    return out;
  }
  const DayCases cases = day_cases(shop, folder, *day);
  const DayPlan plan = cases.plan(*day);
  for (const DayBlock& block : plan.blocks) {
    for (const DayRow& row : block.rows) out["bookings"].push_back(row_json(row, cases.warnings));
  }
  std::ranges::stable_sort(out["bookings"].get_ref<Json::array_t&>(), {},
                           [](const Json& one) { return one["time"].get<std::string>(); });
  FontSet* const fonts = shop.fonts();
  const auto voice =
      fonts ? shop.voices().voice(*fonts, folder, Pet{}, Audience::staff) : std::nullopt;
  if (!voice) return out;
  for (const DayLine& line : mix_lines(plan, *voice)) {
    const std::string beware = line.beware.empty() ? "" : " " + line.beware;
    out["mix"].push_back({{"product", line.head}, {"amount", line.text + beware}});
  }
  for (const DayLine& line : call_lines(plan, folder.salon(), date, *voice)) {
    out["ring"].push_back({{"name", line.head}, {"why", line.text}});
  }
  return out;
}

std::vector<std::string> booked_on(DeskShop& kept, Date date) {
  std::vector<std::string> out;
  const Day* const day = kept.shop().folder(kept.root()).day(date);
  if (day == nullptr) return out;
  std::vector<Booking> bookings = day->bookings;
  std::ranges::stable_sort(bookings, {}, &Booking::at);
  for (const Booking& one : bookings) {
    if (std::ranges::find(out, one.pet.value) == out.end()) out.push_back(one.pet.value);
  }
  return out;
}
}  // namespace furnish
