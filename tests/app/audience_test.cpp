#include <catch2/catch.hpp>

#include <map>
#include <set>

#include "app/generated.h"
#include "app/told.h"
#include "app/workshop.h"
#include "share.h"
#include "sheet/desk.h"

namespace furnish::test {
namespace {
const std::size_t a_batch = share_of(250);
/// So many of a batch are also held to their twins: three hundred of a thousand.
const std::size_t twins_of_batch = a_batch * 3 / 10;

/// A pet and a visit with a marker of its own in every field that is for staff, and the same
/// without those fields.
struct Marked {
  std::string pet, visit, twin_pet, twin_visit;
  std::set<std::string> in_pet, in_visit, in_files;  ///< where the file's copy tells them
};

class Maker {
 public:
  explicit Maker(Dice& dice) : dice_(dice) {}

  Marked make() {
    pet();
    made_.in_pet = std::move(marks_);
    marks_.clear();
    visit();
    made_.in_visit = std::move(marks_);
    return std::move(made_);
  }

 private:
  /// A text with a marker that no other field has.
  std::string mark() {
    std::string marker = "MARK" + std::to_string(next_++) + "X";
    marks_.insert(marker);
    return "\"a " + marker + " b\"";
  }
  bool often() { return !dice_.one_in(4); }

  void pet_for_all(const std::string& text) {
    made_.pet += text;
    made_.twin_pet += text;
  }
  void visit_for_all(const std::string& text) {
    made_.visit += text;
    made_.twin_visit += text;
  }
  void staff(std::string& out, const char* key) {
    if (often()) out += std::string(key) + " = " + mark() + "\n";
  }

  void pet() {
    constexpr const char* coats[] = {"double", "curly", "drop", "silky", "wire", "smooth"};
    constexpr const char* styles[] = {"natural-tidy", "curly-mid",   "drop-short",
                                      "silky-short",  "wire-jacket", "smooth-tidy"};
    const std::size_t kind = dice_.below(6);
    pet_for_all("[pet]\nname = \"Rex\"\ncoat = \"" + std::string(coats[kind]) +
                "\"\nweight = \"9 kg\"\nborn = 2020-01-01\n");
    std::string& out = made_.pet;
    staff(out, "photo");
    pet_for_all("[owner]\nname = \"Sam\"\n");
    staff(out, "phone");
    staff(out, "email");
    if (often()) out += "address = [" + mark() + ", " + mark() + "]\n";
    if (often()) out += "collects = [" + mark() + "]\n";
    if (often()) {
      out += "[[alert]]\nlevel = \"warning\"\ntext = " + mark() + "\n";
      staff(out, "do");
      if (often()) out += "avoid = [\"ears\", \"left hock\", \"back\"]\n";
      if (often()) out += "allergens = [" + mark() + ", \"oat\"]\n";
    }
    if (often()) {
      pet_for_all("[[alert]]\nlevel = \"notice\"\ntext = \"shy\"\nfor = \"everyone\"\n");
      if (often()) pet_for_all("avoid = [\"tail\"]\n");
    }
    out += "[handling]\n";
    for (const char* key : {"hold", "lift", "stop"}) staff(out, key);
    if (often()) out += "dryer = \"force dryer, warm\"\n";
    if (often()) out += "rest_every = \"10 min\"\n";
    if (often()) out += "comes_with = [" + mark() + "]\n";
    pet_for_all("[health]\n");
    if (dice_.one_in(3)) pet_for_all("conditions = [\"heart disease\"]\n");
    staff(out, "notes");
    pet_for_all("[bath]\nshampoo = { name = \"oat shampoo\", dilution = \"1:10\" }\n");
    pet_for_all("[trim]\nstyle = \"" + std::string(styles[kind]) +
                "\"\nvisit_every = \"6 weeks\"\n");
    if (often()) pet_for_all("body = { blade = \"7F\" }\n");
    if (often()) {
      out += "[[accept]]\nrule = \"double-coat-short\"\nreason = " + mark() +
             "\nsigned = 2026-01-01\n";
    }
  }

  void visit() {
    visit_for_all("date = 2026-11-24\nminutes = 60\nweight = \"8.9 kg\"\ntold = \"Brush.\"\n");
    visit_for_all("[came_in]\n");
    std::string& out = made_.visit;
    staff(out, "behaviour");
    staff(out, "helped");
    if (often()) {  // a note is the staff's unless it says otherwise
      out += "ears = { mats = 3, length = \"34 mm\", note = " + mark() + " }\n";
      made_.twin_visit += "ears = { mats = 3, length = \"34 mm\" }\n";
    }
    if (often()) {  // and so is a reason
      out += "[done]\nbelly = { brush = true, why = " + mark() + " }\n";
      made_.twin_visit += "[done]\nbelly = { brush = true }\n";
      visit_for_all("chest = { brush = true, why = { text = \"tired\", for = \"everyone\" } }\n");
    }
    for (std::size_t i = dice_.below(3); i > 0; --i) {
      out += "[[finding]]\nregion = \"belly\"\nside = \"right\"\nwhat = " + mark() + "\n";
      staff(out, "advised");
    }
    if (often()) {
      visit_for_all("[[finding]]\nregion = \"hocks\"\nwhat = \"sore\"\nfor = \"everyone\"\n");
    }
    if (often()) visit_for_all("[[consent]]\nto = \"cutting out mats\"\nby = \"Sam\"\n");
    if (dice_.one_in(4)) {  // of a photo the path alone is the staff's; none of these is there
      const std::string marker = "MARK" + std::to_string(next_++) + "X";
      made_.in_files.insert(marker);
      out += "[[photo]]\nfile = \"photos/" + marker + ".jpg\"\nwhen = \"after\"\n";
      made_.twin_visit += "[[photo]]\nfile = \"photos/other.jpg\"\nwhen = \"after\"\n";
    }
  }

