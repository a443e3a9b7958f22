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

/// When who is worked on is done, or goes; null: nobody knows.
Json until(const DayPlan& plan, const Booking& booking) {
  for (const DayBlock& block : plan.blocks) {
    for (const DayRow& row : block.rows) {
      if (row.booking != &booking) continue;
      if (row.expected) return clock_time(booking.at + *row.expected);
    }
  }
  return booking.collect ? Json(clock_time(*booking.collect)) : Json();
}

class DayJson {
 public:
  DayJson(const DayPlan& plan, const std::vector<DayWarning>& warnings)
      : plan_(plan), warnings_(warnings) {}

  Json row(const DayRow& row) {
    const Booking& booking = *row.booking;
    Json out{{"time", clock_time(booking.at)},
             {"groomer", booking.groomer},
             {"id", booking.pet.value},
             {"pet", name(booking)},
             {"owner", row.pet != nullptr ? row.pet->pet.owner.name : ""},
             {"minutes", minutes(row.booked)},
             {"expected", minutes(row.expected)},
             {"over", row.over().count()},
             {"pickup", booking.collect ? Json(clock_time(*booking.collect)) : Json()},
             {"note", booking.note},
             {"gravest", gravest(row)},
             {"readable", row.pet != nullptr && !row.pet->faulty},
             {"unknown", std::ranges::any_of(warnings_,
                                             [&](const DayWarning& one) {
                                               return one.fault == DayFault::no_pet &&
                                                      one.span == booking.pet.span;
                                             })},
             {"clashes", Json::array()},
             {"overlap", nullptr}};
    for (const Booking* const other : row.clashes) out["clashes"].push_back(other_json(*other));
    if (row.before_collected != nullptr) out["overlap"] = other_json(*row.before_collected);
    return out;
  }

 private:
  Json other_json(const Booking& other) {
    return {{"pet", name(other)},
            {"id", other.pet.value},
            {"groomer", other.groomer},
            {"time", clock_time(other.at)},
            {"until", until(plan_, other)}};
  }

  std::string name(const Booking& booking) {
    for (const DayBlock& block : plan_.blocks) {
      for (const DayRow& row : block.rows) {
        if (row.booking->pet.value == booking.pet.value && row.pet != nullptr)
          return row.pet->pet.name.value;
      }
    }
    return booking.pet.value;
  }

  /// The worst of what its alerts say; of a faulty file, those that can be read.
  static std::string gravest(const DayRow& row) {
    if (row.pet == nullptr || row.pet->pet.alerts.empty()) return {};
    return std::string(to_text(std::ranges::min(row.pet->pet.alerts, {}, &Alert::level).level));
  }

  const DayPlan& plan_;
  const std::vector<DayWarning>& warnings_;
};
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
  DayJson rows(plan, cases.warnings);
  for (const DayBlock& block : plan.blocks) {
    for (const DayRow& row : block.rows) out["bookings"].push_back(rows.row(row));
  }
  std::ranges::stable_sort(out["bookings"].get_ref<Json::array_t&>(), {},
                           [](const Json& one) { return one["time"].get<std::string>(); });
  FontSet* const fonts = shop.fonts();
  const auto voice =
      fonts ? shop.voices().voice(*fonts, folder, Pet{}, Audience::staff) : std::nullopt;
  if (!voice) return out;
  out["unread"] = unread_text(plan, *voice);
  for (const DayLine& line : mix_lines(plan, *voice)) {
    const std::string beware = line.beware.empty() ? "" : " " + line.beware;
    out["mix"].push_back({{"product", line.head}, {"amount", line.text + beware}});
  }
  const std::vector<DayLine> calls = call_lines(plan, folder.salon(), date, *voice);
  for (std::size_t i = 0; i < calls.size(); ++i) {
    const Pet& pet = plan.calls[i].pet->pet;
    out["ring"].push_back({{"id", pet.key},
                           {"pet", pet.name.value},
                           {"owner", pet.owner.name},
                           {"phone", pet.owner.phone},
                           {"email", pet.owner.email},
                           {"why", calls[i].text}});
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
