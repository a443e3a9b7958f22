#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <regex>

#include "base/text.h"
#include "output/pdf_rules.h"
#include "output/sample_page.h"
#include "output/tool.h"
#include "page/shaped_line.h"

using namespace furnish;
using namespace furnish::test;

namespace {
std::vector<std::string> words_of_two_pages() {
  const auto lines = sample_words();
  auto words = words_of(joined(lines, " "));
  const auto once = words;
  words.insert(words.end(), once.begin(), once.end());
  return words;
}

}  // namespace

TEST_CASE("The structure reads in the order of the marks") {
  Type type;
  const TemporaryFolder folder;
  const std::string path = folder.file("a.pdf", sample_pdf(type));
  const auto result = run("pdfinfo -struct-text " + path);
  REQUIRE(result.status == 0);
  auto lines = matches(result.out, "\"(.*)\"");
  // Words, as Poppler gives the lines of a paragraph as one.
  CHECK(words_of(joined(lines, " ")) == words_of_two_pages());
}

TEST_CASE("Two extractors read the words in the order of the marks") {
  Type type;
  const TemporaryFolder folder;
  const std::string path = folder.file("a.pdf", sample_pdf(type));
  const auto poppler = run("pdftotext -raw " + path + " -");
  CHECK(poppler.status == 0);
  std::string text = poppler.out;
  std::replace(text.begin(), text.end(), '\f', ' ');
  CHECK(words_of(text) == words_of_two_pages());
  const auto mupdf = run("mutool draw -q -F txt " + path);
  CHECK(mupdf.status == 0);
  text = mupdf.out;
  std::replace(text.begin(), text.end(), '\f', ' ');
  CHECK(words_of(text) == words_of_two_pages());
}

namespace {
/// As XML has it, back to a sign; both extractors escape apostrophes.
std::string unescaped(std::string text) {
  for (const auto& [name, sign] : {std::pair{"&apos;", "'"}, {"&#39;", "'"}, {"&#x27;", "'"}}) {
    for (auto at = text.find(name); at != std::string::npos; at = text.find(name)) {
      text.replace(at, std::string_view(name).size(), sign);
    }
  }
  return text;
}

struct Word {
  std::string text;
  double left, right, baseline;  // mm
};

/// From Poppler, which gives a box whose height is the font's ascent and descent.
std::vector<Word> words_by_poppler(const std::string& path, double ascent, double descent) {
  const auto result = run("pdftotext -bbox -l 1 " + path + " -");
  REQUIRE(result.status == 0);
  const std::regex form(
      R"re(<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]+)</word>)re");
  std::vector<Word> list;
  for (std::sregex_iterator it(result.out.begin(), result.out.end(), form), end; it != end; ++it) {
    const auto mm = [&](std::size_t group) { return std::stod((*it)[group]) / 72 * 25.4; };
    const double baseline = mm(2) + (mm(4) - mm(2)) * ascent / (ascent - descent);
    list.push_back({unescaped((*it)[5]), mm(1), mm(3), baseline});
  }
  return list;
}

/// From MuPDF, which gives where each letter's baseline begins.
std::vector<Word> lines_by_mupdf(const std::string& path) {
  const auto result = run("mutool draw -q -F stext " + path + " 1");
  REQUIRE(result.status == 0);
  std::vector<Word> list;
  for (const std::string& line : matches(result.out, "<line([\\s\\S]*?)</line>")) {
    const auto box = matches(line, "bbox=\"([^\"]+)\"");
    Word word{"", 0, std::stod(words_of(box.at(0)).at(2)) / 72 * 25.4, 0};
    word.left = std::stod(matches(line, " x=\"([-\\d.]+)\"").at(0)) / 72 * 25.4;
    word.baseline = std::stod(matches(line, " y=\"([-\\d.]+)\"").at(0)) / 72 * 25.4;
    for (const std::string& c : matches(line, " c=\"([^\"]+)\"")) word.text += unescaped(c);
    list.push_back(word);
  }
  return list;
}

bool stands(const std::vector<Word>& found, const std::string& text, double left, double baseline) {
  return std::ranges::any_of(found, [&](const Word& word) {
    return word.text == text && std::abs(word.left - left) < 0.2 &&
           std::abs(word.baseline - baseline) < 0.2;
  });
}
}  // namespace

TEST_CASE("Text stands where its mark is, to 0.2 mm") {
  Type type;
  const TemporaryFolder folder;
  const std::string bytes = sample_pdf(type), path = folder.file("a.pdf", bytes);
  double ascent = 0, descent = 0;
  const PdfFile file(bytes);
  for (auto object : file.pdf().getAllObjects()) {
    if (!object.isDictionary() || !object.hasKey("/FontFile2")) continue;
    ascent = object.getKey("/Ascent").getNumericValue();
    descent = object.getKey("/Descent").getNumericValue();
  }
  REQUIRE(ascent > 0);
  const auto poppler = words_by_poppler(path, ascent, descent);
  const auto mupdf = lines_by_mupdf(path);
  std::size_t checked = 0;
  for (const Mark& mark : sample_page(type).marks) {
    const auto* text = std::get_if<TextMark>(&mark);
    if (text == nullptr) continue;
    ++checked;
    const double left = text->baseline.x.in_mm(), baseline = text->baseline.y.in_mm();
    const auto words = words_of(text->line->text());
    INFO(text->line->text() << " at " << left << " " << baseline);
    CHECK(stands(poppler, words.front(), left, baseline));
    CHECK(std::ranges::any_of(poppler, [&](const Word& word) {
      return word.text == words.back() && std::abs(word.baseline - baseline) < 0.2 &&
             std::abs(word.right - left - text->line->width().in_mm()) < 0.2;
    }));
    CHECK(std::ranges::any_of(mupdf, [&](const Word& line) {
      return line.text.starts_with(words.front()) && std::abs(line.left - left) < 0.2 &&
             std::abs(line.baseline - baseline) < 0.2;
    }));
  }
  CHECK(checked == sample_words().size());
}
