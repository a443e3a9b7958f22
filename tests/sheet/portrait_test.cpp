#include <catch2/catch.hpp>

#include <algorithm>

#include "sheet/desk.h"
#include "sheet/style_sheet.h"
#include "spec/writer.h"

namespace furnish {
namespace {
using test::Desk;

std::vector<const ImageMark*> images_on(const Sheet& sheet) {
  std::vector<const ImageMark*> found;
  for (const Mark& mark : sheet.page.frame.marks) {
    if (const auto* image = std::get_if<ImageMark>(&mark)) found.push_back(image);
  }
  return found;
}

/// All that a page says, whatever stands where.
std::string letters(const Sheet& sheet) {
  std::string text = test::without_space(test::text_of(sheet.page.frame));
  std::ranges::sort(text);
  return text;
}
}  // namespace

TEST_CASE("a portrait is on the style sheet where it costs no smaller type", "[sheet][style]") {
  const auto photo = std::make_shared<const Photograph>(
      Photograph{"photos/a.jpg", PhotoKind::jpeg, 1200, 900, 1, {}});
  int shown = 0, pets = 0;
  for (const std::string_view name : {"lantern-street", "us-corner"}) {
    Desk desk(test::sample(name));
    for (const std::string& key : desk.pets()) {
      INFO(key);
      auto kennel = desk.kennel(key);
      kennel.pet.photo.clear();
      const std::string paper = name == "us-corner" ? "letter" : "A4";
      const auto bare = desk.style(kennel, paper);
      SheetInput input = desk.input(kennel, paper, kinds::style);
      DiagnosticSink sink;
      input.trim_code = trim_toml(kennel.pet);  // as Desk::style() has it
      input.portrait = photo;
      const auto with = make_style_sheet({input, desk.voice()}, sink);
      REQUIRE(bare);
      REQUIRE(with);
      CHECK(images_on(*bare).empty());
      CHECK(with->page.layout == bare->page.layout);
      CHECK(with->page.step >= bare->page.step);
      CHECK(with->page.squeezed == bare->page.squeezed);
      CHECK(letters(*with) == letters(*bare));
      ++pets;
      const auto images = images_on(*with);
      if (images.empty()) continue;
      ++shown;
      REQUIRE(images.size() == 1);
      CHECK(images[0]->area.size.height >= 20_mm);
      CHECK(images[0]->area.size.height <= 34_mm);
      CHECK(images[0]->area.right() == input.paper.size.width - 12_mm);
      CHECK(test::says(with->page.frame, kennel.pet.name.value));
    }
  }
  CHECK(shown * 2 >= pets);
}
}  // namespace furnish
