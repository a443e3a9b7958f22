#include <catch2/catch.hpp>

#include <string>
#include <string_view>

#include "app/program.h"

namespace furnish::test {

TEST_CASE("a caution of a style that several wear is told once, with their names",
          "[command-line]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"S\"\n");
  put(folder, "styles/short.toml",
      "[style]\nname = \"Short\"\n[trim]\nsanitary = { blade = \"30\" }\n");
  put(folder, "pets/a.toml", "[pet]\nname = \"Ada\"\n[trim]\nstyle = \"short\"\n");
  put(folder, "pets/b.toml", "[pet]\nname = \"Bo\"\n[trim]\nstyle = \"short\"\n");
  put(folder, "pets/c.toml", "[pet]\nname = \"Cy\"\n");
  const auto ran = furnish("check " + folder.path(""));
  CHECK(ran.status == 0);
  CHECK(ran.out == "5 of 5 files are good; 2 cautions about 2 pets\n");
  const auto once = ran.err.find("(sanitary-blade)");
  REQUIRE(once != std::string::npos);
  CHECK(has(ran.err, " (Ada, Bo)\n"));
  CHECK(ran.err.find("(sanitary-blade)", once + 1) == std::string::npos);
  CHECK(has(ran.err, "styles/short.toml:4:"));
}

TEST_CASE("check -v tells what is for staff only and an owner may need, and is quiet otherwise",
          "[command-line]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"S\"\n");
  put(folder, "pets/a.toml",
      "[pet]\nname = \"Ada\"\n[[alert]]\nlevel = \"warning\"\ntext = \"Bites at feet.\"\n");
  put(folder, "visits/a/2026-11-20.toml",
      "date = 2026-11-20\nunfinished = false\n[[finding]]\nregion = \"belly\"\nwhat = \"lump\"\n");
  const std::string ask = "check " + folder.path("") + " --on 2026-11-24";
  const auto quiet = furnish(ask + " --strict");
  CHECK(quiet.status == 0);
  CHECK_FALSE(has(quiet.out + quiet.err, "notice"));
  const auto loud = furnish(ask + " --strict -v");
  CHECK(loud.status == 0);
  CHECK(has(loud.out,
            "pets/a.toml:3: notice: an alert about biting is for staff only; if the owner"));
  CHECK(has(loud.out, "2026-11-20.toml:3: notice: a finding about a wound or a lump is for staff"));
  put(folder, "pets/b.toml",
      "[pet]\nname = \"Bo\"\n[[alert]]\nlevel = \"warning\"\ntext = \"Bites.\"\nfor = "
      "\"everyone\"\n");
  CHECK_FALSE(has(furnish(ask + " -v").out, "b.toml"));
}

TEST_CASE("check --foreign tells what a page shows in another language than its own, and once",
          "[command-line]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"S\"\nlanguage = \"en\"\n");
  put(folder, "pets/a.toml",
      "[pet]\nname = \"Ada\"\n[owner]\nlanguage = \"es\"\n[[alert]]\nlevel = \"warning\"\n"
      "text = { de = \"Beißt, wenn man ihr die Pfoten hält.\" }\n");
  put(folder, "visits/a/2026-11-20.toml",
      "date = 2026-11-20\nunfinished = false\ntold = \"She dug up the garden again.\"\n"
      "[[finding]]\nregion = \"belly\"\nwhat = \"lump\"\nfor = \"everyone\"\n");
  const std::string ask = "check " + folder.path("") + " --on 2026-11-24";
  CHECK_FALSE(has(furnish(ask).err, "other-language"));
  const auto ran = furnish(ask + " --foreign -v");
  CHECK(ran.status == 0);
  CHECK(matches(ran.err, "(in another language|this text is in)").size() == 2);
  CHECK(has(ran.err,
            "2026-11-20.toml:3:8: warning: the owner's page is in 'es', this text is in 'en'"));
  CHECK(has(ran.err, "a.toml:7:"));
  CHECK(has(ran.err, "the page for staff is in 'en', this text is in 'de'"));
  put(folder, "visits/a/2026-11-20.toml",
      "date = 2026-11-20\nunfinished = false\ntold = { en = \"She dug.\", es = \"Ha cavado.\" }\n");
  CHECK_FALSE(has(furnish(ask + " --foreign -v").err, "the owner's page"));
}

TEST_CASE("a bite that only a visit tells of is told, with the alert to write") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"Demo\"\n");
  put(folder, "pets/a.toml", "[pet]\nname = \"A\"\ncoat = \"curly\"\n");
  const std::string older = "date = 2026-10-01\nminutes = 60\n[came_in]\nbehaviour = \"snapped\"\n",
                    done = "date = 2026-11-20\nminutes = 60\n";
  const std::string ask = "check " + folder.path("") + " -v --on 2026-11-24";
  put(folder, "visits/a/2026-10-01.toml", older);
  put(folder, "visits/a/2026-11-20.toml",
      done + "[[finding]]\nregion = \"hocks\"\nwhat = \"bit when it was held\"\n");
  const auto told = furnish(ask);
  CHECK(told.status == 0);
  CHECK(matches(told.err, "tells of a bite").size() == 1);
  CHECK(has(told.err,
            "2026-11-20.toml:5:8: warning: this visit, 2026-11-20, tells of a bite, and no alert "
            "of A does"));
  CHECK(has(told.err,
            "pets/a.toml: [[alert]], then level = \"warning\", text = \"bit when it was "
            "held\""));
  // Of a visit that is named alone, too.
  CHECK(has(furnish("check " + folder.path("visits/a/2026-10-01.toml") + " --on 2026-11-24").err,
            "this visit, 2026-10-01, tells of a bite"));
  // One that says so in other words will do, and no bite is none.
  put(folder, "pets/a.toml",
      "[pet]\nname = \"A\"\ncoat = \"curly\"\n[[alert]]\nlevel = \"warning\"\ntext = \"Nips at "
      "feet.\"\n");
  CHECK_FALSE(has(furnish(ask).err, "bite"));
  put(folder, "pets/a.toml", "[pet]\nname = \"A\"\ncoat = \"curly\"\n");
  put(folder, "visits/a/2026-10-01.toml", "date = 2026-10-01\nminutes = 60\n");
  put(folder, "visits/a/2026-11-20.toml", done + "[came_in]\nbehaviour = \"never bites\"\n");
  CHECK_FALSE(has(furnish(ask).err, "bite"));
}
}  // namespace furnish::test
