#include <catch2/catch.hpp>

#include <regex>
#include <sstream>

#include "app/program.h"
#include "sheet/desk.h"
#include "spec/reader.h"

namespace furnish::test {
namespace {
/// A day eight weeks after the demo's, when most pets are due.
constexpr const char* visit_day = "2027-01-19";

/// Every line that could be read, brought to life.
std::string alive(const std::string& form) {
  const std::regex sleeping(R"(^# (\[\[[a-z]+\]\]|[A-Za-z"'-]+ *= .*)$)");
  std::istringstream in(form);
  std::string out;
  for (std::string line; std::getline(in, line);) {
    std::smatch found;
    out += (std::regex_match(line, found, sleeping) ? found[1].str() : line) + "\n";
  }
  return out;
}
}  // namespace

TEST_CASE("a new visit's form reads as it is, and with every line brought to life", "[new]") {
  for (const char* salon : {"lantern-street", "us-corner"}) {
    const TemporaryFolder folder;
    copy_sample(salon, folder.path("salon"));
    const std::string root = folder.path("salon");
    Desk table(root);
    for (const std::string& key : table.pets()) {
      const auto ran = furnish("new visit " + key + " --salon " + root + " --on " + visit_day);
      INFO(key << "\n" << ran.err);
      REQUIRE(ran.status == 0);
      const std::string path = root + "/visits/" + key + "/" + visit_day + ".toml";
      CHECK(ran.out == path + "\n");
      const std::string form = bytes_of(path);
      INFO(form);
      DiskFiles files;
      SourceSet sources;
      DiagnosticSink sink;
      const ReadContext context{files, sources, sink};
      const auto as_is = read_visit_text(context, path, form, &table.salon(), nullptr);
      const auto changed = read_visit_text(context, path, alive(form), &table.salon(), nullptr);
      for (const Diagnostic& one : sink.all()) UNSCOPED_INFO(to_text(one, sources));
      REQUIRE(as_is);
      REQUIRE(changed);
      const Pet pet = table.kennel(key).pet;
      CHECK(as_is->work == Work::unfinished);
      CHECK(as_is->done.empty());
      CHECK(as_is->came_in.regions.empty());
      CHECK(changed->done.size() == pet.trim.size());
      // Those that are open, to be closed, and one that is new.
      const Kennel before = table.kennel(key);
      REQUIRE(changed->findings.size() == before.plan.findings.size() + 1);
      for (std::size_t i = 0; i < before.plan.findings.size(); ++i) {
        CHECK(changed->findings[i].closed);
        CHECK(changed->findings[i].audience == before.plan.findings[i].audience);
      }
      CHECK(changed->weight);
      // What was brought to life is what was planned.
      for (const PlacedEntry& rule : changed->done) {
        const TrimPart* part = find_part(pet.trim, rule.place);
        REQUIRE(part != nullptr);
        CHECK(rule.entry.leave == part->entry.leave);
        CHECK(rule.entry.lay == part->entry.lay);
      }
      const std::size_t products =
          (pet.bath.shampoo ? 1U : 0U) + (pet.bath.conditioner ? 1U : 0U) + pet.bath.others.size();
      CHECK(as_is->products.size() == (pet.bath.none ? 0 : products));
    }
    const auto check = furnish("check " + root + " --on " + visit_day);
    INFO(check.err);
    CHECK(check.status == 0);
  }
}

TEST_CASE("a new visit's form closes what is open, and hands on what helped", "[new]") {
  const TemporaryFolder folder;
  copy_sample("lantern-street", folder.path("salon"));
  const std::string root = folder.path("salon");
  put(folder, "salon/visits/dot/2026-12-01.toml",
      "date = 2026-12-01\nunfinished = false\nweight = \"3.1 kg\"\n"
      "[came_in]\nbehaviour = \"afraid of the table\"\nhelped = \"a mat, \\\"slowly\\\"\"\n"
      "[[finding]]\nregion = \"belly\"\nside = \"left\"\nwhat = \"lump, pea-sized\"\n"
      "advised = \"vet this week\"\nfor = \"everyone\"\n"
      "[[finding]]\nregion = \"hocks\"\nwhat = \"sore\"\n");
  REQUIRE(furnish("new visit dot --salon " + root + " --on 2026-12-22").status == 0);
  const std::string path = root + "/visits/dot/2026-12-22.toml", form = bytes_of(path);
  INFO(form);
  for (const std::string_view part :
       {"last: 3.1 kg on 2026-12-01", "last time: \"afraid of the table\"",
        "= \"a mat, \\\"slowly\\\"\"", "found 2026-12-01; advised: \"vet this week\""}) {
    INFO(part);
    CHECK(form.find(part) != std::string::npos);
  }
  const auto open = [&](const std::string& day) {
    return furnish("plan dot --json --salon " + root + " --on " + day).out;
  };
  CHECK(open("2026-12-23").find("lump, pea-sized") != std::string::npos);
  // Its lines for what is open brought to life, up to where a new finding would stand.
  const std::size_t from = form.find("# Open from"), to = form.find("# [[finding]]\n# region  =");
  REQUIRE(from < to);
  put(folder, "salon/visits/dot/2026-12-22.toml",
      form.substr(0, from) + alive(form.substr(from, to - from)) + form.substr(to));
  const std::string closed = open("2026-12-23");
  CHECK(closed.find("lump, pea-sized") == std::string::npos);
  CHECK(closed.find("\"sore\"") == std::string::npos);
}

TEST_CASE("a second visit of a day has a name of its own, and nothing is written over", "[new]") {
  const TemporaryFolder folder;
  copy_sample("lantern-street", folder.path("salon"));
  const std::string root = folder.path("salon"), day = root + "/visits/marlow/2026-11-24";
  const std::string written = bytes_of(day + ".toml");
  for (const char* ending : {"-2.toml", "-3.toml"}) {
    const auto ran = furnish("new visit marlow --salon " + root + " --on 2026-11-24");
    INFO(ran.err);
    CHECK(ran.status == 0);
    CHECK(ran.out == day + ending + "\n");
    // What is begun counts for nothing, and nobody would know why.
    CHECK(ran.err.find("warning: Marlow has a visit of this day already; the new one is another, "
                       "and nothing in it counts as done") != std::string::npos);
  }
  const auto later = furnish("new visit marlow --salon " + root + " --on 2027-01-19");
  CHECK(later.err.find("of this day already") == std::string::npos);
  CHECK(later.err.find("nobody finished this visit, 2026-11-24") != std::string::npos);
  CHECK(bytes_of(day + ".toml") == written);
}

TEST_CASE("a visit needs a salon's folder and a pet that can be read", "[new]") {
  const TemporaryFolder folder;
  folder.file("rex.toml", "[pet]\nname = \"Rex\"\n");
  const auto alone = furnish("new visit " + folder.path("rex.toml"));
  CHECK(alone.status == 1);
  CHECK(alone.err.find("a visit is kept in a salon's folder") != std::string::npos);
  const auto unknown = furnish("new visit marlo --salon " + sample("lantern-street"));
  CHECK(unknown.status == 1);
  CHECK(unknown.err.find("did you mean 'marlow'?") != std::string::npos);
  CHECK(furnish("new visit").status == 2);
  CHECK(furnish("new").status == 2);
}
}  // namespace furnish::test
