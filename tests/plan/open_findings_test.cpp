#include "plan/open_findings.h"

#include "plan/last_visit.h"
#include "plan/made.h"

using namespace furnish;
using namespace furnish::made;

namespace {
Finding finding(std::string_view region, Side side, std::string what, std::string advised = {}) {
  Finding out;
  out.place = {at(region), line(4)};
  out.span = line(4);
  out.place.value.side = side;
  out.what = std::move(what);
  out.advised = std::move(advised);
  out.audience = Audience::everyone;
  return out;
}

Finding closed(std::string_view region, Side side, std::string what = {}) {
  Finding out = finding(region, side, std::move(what));
  out.closed = true;
  return out;
}

Visit with(std::string_view iso, std::vector<Finding> findings) {
  Visit out = visit(iso);
  out.findings = std::move(findings);
  return out;
}

std::vector<OpenFinding> open(const std::vector<Visit>& visits) {
  return plan(salon(), pet(), visits).plan.findings;
}
}  // namespace

TEST_CASE("a finding stays open over visits that say nothing of it") {
  const auto left =
      open({with("2026-05-05", {finding("belly", Side::left, "lump, pea-sized", "vet this week")}),
            visit("2026-07-07"), visit("2026-09-08")});
  REQUIRE(left.size() == 1);
  CHECK(left[0].place == Place{Region::belly, Side::left});
  CHECK(left[0].what == "lump, pea-sized");
  CHECK(left[0].advised == "vet this week");
  CHECK(left[0].seen == std::vector{day("2026-05-05")});
  CHECK_FALSE(left[0].has_history());
}

TEST_CASE("found again it is one finding, as it looked last, with its days") {
  const auto left =
      open({with("2026-05-05", {finding("belly", Side::left, "lump, pea-sized", "vet this week")}),
            with("2026-07-07", {finding("belly", Side::both, "Lump (bean-sized)")}),
            with("2026-09-08", {finding("belly", Side::left, "lump", "vet today"),
                                finding("belly", Side::left, "wart")})});
  REQUIRE(left.size() == 2);
  CHECK(left[0].what == "lump");
  CHECK(left[0].place.side == Side::left);
  CHECK(left[0].advised == "vet today");
  CHECK(left[0].seen == std::vector{day("2026-05-05"), day("2026-07-07"), day("2026-09-08")});
  CHECK(left[0].has_history());
  CHECK(left[1].what == "wart");
}

TEST_CASE("the same thing begins with the same words") {
  const auto one = [](const char* first, const char* then) {
    return open({with("2026-05-05", {finding("hocks", Side::left, first)}),
                 with("2026-07-07", {finding("hocks", Side::left, then)})})
               .size() == 1;
  };
  CHECK(one("sore when bent, warm", "still sore, no longer warm"));
  CHECK(one("lump", "Lump on the rib"));
  CHECK_FALSE(one("lump", "lumpy scar"));
  CHECK_FALSE(one("lump", "small lump"));
  CHECK_FALSE(one("red", "sore"));
}

TEST_CASE("closed by the same place and thing, by the place alone, or by a place that is well") {
  const Visit first = with("2026-05-05", {finding("belly", Side::left, "lump, pea-sized"),
                                          finding("belly", Side::left, "wart")});
  const auto after = [&](const Visit& later) { return open({first, later}).size(); };
  CHECK(after(with("2026-07-07", {closed("belly", Side::left, "lump, gone")})) == 1);
  CHECK(after(with("2026-07-07", {closed("belly", Side::right, "lump")})) == 2);
  CHECK(after(with("2026-07-07", {closed("chest", Side::both)})) == 2);
  CHECK(after(with("2026-07-07", {closed("belly", Side::left)})) == 0);
  Visit well = visit("2026-07-07");
  well.came_in.well = {at("belly")};
  CHECK(after(well) == 0);
  // What is found there on the same day is new.
  well.findings = {finding("belly", Side::left, "red")};
  CHECK(after(well) == 1);
  // Found again after it was closed, it has new days.
  const auto again = open({first, with("2026-07-07", {closed("belly", Side::left)}),
                           with("2026-09-08", {finding("belly", Side::left, "lump")})});
  REQUIRE(again.size() == 1);
  CHECK(again[0].seen == std::vector{day("2026-09-08")});
}

TEST_CASE("of a pair the side that is not well stays open") {
  Visit later = visit("2026-07-07");
  later.came_in.well = {at("left ear")};
  const auto left = open({with("2026-05-05", {finding("ears", Side::both, "red")}), later});
  REQUIRE(left.size() == 1);
  CHECK(left[0].place == Place{Region::ears, Side::right});
}

