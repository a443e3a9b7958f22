#include "sheet/desk.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "app/day.h"
#include "app/week.h"
#include "base/paper.h"
#include "page/shaped_line.h"
#include "sheet/book_index.h"

namespace furnish::test {
namespace {
// A literal, since other files make folders out of it before main().
constexpr std::string_view source = FURNISH_SOURCE_DIR;
}  // namespace

FileContent WithShippedStyles::read_up_to(const std::string& path, std::size_t most) const {
  return own_.exists(path) ? own_.read_up_to(path, most) : disk_.read_up_to(path, most);
}
bool WithShippedStyles::exists(const std::string& path) const {
  return own_.exists(path) || (path.starts_with('/') && disk_.exists(path));
}
FolderContent WithShippedStyles::list(const std::string& folder) const {
  return folder.starts_with('/') ? disk_.list(folder) : own_.list(folder);
}

Desk::Desk(std::map<std::string, std::string> files)
    : Desk(std::make_unique<WithShippedStyles>(std::move(files)), ".") {}
Desk::Desk(const std::string& folder) : Desk(std::make_unique<DiskFiles>(), folder) {}

Desk::Desk(std::unique_ptr<const Files> files, std::string root)
    : files_(std::move(files)), options_(std::make_unique<Options>()) {
  options_->on = demo_day;
  options_->data = source;
  shop_ = std::make_unique<Workshop>(*options_, *files_);
  folder_ = &shop_->folder(root);
  INFO(said());
  REQUIRE(folder_->good());
  options_->units = salon().units;
  speak(salon().language);
}

void Desk::speak(const std::string& language) {
  options_->language = language;
  voice();
}

SheetVoice Desk::voice() {
  const auto found = shop_->voice(*folder_, Pet{}, shop_->sink());
  INFO(said());
  REQUIRE(found);
  return *found;
}

std::vector<std::string> Desk::pets() const {
  std::vector<std::string> keys = files_->toml_files(path_in(folder_->root(), "pets"));
  for (std::string& key : keys) key.resize(key.size() - std::string_view(".toml").size());
  return keys;
}

Kennel Desk::kennel(const std::string& key, Date today) {
  const std::string& root = folder_->root();
  auto one = shop_->open({path_in(root, "pets/" + key + ".toml"), root}, today, shop_->sink());
  INFO(said());
  REQUIRE(one);
  REQUIRE(one->all_visits);
  return *std::move(one);
}

SheetInput Desk::input(const Kennel& kennel, std::string_view paper, const SheetKind& kind) const {
  const auto size = parse_paper(paper);
  REQUIRE(size);
  return sheet_input(kennel, kind, *size);
}

std::optional<Sheet> Desk::made(const Kennel& kennel, const SheetMaker& sheet,
                                std::string_view paper) {
  options_->sheet = &sheet;
  options_->paper = paper;
  auto made = shop_->sheet(kennel, shop_->sink());
  return made ? std::optional(std::move(made->sheet)) : std::nullopt;
}

std::optional<Sheet> Desk::card(const Kennel& kennel, std::string_view paper) {
  return made(kennel, sheets::card, paper);
}

std::optional<Sheet> Desk::style(const Kennel& kennel, std::string_view paper) {
  return made(kennel, sheets::style, paper);
}

std::optional<Sheet> Desk::note(const Kennel& kennel, Audience reader, std::string_view paper) {
  const SheetMaker& sheet = reader == Audience::staff ? sheets::note : sheets::owner_note;
  options_->sheet = &sheet;
  return shop_->nothing_to_show(kennel) ? std::nullopt : made(kennel, sheet, paper);
}

std::optional<Sheet> Desk::care(const Kennel& kennel, std::string_view paper) {
  return made(kennel, sheets::care, paper);
}

std::optional<Sheet> Desk::day(std::string_view paper) {
  options_->sheet = &sheets::card;  // whose words are the salon's own too
  options_->paper = paper;
  bool complete = true;
  return day_sheet(*shop_, *folder_, complete);
}

std::optional<Sheet> Desk::week(std::string_view paper) {
  options_->sheet = &sheets::card;
  options_->paper = paper;
  bool complete = true;
  return week_sheet(*shop_, *folder_, complete);
}

std::vector<Sheet> Desk::index(std::string_view paper) {
  std::vector<BookPet> pets;
  for (const std::string& key : this->pets()) {
    const Pet pet = kennel(key).pet;
    pets.push_back({pet.name.value,
                    pet.owner.name,
                    pet.name.value.substr(0, 1),
                    pets.size() * 4,
                    BookGap::nothing,
                    {}});
  }
  std::ranges::sort(pets, {}, &BookPet::name);
  const auto size = parse_paper(paper);
  REQUIRE(size);
  const Pet nobody;
  const Plan none;
  const SheetInput input{kinds::book, salon(), nobody, none, std::nullopt, demo_day, *size};
  const auto link = [](std::size_t page) { return "page-" + std::to_string(page); };
  std::vector<Sheet> out;
  const auto take = [&](Sheet sheet) {
    out.push_back(std::move(sheet));
    return true;
  };
  const SheetVoice spoken = voice();
  REQUIRE(make_book_index(input, pets, link, spoken, shop_->sink(), take));
  return out;
}

std::string Desk::said() const {
  std::string out;
  for (const Diagnostic& one : sink().all()) out += to_text(one, shop_->sources());
  return out;
}

bool Desk::says(std::string_view code) const {
  return std::ranges::any_of(sink().all(), [&](const Diagnostic& d) { return d.code == code; });
}

Desk desk(const std::string& pet, const std::string& salon) {
  std::map<std::string, std::string> files{{"pets/rex.toml", pet}};
  if (!salon.empty()) files["salon.toml"] = salon;
  return Desk(std::move(files));
}

std::string sample(std::string_view name) {
  return std::string(source) + "/samples/" + std::string(name);
}

std::string text_of(const Frame& frame) {
  std::string out;
  for (const Mark& mark : frame.marks) {
    if (const auto* text = std::get_if<TextMark>(&mark)) out += text->line->text() + "\n";
  }
  return out;
}

std::string without_space(std::string_view text) {
  // White space of Unicode that the page sets or that a file may hold.
  constexpr std::string_view wide[] = {"\u00A0", "\u2007", "\u2009", "\u202F", "\u3000"};
  std::string out;
  while (!text.empty()) {
    const auto* space =
        std::ranges::find_if(wide, [&](std::string_view one) { return text.starts_with(one); });
    if (space != std::ranges::end(wide)) {
      text.remove_prefix(space->size());
      continue;
    }
    if (std::string_view(" \t\n\r").find(text.front()) == std::string_view::npos) {
      out += text.front();
    }
    text.remove_prefix(1);
  }
  return out;
}

bool says(const Frame& frame, std::string_view what) {
  return without_space(text_of(frame)).find(without_space(what)) != std::string::npos;
}
}  // namespace furnish::test
