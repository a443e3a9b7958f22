#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <regex>

#include "app/program.h"
#include "base/text.h"
#include "output/pdf_rules.h"
#include "page/prepared_text.h"
#include "share.h"
#include "sheet/desk.h"

namespace furnish::test {
namespace {
/// A line of the page as the text dump has it.
struct Line {
  std::u32string text;                 ///< without marks of direction
  bool one_run;                        ///< all of it is of one font and face
  std::vector<std::u32string> pieces;  ///< what stands between words of another language
};

bool is_direction(char32_t c) {
  return c == 0x61C || c == 0x200E || c == 0x200F || (c >= 0x202A && c <= 0x202E) ||
         (c >= 0x2066 && c <= 0x2069);
}

/// As programs differ in which space they give, and whether a line ends.
std::u32string plain(std::string_view utf8) {
  std::u32string out;
  for (const char32_t c : as_utf32(utf8)) {
    const bool space = c <= 0x20 || c == 0xA0 || c == 0x202F;
    if (is_direction(c) || (space && out.ends_with(U' '))) continue;
    out += space ? U' ' : c;
  }
  return out;
}

bool has_letters_from_right(const std::u32string& text) {
  return std::ranges::any_of(text, runs_from_right);
}

/// Letters of Arabic's alphabet and spaces, nothing else: what no program can take for a number, a
/// sign or an accent, each of which the older ones turn about.
bool is_words(const std::u32string& text) {
  return std::ranges::all_of(
      text, [](char32_t c) { return c == U' ' || (c >= 0x620 && c <= 0x64A && c != 0x640); });
}

/// What a line says in letters from right to left, without the signs beside it: a name from left to
/// right and a sign that is said in words are elements of their own.
std::vector<std::u32string> pieces_of(const std::u32string& text) {
  std::vector<std::u32string> out(1);
  for (const char32_t c : text) {
    const bool letter_from_left = c >= U'A' && c < 0x590 && c != 0xA0 && c != 0xB7 && c != 0xD7;
    if (letter_from_left || c == U'\u25C6' || c == U'\u00B7') {
      out.emplace_back();
    } else {
      out.back() += c;
    }
  }
  constexpr std::u32string_view beside = U" .:\u060C";
  for (std::u32string& piece : out) {
    // A row's number is one too.
    piece.erase(0, std::min(piece.find_first_not_of(U" .:\u060C0123456789#"), piece.size()));
    piece.erase(piece.find_last_not_of(beside) + 1);
  }
  return out;
}

/// The lines with letters from right to left.
std::vector<Line> lines_of(const std::string& dump) {
  static const std::regex form(R"x("([^"\n]*)" ([^\n]*)\n)x");
  std::vector<Line> lines;
  for (std::sregex_iterator it(dump.begin(), dump.end(), form), end; it != end; ++it) {
    const std::string said = (*it)[2], faces = said.substr(0, said.find(" in "));
    std::u32string text = plain((*it)[1].str());
    if (!has_letters_from_right(text)) continue;
    Line& line = lines.emplace_back(Line{text, std::ranges::count(faces, '.') == 1, {}});
    for (const std::string& foreign : matches(said, R"x( in [^ ]+ "([^"\n]*)")x")) {
      const std::size_t at = text.find(plain(foreign));
      REQUIRE(at != std::u32string::npos);
      std::ranges::move(pieces_of(text.substr(0, at)), std::back_inserter(line.pieces));
      text.erase(0, at + plain(foreign).size());
    }
    std::ranges::move(pieces_of(text), std::back_inserter(line.pieces));
  }
  return lines;
}

/// What the elements of the file say in ActualText, in the order of the tree: of a line with words
/// that stand out, one after the other.
std::u32string actual_text(const std::string& pdf) {
  std::u32string text;
  const PdfFile file(bytes_of(pdf));
  for (QPDFObjectHandle element : file.elements()) {
    if (!element.hasKey("/ActualText")) continue;
    text += plain(element.getKey("/ActualText").getUTF8Value());
  }
  return text;
}

/// How many stretches of the pages' content say what they stand for: each breaks its phrase.
int spans_in_words(const std::string& pdf) {
  int count = 0;
  const PdfFile file(bytes_of(pdf));
  for (QPDFObjectHandle page : file.pages()) {
    const auto data = page.getKey("/Contents").getStreamData();
    const std::string content(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
    for (auto at = content.find("/ActualText"); at != content.npos;
         at = content.find("/ActualText", at + 1)) {
      ++count;
    }
  }
  return count;
}

struct Pages {
  TemporaryFolder folder;
  std::vector<std::string> names;  ///< of files, without their endings
  explicit Pages(const std::string& command) {
    for (const char* format : {"pdf", "text"}) {
      const auto ran = furnish(command + " --salon " + sample("lantern-street") + " --on " +
                               std::string(demo_date) + " --language ar --format " + format +
                               " -o " + folder.path("") + "/");
      INFO(ran.err);
      REQUIRE(ran.status == 0);
    }
    for (const std::string& name : files_below(folder.path(""))) {
      if (name.ends_with(".pdf")) names.push_back(name.substr(0, name.size() - 4));
    }
  }
};

/// The numbers of rows inside a sentence are elements of their own too; what stands between them is
/// read as it is then.
bool is_read(const std::u32string& piece, const std::u32string& read) {
  if (read.find(piece) != std::u32string::npos) return true;
  constexpr std::u32string_view number = U"0123456789# .";
  std::size_t at = 0;
  while ((at = piece.find_first_not_of(number, at)) != std::u32string::npos) {
    const std::size_t end = std::min(piece.find_first_of(U"0123456789", at), piece.size());
    std::u32string part = piece.substr(at, end - at);
    part.erase(part.find_last_not_of(number) + 1);
    if (read.find(part) == std::u32string::npos) return false;
    at = end;
  }
  return true;
}

/// How many lines were looked at.
std::size_t check_extracted(const Pages& pages) {
  std::size_t looked_at = 0;
  for (const std::string& name : pages.names) {
    const std::string pdf = pages.folder.path(name + ".pdf");
    const auto lines = lines_of(bytes_of(pages.folder.path(name + ".txt")));
    const std::u32string poppler = plain(run("pdftotext " + pdf + " -").out),
                         mupdf = plain(run("mutool draw -q -F txt " + pdf).out);
    const std::u32string read = actual_text(pdf);
    CHECK(spans_in_words(pdf) == 0);
    for (const Line& line : lines) {
      std::string shown;
      for (const char32_t c : line.text) append(shown, c);
      INFO(name << ": " << shown);
      for (const std::u32string& piece : line.pieces) {
        if (has_letters_from_right(piece)) CHECK(is_read(piece, read));
      }
      if (!line.one_run || !is_words(line.text)) continue;
      ++looked_at;
      CHECK(poppler.find(line.text) != std::u32string::npos);
      // MuPDF of Debian 12 gives glyphs as they stand, from left to right.
      CHECK(mupdf.find({line.text.rbegin(), line.text.rend()}) != std::u32string::npos);
    }
  }
  return looked_at;
}

/// Words of three letters and more, as one text with a space before and after each.
std::string in_words(std::string_view utf8) {
  std::string out = " ";
  std::string word;
  const auto add = [&] {
    if (word.size() > 2) out += word + " ";
    word.clear();
  };
  for (const char c : utf8) {
    const bool latin = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    if (latin) {
      word += c;
    } else {
      add();
    }
  }
  add();
  return out;
}

/// The sentences of a pet's file: what stands between quotes, of four words and more.
std::vector<std::string> sentences_of(const std::string& pet) {
  std::vector<std::string> out;
  for (const std::string& text :
       matches(bytes_of(sample("lantern-street") + "/pets/" + pet + ".toml"), "\"([^\"\n]+)\"")) {
    for (const std::string& sentence : matches(text + ".", "([^.;]+)[.;]")) {
      std::string words = in_words(sentence);
      if (std::ranges::count(words, ' ') > 4) out.push_back(words);
    }
  }
  return out;
}
}  // namespace

TEST_CASE("words from right to left are extracted as they are read", "[languages]") {
  CHECK(check_extracted(Pages(long_run() ? "card" : "card qamar agnes moth gao dot")) > 20);
  CHECK(check_extracted(Pages(long_run() ? "style" : "style qamar")) > 10);
  if (long_run()) CHECK(check_extracted(Pages("care")) > 20);
}

TEST_CASE("no sentence from left to right is parted by another on a page from right to left",
          "[languages]") {
  const Pages pages(long_run() ? "card" : "card agnes bjarne nefeli otter pickle");
  std::size_t looked_at = 0;
  for (const std::string& name : pages.names) {
    std::string read;  // as the page has it, line after line
    for (const std::string& line :
         matches(bytes_of(pages.folder.path(name + ".txt")), R"x("([^"\n]*)" [0-9])x")) {
      read += line + " ";
    }
    const std::string page = in_words(read),
                      file = in_words(
                          run("pdftotext -raw " + pages.folder.path(name + ".pdf") + " -").out);
    for (const std::string& sentence : sentences_of(name.substr(0, name.find('-')))) {
      if (page.find(sentence) == std::string::npos) continue;  // said in the page's language
      INFO(name << ":" << sentence);
      ++looked_at;
      CHECK(file.find(sentence) != std::string::npos);
    }
  }
  CHECK(looked_at > 8);
}

TEST_CASE("no sentence from right to left is parted by another on a page from left to right",
          "[languages]") {
  const std::pair<const char*, const char*> alerts[] = {
      {"جلده يتمزق كالورق", "لا سكين على جلده"},
      {"لا حلقة حول الرقبة", "يد عند الرقبة دائما"},
      {"يخاف من صوت المجفف", "منشفة على رأسه"},
      {"הוא נבהל מהמייבש", "מגבת על הראש"}};
  std::string pet = "[pet]\nname = \"Rex\"\ncoat = \"smooth\"\n";
  for (const auto& [what, instead] : alerts) {
    pet +=
        fmt::format("[[alert]]\nlevel = \"warning\"\ntext = \"{}\"\ndo = \"{}\"\n", what, instead);
  }
  const TemporaryFolder folder;
  put(folder, "pets/rex.toml", pet);
  for (const std::string sheet : {"card", "style"}) {
    const std::string pdf = folder.path(sheet + ".pdf");
    const auto ran = furnish(sheet + " rex --language en --on " + std::string(demo_date) +
                             " --salon " + folder.path("") + " -o " + pdf);
    INFO(sheet << ran.err);
    REQUIRE(ran.status == 0);
    const std::u32string poppler = plain(run("pdftotext " + pdf + " -").out),
                         mupdf = plain(run("mutool draw -q -F txt " + pdf).out);
    for (const auto& alert : alerts) {
      for (const char* const sentence : {alert.first, alert.second}) {
        INFO(sentence);
        const std::u32string read = plain(sentence);
        CHECK(poppler.find(read) != std::u32string::npos);
        // MuPDF of Debian 12 gives glyphs as they stand, from left to right.
        CHECK(mupdf.find({read.rbegin(), read.rend()}) != std::u32string::npos);
      }
    }
  }
}

TEST_CASE("names from right to left are whole on a page from left to right", "[languages]") {
  const TemporaryFolder folder;
  const std::string pdf = folder.path("a.pdf");
  REQUIRE(furnish("card qamar --salon " + sample("lantern-street") + " --on " +
                  std::string(demo_date) + " --language en -o " + pdf)
              .status == 0);
  const std::u32string poppler = plain(run("pdftotext " + pdf + " -").out);
  for (const std::u32string_view name : {U"\u0642\u0645\u0631", U"\u0644\u064A\u0644\u0649"}) {
    CHECK(poppler.find(name) != std::u32string::npos);
  }
}
}  // namespace furnish::test
