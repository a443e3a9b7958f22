#include <catch2/catch.hpp>

#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "base/text.h"
#include "share.h"
#include "spec/document.h"
#include "spec/fault_case.h"
#include "spec/json_check.h"
#include "spec/pet_format.h"
#include "spec/said.h"
#include "spec/schema.h"
#include "spec/seeded.h"
#include "spec/visit_format.h"

// The reader, the schemas and the tables of keys say the same: a schema may let pass what the
// reader refuses, never the other way round.

namespace furnish::test {
namespace {
using Json = nlohmann::json;
namespace fs = std::filesystem;
const fs::path source = FURNISH_SOURCE_DIR;

/// A file of a salon by itself.
struct Sample {
  std::string kind, path, text;
};

std::string contents(const fs::path& path) {
  const DiskFiles files;
  return files.read(path.string()).bytes.value();
}

std::vector<Sample> samples() {
  std::vector<Sample> out;
  const auto add = [&](const std::string& kind, const fs::path& path, const std::string& as) {
    if (path.extension() == ".toml") out.push_back({kind, as, contents(path)});
  };
  for (const char* const salon : {"lantern-street", "us-corner"}) {
    const fs::path root = source / "samples" / salon;
    for (const auto& entry : fs::recursive_directory_iterator(root)) {
      const fs::path& path = entry.path();
      const std::string folder = path.parent_path().filename().string();
      if (path.filename() == "salon.toml") add("salon", path, "salon.toml");
      if (folder == "pets") add("pet", path, "pets/rex.toml");
      if (folder == "styles") add("style", path, "styles/own.toml");
      if (folder == "days") add("day", path, "days/" + path.filename().string());
      if (path.parent_path().parent_path().filename() == "visits") {
        add("visit", path, "visits/rex/" + path.filename().string());
      }
    }
  }
  for (const auto& entry : fs::directory_iterator(source / "styles")) {
    add("style", entry.path(), "styles/own.toml");
  }
  std::ranges::sort(out, {}, [](const Sample& one) { return std::pair(one.path, one.text); });
  return out;
}

/// Any style that a sample names, so that what a pet says is all that can be wrong with it.
FileMap with_styles(FileMap files) {
  for (const auto& entry : fs::directory_iterator(source / "styles")) {
    if (entry.path().extension() != ".toml") continue;
    files["house/" + entry.path().filename().string()] = contents(entry.path());
  }
  files["house/mud-season.toml"] = "[style]\nname = \"Mud season\"\n";
  return files;
}

bool takes(const Sample& one, std::string* said = nullptr) {
  Desk desk(with_styles({{one.path, one.text}}));
  bool good = false;
  if (one.kind == "salon") {
    const auto salon = read_salon(desk.context(), one.path);
    good = salon && salon->whole;
  }
  if (one.kind == "pet") {
    good = read_pet(desk.context(), one.path, nullptr, desk.styles()).has_value();
  }
  if (one.kind == "style") good = desk.styles().find("own", {}) != nullptr;
  if (one.kind == "day") {
    const auto day = read_day(desk.context(), one.path);
    good = day && day->unread.empty();
  }
  if (one.kind == "visit") {
    good = read_visit(desk.context(), one.path, nullptr, nullptr).has_value();
  }
  if (said != nullptr) *said = desk.said();
  return good;
}

const Json& schema_of(const std::string& kind) {
  static std::map<std::string, Json> all;
  const auto [at, fresh] = all.try_emplace(kind);
  if (fresh) at->second = Json::parse(schema(*find_file_kind(kind)));
  return at->second;
}

/// Where the schema refuses a file; empty if it takes it. Of a file that is no TOML, a word.
std::string refused(const Sample& one) {
  Desk desk;
  const auto document = read_document(desk.context(), one.path, one.text, "");
  if (!document || desk.sink().has_errors()) return "no TOML";
  return broken(schema_of(one.kind), to_json(document->root));
}

/// `key = value` lines of one table; `path` is "" for the file itself.
std::string line(const KeyInfo& key) {
  return fmt::format("{} = {}\n", key.name, key.example);
}

/// A file of its required keys and one more.
std::string file_with(const FileKind& kind, const KeyInfo* section, const KeyInfo* key) {
  std::string plain, tables;
  const auto lines = [](const TableInfo& table, const KeyInfo* wanted) {
    std::string out;
    for (const KeyInfo* const one : table.keys) {
      if (one->required || one == wanted) out += line(*one);
    }
    if (wanted != nullptr && wanted == table.others.value) out += line(*wanted);
    return out;
  };
  for (const KeyInfo* const one : kind.table->keys) {
    const bool heading = one->kind == Kind::table || one->kind == Kind::tables;
    if (!one->required && one != section && one != key) continue;
    if (!heading) {
      plain += line(*one);
    } else {
      const std::string name(one->name);
      tables += one->kind == Kind::table ? "[" + name + "]\n" : "[[" + name + "]]\n";
      tables += lines(*one->table, key);
    }
  }
  return plain + tables;
}

/// What else an example needs beside it.
std::string beside(const KeyInfo* section, const KeyInfo& key) {
  const bool names = &key == &keys::product::product || &key == &keys::product::name;
  if (section == &keys::visit_file::product && !names) return line(keys::product::name);
  if (&key == &keys::identity::weighed) return line(keys::identity::weight);
  const bool is_what = &key == static_cast<const KeyInfo*>(&keys::finding::what);
  if (section == &keys::visit_file::finding && !is_what) return line(keys::finding::what);
  const bool mixed_at_home = &key == &keys::home::product || &key == &keys::home::bottle;
  return mixed_at_home ? line(keys::home::bath_every) : "";
}

const std::map<std::string, std::string> paths{{"salon", "salon.toml"},
                                               {"pet", "pets/rex.toml"},
                                               {"style", "styles/own.toml"},
                                               {"day", "days/2026-11-24.toml"},
                                               {"visit", "visits/rex/2026-11-24.toml"}};

/// Another value for a key, or another line, or a few letters changed.
std::string mutated(const std::string& text, const std::vector<std::string>& values,
                    Seeded& random) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  const std::size_t edits = 1 + random.below(3);
  for (std::size_t i = 0; i < edits && !lines.empty(); ++i) {
    std::string& line = lines[random.below(lines.size())];
    const std::size_t equals = line.find('=');
    switch (random.below(6)) {
      case 0:
      case 1:
      case 2:
        if (equals != std::string::npos) {
          line = line.substr(0, equals) + "= " + values[random.below(values.size())];
        }
        break;
      case 3:
        line.clear();
        break;
      case 4:
        lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(random.below(lines.size())),
                     lines[random.below(lines.size())]);
        break;
      default:
        if (!line.empty()) {
          line[random.below(line.size())] = static_cast<char>(' ' + random.below(95));
        }
        break;
    }
  }
  std::string out;
  for (const std::string& line : lines) out += line + "\n";
  return out;
}

