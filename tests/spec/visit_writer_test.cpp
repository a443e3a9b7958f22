#include "spec/visit_writer.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "model/for_everyone.h"
#include "spec/reader.h"

namespace furnish {
namespace {
bool same_states(const std::vector<RegionState>& a, const std::vector<RegionState>& b) {
  return std::ranges::equal(a, b, [](const RegionState& x, const RegionState& y) {
    return x.place == y.place && x.mats == y.mats && x.encircling == y.encircling &&
           x.length == y.length && x.soil == y.soil && x.shedding == y.shedding &&
           x.skin == y.skin && x.note == y.note;
  });
}

std::vector<FreeText> words_of(const CameIn& in) {
  return {in.behaviour, in.helped, in.ears,     in.eyes, in.nails,
          in.parasites, in.soil,   in.shedding, in.skin};
}

/// Names of what is not alike.
std::vector<std::string> differences(const Visit& a, const Visit& b) {
  std::vector<std::string> out;
  const auto check = [&](const char* name, bool alike) {
    if (!alike) out.emplace_back(name);
  };
  check("date", a.date.value == b.date.value);
  check("work", a.work == b.work && a.not_done == b.not_done && a.did == b.did);
  check("head", a.groomer == b.groomer && a.minutes == b.minutes && a.told == b.told);
  check("weight", a.weight.has_value() == b.weight.has_value() &&
                      (!a.weight || a.weight->value == b.weight->value));
  check("next",
        a.next.has_value() == b.next.has_value() && (!a.next || a.next->value == b.next->value));
  check("came in", words_of(a.came_in) == words_of(b.came_in) && a.came_in.well == b.came_in.well &&
                       same_states(a.came_in.regions, b.came_in.regions));
  check("done", std::ranges::equal(a.done, b.done, [](const auto& x, const auto& y) {
          return x.place == y.place && same_work(x.entry, y.entry) && x.entry.why == y.entry.why;
        }));
  check("went out", same_states(a.went_out, b.went_out) && a.finish == b.finish &&
                        a.nails == b.nails && a.extras == b.extras);
  check("products", std::ranges::equal(a.products, b.products, [](const auto& x, const auto& y) {
          return x.product.name == y.product.name && x.product.mixed == y.product.mixed &&
                 x.dwell == y.dwell;
        }));
  check("findings", std::ranges::equal(a.findings, b.findings, [](const auto& x, const auto& y) {
          return x.place.value == y.place.value && x.what == y.what && x.advised == y.advised &&
                 x.closed == y.closed && x.audience == y.audience;
        }));
  check("photos", std::ranges::equal(a.photos, b.photos, [](const auto& x, const auto& y) {
          return x.file.value == y.file.value && x.when == y.when && x.caption == y.caption &&
                 x.focus == y.focus;
        }));
  check("consents", std::ranges::equal(a.consents, b.consents, [](const auto& x, const auto& y) {
          return x.to == y.to && x.by == y.by && x.on == y.on;
        }));
  return out;
}

constexpr const char* full = R"(date = 2026-11-24
groomer = "Ines \"the second\""
minutes = "1 h 25 min"
weight = "10 lb 3 oz"
next = 2027-01-19
told = "Brush."
[came_in]
behaviour = "shy MARK"
helped = "towel MARK"
ears = "waxy"
eyes = "clear"
nails = "long"
parasites = "none"
soil = "mud"
shedding = "heavy"
skin = "dry"
belly = { mats = 2, side = "left", length = "1 1/4 in", skin = "red" }
tail = { mats = 3, encircling = true, soil = "wet", shedding = "some", note = "thick" }
[done]
legs = { comb = "1/2 in", over = "30", why = "mats" }
chest = { shears = "straight", leave = "30 mm", lay = "against", note = "even", why = "out" }
[went_out]
finish = "tail tip even"
nails = "left dewclaw not done"
extras = "bandana"
"left ear" = { length = "20 mm" }
[[product]]
name = "oat"
mixed = 2026-11-24
dilution = "1 in 10"
[[finding]]
region = "belly"
side = "left"
what = "lump"
advised = "vet"
for = "everyone"
[[finding]]
region = "hocks"
what = "sore MARK"
[[photo]]
file = "photos/MARK.jpg"
when = "after"
caption = "before the bow"
focus = [0.25, 1]
[[consent]]
to = "cutting out"
by = "R."
on = 2026-11-24
)";

struct Reader {
  DiskFiles files;
  SourceSet sources;
  DiagnosticSink sink;
  ReadContext context{files, sources, sink};
  std::optional<Visit> read(const std::string& text, const Salon* salon = nullptr) {
    auto out = read_visit_text(context, "visits/rex/2026-11-24.toml", text, salon, nullptr);
    for (const Diagnostic& one : sink.all()) UNSCOPED_INFO(to_text(one, sources));
    return out;
  }
};
}  // namespace

