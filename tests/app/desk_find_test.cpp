#include <fmt/format.h>

#include <array>
#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/desk_salon.h"
#include "app/program.h"

// Whom the desk finds, of a salon that it knows only by and by.

namespace furnish::test {
namespace {
using Strings = std::vector<std::string>;
constexpr int pets = 60;

class FindDesk {
 public:
  FindDesk() {
    constexpr std::array names{"Żółw", "Gạo", "Αργώ", "Снежок", "ليلى", "小白"};
    put(folder_, "salon/salon.toml", "[salon]\nname = \"Test\"\n");
    for (int i = 0; i < pets; ++i) {
      put(folder_, fmt::format("salon/pets/pet-{:02}.toml", i),
          fmt::format("[pet]\nname = \"{} {}\"\ncoat = \"curly\"\n\n[owner]\nname = \"Ágnes {}\"\n",
                      names.at(static_cast<std::size_t>(i) % names.size()), i, i % 7));
    }
    book({"pet-41", "pet-07"});
    options_.salon = folder_.path("salon");
    options_.data = FURNISH_SOURCE_DIR;
    options_.on = parse_date(demo_date);
    salon_.emplace(options_, files_, system_disk());
  }

  void book(const Strings& ids) {
    std::string text = fmt::format("date = {}\n\n", demo_date);
    for (std::size_t i = 0; i < ids.size(); ++i) {
      text += fmt::format("[[booking]]\nat = {:02}:00\npet = \"{}\"\n\n", 9 + i, ids[i]);
    }
    put(folder_, fmt::format("salon/days/{}.toml", demo_date), text);
  }
  void read_all() {
    while (salon_->read_on()) {
    }
  }
  nlohmann::ordered_json find(const char* words) { return salon_->find(words, 60); }
  Strings ids(const char* words) {
    Strings out;
    const auto answer = find(words);
    for (const auto& row : answer["pets"]) out.push_back(row["id"].get<std::string>());
    return out;
  }
  SalonAtDesk& salon() { return *salon_; }
  TemporaryFolder& folder() { return folder_; }

 private:
  TemporaryFolder folder_;
  Options options_;
  DiskFiles files_;
  std::optional<SalonAtDesk> salon_;
};

Strings first_two(const Strings& all) {
  return {all.begin(), all.begin() + std::min<std::ptrdiff_t>(2, std::ssize(all))};
}
}  // namespace

TEST_CASE("today's pets are known before all others") {
  FindDesk desk;
  auto answer = desk.find("");
  while (answer["pets"].size() < 2) answer = desk.find("");  // on a slow computer
  CHECK(answer["pets"][0]["id"] == "pet-41");
  CHECK(answer["pets"][0]["booked"] == "09:00");
  CHECK(answer["pets"][1]["id"] == "pet-07");
  CHECK(answer["pets"].size() + answer["reading"].get<std::size_t>() == pets);
}

TEST_CASE("a pet whose file is named so is found before all are read") {
  FindDesk desk;
  auto answer = desk.find("pet-33");
  while (answer["pets"].empty()) answer = desk.find("pet-33");  // on a slow computer
  CHECK(answer["pets"][0]["id"] == "pet-33");
  CHECK(answer["pets"].size() == 1);
}

TEST_CASE("any part of a name is found, in any script, with accents or without") {
  FindDesk desk;
  desk.read_all();
  CHECK(desk.find("")["reading"] == 0);
  for (const char* const words : {"żółw", "zolw", "OLW", "gao", "αργω", "снеж", "ليل", "白"}) {
    INFO(words);
    CHECK(desk.ids(words).size() == pets / 6);
  }
  CHECK(desk.ids("agnes 3").size() == 9);  // 3, 10, 17 … 59
  CHECK(desk.ids("gao 13") == Strings{"pet-13"});
  CHECK(desk.ids("nobody").empty());
}

TEST_CASE("a day that changes is read again for those it books or booked, a pet for itself") {
  FindDesk desk;
  desk.read_all();
  desk.book({"pet-07", "pet-20"});
  REQUIRE(desk.salon().changed(fmt::format("days/{}.toml", demo_date)));
  CHECK(desk.find("")["reading"].get<int>() <= 3);
  desk.read_all();
  CHECK(first_two(desk.ids("")) == Strings{"pet-07", "pet-20"});
  CHECK(desk.find("pet-41")["pets"][0]["booked"].is_null());

  put(desk.folder(), "salon/pets/pet-41.toml", "[pet]\nname = \"Renamed\"\ncoat = \"curly\"\n");
  desk.salon().changed("pets/pet-41.toml");
  CHECK(desk.ids("renamed") == Strings{"pet-41"});
  put(desk.folder(), "salon/pets/new.toml", "[pet]\nname = \"Newcomer\"\ncoat = \"curly\"\n");
  desk.salon().changed("pets/new.toml");
  CHECK(desk.ids("newcomer") == Strings{"new"});
  std::filesystem::remove(desk.folder().path("salon/pets/new.toml"));
  desk.salon().changed("pets/new.toml");
  CHECK(desk.ids("newcomer").empty());
  CHECK_FALSE(desk.salon().shown_path({"pet", "new"}));
  CHECK(desk.salon().shown_path({"pet", "pet-41"}) == "pets/pet-41.toml");
}
}  // namespace furnish::test
