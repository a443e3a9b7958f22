#include <catch2/catch.hpp>

#include "app/program.h"
#include "sheet/desk.h"

namespace furnish::test {
namespace {
constexpr const char* formats[] = {"pdf", "png", "svg", "text"};

/// Every format of two cards whose texts need fallback fonts, dates, lists and counts.
std::vector<std::string> rendered(const std::string& salon, const std::string& before) {
  const TemporaryFolder folder;
  std::vector<std::string> out;
  for (const char* format : formats) {
    const auto ran =
        furnish("card juniper komugi --salon " + test::quoted(salon) + " --on 2026-11-24 " +
                    "--format " + format + " --dpi 72 -o " + folder.path("") + "/",
                before);
    INFO(ran.err);
    REQUIRE(ran.status == 0);
  }
  const auto style = furnish("style juniper marlow --salon " + test::quoted(salon) +
                                 " --on 2026-11-24 -o " + folder.path("") + "/",
                             before);
  INFO(style.err);
  REQUIRE(style.status == 0);
  for (const std::string& name : files_below(folder.path(""))) {
    out.push_back(name + "\n" + bytes_of(folder.path(name)));
  }
  const auto plan =
      furnish("plan juniper --json --salon " + test::quoted(salon) + " --on 2026-11-24", before);
  REQUIRE(plan.status == 0);
  out.push_back(plan.out);
  return out;
}
}  // namespace

TEST_CASE("the same input gives the same bytes, wherever and whenever", "[repeat]") {
  const TemporaryFolder folder;
  const std::string salon = sample("lantern-street"), copy = folder.path("elsewhere");
  copy_sample("lantern-street", copy);
  // A locale of this machine's own making, as Debian has none but C at first.
  const auto made = run("localedef -i de_DE -f UTF-8 " + folder.path("de_DE.UTF-8"));
  INFO(made.err << "localedef needs the package locales");
  REQUIRE(made.status <= 1);  // 1: with warnings
  const std::string german = "LOCPATH=" + folder.path("") + " LC_ALL=de_DE.UTF-8 ";
  // It is in force: its decimal comma shows.
  REQUIRE(run(german + "/usr/bin/printf %.1f 1,5").out == "1,5");

  const auto first = rendered(salon, "");
  REQUIRE(first.size() == 13);
  CHECK(rendered(salon, "") == first);
  CHECK(rendered(copy, "") == first);
  CHECK(rendered(".", "cd " + copy + " &&") == first);
  CHECK(rendered(salon, german + "TZ=Pacific/Kiritimati") == first);
  CHECK(rendered(salon, "LC_ALL=C LANG=C TZ=America/Adak") == first);
  CHECK(rendered(salon, "env -i HOME=/nonexistent") == first);
}

TEST_CASE("without --on the day is that of the place", "[repeat]") {
  // Kiritimati is 24 or more hours ahead of Adak (tz database), so the days are never the same.
  const std::string ask = "plan tuesday --json --salon " + sample("lantern-street");
  const auto east = furnish(ask, "TZ=Pacific/Kiritimati"), west = furnish(ask, "TZ=America/Adak");
  const std::string day = R"re("on": *"([0-9-]+)")re";
  REQUIRE(matches(east.out, day).size() == 1);
  CHECK(matches(east.out, day)[0] > matches(west.out, day).at(0));
}
}  // namespace furnish::test
