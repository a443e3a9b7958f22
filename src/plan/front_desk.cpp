#include "plan/front_desk.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <tuple>
#include <utility>

#include "base/text.h"

namespace furnish {
namespace {
using Json = nlohmann::ordered_json;

constexpr std::array<std::string_view, 7> reasons{"booked",
                                                  "agreed at the last visit",
                                                  "no groom on file",
                                                  "by the owner's interval",
                                                  "by the coat's interval",
                                                  "before it passes keep_under",
                                                  "before it mats"};
constexpr std::array<std::string_view, 4> statuses{"valid until", "counts from", "expired after",
                                                   "none on file"};

constexpr std::string_view unread_visits = "not all visits can be read";

std::string text_of(const Json& json) {
  return visible_json(json.dump(2, ' ', false, Json::error_handler_t::replace)) + "\n";
}

std::string_view word(DueReason reason) {
  return reasons.at(static_cast<std::size_t>(reason));
}
std::string_view word(VaccinationStatus status) {
  return statuses.at(static_cast<std::size_t>(status));
}

template <typename Row>
Row row_of(const Pet& pet) {
  Row out;
  out.key = pet.key;
  out.name = pet.name.value;
  out.owner = pet.owner.name;
  out.contact = reach(pet.owner);
  return out;
}

/// Columns as wide as what stands in them; nothing behind the last.
class Columns {
 public:
  void add(std::vector<std::string> row) { rows_.push_back(std::move(row)); }
  std::string text() const {
    std::vector<std::size_t> widths;
    for (const auto& row : rows_) {
      widths.resize(std::max(widths.size(), row.size()));
      for (std::size_t i = 0; i < row.size(); ++i) {
        widths[i] = std::max(widths[i], code_points(row[i]));
      }
    }
    std::string out;
    for (const auto& row : rows_) {
      std::string line;
      for (std::size_t i = 0; i < row.size(); ++i) {
        line += row[i] + std::string(widths[i] - code_points(row[i]) + 2, ' ');
      }
      line.erase(line.find_last_not_of(' ') + 1);
      out += line + '\n';
    }
    return out;
  }

 private:
  std::vector<std::vector<std::string>> rows_;
};

std::string counted(int days) {
  return fmt::format("{} day{}", days, days == 1 ? "" : "s");
}

std::string over_text(int days) {
  if (days == 0) return "today";
  return days > 0 ? counted(days) + " over" : "in " + counted(-days);
}

std::string interval_text(const CalendarSpan& span) {
  if (span.months > 0 && span.days.count() == 0) {
    return fmt::format("every {} month{}", span.months, span.months == 1 ? "" : "s");
  }
  const auto n = span.about().count();
  if (n % 7 == 0) return fmt::format("every {} week{}", n / 7, n == 7 ? "" : "s");
  return "every " + counted(static_cast<int>(n));
}

std::string who(const std::string& owner, const std::string& contact) {
  return owner.empty() || contact.empty() ? owner + contact : owner + ", " + contact;
}

Json date_json(const std::optional<Date>& date) {
  return date ? Json(to_iso(*date)) : Json();
}

template <typename Row>
Json head(const Row& row) {
  return {{"pet", row.key}, {"name", row.name}, {"owner", row.owner}, {"contact", row.contact}};
}

std::string digits_of(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c >= '0' && c <= '9') out += c;
  }
  return out;
}

/// Without case, accents, and the strokes and joins of letters that Unicode does not take apart:
/// who has no key for a letter types the one it looks like. Common practice, no source.
std::string findable(std::string_view text) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 9> looks_like{{{"ł", "l"},
                                                                                     {"ø", "o"},
                                                                                     {"đ", "d"},
                                                                                     {"ð", "d"},
                                                                                     {"ħ", "h"},
                                                                                     {"ı", "i"},
                                                                                     {"ŧ", "t"},
                                                                                     {"æ", "ae"},
                                                                                     {"œ", "oe"}}};
  std::string out = plain_letters(text);
  for (const auto& [letter, like] : looks_like) {
    for (auto at = out.find(letter); at != out.npos; at = out.find(letter, at + like.size())) {
      out.replace(at, letter.size(), like);
    }
  }
  return out;
}
}  // namespace

