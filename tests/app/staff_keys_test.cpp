#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <set>

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
/// Keys that take no words of anyone's, or not beside the others of their table, and what stands
/// behind them instead; nothing: they are left out.
std::string fixed(const KeyInfo& key) {
  if (&key == &keys::pet_trim::style) return "\"natural-tidy\"";
  if (&key == &keys::work::brush) return "true";                         // work names one tool
  if (&key == &keys::home::bath_every) return std::string(key.example);  // its product needs it
  if (key.required) return std::string(key.example);
  return {};
}
bool stands_alone(const KeyInfo& key) {
  // A product is a word of salon.toml, or written out.
  return &key == &keys::product::product || &key == &keys::pet_trim::style;
}

/// A file made of its table, its words numbered from `first`, with what is for staff and what is
/// for everyone told apart.
class TableFile {
 public:
  TableFile(const TableInfo& file, int first) : next_(first) {
    for (const KeyInfo* const key : file.keys) {
      if (key->kind != Kind::table && key->kind != Kind::tables) line(*key, Audience::everyone);
    }
    for (const KeyInfo* const key : file.keys) {
      if (key->kind == Kind::table) section(*key);
      if (key->kind == Kind::tables) repeated(*key);
    }
  }

  const std::string& text() const { return text_; }
  const std::set<std::string>& staff() const { return staff_; }
  const std::set<std::string>& everyone() const { return everyone_; }
  std::set<std::string> of(const KeyInfo& key) const { return by_key_.at(&key); }

 private:
  static Audience narrower(Audience outer, const KeyInfo& key) {
    return outer == Audience::staff ? outer : key.audience;
  }

  std::string marker(const KeyInfo& key, Audience audience) {
    const bool staff = audience == Audience::staff;
    std::string out = fmt::format("{}{}X", staff ? "STAFF" : "OPEN", next_++);
    (staff ? staff_ : everyone_).insert(out);
    by_key_[&key].insert(out);
    return out;
  }

  /// What stands behind a key, for that audience; empty: nothing.
  std::string value(const KeyInfo& key, Audience audience) {
    if (stands_alone(key)) return fixed(key);
    switch (key.kind) {
      case Kind::text:
      case Kind::free_text:
        return '"' + marker(key, audience) + '"';
      case Kind::staff_text:
        return '"' + marker(key, Audience::staff) + '"';
      case Kind::texts:
      case Kind::free_texts:
        return "[\"" + marker(key, audience) + "\"]";
      case Kind::photo:
        return fmt::format("\"photos/{}.jpg\"", marker(key, audience));
      case Kind::product:
      case Kind::table:
        return braces(*key.table, audience);
      case Kind::tables:
        return "[" + braces(*key.table, audience) + "]";
      default:
        return fixed(key);
    }
  }

  std::string braces(const TableInfo& table, Audience outer) {
    std::string out;
    const auto add = [&](std::string_view name, const std::string& text) {
      if (!text.empty()) out += fmt::format("{}{} = {}", out.empty() ? "" : ", ", name, text);
    };
    for (const KeyInfo* const key : table.keys) add(key->name, value(*key, narrower(outer, *key)));
    if (const auto* other = table.others.value) {
      add(other_name(table), other->kind == Kind::table ? value(*other, narrower(outer, *other))
                                                        : std::string(other->example));
    }
    return out.empty() ? out : "{ " + out + " }";
  }

  static std::string other_name(const TableInfo& table) {
    // A place that no table has as a key of its own.
    return table.others.which == OpenKeys::places ? "hocks" : std::string(table.others.value->name);
  }

  void line(const KeyInfo& key, Audience audience) {
    const std::string text = value(key, narrower(audience, key));
    if (!text.empty()) text_ += fmt::format("{} = {}\n", key.name, text);
  }

  void lines(const TableInfo& table, Audience outer) {
    for (const KeyInfo* const key : table.keys) line(*key, outer);
    if (const auto* other = table.others.value) {
      const std::string text = other->kind == Kind::table ? value(*other, narrower(outer, *other))
                                                          : std::string(other->example);
      text_ += fmt::format("{} = {}\n", other_name(table), text);
    }
  }

  void section(const KeyInfo& key) {
    text_ += fmt::format("[{}]\n", key.name);
    lines(*key.table, key.audience);
  }

  /// One that says nothing of whom it is for, and, where it can, one that is for everyone.
  void repeated(const KeyInfo& key) {
    const auto& all = key.table->keys;
    const bool says_for = std::ranges::find(all, &keys::audience) != all.end();
    text_ += fmt::format("[[{}]]\n", key.name);
    lines(*key.table, says_for ? Audience::staff : key.audience);
    if (!says_for) return;
    text_ += fmt::format("[[{}]]\nfor = \"everyone\"\n", key.name);
    lines(*key.table, Audience::everyone);
  }

  std::string text_;
  std::set<std::string> staff_, everyone_;
  std::map<const KeyInfo*, std::set<std::string>> by_key_;
  int next_;
};

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