std::vector<std::string> values_of(const std::vector<Sample>& all) {
  std::vector<std::string> out{"true",
                               "false",
                               "0",
                               "1",
                               "1.5",
                               "-1",
                               "10",
                               "\"\"",
                               "\" \"",
                               "\" Left \"",
                               "\"DOUBLE\"",
                               "[]",
                               "[\"oat\"]",
                               "[\"a\", \"b\"]",
                               "[1]",
                               "\"4 wks\"",
                               "\"1/2 in\"",
                               "\"4.6 KG\"",
                               "\"½ in\"",
                               "\"10 %\"",
                               "{}",
                               "\"4\"",
                               "2026-11-24",
                               "09:30:00",
                               "\"left\"",
                               "\"A4\"",
                               "\"a4\"",
                               "nan",
                               "{ en = \"x\" }",
                               "{ text = \"x\", for = \"staff\" }",
                               "[[\"cheeks\", \"neck\"]]"};
  for (const Sample& one : all) {
    std::istringstream in(one.text);
    for (std::string line; std::getline(in, line);) {
      const std::size_t equals = line.find('=');
      if (equals != std::string::npos) out.push_back(line.substr(equals + 1));
    }
  }
  std::ranges::sort(out);
  const auto twice = std::ranges::unique(out);
  out.erase(twice.begin(), twice.end());
  return out;
}
}  // namespace

