#include "app/desk_salon.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/desk_day.h"
#include "app/desk_facts.h"
#include "app/desk_photo.h"
#include "app/desk_print.h"
#include "app/new_files.h"
#include "app/new_visit.h"
#include "app/visit_name.h"
#include "output/make_folder.h"
#include "output/write.h"
#include "spec/document.h"
#include "spec/name_date.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;
constexpr std::string_view ending = ".toml";

/// The folder of each kind whose files lie side by side in one.
constexpr std::array<std::pair<std::string_view, std::string_view>, 3> folders{
    {{"pet", "pets"}, {"day", "days"}, {"style", "styles"}}};

/// Fonts that the page sets its own words in.
constexpr std::array<std::string_view, 5> page_fonts{"SourceSans3-Regular", "SourceSans3-SemiBold",
                                                     "SourceSans3-Bold", "Vazirmatn-Regular",
                                                     "Vazirmatn-Bold"};
constexpr std::size_t largest_font = std::size_t{4} * 1024 * 1024;

/// "marlow/2026-11-24" in its two halves; empty ones if there is no slash.
std::pair<std::string, std::string> halves(std::string_view id) {
  const std::size_t slash = id.find('/');
  if (slash == std::string_view::npos) return {};
  return {std::string(id.substr(0, slash)), std::string(id.substr(slash + 1))};
}
}  // namespace

const SheetMaker* desk_sheet(std::string_view name) {
  if (name == "card") return &sheets::card;
  if (name == "style") return &sheets::style;
  if (name == "care") return &sheets::care;
  if (name == "note") return &sheets::note;
  return name == "note-owner" ? &sheets::owner_note : nullptr;
}

std::optional<desk::FileId> file_at(std::string_view name) {
  if (name == "salon.toml") return desk::FileId{"salon", ""};
  if (!name.ends_with(ending)) return std::nullopt;
  name.remove_suffix(ending.size());
  for (const auto& [kind, folder] : folders) {
    if (!name.starts_with(folder) || name.substr(folder.size(), 1) != "/") continue;
    const std::string_view id = name.substr(folder.size() + 1);
    if (id.find('/') == std::string_view::npos)
      return desk::FileId{std::string(kind), std::string(id)};
  }
  constexpr std::string_view visits = "visits/";
  if (!name.starts_with(visits)) return std::nullopt;
  name.remove_prefix(visits.size());
  if (std::ranges::count(name, '/') != 1) return std::nullopt;
  return desk::FileId{"visit", std::string(name)};
}

SalonAtDesk::SalonAtDesk(const Options& options, const Files& files, const Disk& disk)
    : kept_(options, files, disk), index_(options, files, disk) {}

bool SalonAtDesk::lists(const std::string& in, const std::string& name) {
  const Files& files = kept_.files();
  const std::string folder = in_salon(in);
  auto& names = lists_[in];
  // Of a large salon a list takes long to read: one that was read is asked again, and read again
  // where it does not know the name.
  if (names.contains(name) && files.exists(path_in(folder, name))) return true;
  const std::vector<std::string> now = files.toml_files(folder);
  names = {now.begin(), now.end()};
  return names.contains(name);
}

std::optional<std::string> SalonAtDesk::shown_path(const desk::FileId& file) {
  const Files& files = kept_.files();
  if (file.kind == "salon" && file.id.empty()) {
    return files.exists(in_salon("salon.toml")) ? std::optional("salon.toml") : std::nullopt;
  }
  // Looked up among the names that are there, so that no id is ever a part of a path by itself.
  for (const auto& [kind, folder] : folders) {
    if (file.kind != kind) continue;
    const std::string name = file.id + std::string(ending), in = std::string(folder);
    return lists(in, name) ? std::optional(in + "/" + name) : std::nullopt;
  }
  if (file.kind != "visit") return std::nullopt;
  const auto [pet, date] = halves(file.id);
  const std::string name = date + std::string(ending), in = "visits/" + pet;
  if (!shown_path({"pet", pet}) || !lists(in, name)) return std::nullopt;
  return in + "/" + name;
}

desk::FileText SalonAtDesk::read(const desk::FileId& file) {
  const auto shown = shown_path(file);
  if (!shown) return {std::nullopt, "it is not there"};
  FileContent content = kept_.files().read(in_salon(*shown));
  if (leads_astray(content)) {
    return {std::nullopt, *shown + " is a link, and what it leads to is not TOML as it stands"};
  }
  return {std::move(content.bytes),
          content.fault.empty() ? "" : fmt::format("{} {}", *shown, content.fault)};
}

