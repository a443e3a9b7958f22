#include "sheet/desk.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "model/for_everyone.h"
#include "page/paper.h"
#include "page/shaped_line.h"
#include "sheet/card.h"
#include "sheet/care.h"
#include "sheet/note.h"
#include "sheet/style_sheet.h"
#include "spec/writer.h"

namespace furnish::test {
namespace {
// A literal, since other files make folders out of it before main().
constexpr std::string_view source = FURNISH_SOURCE_DIR;

std::string path_of(const std::string& root, const std::string& name) {
  return root.empty() ? name : root + "/" + name;
}
}  // namespace

FileContent WithShippedStyles::read_up_to(const std::string& path, std::size_t most) const {
  return own_.exists(path) ? own_.read_up_to(path, most) : disk_.read_up_to(path, most);
}
bool WithShippedStyles::exists(const std::string& path) const {
  return own_.exists(path) || (path.starts_with('/') && disk_.exists(path));
}
std::vector<std::string> WithShippedStyles::toml_files(const std::string& folder) const {
  return folder.starts_with('/') ? disk_.toml_files(folder) : own_.toml_files(folder);
}

Desk::Desk(std::map<std::string, std::string> files)
    : Desk(std::make_unique<WithShippedStyles>(std::move(files)), "") {}
Desk::Desk(const std::string& folder) : Desk(std::make_unique<DiskFiles>(), folder) {}

Desk::Desk(std::unique_ptr<const Files> files, std::string root)
    : files_(std::move(files)),
      root_(std::move(root)),
      context_{*files_, sources_, sink_},
      styles_(context_, std::string(source) + "/styles", path_of(root_, "styles")),
      catalogues_(context_, std::string(source) + "/styles", path_of(root_, "styles")),
      salon_(default_salon()),
      fonts_(FontSet::open(std::string(source) + "/fonts", sink_)) {
  const std::string settings = path_of(root_, "salon.toml");
  if (files_->exists(settings)) {
    auto read = read_salon(context_, settings);
    INFO(said());
    REQUIRE(read);
    salon_ = std::move(*read);
  }
  REQUIRE(fonts_);
  shaper_ = std::make_unique<TextShaper>(*fonts_, sink_);
  speak(salon_.language);
}

void Desk::speak(const std::string& language) {
  fonts_->set_language(language);
  const auto chain = catalogues_.chain(language);
  REQUIRE(chain);
  words_ = Words::open(*chain, sink_);
  INFO(said());
  REQUIRE(words_);
  locale_ = std::make_unique<ReaderLocale>(language, salon_.units);
}

std::vector<std::string> Desk::pets() const {
  std::vector<std::string> keys = files_->toml_files(path_of(root_, "pets"));
  for (std::string& key : keys) key.resize(key.size() - std::string_view(".toml").size());
  return keys;
}

Kennel Desk::kennel(const std::string& key, Date today) {
  const bool in_salon = files_->exists(path_of(root_, "salon.toml"));
  const Salon* const salon = in_salon ? &salon_ : nullptr;
  auto pet = read_pet(context_, path_of(root_, "pets/" + key + ".toml"), salon, styles_);
  INFO(said());
  REQUIRE(pet);
  std::vector<Visit> visits;
  const std::string folder = path_of(root_, "visits/" + key);
  for (const std::string& name : files_->toml_files(folder)) {
    auto visit = read_visit(context_, folder + "/" + name, salon, &*pet);
    REQUIRE(visit);
    visits.push_back(std::move(*visit));
  }
  std::vector<Booking> bookings;
  std::optional<Booking> of_today;
  for (const std::string& name : files_->toml_files(path_of(root_, "days"))) {
    const auto read = read_day(context_, path_of(root_, "days/" + name));
    REQUIRE(read);
    for (const Booking& one : read->bookings) {
      if (one.pet.value != key) continue;
      bookings.push_back(one);
      if (one.date == today && !of_today) of_today = one;
    }
  }
  Plan plan = make_plan(salon_, *pet, visits, bookings, today, sink_);
  return {std::move(*pet), std::move(plan),   std::move(of_today),
          today,           std::move(visits), std::move(bookings)};
}

SheetInput Desk::input(const Kennel& kennel, std::string_view paper) const {
  const auto size = parse_paper(paper);
  REQUIRE(size);
  return {salon_, kennel.pet, kennel.plan, kennel.booking, kennel.today, *size};
}

std::optional<Sheet> Desk::card(const Kennel& kennel, std::string_view paper) {
  return make_card(input(kennel, paper), voice(), sink_);
}

std::optional<Sheet> Desk::style(const Kennel& kennel, std::string_view paper) {
  SheetInput made = input(kennel, paper);
  made.trim_code = trim_toml(kennel.pet);
  return make_style_sheet(made, voice(), sink_);
}

std::optional<Sheet> Desk::note(const Kennel& kennel, Audience audience, std::string_view paper) {
  const auto size = parse_paper(paper);
  REQUIRE(size);
  std::size_t count = 0;
  while (count < kennel.visits.size() && kennel.visits[count].date.value <= kennel.today) ++count;
  if (count == 0) return std::nullopt;
  const bool owners = audience == Audience::everyone;
  const Pet pet = owners ? for_everyone(kennel.pet) : kennel.pet;
  std::vector<Visit> visits(kennel.visits.begin(),
                            kennel.visits.begin() + static_cast<std::ptrdiff_t>(count));
  if (owners) {
    for (Visit& visit : visits) visit = for_everyone(std::move(visit));
  }
  const std::span history = std::span(std::as_const(visits));
  const Date day = history.back().date.value;
  const Plan before = make_plan(salon_, pet, history.first(count - 1), kennel.bookings, day, sink_);
  const Plan after = make_plan(salon_, pet, history, kennel.bookings, day, sink_);
  const SheetInput made{salon_, pet, after, std::nullopt, day, *size, &history.back()};
  return make_note(made, {before, history.back(), history, {}, audience}, voice(), sink_);
}

std::optional<Sheet> Desk::care(const Kennel& kennel, std::string_view paper) {
  const auto size = parse_paper(paper);
  REQUIRE(size);
  const Pet pet = for_everyone(kennel.pet);
  std::vector<Visit> visits;
  for (const Visit& visit : kennel.visits) visits.push_back(for_everyone(visit));
  const Plan plan = plan_after_today(salon_, pet, visits, kennel.bookings, kennel.today, sink_);
  SheetInput made{salon_, pet, plan, std::nullopt, kennel.today, *size};
  for (const Visit& visit : visits) {
    if (visit.date.value <= kennel.today) made.latest = &visit;
  }
  const HomeCare at_home = home_care(salon_, pet, plan, made.latest, kennel.today);
  const bool of_today = made.latest != nullptr && made.latest->date.value == kennel.today;
  return make_care_sheet(made, {at_home, of_today ? made.latest : nullptr, {}}, voice(), sink_);
}

std::string Desk::said() const {
  std::string out;
  for (const Diagnostic& one : sink_.all()) out += to_text(one, sources_);
  return out;
}

bool Desk::says(std::string_view code) const {
  return std::ranges::any_of(sink_.all(), [&](const Diagnostic& d) { return d.code == code; });
}

Desk desk(const std::string& pet, const std::string& salon) {
  std::map<std::string, std::string> files{{"pets/rex.toml", pet}};
  if (!salon.empty()) files["salon.toml"] = salon;
  return Desk(std::move(files));
}

std::string sample(std::string_view name) {
  return std::string(source) + "/samples/" + std::string(name);
}

std::string text_of(const Frame& frame) {
  std::string out;
  for (const Mark& mark : frame.marks) {
    if (const auto* text = std::get_if<TextMark>(&mark)) out += text->line->text() + "\n";
  }
  return out;
}

std::string without_space(std::string_view text) {
  // White space of Unicode that the page sets or that a file may hold.
  constexpr std::string_view wide[] = {"\u00A0", "\u2007", "\u2009", "\u202F", "\u3000"};
  std::string out;
  while (!text.empty()) {
    const auto* space =
        std::ranges::find_if(wide, [&](std::string_view one) { return text.starts_with(one); });
    if (space != std::ranges::end(wide)) {
      text.remove_prefix(space->size());
      continue;
    }
    if (std::string_view(" \t\n\r").find(text.front()) == std::string_view::npos) {
      out += text.front();
    }
    text.remove_prefix(1);
  }
  return out;
}

bool says(const Frame& frame, std::string_view what) {
  return without_space(text_of(frame)).find(without_space(what)) != std::string::npos;
}
}  // namespace furnish::test
