#include <array>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "app/desk_salon.h"
#include "app/program.h"
#include "desk/desk.h"
#include "output/attachments.h"

// What a desk for looking shows and prints, of a salon whose cards say how to reach owners.

namespace furnish::test {
namespace {
using Json = nlohmann::ordered_json;

constexpr std::string_view whose_number = "555 0199";

struct LookingDesk {
  explicit LookingDesk(bool look) {
    put(folder, "salon/salon.toml", "[salon]\nname = \"S\"\ncontact_on_card = true\n");
    put(folder, "salon/pets/rex.toml",
        "[pet]\nname = \"Rex\"\n[owner]\nname = \"A. Nobody\"\nphone = \"555 0199\"\n"
        "email = \"a@example.org\"\naddress = [\"1 Nowhere Lane\"]\n");
    put(folder, "salon/visits/rex/2026-11-24.toml", "date = 2026-11-24\nunfinished = false\n");
    put(folder, "salon/days/2026-11-24.toml",
        "date = 2026-11-24\n[[booking]]\nat = 09:00:00\npet = \"rex\"\n");
    options.salon = folder.path("salon");
    options.data = FURNISH_SOURCE_DIR;
    options.on = parse_date(demo_date);
    options.look = look;
    salon.emplace(options, files, system_disk());
    desk.emplace(*salon, drafts, furnish::desk::Door{"", "token", look});
    desk->open_at(1);
  }
  Json ask(const std::string& name, const Json& body) {
    const auto answer = desk->answer({{"POST", "/token/api/" + name, {}}, body.dump()});
    INFO(answer.body);
    REQUIRE(answer.status == 200);
    return Json::parse(answer.body);
  }
  /// A printed file's text, and what it carries.
  std::string printed(const Json& what) {
    const std::string url = ask("print", {{"what", what}})["url"].get<std::string>();
    const std::string pdf = desk->answer({{"GET", "/token/" + url, {}}, {}}).body;
    std::string out = run("pdftotext " + folder.file("out.pdf", pdf) + " -").out;
    DiagnosticSink sink;
    for (const Attachment& one : attachments_of(pdf, sink)) out += one.bytes;
    return out;
  }

  TemporaryFolder folder;
  Options options;
  DiskFiles files;
  std::optional<SalonAtDesk> salon;
  furnish::desk::Drafts drafts{"", system_disk()};
  std::optional<furnish::desk::Desk> desk;
};
}  // namespace

TEST_CASE("nothing that a desk for looking prints says how to reach an owner") {
  for (const bool look : {false, true}) {
    LookingDesk desk(look);
    const Json pet{{"kind", "pet"}, {"id", "rex"}, {"sheet", "card"}};
    const Json visit{{"kind", "visit"}, {"id", "rex/2026-11-24"}, {"sheet", "note"}};
    for (const Json& what : {Json::array({pet}), Json::array({visit}), Json::array({pet, visit}),
                             Json{{"day", demo_date}, {"sheet", "card"}},
                             Json{{"day", demo_date}, {"sheet", "day"}}}) {
      const std::string text = desk.printed(what);
      INFO(what << text);
      CHECK(has(text, "Rex"));
      const bool ring = what.is_object() && what["sheet"] == "day";  // rings nobody on this day
      if (!ring) CHECK(has(text, whose_number) != look);
      if (look) {
        for (const auto own :
             std::array<std::string_view, 3>{whose_number, "a@example.org", "1 Nowhere Lane"}) {
          CHECK_FALSE(has(text, own));
        }
      }
    }
  }
}

TEST_CASE("a desk for looking draws no card with a number, and finds no pet by one") {
  const auto drawn = [](bool look, bool on_card) {
    LookingDesk desk(look);
    if (!on_card) put(desk.folder, "salon/salon.toml", "[salon]\nname = \"S\"\n");
    const Json open = desk.ask("open", {{"kind", "pet"}, {"id", "rex"}});
    return desk
        .ask("preview", {{"kind", "pet"},
                         {"id", "rex"},
                         {"mark", open["mark"]},
                         {"edits", Json::array()},
                         {"sheet", "card"}})["pages"]
        .dump();
  };
  const std::string without = drawn(false, false);
  CHECK(drawn(false, true) != without);
  CHECK(drawn(true, true) == without);
  for (const bool look : {false, true}) {
    LookingDesk desk(look);
    while (desk.salon->read_on()) {
    }
    CHECK(desk.ask("find", {{"words", "0199"}})["pets"].empty() == look);
    CHECK(desk.ask("find", {{"words", "rex"}})["pets"].size() == 1);
  }
}
}  // namespace furnish::test