std::vector<std::pair<std::string, std::string>> SalonAtDesk::visits(std::string_view pet) {
  std::vector<std::pair<std::string, std::string>> out;
  const std::string id(pet);
  if (!shown_path({"pet", id})) return out;
  for (const std::string& name : kept_.files().toml_files(in_salon("visits/" + id))) {
    const std::string date = stem(name);
    out.emplace_back(id + "/" + date, date.substr(0, std::string_view("2026-11-24").size()));
  }
  std::ranges::reverse(out);
  return out;
}

/// Of put-away/ and what is in it: nothing is moved through a link, out of the salon or into it.
std::string SalonAtDesk::away_is_link(const std::string& pet) const {
  for (const std::string& part :
       {std::string("put-away"), std::string("put-away/visits"), "put-away/visits/" + pet}) {
    std::error_code ignored;
    if (fs::is_symlink(in_salon(part), ignored)) {
      return part + " is a link, and nothing is moved through one";
    }
  }
  return {};
}

std::vector<std::pair<std::string, std::string>> SalonAtDesk::away(std::string_view pet) {
  std::vector<std::pair<std::string, std::string>> out;
  const std::string id(pet);
  if (!shown_path({"pet", id}) || !away_is_link(id).empty()) return out;
  for (const std::string& name : kept_.files().toml_files(in_salon("put-away/visits/" + id))) {
    out.emplace_back(id + "/" + stem(name), stem(name));
  }
  std::ranges::reverse(out);
  return out;
}

std::string SalonAtDesk::put_away(const desk::FileId& file) {
  const auto shown = file.kind == "visit" ? shown_path(file) : std::nullopt;
  if (!shown) return "the file is not there any more";
  if (std::string link = away_is_link(halves(file.id).first); !link.empty()) return link;
  return move_to_new_name(*shown, "put-away/visits/" + halves(file.id).first,
                          halves(file.id).second);
}

std::string SalonAtDesk::put_back(const desk::FileId& file) {
  const auto [pet, date] = halves(file.id);
  if (file.kind == "visit" && shown_path({"pet", pet})) {
    if (std::string link = away_is_link(pet); !link.empty()) return link;
  }
  const std::string from = "put-away/visits/" + pet;
  const bool there =
      file.kind == "visit" && shown_path({"pet", pet}) && lists(from, date + std::string(ending));
  if (!there) return "the file is not there any more";
  return move_to_new_name(from + "/" + date + std::string(ending), "visits/" + pet, date);
}

/// Where something of that name is there already the file gets the next number of its day.
std::string SalonAtDesk::move_to_new_name(const std::string& from, const std::string& folder,
                                          const std::string& name) {
  DiagnosticSink said;
  if (!make_folder(in_salon(folder), said, kept_.disk())) return said.all().back().message;
  const auto [date, number] = parse_visit(name);
  const std::string day = date ? to_iso(*date) : name;
  for (int n = std::max(number, 1); n <= most_visits_a_day; ++n) {
    const std::string to =
        fmt::format("{}/{}{}{}", folder, day, n > 1 ? fmt::format("-{}", n) : "", ending);
    if (kept_.disk().rename_to_new(in_salon(from).c_str(), in_salon(to).c_str()) == 0) {
      changed(from);
      changed(to);
      return {};
    }
    if (errno != EEXIST) return fmt::format("{} cannot be moved: {}", from, std::strerror(errno));
  }
  return fmt::format("there are {} of that day already", most_visits_a_day);
}

std::optional<PetPath> SalonAtDesk::pet_path(std::string_view id) {
  const auto shown = shown_path({"pet", std::string(id)});
  return shown ? std::optional(PetPath{in_salon(*shown), kept_.root()}) : std::nullopt;
}

std::string SalonAtDesk::write(const desk::FileId& file, std::string_view text) {
  const auto shown = shown_path(file);
  if (!shown) return "the file is not there any more";
  DiagnosticSink said;
  if (!write_whole(in_salon(*shown), text, Replaces::edited, said, kept_.disk())) {
    return said.all().back().message;
  }
  changed(*shown);
  return {};
}

