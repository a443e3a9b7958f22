// Plain text is set without Pango's layout; Pango's is what it has to come to.
#include <pango/pango.h>
#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "share.h"
#include "support.h"

using namespace furnish;

namespace {
namespace fs = std::filesystem;

/// Every text between quotes in the TOML files of a folder, by path: what sheets say in each
/// language, and what the samples' pets, visits and salons say.
std::map<std::string, std::vector<std::string>> texts_under(const fs::path& folder) {
  std::map<std::string, std::vector<std::string>> texts;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (entry.path().extension() != ".toml") continue;
    std::ifstream file(entry.path());
    for (std::string line; std::getline(file, line);) {
      const std::size_t begin = line.find('"'), end = line.rfind('"');
      if (line.starts_with('#') || begin == std::string::npos || end <= begin + 1) continue;
      texts[entry.path().string()].push_back(line.substr(begin + 1, end - begin - 1));
    }
  }
  return texts;
}

struct PlacedGlyph {
  PangoGlyph glyph;
  int x, y;
};

std::vector<PlacedGlyph> glyphs_of(const ShapedLine& line) {
  std::vector<PlacedGlyph> glyphs;
  int pen = 0;
  for (const PangoGlyphItem* item : line.glyph_items()) {
    for (int i = 0; i < item->glyphs->num_glyphs; ++i) {
      const PangoGlyphInfo& info = item->glyphs->glyphs[i];
      glyphs.push_back({info.glyph, pen + info.geometry.x_offset, info.geometry.y_offset});
      pen += info.geometry.width;
    }
  }
  return glyphs;
}

/// What differs between two settings of a text; empty if nothing does.
std::string difference(const ShapedText& plain, const ShapedText& pango) {
  const auto all = [](const ShapedText& text) {
    std::string lines;
    for (const auto& line : text.lines) lines += (lines.empty() ? "" : " / ") + line->text();
    return lines;
  };
  if (all(plain) != all(pango)) return all(plain) + ", not " + all(pango);
  for (std::size_t i = 0; i < plain.lines.size(); ++i) {
    const ShapedLine &a = *plain.lines[i], &b = *pango.lines[i];
    if (a.logical() != b.logical()) {
      return "size of '" + a.text() + "'";
    }
    const std::vector<PlacedGlyph> of_a = glyphs_of(a), of_b = glyphs_of(b);
    const bool same = std::ranges::equal(of_a, of_b, [](PlacedGlyph one, PlacedGlyph other) {
      return one.glyph == other.glyph && one.x == other.x && one.y == other.y;
    });
    if (!same) return "glyphs of '" + a.text() + "'";
  }
  return {};
}

/// Sets each text both ways: the whole in one face, or what stands before its first colon in
/// another, at several sizes and widths.
class BothWays {
 public:
  explicit BothWays(const std::string& language)
      : plain_(*plain_fonts_.fonts, sink_, language),
        pango_(*pango_fonts_.fonts, sink_, language, true) {}

  void hold(const std::string& text) {
    const std::size_t colon = text.find(": ");
    const auto face = static_cast<Face>(number_ % face_count);
    const TypeSize size = TypeSize::quarters(24 + static_cast<int>(number_ * 7 % 60)),
                   other = TypeSize::quarters(30 + static_cast<int>(number_ * 5 % 20));
    std::vector<SizedText> parts;
    if (colon != std::string::npos || number_ % 3 == 0) {
      std::size_t first = colon == std::string::npos ? text.find(' ') : colon + 1;
      if (first == std::string::npos) first = text.size();
      parts = {{text.substr(0, first), Face::semibold, Role::label, size},
               {text.substr(first), face, Role::body, number_ % 4 == 0 ? other : size}};
    } else {
      parts = {{text, face, Role::body, size}};
    }
    const Length indent = number_ % 5 == 0 ? Length::mm(6) : Length{};
    compare(parts, {}, Breaking::never, {});
    for (const double mm : {28.0, 47.5, 96.0}) {
      compare(parts, Length::mm(mm), number_ % 2 == 0 ? Breaking::words : Breaking::balanced,
              indent);
    }
    ++number_;
  }

  int compared() const { return compared_; }
  /// How many stand in several lines that no layout made.
  int wrapped() const { return wrapped_; }

 private:
  void compare(const std::vector<SizedText>& parts, Length width, Breaking breaking,
               Length indent) {
    const auto plain = plain_.shape(parts, width, breaking, {}, indent),
               pango = pango_.shape(parts, width, breaking, {}, indent);
    INFO(parts.front().text << "|" << (parts.size() > 1 ? parts[1].text : std::string()));
    INFO("face " << name(parts.back().face) << ", " << parts.back().size.points() << " pt, in "
                 << width.in_mm() << " mm, language " << plain_.language());
    REQUIRE(difference(*plain, *pango) == "");
    ++compared_;
    // A layout's second line begins further on in its text.
    if (plain->lines.size() > 1 && plain->lines[1]->begins_at() == 0) ++wrapped_;
  }

  test::Desk plain_fonts_, pango_fonts_;
  DiagnosticSink sink_;
  TextShaper plain_, pango_;
  std::size_t number_ = 0;
  int compared_ = 0, wrapped_ = 0;
};
}  // namespace

TEST_CASE("plain text stands as Pango sets it, in every language of the sheets", "[page][plain]") {
  const fs::path root = FURNISH_SOURCE_DIR;
  int compared = 0, wrapped = 0;
  for (const auto& [path, texts] : texts_under(root / "styles" / "words")) {
    INFO(path);
    const std::string language = fs::path(path).stem().string();
    BothWays both(language);
    for (std::size_t i = 0; i < test::share_of(texts.size()); ++i) {
      both.hold(texts[i * texts.size() / test::share_of(texts.size())]);
    }
    compared += both.compared();
    wrapped += both.wrapped();
  }
  CHECK(compared > 1000);
  CHECK(wrapped > 500);
}

TEST_CASE("what people wrote stands as Pango sets it", "[page][plain]") {
  const fs::path root = FURNISH_SOURCE_DIR;
  BothWays english("en"), german("de");
  std::size_t number = 0;
  for (const auto& [path, texts] : texts_under(root / "samples")) {
    INFO(path);
    for (const std::string& text : texts) {
      ++number;
      if (!test::long_run() && number % 8 != 0) continue;
      (number % 3 == 0 ? german : english).hold(text);
    }
  }
  CHECK(english.compared() + german.compared() > 500);
  CHECK(english.wrapped() + german.wrapped() > 50);
}
