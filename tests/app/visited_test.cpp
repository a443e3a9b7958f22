#include <catch2/catch.hpp>

#include <fmt/format.h>

#include "app/visited.h"
#include "app/workshop.h"
#include "page/shaped_line.h"
#include "plan/plan_json.h"
#include "share.h"
#include "sheet/desk.h"

// What must hold of any pet that has been here, on any day.

namespace furnish::test {
namespace {
const std::size_t pets = share_of(300);
constexpr const SheetMaker* owners_sheets[] = {&sheets::owner_note, &sheets::care};

/// Salons of one pet each, and one workshop for all of them.
class Street {
 public:
  explicit Street(std::uint32_t seed) : seed_(seed) {
    Dice dice(seed);
    std::map<std::string, std::string> files;
    for (std::size_t i = 0; i < pets; ++i) {
      all_.push_back(visited_pet(dice, demo_day));
      for (const auto& [path, text] : all_.back().files) {
        files[fmt::format("s{}/{}", i, path)] = text;
      }
    }
    disk_ = std::make_unique<WithShippedStyles>(std::move(files));
    options_.on = demo_day;
    options_.data = FURNISH_SOURCE_DIR;
    shop_ = std::make_unique<Workshop>(options_, *disk_);
  }

  const std::vector<VisitedPet>& all() const { return all_; }
  Workshop& shop() { return *shop_; }
  Case open(std::size_t i, Date day) {
    DiagnosticSink sink;
    auto one = shop_->open({fmt::format("s{}/pets/rex.toml", i), fmt::format("s{}", i)}, day, sink);
    INFO(said(sink));
    REQUIRE(one);
    return *std::move(one);
  }
  /// Empty only where the pet has no visit that the sheet could be about, or the page no room.
  std::optional<Made> sheet(const Case& one, const SheetMaker& maker) {
    options_.sheet = &maker;
    if (shop_->nothing_to_show(one)) return std::nullopt;
    DiagnosticSink sink;
    auto made = shop_->sheet(one, sink);
    ++asked_;
    if (made) return made;
    ++refused_;
    INFO(said(sink));
    for (const Diagnostic& fault : sink.all()) {
      if (fault.severity == Severity::error)
        CHECK(fault.message.find("too tall") != fault.message.npos);
    }
    return std::nullopt;
  }
  std::string date(const Case& one, const SheetMaker& maker, Date day, Date today) {
    options_.sheet = &maker;
    DiagnosticSink sink;
    const auto voice = shop_->voice(*one.folder, one.pet, sink);
    REQUIRE(voice);
    return voice->locale.day_and_month(day, today);
  }
  std::string about(std::size_t i, Date day) const {
    std::string out = fmt::format("seed {}, pet {}, on {}\n", seed_, i, to_iso(day));
    for (const auto& [path, text] : all_[i].files) out += "# " + path + "\n" + text + "\n";
    return out;
  }
  /// Nearly every sheet was made.
  bool nearly_all() const { return asked_ > pets && refused_ * 20 < asked_; }