TEST_CASE("a visit reads back as it was written", "[writer]") {
  Reader reader;
  const auto visit = reader.read(full);
  REQUIRE(visit);
  const std::string text = visit_toml(*visit);
  const auto again = reader.read(text);
  INFO(text);
  REQUIRE(again);
  CHECK(differences(*visit, *again) == std::vector<std::string>{});
  CHECK(visit_toml(*again) == text);
}

TEST_CASE("what everyone may read of a visit says nothing of the staff's", "[writer]") {
  Reader reader;
  const auto visit = reader.read(full);
  REQUIRE(visit);
  const std::string text = visit_toml(for_everyone(*visit));
  CHECK(text.find("MARK") == std::string::npos);
  CHECK(visit_toml(*visit).find("MARK") != std::string::npos);
  const auto again = reader.read(text);
  INFO(text);
  REQUIRE(again);
  CHECK(again->findings.size() == 1);
  CHECK(again->photos.empty());
}

TEST_CASE("what a visit says of the work reads back, whoever reads it", "[writer]") {
  const std::string date = "date = 2026-11-24\n", came = "[came_in]\nbehaviour = \"bit\"\n";
  const std::string late = "[[photo]]\nfile = \"photos/a.jpg\"\nwhen = \"after\"\n";
  for (const auto& [text, work] :
       {std::pair(date, Work::unwritten), std::pair(date + came, Work::unwritten),
        std::pair(date + "unfinished = false\n" + came, Work::done),
        std::pair(date + came + "[done]\n", Work::done),
        std::pair(date + "[went_out]\n", Work::done),
        std::pair(date + "minutes = 80\n", Work::done), std::pair(date + late, Work::done),
        std::pair(date + "[[product]]\nname = \"oat\"\n", Work::done),
        std::pair(date + "unfinished = true\nminutes = 80\n[done]\n", Work::unfinished),
        std::pair(date + "not_done = \"coughs\"\n" + came, Work::not_done),
        std::pair(date + "unfinished = true\nnot_done = \"coughs\"\ndid = [\"nails\"]\n[done]\n",
                  Work::not_done)}) {
    Reader reader;
    const auto visit = reader.read(text);
    INFO(text);
    REQUIRE(visit);
    CHECK(visit->work == work);
    const auto again = reader.read(visit_toml(*visit)),
               told = reader.read(visit_toml(for_everyone(*visit)));
    REQUIRE(again);
    REQUIRE(told);
    CHECK(differences(*visit, *again) == std::vector<std::string>{});
    CHECK(told->work == work);
    CHECK(told->not_done == visit->not_done);
  }
}

TEST_CASE("every visit of the samples reads back as it was written", "[writer]") {
  const std::string root = std::string(FURNISH_SOURCE_DIR) + "/samples/lantern-street/";
  Reader reader;
  const auto salon = read_salon(reader.context, root + "salon.toml");
  REQUIRE(salon);
  std::size_t visits = 0;
  for (const char* pet : {"marlow", "gao", "juniper", "otter", "clementine", "bjarne", "pickle"}) {
    for (const std::string& name : reader.files.toml_files(root + "visits/" + pet)) {
      const auto visit =
          read_visit(reader.context, root + "visits/" + pet + "/" + name, &*salon, nullptr);
      REQUIRE(visit);
      const std::string text = visit_toml(*visit);
      INFO(pet << " " << name << "\n" << text);
      const auto again =
          read_visit_text(reader.context, "visits/x/" + name, text, &*salon, nullptr);
      REQUIRE(again);
      CHECK(differences(*visit, *again) == std::vector<std::string>{});
      ++visits;
    }
  }
  CHECK(visits > 20);
}
}  // namespace furnish
