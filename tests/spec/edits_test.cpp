#include <catch2/catch.hpp>

#include <vector>

#include "share.h"
#include "spec/said.h"
#include "spec/seeded.h"

namespace furnish::test {
namespace {
const std::vector<std::string> scraps{
    "\"",   "'",       "\"\"\"", "'''",   "[",          "]",    "[[",     "]]",  "{",
    "}",    "=",       "\n",     ".",     ",",          "#",    "\\",     "nan", "-1",
    "1e99", "0",       "½",      "true",  "犬",         "\xFF", "\0",     "\r",  "\t",
    "é",    "[pet]\n", "legs",   "left ", "2021-02-30", "10:1", "\\u0000"};

/// A few random cuts, copies and scraps.
std::string edited(std::string text, Seeded& random) {
  const std::size_t edits = 1 + random.below(4);
  for (std::size_t i = 0; i < edits && !text.empty(); ++i) {
    const std::size_t at = random.below(text.size());
    const std::size_t length = std::min(text.size() - at, 1 + random.below(20));
    switch (random.below(4)) {
      case 0:
        text.erase(at, length);
        break;
      case 1:
        text.insert(random.below(text.size()), text.substr(at, length));
        break;
      case 2:
        text.insert(at, scraps[random.below(scraps.size())]);
        break;
      default:
        text[at] = static_cast<char>(random.below(256));
        break;
    }
  }
  return text;
}

std::string sample(const std::string& path) {
  const DiskFiles files;
  const auto content = files.read(std::string(FURNISH_SOURCE_DIR) + "/samples/" + path);
  REQUIRE(content.bytes);
  return *content.bytes;
}

/// Reads `count` edits of a text, or this run's share of them; each gives a value or an error, and
/// says it with a place in the file.
template <typename Read>
void read_edits(const std::string& text, std::size_t count, std::uint64_t seed, Read read) {
  count = share_of(count);
  Seeded random(seed);
  std::size_t refused = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const std::string input = edited(text, random);
    Desk desk(FileMap{{"house/natural-tidy.toml", "[style]\nname = \"Natural tidy\"\n"}});
    const bool value = read(desk, input);
    const std::string all = desk.said();
    if (value != desk.sink().has_errors()) {
      if (!value) ++refused;
      continue;
    }
    INFO("edit " << i << " of seed " << seed << ":\n" << input << "\n" << all);
    FAIL_CHECK("neither a value nor an error, or both");
  }
  // Were none refused, or all, the edits would test nothing.
  CHECK(refused > count / 10);
  CHECK(refused < count);
}
}  // namespace

TEST_CASE("whatever is done to a file, it is read or refused", "[edits]") {
  const std::string pet = sample("lantern-street/pets/marlow.toml");
  read_edits(pet, 14'000, 1,
             [](Desk& desk, const std::string& text) { return desk.pet(text).has_value(); });
  const std::string salon = sample("lantern-street/salon.toml");
  read_edits(salon, 3'000, 2,
             [](Desk& desk, const std::string& text) {
               const auto read = desk.salon(text);
               return read && read->whole;
             });
  const std::string visit = sample("lantern-street/visits/marlow/2026-02-17.toml");
  read_edits(visit, 3'000, 3, [](Desk& desk, const std::string& text) {
    return read_visit_text(desk.context(), "2026-02-17.toml", text, nullptr, nullptr).has_value();
  });
}
}  // namespace furnish::test