  Dice& dice_;
  Marked made_;
  std::set<std::string> marks_;
  int next_ = 0;
};

std::vector<std::string> missing(const std::set<std::string>& marks, const std::string& text) {
  std::vector<std::string> out;
  for (const std::string& mark : marks) {
    if (text.find(mark) == std::string::npos) out.push_back(mark);
  }
  return out;
}

/// A salon of these pets, and of their twins that have nothing for staff.
std::map<std::string, std::string> files_of(const std::vector<Marked>& all) {
  std::map<std::string, std::string> files;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const std::string key = std::to_string(i);
    files["pets/pet-" + key + ".toml"] = all[i].pet;
    files["visits/pet-" + key + "/2026-11-24.toml"] = all[i].visit;
    files["pets/twin-" + key + ".toml"] = all[i].twin_pet;
    files["visits/twin-" + key + "/2026-11-24.toml"] = all[i].twin_visit;
  }
  files["salon.toml"] = "[salon]\nname = \"Demo\"\nphone = \"555 0170\"\n";
  return files;
}

/// All that an owner's page tells, with its files' names as those of one pet.
std::string told_as(const Made& made, const std::string& key) {
  std::string out = all_of(made);
  for (std::size_t at = 0; (at = out.find(key, at)) != std::string::npos;) {
    out.replace(at, key.size(), "it");
  }
  return out;
}

void run_batch(std::uint32_t seed) {
  Dice dice(seed);
  std::vector<Marked> all;
  for (std::size_t i = 0; i < a_batch; ++i) all.push_back(Maker(dice).make());
  const WithShippedStyles disk(files_of(all));
  Options options;
  options.on = demo_day;
  options.data = FURNISH_SOURCE_DIR;
  Workshop shop(options, disk);
  std::size_t marks = 0;
  for (std::size_t i = 0; i < a_batch; ++i) {
    const std::string key = "pet-" + std::to_string(i), twins_key = "twin-" + std::to_string(i);
    INFO("seed " << seed << "\n" << all[i].pet << "\n" << all[i].visit);
    const auto one = shop.open({"pets/" + key + ".toml", "."}, shop.sink());
    const auto twin = shop.open({"pets/" + twins_key + ".toml", "."}, shop.sink());
    REQUIRE(one);
    REQUIRE(twin);
    options.sheet = &sheets::owner_note;
    const auto owners = shop.sheet(*one, shop.sink());
    REQUIRE(owners);
    CHECK(all_of(*owners).find("MARK") == std::string::npos);
    if (i < twins_of_batch) {
      const auto twins = shop.sheet(*twin, shop.sink());
      REQUIRE(twins);
      CHECK(told_as(*owners, key) == told_as(*twins, twins_key));
    }
    options.sheet = &sheets::note;
    const auto file = shop.sheet(*one, shop.sink());
    REQUIRE(file);
    CHECK(missing(all[i].in_visit, all_of(file->sheet.page.frame)) == std::vector<std::string>{});
    CHECK(missing(all[i].in_pet, all_of(*file)) == std::vector<std::string>{});
    CHECK(missing(all[i].in_files, all_of(*file)) == std::vector<std::string>{});
    options.sheet = &sheets::care;
    const auto care = shop.sheet(*one, shop.sink());
    REQUIRE(care);
    CHECK(care->beside.size() == 1);
    CHECK(all_of(*care).find("MARK") == std::string::npos);
    if (i < twins_of_batch) {
      const auto twins = shop.sheet(*twin, shop.sink());
      REQUIRE(twins);
      CHECK(told_as(*care, key) == told_as(*twins, twins_key));
    }
    // What says that it is for everyone is there.
    const bool shy = all[i].pet.find("\"shy\"") != std::string::npos;
    CHECK(says(owners->sheet.page.frame, "Shy.") == shy);
    CHECK(says(care->sheet.page.frame, "Shy.") == shy);
    marks += all[i].in_pet.size() + all[i].in_visit.size();
  }
  CHECK(marks > 10 * a_batch);
}
}  // namespace

// In a long run a thousand in all, in batches that run beside each other.
TEST_CASE("nothing of the staff's reaches an owner, all of it the file: first part", "[audience]") {
  run_batch(71);
}
TEST_CASE("nothing of the staff's reaches an owner, all of it the file: second part",
          "[audience]") {
  run_batch(72);
}
TEST_CASE("nothing of the staff's reaches an owner, all of it the file: third part", "[audience]") {
  run_batch(73);
}
TEST_CASE("nothing of the staff's reaches an owner, all of it the file: fourth part",
          "[audience]") {
  run_batch(74);
}
}  // namespace furnish::test