TEST_CASE("every key's example is taken, by the reader and by the schema", "[schema]") {
  std::size_t keys = 0;
  for (const auto& [name, path] : paths) {
    const FileKind& kind = *find_file_kind(name);
    const auto check = [&](const KeyInfo* section, const KeyInfo& key) {
      std::string text = file_with(kind, section, &key);
      const std::size_t at = text.find(line(key));
      REQUIRE(at != std::string::npos);
      text.insert(at, beside(section, key));
      INFO(name << ": " << text);
      std::string said;
      CHECK(takes({name, path, text}, &said));
      CHECK(said == "");
      CHECK(refused({name, path, text}) == "");
      CHECK(key.doc.size() >= 5);
      ++keys;
    };
    for (const KeyInfo* const key : kind.table->keys) {
      if (key->table == nullptr || (key->kind != Kind::table && key->kind != Kind::tables)) {
        check(nullptr, *key);
        continue;
      }
      for (const KeyInfo* const inner : key->table->keys) {
        if (inner->name != "over" && inner->name != "leave") check(key, *inner);
      }
      if (key->table->others.value != nullptr) check(key, *key->table->others.value);
    }
  }
  CHECK(keys > 140);
}

TEST_CASE("reader and schema take every sample", "[schema]") {
  const auto all = samples();
  CHECK(all.size() > 60);
  for (const Sample& one : all) {
    INFO(one.path << '\n' << one.text);
    CHECK(takes(one));
    CHECK(refused(one) == "");
  }
}

TEST_CASE("no schema refuses a file of the faults that is taken, and half of the others it does",
          "[schema]") {
  std::size_t both = 0, faulty = 0;
  for (const auto& entry : fs::directory_iterator(source / "tests" / "spec" / "faults")) {
    const FaultCase test = load_fault_case(entry.path().string());
    const std::string name = stem(test.path);
    const std::string kind = name.substr(0, name.find('-'));
    const std::string why = refused({kind, test.main, test.files.at(test.main)});
    INFO(name << ": " << why);
    if (read_fault_case(test).value) {
      CHECK(why == "");
    } else {
      ++faulty;
      if (!why.empty()) ++both;
    }
  }
  CAPTURE(both, faulty);
  CHECK(both * 2 > faulty);
}

TEST_CASE("no schema is stricter than the reader on files that are changed by chance", "[schema]") {
  const auto all = samples();
  const auto values = values_of(all);
  Seeded random(11);
  std::size_t taken = 0, both = 0;
  const std::size_t files = test::long_run() ? 10'000 : 2'500;
  for (std::size_t i = 0; i < files; ++i) {
    Sample one = all[random.below(all.size())];
    one.text = mutated(one.text, values, random);
    const std::string why = refused(one);
    if (why.empty()) {
      continue;
    }
    // Only what the schema refuses can be taken wrongly.
    const bool good = takes(one);
    if (good) {
      INFO(one.kind << " refused " << why << '\n' << one.text);
      CHECK_FALSE(good);
    } else {
      ++both;
    }
  }
  for (int i = 0; i < 200; ++i) {
    Sample one = all[random.below(all.size())];
    one.text = mutated(one.text, values, random);
    if (refused(one).empty() && takes(one)) ++taken;
  }
  // The changes are such that many files are still good, and many are not.
  CAPTURE(taken, both);
  CHECK(taken > 40);
  CHECK(both > files / 5);
}
}  // namespace furnish::test
