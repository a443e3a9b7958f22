#include <catch2/catch.hpp>

#include "app/program.h"
#include "share.h"
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
  const auto first = rendered(salon, "");
  REQUIRE(first.size() == 13);
  CHECK(rendered(salon, "") == first);
  CHECK(rendered(copy, "umask 077;") == first);
  CHECK(rendered(".", "cd " + copy + " && umask 000;") == first);
  CHECK(rendered(salon, "LC_ALL=C LANG=C TZ=America/Adak") == first);
  CHECK(rendered(salon, "env -i HOME=/nonexistent") == first);

  // Its clocks jump and its folders list backwards: without --on the day is any.
  const std::string odd = "LD_PRELOAD=" + test::quoted(FURNISH_ODD_MACHINE) + " ";
  REQUIRE(run(odd + "date +%s; " + odd + "date +%s; date +%s").status == 0);
  const std::string list = "ls -U " + test::quoted(salon + "/pets");
  REQUIRE(run(odd + list).out != run(list).out);
  CHECK(rendered(salon, odd) == first);
}

TEST_CASE("a locale changes no byte", "[repeat]") {
  // Of Turkish the letters without a dot and the decimal comma; elsewhere other digits, and another
  // calendar. All but the first only in a long run, as each takes a second or two to be made.
  const std::vector<std::string> names{"tr_TR", "de_DE", "ar_EG", "th_TH", "az_AZ"};
  const std::string salon = sample("lantern-street");
  const auto first = rendered(salon, "");
  for (const std::string& name : names) {
    if (!long_run() && name != names.front()) continue;
    INFO(name);
    // Of this machine's own making, as Debian has none but C at first.
    const TemporaryFolder folder;
    const auto made = run("localedef -i " + name + " -f UTF-8 " + folder.path(name + ".UTF-8"));
    INFO(made.err << "localedef needs the package locales");
    REQUIRE(made.status <= 1);  // 1: with warnings
    const std::string there = "LOCPATH=" + folder.path("") + " LC_ALL=" + name + ".UTF-8 ";
    // It is in force.
    REQUIRE(run(there + "locale -k LC_TIME | grep abday").out !=
            run("LC_ALL=C locale -k LC_TIME | grep abday").out);
    CHECK(rendered(salon, there + "TZ=Pacific/Kiritimati") == first);
  }
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
