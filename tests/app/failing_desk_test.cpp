#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>

#include "app/desk_salon.h"
#include "app/program.h"
#include "desk/desk.h"
#include "output/failing_disk.h"
#include "share.h"

// Every call by which the desk writes fails once, as those of the commands do: the file is the old
// one or the new one, whole; nothing is left lying about; and the answer says which it is.

namespace furnish::test {
namespace {
namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;
using Tree = std::map<std::string, std::string>;

/// A desk over a small salon, with its drafts in a folder beside it, on a disk that fails.
class Table {
 public:
  Table() {
    for (const char* const name : {"salon.toml", "pets/marlow.toml", "photos/marlow-after.jpg"}) {
      put(folder_, std::string("all/salon/") + name, bytes_of(sample() + name));
    }
    put(folder_, "all/salon/visits/marlow/2026-11-20.toml", "date = 2026-11-20\n");
    first_ = tree();
    options_.salon = folder_.path("all/salon");
    options_.data = FURNISH_SOURCE_DIR;
    options_.on = parse_date(demo_date);
    salon_.emplace(options_, files_, disk);
    drafts_.emplace(folder_.path("all/state/desk"), disk);
    desk_.emplace(*salon_, *drafts_, desk::Door{{}, "token", false});
    mark_ = ask("open", {{"kind", "pet"}, {"id", "marlow"}})["mark"].get<std::string>();
  }

  desk::Response post(const std::string& name, const Json& what) {
    return desk_->answer({{"POST", "/token/api/" + name, {}}, what.dump()});
  }
  desk::Response photo() {
    // visit marlow/2026-11-20, RFC 4648, section 5
    return desk_->answer(
        {{"POST", "/token/api/photo", {{"X-Furnish-For", "bWFybG93LzIwMjYtMTEtMjA"}}},
         bytes_of(sample() + "photos/marlow-after.jpg")});
  }
  Json edited(const char* colour) const {
    return {{"kind", "pet"},
            {"id", "marlow"},
            {"mark", mark_},
            {"edits", {{{"op", "set"}, {"path", {"pet", "colour"}}, {"value", colour}}}}};
  }

  Tree tree() const {
    Tree out;
    for (const std::string& path : files_below(folder_.path("all"))) {
      out[path] = bytes_of(folder_.path("all/" + path));
    }
    return out;
  }
  void restore(const Tree& before) const {
    for (const auto& [path, bytes] : tree()) {
      if (!before.contains(path)) fs::remove(folder_.path("all/" + path));
    }
    for (const auto& [path, bytes] : before) put(folder_, "all/" + path, bytes);
    fs::remove_all(folder_.path("all/salon/schemas"));
  }
  std::string root() const { return folder_.path("all/salon"); }
  const Tree& first() const { return first_; }

  FailingDisk disk;

 private:
  static std::string sample() { return FURNISH_SOURCE_DIR "/samples/lantern-street/"; }
  Json ask(const std::string& name, const Json& what) {
    const desk::Response answer = post(name, what);
    REQUIRE(answer.status == 200);
    return Json::parse(answer.body);
  }

