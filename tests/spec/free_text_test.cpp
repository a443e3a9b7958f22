#include "spec/free_text.h"

#include <catch2/catch.hpp>

#include "model/for_everyone.h"
#include "spec/reader.h"
#include "spec/toml_text.h"
#include "spec/visit_writer.h"

namespace furnish::test {
namespace {
constexpr const char* path = "visits/rex/2026-11-24.toml";

std::optional<Visit> read(const std::string& text) {
  MemoryFiles files({});
  SourceSet sources;
  DiagnosticSink sink;
  auto visit = read_visit_text({files, sources, sink}, path, text, nullptr, nullptr);
  std::string said;
  for (const Diagnostic& one : sink.all()) said += to_text(one, sources);
  INFO(text << said);
  CHECK(said.empty());
  return visit;
}

constexpr const char* languages = R"(date = 2026-11-24
told = { en = "Vet this week.", es = "Al veterinario.", pt-BR = "Ao veterinário." }
[came_in]
soil = { text = "mud", es = "barro" }
ears = { es = "limpias" }
belly = { note = { text = "old scar", for = "everyone" } }
back = { note = "ticklish" }
[done]
chest = { brush = true, why = { text = "matted", for = "everyone" } }
legs = { brush = true, note = "from below", why = "bit Bo" }
)";
}  // namespace

TEST_CASE("a text is in the salon's language or in several", "[free-text]") {
  const auto visit = read(languages);
  REQUIRE(visit);
  CHECK(visit->told.value == "Vet this week.");
  CHECK(visit->told.language == "en");
  CHECK(visit->told.others ==
        std::vector<FreeText::In>{{"es", "Al veterinario."}, {"pt-BR", "Ao veterinário."}});
  CHECK(visit->told.span.begin.line == 2);
  const CameIn& in = visit->came_in;
  CHECK(in.soil.value == "mud");
  CHECK(in.soil.language.empty());
  CHECK(in.soil.others == std::vector<FreeText::In>{{"es", "barro"}});
  // Ears in languages are words, as a region they have keys of their own.
  CHECK(in.ears.value == "limpias");
  REQUIRE(in.regions.size() == 2);
  CHECK(read("date = 2026-11-24\n[came_in]\nears = { mats = 2 }\n")->came_in.ears.empty());
}

TEST_CASE("reasons and notes are for staff unless they say otherwise", "[free-text]") {
  const auto visit = read(languages);
  REQUIRE(visit);
  const Visit told = for_everyone(*visit);
  REQUIRE(told.done.size() == 4);
  for (const PlacedEntry& rule : told.done) {
    INFO(key(rule.place.region));
    CHECK(rule.entry.note.empty());
    CHECK(rule.entry.why.empty() == (rule.place.region != Region::chest));
  }
  for (const RegionState& state : told.came_in.regions) {
    CHECK(state.note.empty() == (state.place.region == Region::back));
  }
  const std::string file = visit_toml(told);
  INFO(file);
  CHECK(file.find("bit Bo") == std::string::npos);
  CHECK(file.find("ticklish") == std::string::npos);
  CHECK(file.find("from below") == std::string::npos);
  CHECK(file.find("old scar") != std::string::npos);
  CHECK(file.find("matted") != std::string::npos);
}

TEST_CASE("a written file keeps every language and whom a text is for", "[free-text]") {
  const auto visit = read(languages);
  REQUIRE(visit);
  const auto again = read(visit_toml(*visit));
  REQUIRE(again);
  CHECK(again->told == visit->told);
  CHECK(again->came_in.soil == visit->came_in.soil);
  CHECK(again->came_in.ears == visit->came_in.ears);
  for (std::size_t i = 0; i < visit->done.size(); ++i) {
    CHECK(again->done.at(i).entry.why == visit->done[i].entry.why);
  }
  for (std::size_t i = 0; i < visit->came_in.regions.size(); ++i) {
    CHECK(again->came_in.regions.at(i).note == visit->came_in.regions[i].note);
  }
}

TEST_CASE("a plain text is written plain", "[free-text]") {
  CHECK(toml_text::free_text(FreeText("calm")) == "\"calm\"");
  FreeText text("calm");
  text.others = {{"pt-BR", "com calma"}};
  CHECK(toml_text::free_text(text) == "{ text = \"calm\", pt-BR = \"com calma\" }");
  text.audience = Audience::staff;
  CHECK(toml_text::free_text(text, Audience::staff) ==
        "{ text = \"calm\", pt-BR = \"com calma\" }");
  CHECK(toml_text::free_text(text) ==
        "{ text = \"calm\", pt-BR = \"com calma\", for = \"staff\" }");
}
}  // namespace furnish::test
