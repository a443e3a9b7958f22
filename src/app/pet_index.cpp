#include "app/pet_index.h"

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <tuple>
#include <utility>

#include "app/desk_day.h"
#include "app/desk_rest.h"
#include "base/text.h"

namespace furnish {
namespace {
/// So long who asks for a pet may wait for those that are not known yet.
constexpr std::chrono::milliseconds patience{25};
/// And for those that are booked today, before he has asked for anything.
constexpr std::chrono::milliseconds patience_for_booked{300};

/// The worst that a groomer has to know, of alerts and of what the rules say of the plan.
std::optional<Signal> gravest(const Case& one) {
  std::optional<Signal> out;
  const auto mind = [&](Signal signal) { out = out ? std::min(*out, signal) : signal; };
  for (const Alert& alert : one.pet.alerts) mind(alert.level);
  for (const Caution& caution : one.plan.cautions) {
    if (!caution.accepted) mind(caution.signal);
  }
  return out;
}

/// Of a desk for looking nobody finds a number out by its digits.
bool reaches_owner(const SearchText& text) {
  return text.where == "phone" || text.where == "email" || text.where == "address";
}

std::vector<SearchWord> words_in(std::string_view text) {
  std::vector<SearchWord> out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t begin = std::min(text.find_first_not_of(' ', at), text.size());
    const std::size_t end = std::min(text.find(' ', begin), text.size());
    if (end > begin) out.emplace_back(text.substr(begin, end - begin));
    at = end;
  }
  return out;
}
}  // namespace

PetIndex::PetIndex(const Options& options, const Files& files, const Disk& disk)
    : shop_(options, files, disk) {}

void PetIndex::all_changed() {
  shop_.forget();
  listed_ = false;
}

void PetIndex::day_changed(const std::string& date) {
  shop_.forget();
  if (!listed_) return;
  std::set<std::string> booked = std::exchange(booked_[date], {});
  if (const auto day = parse_date(date)) {
    for (std::string& id : booked_on(shop_, *day)) booked_[date].insert(std::move(id));
  }
  booked.insert(booked_[date].begin(), booked_[date].end());
  for (const std::string& id : booked) {
    if (known_.contains(id)) changed(id);
  }
}

void PetIndex::list() {
  const Date today = shop_.shop().today();
  if (listed_ && as_of_ == today) return;
  listed_ = true;
  as_of_ = today;
  bool complete = true;
  std::map<std::string, Known> before = std::move(known_);
  known_.clear();
  stale_.clear();
  for (const PetPath& path : all_pets(shop_.shop().context(), shop_.root(), complete)) {
    const std::string id = std::filesystem::path(path.file).stem().string();
    // What was known of it is shown until it is read again.
    if (const auto old = before.find(id); old != before.end()) known_.insert(*old);
    stale_.insert(id);
  }
  booked_.clear();
  first_.clear();
  SalonFolder& folder = shop_.shop().folder(shop_.root());
  const auto* const days = folder.day_files();
  for (const std::string& name : days != nullptr ? *days : std::vector<std::string>()) {
    const auto date = parse_date(std::filesystem::path(name).stem().string());
    const Day* const day = date && *date >= today ? folder.day(name) : nullptr;
    if (day == nullptr) continue;
    for (const Booking& one : day->bookings) booked_[to_iso(*date)].insert(one.pet.value);
  }
  // Whom everybody asks for first.
  if (const auto now = booked_.find(to_iso(today)); now != booked_.end()) {
    first_.assign(now->second.begin(), now->second.end());
  }
}

std::string PetIndex::take_next() {
  while (!first_.empty()) {
    const std::string id = std::move(first_.back());
    first_.pop_back();
    if (stale_.erase(id) > 0) return id;
  }
  return std::move(stale_.extract(stale_.begin()).value());
}