  TemporaryFolder folder_;
  Tree first_;
  Options options_;
  DiskFiles files_;
  std::optional<SalonAtDesk> salon_;
  std::optional<desk::Drafts> drafts_;
  std::optional<desk::Desk> desk_;
  std::string mark_;
};

struct Task {
  const char* name;
  std::function<desk::Response(Table&)> work;
  bool drafted = false;  ///< there is a draft before
};

const std::array tasks{
    Task{"save", [](Table& table) { return table.post("save", table.edited("grey")); }, true},
    Task{"new pet",
         [](Table& table) {
           Json what = table.edited("grey");
           what["name"] = "Wren";
           return table.post("create", what);
         }},
    Task{"new visit",
         [](Table& table) {
           return table.post("create", {{"kind", "visit"}, {"id", "marlow"}});
         }},
    Task{"photo", [](Table& table) { return table.photo(); }},
    Task{"put away",
         [](Table& table) {
           return table.post("away", {{"kind", "visit"}, {"id", "marlow/2026-11-20"}});
         }},
    Task{"draft", [](Table& table) { return table.post("draft", table.edited("grey")); }, true}};

constexpr std::array failures{Failure{EIO}, Failure{ENOSPC, true}, Failure{EIO, false, true},
                              Failure{EACCES}, Failure{ENOSPC, false, true}};

/// What a disk that is gone lets nobody remove.
bool unfinished(const std::string& path) {
  return path.find("/.furnish-") != std::string::npos;
}

/// What is anybody's work: schemas help editors, and a file may be made without one and without the
/// line that names it.
Tree work_in(const Tree& all) {
  Tree out;
  for (const auto& [path, bytes] : all) {
    if (path.find("/schemas/") != std::string::npos) continue;
    out[path] = bytes.starts_with("#:schema") ? bytes.substr(bytes.find('\n') + 1) : bytes;
  }
  return out;
}

bool holds(const Tree& tree, const std::string& path, const std::string& bytes) {
  const auto found = tree.find(path);
  return found != tree.end() && found->second == bytes;
}

/// Empty, or what is not as promised.
std::string broken_promise(const Tree& before, const Tree& now, const Tree& wanted,
                           const desk::Response& answer, bool gone) {
  const bool done = answer.status == 200;
  if (!done && Json::parse(answer.body).value("error", "").empty()) return "it does not say why";
  for (const auto& [path, bytes] : now) {
    // Nor a new file that is still without what was to be in it.
    if (gone && (unfinished(path) || !before.contains(path))) continue;
    const bool is_old = holds(before, path, bytes), is_new = holds(wanted, path, bytes);
    if (!is_old && !is_new) return path + " is neither the old one nor the new one";
    if (!done && !is_old && !gone) return path + " is the new one, and it says that it is not";
  }
  for (const auto& [path, bytes] : before) {
    if (now.contains(path)) continue;
    // What is moved is at one of its two places; a draft goes when it is saved.
    const bool elsewhere =
        path.starts_with("state/") ||
        std::ranges::any_of(now, [&](const auto& one) { return one.second == bytes; });
    if (wanted.contains(path) || !elsewhere) return path + " is lost";
  }
  for (const auto& [path, bytes] : wanted) {
    if (done && !holds(now, path, bytes)) return path + " is not the new one, and it says it is";
  }
  return {};
}
}  // namespace

TEST_CASE("whatever call fails at the desk, nothing is lost and the answer is true") {
  Table table;
  for (const Task& task : tasks) {
    INFO(task.name);
    table.restore(table.first());
    if (task.drafted) REQUIRE(table.post("draft", table.edited("older")).status == 200);
    const Tree before = work_in(table.tree());
    table.disk.set(std::nullopt);
    const desk::Response good = task.work(table);
    INFO(good.body);
    REQUIRE(good.status == 200);
    const int calls = table.disk.calls();
    const Tree wanted = work_in(table.tree());
    REQUIRE(wanted != before);
    int told = 0, tried = 0;
    for (std::size_t way = 0; way < failures.size(); ++way) {
      const Failure& failure = failures.at(way);
      for (int at = 0; at < calls; ++at) {
        // In a short run each call fails in one way, in a long one in all.
        if (!long_run() && (static_cast<std::size_t>(at) + way) % failures.size() != 0) continue;
        ++tried;
        table.restore(before);
        table.disk.set(at, failure);
        const desk::Response answer = task.work(table);
        table.disk.set(std::nullopt);
        INFO(failure.code << ", call " << at << " of " << calls << ": " << answer.body);
        CHECK(broken_promise(before, work_in(table.tree()), wanted, answer, failure.and_after) ==
              "");
        told += answer.status == 200 ? 0 : 1;
      }
    }
    CHECK(told * 4 > tried);  // many calls are needed, so many must be felt
  }
}

TEST_CASE("nothing is put away through a link, or taken back through one") {
  const Table table;
  const std::string salon = table.root(), outside = salon + "/../outside";
  const std::string visit = salon + "/visits/marlow/2026-11-20.toml";
  const desk::FileId id{"visit", "marlow/2026-11-20"};
  fs::create_directories(outside + "/visits/marlow");
  const std::string link = GENERATE("put-away", "put-away/visits", "put-away/visits/marlow");
  const std::string part = fs::path(link).lexically_relative("put-away").string();
  fs::create_directories(fs::path(salon + "/" + link).parent_path());
  fs::create_directory_symlink(part == "." ? outside : outside + "/" + part, salon + "/" + link);
  Options options;
  options.salon = salon;
  options.data = FURNISH_SOURCE_DIR;
  const DiskFiles files;
  SalonAtDesk desk(options, files, system_disk());
  CHECK(has(desk.put_away(id), "is a link"));
  CHECK(fs::exists(visit));
  CHECK(files_below(outside).empty());
  // Somebody's file out there is not the pet's.
  std::ofstream(outside + "/visits/marlow/2026-11-21.toml") << "date = 2026-11-21\n";
  CHECK(desk.away("marlow").empty());
  CHECK(has(desk.put_back({"visit", "marlow/2026-11-21"}), "is a link"));
  CHECK(files_below(outside).size() == 1);
  CHECK(furnish("rename marlow bo --salon " + test::quoted(salon)).status == 0);
  CHECK(files_below(outside) == std::vector<std::string>{"visits/marlow/2026-11-21.toml"});
  // Without the link it goes, and comes back.
  fs::remove(salon + "/" + link);
  fs::remove(salon + "/put-away/visits/bo");
  REQUIRE(furnish("rename bo marlow --salon " + test::quoted(salon)).status == 0);
  CHECK(desk.put_away(id) == "");
  CHECK_FALSE(fs::exists(visit));
  CHECK(desk.away("marlow").size() == 1);
  CHECK(desk.put_back(id) == "");
  CHECK(fs::exists(visit));
}
}  // namespace furnish::test