std::string reach(const Owner& owner) {
  return owner.phone.empty() ? owner.email : owner.phone;
}

std::optional<DueRow> due_row(const Pet& pet, const Plan& plan, const CalendarSpan& within) {
  // Who may be booked on a day that cannot be read is rather named than forgotten.
  const auto& known = plan.next_visit ? plan.next_visit : plan.unless_booked;
  if (!known) return std::nullopt;
  const NextVisit& next = *known;
  const Date by = after(plan.today, within);
  const bool perhaps = !next.sure && next.unread && *next.unread <= by;
  if (next.date > by && !perhaps) return std::nullopt;
  DueRow out = row_of<DueRow>(pet);
  out.last = next.last;
  if (pet.visit_every) out.interval = pet.visit_every->value;
  if (pet.since) out.since = year_of(*pet.since);
  out.due = next.date;
  out.reason = next.reason;
  if (!next.sure) out.unread = next.unread;
  out.all_visits = next.all_visits;
  out.limit = next.limit;
  out.days_over = static_cast<int>((plan.today - next.date).count());
  return out;
}

void sort_rows(std::vector<DueRow>& rows) {
  std::ranges::stable_sort(rows, {}, [](const DueRow& row) {
    const bool no_day = row.reason == DueReason::no_visit;
    return std::tuple(no_day, -row.days_over, plain_letters(row.name), row.key);
  });
}

std::vector<ExpiringRow> expiring_rows(const Pet& pet, const Plan& plan,
                                       const CalendarSpan& within) {
  std::vector<ExpiringRow> out;
  for (const VaccinationState& state : plan.health.vaccinations) {
    const bool later = state.status == VaccinationStatus::valid &&
                       (!state.until || *state.until > after(plan.today, within));
    const bool nobody_asks = state.status == VaccinationStatus::missing && !state.required;
    if (later || nobody_asks) continue;
    ExpiringRow row = row_of<ExpiringRow>(pet);
    row.vaccination = state.name;
    row.status = state.status;
    row.until = state.status == VaccinationStatus::not_yet ? state.from : state.until;
    row.required = state.required;
    out.push_back(std::move(row));
  }
  return out;
}

void sort_rows(std::vector<ExpiringRow>& rows) {
  std::ranges::stable_sort(rows, {}, [](const ExpiringRow& row) {
    return std::tuple(!row.until.has_value(), row.until.value_or(Date{}), plain_letters(row.name),
                      row.vaccination);
  });
}

SearchWord::SearchWord(std::string_view written) : plain(findable(written)) {
  constexpr std::size_t least = 3;
  if (written.find_first_not_of("0123456789 +-()/.") != std::string_view::npos) return;
  number = digits_of(written);
  if (number.size() < least) number.clear();
}

std::vector<SearchText> search_texts(const Pet& pet) {
  std::vector<SearchText> out;
  const auto add = [&](const char* where, const std::string& text) {
    if (!text.empty()) out.push_back({where, text, findable(text), digits_of(text)});
  };
  add("name", pet.name.value);
  add("file", pet.key);
  add("owner", pet.owner.name);
  add("phone", pet.owner.phone);
  add("email", pet.owner.email);
  add("vet", pet.owner.vet.name);
  add("vet", pet.owner.vet.phone);
  add("breed", pet.breed);
  for (const std::string& line : pet.owner.address) add("address", line);
  for (const std::string& one : pet.owner.collects) add("collects", one);
  for (const Alert& alert : pet.alerts) {
    add("alert", alert.text.value);
    add("alert", alert.action.value);
    for (const auto& one : alert.allergens) add("allergen", one.value);
  }
  return out;
}

