#include <catch2/catch.hpp>
#include <set>

#include "app/table_file.h"
#include "app/told.h"
#include "app/workshop.h"
#include "model/for_everyone.h"
#include "sheet/desk.h"
#include "spec/pet_format.h"
#include "spec/visit_format.h"
#include "spec/visit_writer.h"
#include "spec/writer.h"

// The tables of keys say of each whom it is for, and model/for_everyone.h takes out what is for
// staff. Here each is held to the other, through a pet and a visit that are made of the tables:
// every key that takes words has a word of its own. A key that comes to a table is covered from
// that day on.

namespace furnish::test {
namespace {
std::set<std::string> of_these_in(const std::set<std::string>& markers, const std::string& text) {
  std::set<std::string> out;
  for (const std::string& one : markers) {
    if (text.find(one) != std::string::npos) out.insert(one);
  }
  return out;
}
const std::set<std::string> none;

/// What travels inside a page and beside it.
std::string files_of(const Made& made) {
  std::string out;
  for (const Attachment& file : made.files) out += file.name + file.bytes;
  for (const SideFile& file : made.beside) out += file.bytes;
  return out;
}
}  // namespace

TEST_CASE("each key that the tables call staff's is taken from an owner's pages", "[audience]") {
  const TableFile pet(keys::pet_file::file, 100), visit(keys::visit_file::file, 500);
  INFO(pet.text() << "\n-- visit\n" << visit.text());
  CHECK(pet.staff().size() >= 17);
  CHECK(visit.staff().size() >= 7);
  const WithShippedStyles files({{"pets/rex.toml", pet.text()},
                                 {"visits/rex/2026-11-24.toml", visit.text()},
                                 {"salon.toml", "[salon]\nname = \"Demo\"\n"}});
  Options options;
  options.on = demo_day;
  options.data = FURNISH_SOURCE_DIR;
  Workshop shop(options, files);
  const auto one = shop.open({"pets/rex.toml", "."}, shop.sink());
  std::string said;
  for (const Diagnostic& fault : shop.sink().all()) {
    if (fault.severity == Severity::error) said += to_text(fault, shop.sources());
  }
  INFO(said);
  REQUIRE(one);
  REQUIRE(one->all_visits);

  // The other way about: what the tables call everyone's is not taken out.
  const std::string open_pet = pet_toml(for_everyone(one->pet));
  const std::string open_visit = visit_toml(for_everyone(one->visits.back()));
  CHECK(of_these_in(pet.everyone(), open_pet) == pet.everyone());
  // A photo without its file's name is no line of a file; the page has its caption.
  std::set<std::string> open = visit.everyone();
  for (const std::string& caption : visit.of(keys::photo::caption)) open.erase(caption);
  CHECK(of_these_in(visit.everyone(), open_visit) == open);

  // Whom to call when the dog is ill is the owner's own vet: the page says it to the owner, and
  // nothing that travels with it does.
  std::set<std::string> vet = pet.of(keys::vet::name);
  vet.merge(pet.of(keys::vet::phone));
  std::set<std::string> staff_told;
  for (const SheetMaker* const sheet : {&sheets::owner_note, &sheets::care}) {
    options.sheet = sheet;
    const auto made = shop.sheet(*one, shop.sink());
    REQUIRE(made);
    const std::string told = all_of(*made);
    staff_told.merge(of_these_in(pet.staff(), told));
    CHECK(of_these_in(pet.staff(), files_of(*made)) == none);
    CHECK(of_these_in(visit.staff(), told) == none);
    // It could have been seen.
    CHECK(of_these_in(pet.everyone(), told).size() > 5);
    CHECK(of_these_in(visit.everyone(), told).size() > 3);
  }
  CHECK(staff_told == vet);
  // What travels inside a page of the salon's own is for everyone too, unless a person asks.
  for (const SheetMaker* const sheet : {&sheets::card, &sheets::style}) {
    options.sheet = sheet;
    const auto made = shop.sheet(*one, shop.sink());
    REQUIRE(made);
    CHECK(of_these_in(pet.staff(), files_of(*made)) == none);
  }
  // And the file's copy has all of it.
  options.sheet = &sheets::note;
  const auto file = shop.sheet(*one, shop.sink());
  REQUIRE(file);
  CHECK(of_these_in(pet.staff(), all_of(*file)) == pet.staff());
  CHECK(of_these_in(visit.staff(), all_of(*file)) == visit.staff());
}
}  // namespace furnish::test