void PetIndex::read_next() {
  const std::string id = take_next();
  const std::string file = path_in(path_in(shop_.root(), "pets"), id + ".toml");
  if (!shop_.files().exists(file)) {
    known_.erase(id);
    return;
  }
  Known known;
  DiagnosticSink unheard;  // who opens the pet is told
  Workshop& shop = shop_.shop();
  const PetPath path{file, shop_.root()};
  auto one = shop.work_out(path, shop.today(), unheard);
  known.readable = one.has_value();
  if (!one) {
    // Its cautions count, and its owner asks for it, whatever else of it has a fault.
    const FileContent text = shop_.files().read(file);
    if (text.bytes) one = rest_of(shop_.over(), shop, path, *text.bytes, shop.today());
  }
  if (!one) {
    known.name = id;
    known.texts = {{"file", id, plain_letters(id), {}}};
  } else {
    const Pet& pet = one->pet;
    // Where even its name cannot be read it goes by its file's.
    known.name = known.readable || pet.name.value != no_name ? pet.name.value : id;
    known.owner = pet.owner.name;
    known.looks = pet.breed.empty() || pet.colour.empty() ? pet.breed + pet.colour
                                                          : pet.breed + ", " + pet.colour;
    known.texts = search_texts(pet);
    if (shop_.options().look) std::erase_if(known.texts, reaches_owner);
    known.gravest = gravest(*one);
    const Plan& plan = one->plan;
    if (const auto& next = plan.next_visit ? plan.next_visit : plan.unless_booked) {
      known.no_visit = next->reason == DueReason::no_visit;
      if (!known.no_visit || next->all_visits) known.due = next->date;
    }
    known.booked = one->booking();
  }
  known.sorted_by = plain_letters(known.name);
  known_[id] = std::move(known);
}

bool PetIndex::read_for(std::chrono::milliseconds span, Until until) {
  list();
  if (stale_.empty()) first_.clear();
  const auto end = std::chrono::steady_clock::now() + span;
  while (!stale_.empty() && (until == Until::all_read || !first_.empty()) &&
         std::chrono::steady_clock::now() < end) {
    read_next();
  }
  return !stale_.empty();
}

PetIndex::Json PetIndex::row(const std::string& id, const Known& known, Date today) const {
  Json out{{"id", id}, {"name", known.name}, {"owner", known.owner}, {"looks", known.looks}};
  out["gravest"] = known.gravest ? Json(to_text(*known.gravest)) : Json("");
  out["booked"] = known.booked ? Json(clock_time(known.booked->at)) : Json();
  out["groomer"] = known.booked ? known.booked->groomer : "";
  out["due"] = nullptr;
  if (known.due) {
    out["due"] = {{"date", to_iso(*known.due)},
                  {"over_days", (today - *known.due).count()},
                  {"first", known.no_visit}};
  }
  out["readable"] = known.readable;
  return out;
}

PetIndex::Json PetIndex::find(std::string_view words, std::size_t most) {
  list();
  const std::vector<SearchWord> wanted = words_in(words);
  // A file is named after its pet: those that may be meant are read before others.
  if (!wanted.empty()) first_.clear();
  for (const std::string& id : stale_) {
    if (wanted.empty()) break;
    const bool meant = std::ranges::any_of(
        wanted, [&](const SearchWord& word) { return id.find(word.plain) != std::string::npos; });
    if (meant) first_.push_back(id);
  }
  if (wanted.empty()) read_for(patience_for_booked, Until::first_read);
  read_for(patience);
  const Date today = as_of_;
  struct Found {
    int rank;
    const std::string* id;
    const Known* known;
  };
  std::vector<Found> found;
  for (const auto& [id, known] : known_) {
    int rank = 0;
    if (wanted.empty()) {
      rank = known.booked ? 0 : known.due ? 1 : 2;
    } else {
      const SearchText* const text = first_with(known.texts, wanted);
      if (text == nullptr) continue;
      rank = text->plain.starts_with(wanted.front().plain) ? 0 : 1;
      if (text->where != "name") rank += text->where == "owner" ? 2 : 4;
    }
    found.push_back({rank, &id, &known});
  }
  const auto before = [&](const Found& a, const Found& b) {
    const auto order = [&](const Found& one) {
      const Known& known = *one.known;
      const bool by_day = wanted.empty() && one.rank == 1;
      return std::tuple(one.rank, wanted.empty() && known.booked ? known.booked->at : TimeOfDay{},
                        by_day ? *known.due : Date{}, std::string_view(known.sorted_by),
                        std::string_view(*one.id));
    };
    return order(a) < order(b);
  };
  const std::size_t shown = std::min(most, found.size());
  std::ranges::partial_sort(found, found.begin() + static_cast<std::ptrdiff_t>(shown), before);
  Json out{{"pets", Json::array()}, {"reading", stale_.size()}};
  for (std::size_t i = 0; i < shown; ++i) {
    out["pets"].push_back(row(*found[i].id, *found[i].known, today));
  }
  return out;
}
}  // namespace furnish
