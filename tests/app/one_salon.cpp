#include "app/one_salon.h"

#include <algorithm>
#include <filesystem>
#include <stdexcept>

#include "app/hushed.h"
#include "app/program.h"
#include "app/run.h"
#include "app/sheet_maker.h"

namespace furnish::test {
namespace fs = std::filesystem;

OneSalon::OneSalon() {
  constexpr std::string_view salon =
      "[salon]\nname = \"S\"\nlanguage = \"en-GB\"\n[products.oat]\nname = \"oat\"\ndilution = "
      "\"10:1\"\n";
  constexpr std::string_view pet =
      "[pet]\nname = \"Marlow\"\nphoto = \"photos/marlow.jpg\"\n[owner]\nlanguage = \"es\"\n"
      "[[alert]]\nlevel = \"warning\"\ntext = \"Snaps.\"\n[bath]\nshampoo = { product = \"oat\" "
      "}\n[trim]\n"
      "style = \"short\"\nvisit_every = \"8 weeks\"\n";
  constexpr std::string_view style =
      "[style]\nname = \"Short\"\nextends = \"natural-tidy\"\n[trim]\nbelly = { blade = \"10\" }\n";
  constexpr std::string_view day = "date = 2026-11-25\n[[booking]]\npet = \"marlow\"\nat = 10:00\n";
  put(folder_, "salon/salon.toml", salon);
  put(folder_, "salon/pets/marlow.toml", pet);
  put(folder_, "salon/styles/short.toml", style);
  put(folder_, "salon/visits/marlow/2026-09-29.toml", "date = 2026-09-29\nunfinished = false\n");
  put(folder_, "salon/visits/marlow/2026-11-24.toml",
      "date = 2026-11-24\nunfinished = false\nnext = 2027-01-19\n[[photo]]\nfile = \"photos/marlow.jpg\"\nwhen = "
      "\"after\"\n");
  put(folder_, "salon/days/2026-11-25.toml", day);
  fs::create_directories(root() + "/photos");
  const std::string photo = folder_.path("salon/photos/marlow.jpg");
  const ToolOutput drawn = test::run("convert -size 480x360 gradient:tan-brown " + photo);
  if (drawn.status != 0) throw std::runtime_error("convert: " + drawn.err);
  written_ = tree();
  // A sheet to unpack, outside of the salon.
  const Outcome card =
      run({"", Command::sheet, &sheets::card}, "2026-11-25", DiskFiles(), system_disk());
  if (card.exit == Exit::ok) {
    fs::copy_file(root() + "/sheets/marlow-card.pdf", folder_.path("marlow-card.pdf"));
  }
  restore({});
}

Tree OneSalon::tree() const {
  Tree out;
  for (const std::string& path : files_below(root())) out[path] = bytes_of(root() + "/" + path);
  return out;
}

void OneSalon::restore(const Tree& sheets) const {
  fs::remove_all(root() + "/sheets");
  for (const auto& [path, bytes] : tree()) {
    if (!written_.contains(path)) fs::remove(root() + "/" + path);
  }
  for (const char* made : {"new", "schemas"}) fs::remove_all(root() + "/" + made);
  for (const auto& [path, bytes] : sheets) put(folder_, "salon/" + path, bytes);
}

void OneSalon::give_back() const {
  fs::remove_all(root());
  for (const auto& [path, bytes] : written_) put(folder_, "salon/" + path, bytes);
}

Outcome OneSalon::run(const Task& task, std::string_view day, const Files& files,
                      const Disk& disk) const {
  Options options;
  options.command = task.command;
  if (task.sheet != nullptr) options.sheet = task.sheet;
  options.salon = root();
  options.data = FURNISH_SOURCE_DIR;
  options.on = parse_date(day);
  options.pets = {"marlow"};
  options.kind = task.kind;
  if (task.command == Command::check) options.pets = {root()};
  if (task.kind == "salon") options.pets = {root() + "/new"};
  if (task.kind == "pet" || task.kind == "style") options.pets = {"bo", "flo"};
  if (task.kind == "day") options.pets = {"2026-12-01"};
  if (task.command == Command::import_list || task.kind == "pet, of a list") {
    options.kind = "pet";
    options.pets = {"Rex", "Flo"};
    const bool shorter = task.again && day < "2026-11-25";  // the list has grown since then
    options.from = folder_.file(
        "clients.csv", shorter ? "Dog,Owner\nRex,A. Bo\n" : "Dog,Owner\nRex,A. Bo\nFlo,C. Du\n");
    options.write = true;
  }
  if (task.command == Command::unpack) {
    options.pets.clear();
    options.input = folder_.path("marlow-card.pdf");
    options.output = root() + "/pets/again.toml";
  }
  if (task.command == Command::due || task.command == Command::find) {
    options.pets.clear();
    options.words = {"marlow"};
    options.within = std::chrono::days(200);
    options.output = root() + "/due.txt";
  }
  if (task.more) task.more(options);
  Outcome out{Exit::ok, {}};
  forget_said();
  {
    const Hushed hushed(folder_.path("said"));
    out.exit = furnish::run(options, files, disk);
  }
  out.said = said();
  return out;
}

std::string OneSalon::said() const {
  const std::string path = folder_.path("said");
  return fs::exists(path) ? bytes_of(path) : std::string();
}

void OneSalon::forget_said() const {
  fs::remove(folder_.path("said"));
}

Tree OneSalon::made() const {
  Tree out;
  for (const auto& [path, bytes] : tree()) {
    if (!written_.contains(path)) out[path] = bytes;
  }
  return out;
}

bool OneSalon::left_unfinished() const {
  return std::ranges::any_of(made(), [](const auto& file) {
    return file.first.find("/.furnish-") != std::string::npos ||
           file.first.starts_with(".furnish-");
  });
}

const std::vector<Task>& all_tasks() {
  const auto together = [](Options& o) { o.together = true; };
  const auto as_page = [](Options& o) {
    o.as_page = true;
    o.output.clear();
  };
  const auto with_files = [](Options& o) { o.spec_for = Audience::staff; };
  static const std::vector<Task> tasks{
      {"a card", Command::sheet, &sheets::card, false, {}, {}, true},
      {"a card made again", Command::sheet, &sheets::card, true},
      {"a style sheet", Command::sheet, &sheets::style, false, {}, {}, true},
      {"a note", Command::sheet, &sheets::note},
      {"a care sheet made again", Command::sheet, &sheets::care, true},
      {"check", Command::check},
      {"plan", Command::plan},
      {"new visit", Command::new_visit},
      {"new pet", Command::new_files, nullptr, false, "pet"},
      {"new style", Command::new_files, nullptr, false, "style", {}, true},
      {"new day", Command::new_files, nullptr, false, "day"},
      {"new pet from a list", Command::new_files, nullptr, false, "pet, of a list"},
      {"new salon", Command::new_files, nullptr, false, "salon"},
      {"import", Command::import_list},
      {"import, of which only what it would do is shown",
       Command::import_list,
       nullptr,
       false,
       {},
       [](Options& o) { o.write = false; },
       true},
      {"import of a list that has grown", Command::import_list, nullptr, true},
      {"unpack", Command::unpack},
      {"due", Command::due},
      {"who is found", Command::find, nullptr, false, {}, {}, true},
      {"cards together", Command::sheet, &sheets::card, true, {}, together},
      {"the rules made again", Command::rules, nullptr, true, {}, {}, true},
      {"a book made again", Command::book, nullptr, true, {}, with_files, true},
      {"a day", Command::day, nullptr, false, {}, {}, true},
      {"a week made again", Command::day, nullptr, true, {}, [](Options& o) { o.week = true; }},
      {"who is due, as a page", Command::due, nullptr, true, {}, as_page, true},
      {"who is found, as a page", Command::find, nullptr, true, {}, as_page, true},
      {"what runs out, as a page", Command::expiring, nullptr, false, {}, as_page}};
  return tasks;
}
}  // namespace furnish::test