 private:
  std::string said(const DiagnosticSink& sink) {
    std::string out;
    for (const Diagnostic& one : sink.all()) out += to_text(one, shop_->sources());
    return out;
  }
  std::uint32_t seed_;
  std::vector<VisitedPet> all_;
  std::unique_ptr<WithShippedStyles> disk_;
  Options options_;
  std::unique_ptr<Workshop> shop_;
  std::size_t asked_ = 0, refused_ = 0;
};

/// The days on which a pet is asked about: of its last visit, between visits, of its booking and
/// after it, and long after.
std::vector<Date> days_of(const VisitedPet& pet) {
  const Date last = pet.visits.empty() ? demo_day : pet.visits.back();
  std::vector<Date> out{last, last + std::chrono::days(9)};
  if (pet.booked) {
    out.push_back(*pet.booked);
    out.push_back(*pet.booked + std::chrono::days(3));
  }
  out.push_back(last + std::chrono::days(200));
  return out;
}

/// Of the event, with its hour or without.
std::string ics_date(const std::string& calendar) {
  const auto event = calendar.find("BEGIN:VEVENT");
  const auto key = calendar.find("\nDTSTART", event);
  if (event == calendar.npos || key == calendar.npos) return {};
  const std::string day = calendar.substr(calendar.find(':', key) + 1, 8);
  return day.substr(0, 4) + "-" + day.substr(4, 2) + "-" + day.substr(6);
}

std::string lower(std::string text) {
  for (char& c : text) c = static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
  return text;
}
/// The text with each run of white space as one space, in lower case.
std::string running(const Frame& frame) {
  std::string out;
  for (const char c : lower(text_of(frame))) {
    const bool space = c == '\n' || c == ' ';
    if (!space || (!out.empty() && out.back() != ' ')) out += space ? ' ' : c;
  }
  return out;
}

/// A date in the middle of a line or at its beginning, where some languages have it in upper case.
bool dated(const Made& made, const std::string& date) {
  return without_space(running(made.sheet.page.frame)).find(without_space(lower(date))) !=
         std::string::npos;
}

/// What a page says in another language than its own.
std::string marked(const Frame& frame) {
  std::vector<bool> other{false};
  std::string out;
  for (const furnish::Mark& mark : frame.marks) {
    if (const auto* tag = std::get_if<OpenTag>(&mark)) {
      other.push_back(other.back() || !tag->language.empty());
    } else if (std::holds_alternative<CloseTag>(mark)) {
      other.pop_back();
    } else if (const auto* text = std::get_if<TextMark>(&mark)) {
      if (other.back()) out += lower(text->line->text()) + " ";
    }
  }
  return out;
}
}  // namespace

TEST_CASE("the next visit is the same wherever it is said", "[visited]") {
  Street street(81);
  for (std::size_t i = 0; i < pets; ++i) {
    for (const Date day : days_of(street.all()[i])) {
      INFO(street.about(i, day));
      const Case one = street.open(i, day);
      const auto& next = one.plan.next_visit;
      const auto words = street.shop().voices().plain(*one.folder);
      REQUIRE(words);
      const std::string json = plan_json(one.plan, one.pet, *words);
      CHECK((json.find("\"next_visit\": null") != std::string::npos) == !next.has_value());
      if (!next) continue;
      CHECK(json.find(fmt::format("\"date\": \"{}\"", to_iso(next->date))) != std::string::npos);
      const bool to_come = next->date > day;
      if (to_come) {
        const auto card = street.sheet(one, sheets::card);
        if (card) CHECK(dated(*card, street.date(one, sheets::card, next->date, day)));
      }
      // A note is of its own day, and says what was known then.
      const bool of_today = !one.visits.empty() && one.visits.back().date.value == day;
      for (const SheetMaker* maker : {&sheets::note, &sheets::owner_note}) {
        if (!of_today || !to_come) continue;
        const auto note = street.sheet(one, *maker);
        if (note) CHECK(dated(*note, street.date(one, *maker, next->date, day)));
      }
      const auto care = street.sheet(one, sheets::care);
      if (!care || care->beside.empty()) continue;
      const auto ics = parse_date(ics_date(care->beside.front().bytes));
      REQUIRE(ics);
      // Of a visit that goes as planned on this day only where it is booked and not on file.
      const bool planned = one.booking() && !of_today;
      if (!planned) CHECK(to_iso(*ics) == to_iso(next->date));
      CHECK(*ics > day);
      CHECK(dated(*care, street.date(one, sheets::care, *ics, day)));
    }
  }
  CHECK(street.nearly_all());
}

TEST_CASE("nothing is said to be cut that was not", "[visited]") {
  Street street(82);
  std::size_t looked = 0;
  for (std::size_t i = 0; i < pets; ++i) {
    const VisitedPet& pet = street.all()[i];
    if (!pet.uncut || pet.reads_spanish || pet.visits.empty()) continue;
    INFO(street.about(i, demo_day));
    const Case one = street.open(i, demo_day);
    for (const SheetMaker* maker : owners_sheets) {
      const auto made = street.sheet(one, *maker);
      if (!made) continue;
      ++looked;
      const std::string text = running(made->sheet.page.frame);
      INFO(text);
      for (const std::string_view word : {"trimmed", "clipped", "we cut", "was cut", "cut to"}) {
        INFO(word);
        CHECK(text.find(word) == std::string::npos);
      }
    }
  }
  CHECK(looked > pets / 20);
}

TEST_CASE("without a visit on file no page says what was done", "[visited]") {
  Street street(86);
  std::size_t looked = 0;
  for (std::size_t i = 0; i < pets; ++i) {
    const VisitedPet& pet = street.all()[i];
    if (!pet.visits.empty() || pet.reads_spanish) continue;
    INFO(street.about(i, demo_day));
    const Case one = street.open(i, demo_day);
    const auto care = street.sheet(one, sheets::care);
    if (!care) continue;
    ++looked;
    std::string text;
    for (const Frame& side : sides(care->sheet.page)) text += running(side);
    INFO(text);
    for (const std::string_view word :
         {"we washed", "we brushed", "we clipped", "we trimmed", "we cut", "we did"}) {
      INFO(word);
      CHECK(text.find(word) == std::string::npos);
    }
  }
  CHECK(looked > pets / 40);
}

// What is warned of, "no heated air into a closed cage", may name it.
TEST_CASE("a dryer that its handling rules out is planned on no page", "[visited]") {
  Street street(83);
  std::size_t looked = 0;
  for (std::size_t i = 0; i < pets; ++i) {
    if (!street.all()[i].gentle) continue;
    INFO(street.about(i, demo_day));
    const Case one = street.open(i, demo_day);
    for (const SheetMaker* maker :
         {&sheets::card, &sheets::style, &sheets::note, &sheets::owner_note, &sheets::care}) {
      const auto made = street.sheet(one, *maker);
      if (!made) continue;
      ++looked;
      const std::string text = running(made->sheet.page.frame);
      INFO(maker->kind.name << ": " << text);
      for (const std::string_view word : {"then force dryer", "force dryer, warm"}) {
        INFO(word);
        CHECK(text.find(word) == std::string::npos);
      }
    }
  }
  CHECK(looked > pets / 4);
}

TEST_CASE("every open finding is on the card and the style sheet, and no closed one", "[visited]") {
  Street street(84);
  std::size_t open = 0, closed = 0;
  for (std::size_t i = 0; i < pets; ++i) {
    const VisitedPet& pet = street.all()[i];
    INFO(street.about(i, demo_day));
    const Case one = street.open(i, demo_day);
    for (const SheetMaker* maker : {&sheets::card, &sheets::style}) {
      const auto made = street.sheet(one, *maker);
      if (!made || made->sheet.page.layout == "at the door") continue;
      std::string text;
      for (const Frame& side : sides(made->sheet.page)) text += running(side) + " ";
      for (const MadeFinding& finding : pet.findings) {
        INFO(maker->kind.name << ": " << finding.word);
        CHECK((text.find(finding.word) != std::string::npos) == finding.open);
        ++(finding.open ? open : closed);
      }
    }
  }
  CHECK(open > pets / 4);
  CHECK(closed > pets / 8);
}

TEST_CASE("what nobody translated is marked on an owner's page", "[visited]") {
  Street street(85);
  std::size_t found = 0;
  for (std::size_t i = 0; i < pets; ++i) {
    const VisitedPet& pet = street.all()[i];
    if (!pet.reads_spanish || pet.visits.empty()) continue;
    INFO(street.about(i, demo_day));
    const Case one = street.open(i, pet.visits.back());
    for (const SheetMaker* maker : owners_sheets) {
      const auto made = street.sheet(one, *maker);
      if (!made) continue;
      const std::string text = running(made->sheet.page.frame),
                        others = marked(made->sheet.page.frame);
      for (const std::string& word : pet.only_english) {
        if (text.find(word) == std::string::npos) continue;
        INFO(maker->kind.name << ": " << word << "\n" << text);
        CHECK(others.find(word) != std::string::npos);
        ++found;
      }
    }
  }
  CHECK(found > pets / 20);
}
}  // namespace furnish::test
