#include <catch2/catch.hpp>

#include "sheet/desk.h"

// What a care sheet says of baths, of coats that are not brushed and of what was found, in words.

namespace furnish {
namespace {
using test::Desk;

/// The text of Rex's care sheet, without its spaces.
class Care {
 public:
  explicit Care(const std::string& pet, const std::string& visit = {}) : table_(files(pet, visit)) {
    const auto sheet = table_.care(table_.kennel());
    INFO(table_.said());
    REQUIRE(sheet);
    text_ = test::without_space(test::text_of(sheet->page.frame));
  }
  bool says(std::string_view words) const {
    return text_.find(test::without_space(words)) != std::string::npos;
  }
  const std::string& text() const { return text_; }

 private:
  static std::map<std::string, std::string> files(const std::string& pet,
                                                  const std::string& visit) {
    std::map<std::string, std::string> out{{"pets/rex.toml", "[pet]\nname = \"Rex\"\n" + pet}};
    if (!visit.empty()) out["visits/rex/2026-11-24.toml"] = "date = 2026-11-24\n" + visit;
    return out;
  }
  Desk table_;
  std::string text_;
};
}  // namespace

TEST_CASE("a bath at home says how often, with what, and how it is mixed for the bottle",
          "[care]") {
  const std::string every = "[home]\nbath_every = \"4 weeks\"\n";
  const Care plain(every);
  INFO(plain.text());
  CHECK(plain.says("Every 4 weeks. Brush first, rinse well, dry to the skin."));
  CHECK_FALSE(plain.says("Use "));

  // Without a bottle there is nothing to mix it in, without a dilution nothing to mix.
  const std::string oat = "product = { name = \"Oat wash\", kind = \"shampoo\"";
  for (const std::string& with :
       {oat + " }\nbottle = \"275 ml\"\n", oat + ", dilution = \"10:1\" }\n"}) {
    const Care care(every + with);
    INFO(care.text());
    CHECK(care.says("Every 4 weeks. Use Oat wash. Brush first"));
    CHECK_FALSE(care.says("Mix "));
  }
  // Ten parts of water to one: an eleventh of the bottle.
  const Care mixed(every + oat + ", dilution = \"10:1\" }\nbottle = \"275 ml\"\n");
  INFO(mixed.text());
  CHECK(mixed.says("Mix 25 ml of Oat wash with 250 ml of water. Brush first"));

  CHECK(Care("[home]\nbath_every = \"1 week\"\n").says("Once a week. Brush first"));
  CHECK_FALSE(Care("").says("Brush first"));
}

TEST_CASE("a dog that is not bathed is brushed, and has no signs of a bath to watch for",
          "[care]") {
  const Care washed("coat = \"curly\"\n"), brushed("coat = \"curly\"\n[bath]\nnone = true\n");
  INFO(washed.text() << "\n" << brushed.text());
  CHECK(washed.says("We washed Rex, dried the coat and brushed it out."));
  CHECK(washed.says("Call your vet and say that there was a bath."));
  CHECK(brushed.says("We brushed Rex out to the skin."));
  CHECK_FALSE(brushed.says("that there was a bath"));
  // A visit on file goes by what was used.
  const Care visited("coat = \"curly\"\n", "minutes = 60\n");
  INFO(visited.text());
  CHECK(visited.says("We brushed Rex out to the skin."));
}

TEST_CASE("a coat without hair is cared for as skin", "[care]") {
  const Care bare("coat = \"hairless\"\n"), curly("coat = \"curly\"\n");
  INFO(bare.text());
  CHECK(bare.says("We washed Rex and dried the skin."));
  CHECK(bare.says("Wash with mild soap and use a skin cream. Keep out of strong sun."));
  for (const char* brushing : {"brushed it out", "comb down to the skin", "Never use scissors"}) {
    INFO(brushing << "\n" << curly.text());
    CHECK_FALSE(bare.says(brushing));
    CHECK(curly.says(brushing));
  }
}

TEST_CASE("a mat that went all the way round is what an owner watches for first", "[care]") {
  const std::string coat = "coat = \"curly\"\n";
  const Care round(coat, "[came_in]\ntail = { mats = 4, encircling = true }\n"),
      flat(coat, "[came_in]\ntail = { mats = 4 }\n");
  INFO(round.text());
  CHECK(round.says("A mat goes all the way round: tail."));
  CHECK(round.says("It can cut off the blood. See a vet today."));
  CHECK(round.text().find("Amatgoesalltheway") < round.text().find("Callyourvet"));
  CHECK_FALSE(flat.says("all the way round"));
}
}  // namespace furnish