const SearchText* first_with(std::span<const SearchText> texts, std::span<const SearchWord> words) {
  for (const SearchText& text : texts) {
    const bool all = std::ranges::all_of(words, [&](const SearchWord& word) {
      return text.plain.find(word.plain) != std::string::npos ||
             (!word.number.empty() && text.digits.find(word.number) != std::string::npos);
    });
    if (all) return &text;
  }
  return nullptr;
}

std::optional<FoundRow> found_row(const Pet& pet, std::span<const std::string> words) {
  const std::vector<SearchText> texts = search_texts(pet);
  const std::vector<SearchWord> wanted(words.begin(), words.end());
  const SearchText* const found = first_with(texts, wanted);
  if (found == nullptr) return std::nullopt;
  FoundRow out = row_of<FoundRow>(pet);
  out.where = found->where;
  out.text = found->text;
  return out;
}

std::string text(std::span<const DueRow> rows, Date today) {
  if (rows.empty()) return fmt::format("nobody is due by {}\n", to_iso(today));
  Columns out;
  for (const DueRow& row : rows) {
    const bool no_day = row.reason == DueReason::no_visit;
    // That there is no visit nobody knows where not all can be read.
    std::string why = no_day && !row.all_visits ? "" : std::string(word(row.reason));
    if (!row.all_visits) why += std::string(why.empty() ? "" : "; ").append(unread_visits);
    if (row.unread) why += "; not all bookings can be read from " + to_iso(*row.unread);
    out.add({row.name, no_day ? "day not known" : over_text(row.days_over),
             no_day ? "" : to_iso(row.due), std::move(why),
             row.last                    ? "last " + to_iso(*row.last)
             : row.since                 ? fmt::format("comes since {}", *row.since)
             : no_day || !row.all_visits ? ""
                                         : "no groom on file",
             row.interval ? interval_text(*row.interval) : "", who(row.owner, row.contact)});
  }
  return out.text();
}

std::string text(std::span<const ExpiringRow> rows) {
  if (rows.empty()) return "no vaccination runs out\n";
  Columns out;
  for (const ExpiringRow& row : rows) {
    out.add({row.name, row.vaccination,
             std::string(word(row.status)) + (row.until ? " " + to_iso(*row.until) : ""),
             row.required ? "required" : "", who(row.owner, row.contact)});
  }
  return out.text();
}

std::string text(std::span<const FoundRow> rows) {
  if (rows.empty()) return "nobody was found\n";
  Columns out;
  for (const FoundRow& row : rows) {
    out.add({row.name, row.key, who(row.owner, row.contact), row.where + ": " + row.text});
  }
  return out.text();
}

std::string json(std::span<const DueRow> rows) {
  Json out = Json::array();
  for (const DueRow& row : rows) {
    Json one = head(row);
    const bool no_day = row.reason == DueReason::no_visit;
    one["last"] = date_json(row.last);
    one["since"] = row.since ? Json(*row.since) : Json();
    one["interval_days"] = row.interval ? Json(row.interval->about().count()) : Json();
    one["due"] = no_day ? Json() : Json(to_iso(row.due));
    one["reason"] = row.all_visits || !no_day ? Json(word(row.reason)) : Json();
    one["days_over"] = no_day ? Json() : Json(row.days_over);
    one["bookings_unread_from"] = date_json(row.unread);
    one["all_visits_read"] = row.all_visits;
    out.push_back(std::move(one));
  }
  return text_of(out);
}

std::string json(std::span<const ExpiringRow> rows) {
  Json out = Json::array();
  for (const ExpiringRow& row : rows) {
    Json one = head(row);
    one["vaccination"] = row.vaccination;
    one["status"] = word(row.status);
    one["day"] = date_json(row.until);
    one["required"] = row.required;
    out.push_back(std::move(one));
  }
  return text_of(out);
}

std::string json(std::span<const FoundRow> rows) {
  Json out = Json::array();
  for (const FoundRow& row : rows) {
    Json one = head(row);
    one["where"] = row.where;
    one["text"] = row.text;
    out.push_back(std::move(one));
  }
  return text_of(out);
}
}  // namespace furnish