TEST_CASE("words for staff stay theirs beside newer ones for everyone") {
  Finding first = finding("belly", Side::left, "lump", "ask about the fall");
  first.audience = Audience::staff;
  auto left = open(
      {with("2026-05-05", {first}), with("2026-07-07", {finding("belly", Side::left, "lump")})});
  CHECK(left.at(0).advised == "ask about the fall");
  CHECK(left.at(0).audience == Audience::staff);
  left = open({with("2026-05-05", {first}),
               with("2026-07-07", {finding("belly", Side::left, "lump", "vet")})});
  CHECK(left.at(0).audience == Audience::everyone);
}

TEST_CASE("visits after today leave nothing open and close nothing") {
  CHECK(open({with("2026-11-25", {finding("belly", Side::left, "lump")})}).empty());
  CHECK(open({with("2026-05-05", {finding("belly", Side::left, "lump")}),
              with("2026-11-25", {closed("belly", Side::left)})})
            .size() == 1);
}

TEST_CASE("the last visit hands on what it saw, did and agreed") {
  CHECK_FALSE(plan(salon(), pet()).plan.last_visit);
  Visit last = visit("2026-09-29");
  last.groomer = "Ines";
  last.weight = Located<Mass>{Mass::kg(4.5), {}};
  last.told = "Brush twice a week.";
  last.came_in.behaviour = "worried at the dryer";
  last.came_in.helped = "towel over the ears";
  last.came_in.regions = {state("belly", {}, 1), state("ears", {}, 3), state("back", 20_mm),
                          state("hocks", {}, 2)};
  last.came_in.regions.back().encircling = true;
  TrimEntry chest = part("chest", shears(Shears::straight)).entry;
  chest.why = "thinners out for sharpening";
  last.done = {{at("chest"), chest}};
  last.photos = {Photo{}, Photo{}, Photo{}};
  last.photos[2].when = PhotoTime::after;
  last.consents = {{"cutting out mats", "R. Adeyemi", day("2026-09-29"), {}}};
  const auto handed = plan(salon(), pet(), {visit("2026-08-01"), last}).plan.last_visit;
  REQUIRE(handed);
  CHECK(handed->date == day("2026-09-29"));
  CHECK(handed->behaviour == "worried at the dryer");
  CHECK(handed->helped == "towel over the ears");
  REQUIRE(handed->mats.size() == 3);  // the ring first, then the worst
  CHECK(handed->mats[0].place == at("hocks"));
  CHECK(handed->mats[1].grade == 3);
  CHECK(handed->otherwise.at(0).entry.why == "thinners out for sharpening");
  CHECK(handed->weight == Mass::kg(4.5));
  CHECK(handed->told == "Brush twice a week.");
  CHECK(handed->consents.size() == 1);
  CHECK(handed->photos_before == 2);
  CHECK(handed->photos_after == 1);
}

TEST_CASE(
    "where a lump or broken skin was found and the place is cut, a caution names both lines") {
  Pet dog = pet();
  dog.trim = {part("belly", shears(Shears::straight), Lay::with, {}, 12)};
  const auto made = [&](std::vector<Finding> findings) {
    return plan(salon(), dog, {with("2026-05-05", std::move(findings))});
  };
  const Made lump = made({finding("belly", Side::left, "lump, pea-sized")});
  const Caution* const caution = lump.caution(RuleId::found_there);
  REQUIRE(caution != nullptr);
  CHECK(caution->places == std::vector{Place{Region::belly, Side::left}});
  CHECK(caution->span.begin.line == 4);
  CHECK(caution->against.begin.line == 12);
  CHECK(std::get<FreeText>(caution->what.facts[1]).value == "lump, pea-sized");
  // Elsewhere, of another kind, closed, or where no tool goes: none.
  CHECK(made({finding("tail", Side::both, "lump")}).count(RuleId::found_there) == 0);
  CHECK(made({finding("belly", Side::both, "flea dirt")}).count(RuleId::found_there) == 0);
  CHECK(made({finding("belly", Side::both, "lump"), closed("belly", Side::both)})
            .count(RuleId::found_there) == 0);
  dog.trim.front().entry.tool = Brush{};
  CHECK(made({finding("belly", Side::both, "lump")}).count(RuleId::found_there) == 0);
}

TEST_CASE("what staff saw again is no longer as an owner's words say it") {
  const Finding first = finding("hocks", Side::left, "sore when bent, warm", "vet");
  Finding again =
      finding("hocks", Side::left, "still sore, no longer warm", "ask what the vet said");
  again.audience = Audience::staff;
  Finding elsewhere = finding("belly", Side::left, "sore");
  elsewhere.audience = Audience::staff;
  const std::vector visits{with("2026-09-29", {first}), with("2026-11-03", {elsewhere}),
                           with("2026-11-24", {again})};
  const std::vector<const Visit*> history{&visits[0], &visits[1], &visits[2]};
  const auto before = open_for_everyone(std::span(history).first(2));
  REQUIRE(before.size() == 1);
  CHECK_FALSE(before[0].seen_since);
  const auto now = open_for_everyone(history);
  REQUIRE(now.size() == 1);
  CHECK(now[0].what.value == "sore when bent, warm");
  CHECK(now[0].seen_since == day("2026-11-24"));
}