std::optional<desk::FileId> SalonAtDesk::changed(const std::string& name) {
  const auto file = file_at(name);
  const bool alone = file && (file->kind == "pet" || file->kind == "visit");
  if (!alone) kept_.forget();
  if (alone) {
    index_.changed(file->kind == "pet" ? file->id : halves(file->id).first);
  } else if (file && file->kind == "day") {
    index_.day_changed(file->id);
  } else {
    index_.all_changed();
  }
  return file;
}

SalonAtDesk::Json SalonAtDesk::facts() {
  return desk_facts(kept_);
}

SalonAtDesk::Json SalonAtDesk::find(std::string_view words, std::size_t most) {
  return index_.find(words, most);
}

bool SalonAtDesk::read_on() {
  return index_.read_on();
}

SalonAtDesk::Json SalonAtDesk::look(const desk::LookOrder& order) {
  const auto shown = shown_path(order.file);
  if (!shown) return Json::object();
  const std::string pet = order.file.kind == "visit" ? halves(order.file.id).first : order.file.id;
  return desk_look(kept_, looks_, order, in_salon(*shown), pet_path(pet).value_or(PetPath{}));
}

std::optional<std::string> SalonAtDesk::font(std::string_view name) {
  if (std::ranges::find(page_fonts, name) == page_fonts.end()) return std::nullopt;
  const std::string path = path_in(kept_.shop().data_folder(), fmt::format("fonts/{}.ttf", name));
  return kept_.files().read_up_to(path, largest_font).bytes;
}

SalonAtDesk::Json SalonAtDesk::day(Date date) {
  return desk_day(kept_, date);
}

desk::Made SalonAtDesk::create(std::string_view kind, std::string_view name) {
  // What is said of it is said here, and not with each sheet from now on.
  kept_.shop();
  const auto apart = kept_.apart();
  Workshop& shop = *apart;
  std::optional<std::string> path;
  if (kind == "visit") {
    const auto pet = pet_path(name);
    if (!pet) return {{}, "there is no such pet", "gone"};
    path = start_visit(*pet, shop);
  } else if (kind == "pet" || kind == "day" || kind == "style") {
    path = new_file(kept_.root(), std::string(kind), std::string(name), shop);
  } else {
    return {{}, "there is no such kind of file"};
  }
  if (!path) {
    const auto said = shop.sink().all();
    if (said.empty()) return {{}, "the pet's files have faults; mend them first", "faults"};
    const Diagnostic& last = said.back();
    const bool there = last.code == "exists";
    return {{}, there ? "there is a file of that name already" : last.message, last.code};
  }
  const std::string shown = fs::path(*path).lexically_relative(kept_.root()).string();
  return {changed(shown).value_or(desk::FileId{}), {}};
}

void SalonAtDesk::take_back(const desk::FileId& file) {
  const auto shown = shown_path(file);
  if (!shown) return;
  kept_.disk().unlink(in_salon(*shown).c_str());
  changed(*shown);
}

desk::PhotoMade SalonAtDesk::add_photo(std::string_view visit, std::string_view bytes) {
  auto made = store_photo(kept_, visit, std::string(bytes));
  return {std::move(made.path), std::move(made.fault)};
}

desk::Printed SalonAtDesk::print(const std::vector<desk::SheetWanted>& wanted) {
  std::vector<SheetToPrint> sheets;
  for (const desk::SheetWanted& one : wanted) {
    const SheetMaker* const sheet = desk_sheet(one.sheet);
    const bool visit = one.file.kind == "visit";
    const auto [of, date] = halves(one.file.id);
    const auto pet = pet_path(visit ? of : one.file.id);
    if (sheet == nullptr || !pet || !shown_path(one.file))
      return {std::nullopt, "there is no such sheet"};
    sheets.push_back({*pet, sheet, visit ? date : "", one.language});
  }
  return print_sheets(kept_, sheets);
}

desk::Printed SalonAtDesk::print_day(Date date, std::string_view sheet) {
  if (sheet == "day") return print_whole_day(kept_, date);
  const SheetMaker* const maker = desk_sheet(sheet);
  if (maker == nullptr) return {std::nullopt, "there is no such sheet"};
  std::vector<SheetToPrint> sheets;
  for (const std::string& id : booked_on(kept_, date)) {
    if (const auto pet = pet_path(id)) sheets.push_back({*pet, maker, {}});
  }
  return print_sheets(kept_, sheets, date);
}
}  // namespace furnish
