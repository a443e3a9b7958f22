#include <catch2/catch.hpp>

#include <map>
#include <set>

#include "app/generated.h"
#include "app/workshop.h"
#include "page/shaped_line.h"
#include "share.h"
#include "sheet/desk.h"

namespace furnish::test {
namespace {
const std::size_t a_batch = share_of(250);

/// A pet and a visit with a marker of its own in every field that is for staff.
struct Marked {
  std::string pet, visit;
  std::set<std::string> in_pet, in_visit;
};

class Maker {
 public:
  explicit Maker(Dice& dice) : dice_(dice) {}

  Marked make() {
    Marked out;
    out.pet = pet();
    out.in_pet = std::move(marks_);
    marks_.clear();
    out.visit = visit();
    out.in_visit = std::move(marks_);
    return out;
  }

 private:
  /// A text with a marker that no other field has.
  std::string mark() {
    std::string marker = "MARK" + std::to_string(next_++) + "X";
    marks_.insert(marker);
    return "\"a " + marker + " b\"";
  }
  bool often() { return !dice_.one_in(4); }
  void staff(std::string& out, const char* key) {
    if (often()) out += std::string(key) + " = " + mark() + "\n";
  }

  std::string pet() {
    constexpr const char* coats[] = {"double", "curly", "drop", "silky", "wire", "smooth"};
    constexpr const char* styles[] = {"natural-tidy", "curly-mid",   "drop-short",
                                      "silky-short",  "wire-jacket", "smooth-tidy"};
    const std::size_t kind = dice_.below(6);
    std::string out = "[pet]\nname = \"Rex\"\ncoat = \"" + std::string(coats[kind]) +
                      "\"\nweight = \"9 kg\"\nborn = 2020-01-01\n[owner]\nname = \"Sam\"\n";
    staff(out, "phone");
    staff(out, "email");
    if (often()) out += "address = [" + mark() + ", " + mark() + "]\n";
    if (often()) out += "collects = [" + mark() + "]\n";
    if (often()) {
      out += "[[alert]]\nlevel = \"warning\"\ntext = " + mark() + "\n";
      staff(out, "do");
    }
    if (often()) out += "[[alert]]\nlevel = \"notice\"\ntext = \"shy\"\nfor = \"everyone\"\n";
    out += "[handling]\n";
    for (const char* key : {"hold", "lift", "dryer", "stop"}) staff(out, key);
    if (often()) out += "comes_with = [" + mark() + "]\n";
    out += "[health]\n";
    staff(out, "notes");
    out += "[trim]\nstyle = \"" + std::string(styles[kind]) + "\"\nvisit_every = \"6 weeks\"\n";
    if (often()) {
      out += "[[accept]]\nrule = \"double-coat-short\"\nreason = " + mark() +
             "\nsigned = 2026-01-01\n";
    }
    return out;
  }

  std::string visit() {
    std::string out = "date = 2026-11-24\nminutes = 60\nweight = \"8.9 kg\"\ntold = \"Brush.\"\n";
    out += "[came_in]\n";
    staff(out, "behaviour");
    staff(out, "helped");
    if (often()) out += "ears = { mats = 3, length = \"34 mm\" }\n";
    if (often()) out += "[done]\nchest = { brush = true, why = \"tired\" }\n";
    for (std::size_t i = dice_.below(3); i > 0; --i) {
      out += "[[finding]]\nregion = \"belly\"\nside = \"right\"\nwhat = " + mark() + "\n";
      staff(out, "advised");
    }
    if (often()) {
      out += "[[finding]]\nregion = \"hocks\"\nwhat = \"sore\"\nfor = \"everyone\"\n";
    }
    if (often()) out += "[[consent]]\nto = \"cutting out mats\"\nby = \"Sam\"\n";
    return out;
  }

  Dice& dice_;
  std::set<std::string> marks_;
  int next_ = 0;
};

/// All that a reader could get out of a page: texts, what stands for figures, what links say.
std::string all_of(const Frame& frame) {
  std::string out = text_of(frame);
  for (const Mark& mark : frame.marks) {
    if (const auto* tag = std::get_if<OpenTag>(&mark)) out += tag->alt + tag->id;
    if (const auto* link = std::get_if<LinkMark>(&mark)) out += link->says + link->id;
  }
  return without_space(out);
}

/// The page with all that travels with it.
std::string all_of(const Workshop::Made& made) {
  std::string out = all_of(made.sheet.page.frame) + made.sheet.info.title + made.sheet.info.subject;
  for (const Attachment& file : made.files) out += file.name + file.bytes;
  for (const Workshop::SideFile& file : made.beside) out += file.bytes;
  return out;
}

std::vector<std::string> missing(const std::set<std::string>& marks, const std::string& text) {
  std::vector<std::string> out;
  for (const std::string& mark : marks) {
    if (text.find(mark) == std::string::npos) out.push_back(mark);
  }
  return out;
}

void run_batch(std::uint32_t seed) {
  Dice dice(seed);
  std::map<std::string, std::string> files;
  std::vector<Marked> all;
  for (std::size_t i = 0; i < a_batch; ++i) {
    all.push_back(Maker(dice).make());
    const std::string key = "pet-" + std::to_string(i);
    files["pets/" + key + ".toml"] = all.back().pet;
    files["visits/" + key + "/2026-11-24.toml"] = all.back().visit;
  }
  files["salon.toml"] = "[salon]\nname = \"Demo\"\nphone = \"555 0170\"\n";
  const WithShippedStyles disk(files);
  Options options;
  options.on = demo_day;
  options.data = FURNISH_SOURCE_DIR;
  Workshop shop(options, disk);
  std::size_t marks = 0;
  for (std::size_t i = 0; i < a_batch; ++i) {
    const std::string path = "pets/pet-" + std::to_string(i) + ".toml";
    INFO("seed " << seed << "\n" << all[i].pet << "\n" << all[i].visit);
    const auto one = shop.open({path, "."});
    REQUIRE(one);
    options.command = Command::note;
    options.for_owner = true;
    const auto owners = shop.sheet(*one);
    REQUIRE(owners);
    CHECK(all_of(*owners).find("MARK") == std::string::npos);
    options.for_owner = false;
    const auto file = shop.sheet(*one);
    REQUIRE(file);
    CHECK(missing(all[i].in_visit, all_of(file->sheet.page.frame)) == std::vector<std::string>{});
    CHECK(missing(all[i].in_pet, all_of(*file)) == std::vector<std::string>{});
    options.command = Command::care;
    const auto care = shop.sheet(*one);
    REQUIRE(care);
    CHECK(care->beside.size() == 1);
    CHECK(all_of(*care).find("MARK") == std::string::npos);
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
