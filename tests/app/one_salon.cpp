#include "app/one_salon.h"

#include <algorithm>
#include <array>
#include <filesystem>

#include "app/hushed.h"
#include "app/program.h"
#include "app/run.h"
#include "app/sheet_maker.h"

namespace furnish::test {
namespace fs = std::filesystem;

OneSalon::OneSalon() {
  for (const std::string name : {"salon.toml", "pets/marlow.toml"}) copy(name);
  for (const auto& visit : fs::directory_iterator(sample() + "/visits/marlow")) {
    copy("visits/marlow/" + visit.path().filename().string());
  }
  fs::create_directories(root() + "/photos");
  fs::copy(sample() + "/photos", root() + "/photos", fs::copy_options::recursive);
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
  for (const char* made : {"new", "schemas", "styles", "days"}) fs::remove_all(root() + "/" + made);
  for (const auto& [path, bytes] : sheets) put(folder_, "salon/" + path, bytes);
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
  if (task.command == Command::import_list) {
    options.from = folder_.file("clients.csv", "Dog,Owner\nRex,A. Bo\nFlo,C. Du\n");
    options.write = true;
  }
  if (task.command == Command::unpack) {
    options.pets.clear();
    options.input = folder_.path("marlow-card.pdf");
    options.output = root() + "/pets/again.toml";
  }
  if (task.command == Command::due) {
    options.pets.clear();
    options.within = std::chrono::days(200);
    options.output = root() + "/due.txt";
  }
  const std::string heard = folder_.path("said");
  Outcome out{Exit::ok, {}};
  fs::remove(heard);
  {
    const Hushed hushed(heard);
    out.exit = furnish::run(options, files, disk);
  }
  out.said = bytes_of(heard);
  return out;
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

std::string OneSalon::sample() {
  return FURNISH_SOURCE_DIR "/samples/lantern-street";
}

void OneSalon::copy(const std::string& name) const {
  put(folder_, "salon/" + name, bytes_of(sample() + "/" + name));
}

const std::vector<Task>& all_tasks() {
  static const std::vector<Task> tasks{
      {"a card", Command::sheet, &sheets::card},
      {"a card made again", Command::sheet, &sheets::card, true},
      {"a style sheet", Command::sheet, &sheets::style},
      {"a note", Command::sheet, &sheets::note},
      {"a care sheet made again", Command::sheet, &sheets::care, true},
      {"check", Command::check},
      {"plan", Command::plan},
      {"new visit", Command::new_visit},
      {"new pet", Command::new_files, nullptr, false, "pet"},
      {"new style", Command::new_files, nullptr, false, "style"},
      {"new day", Command::new_files, nullptr, false, "day"},
      {"new salon", Command::new_files, nullptr, false, "salon"},
      {"import", Command::import_list},
      {"unpack", Command::unpack},
      {"due", Command::due}};
  return tasks;
}
}  // namespace furnish::test
