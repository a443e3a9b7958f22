#include <catch2/catch.hpp>

#include <regex>
#include <string>

#include "sheet/shipped_words.h"

// What the signs of a language need around them, in every text of its catalogue.

namespace furnish::test {
namespace {
constexpr const char* shipped[] = {"en", "es", "fr", "de", "pt", "vi", "ar"};
constexpr std::string_view narrow = "\u202F", wide = "\u00A0";

/// Calls `see` with each text of a language's catalogue.
template <typename See>
void each_text(const char* language, const See& see) {
  const ShippedWords words(language);
  std::size_t seen = 0;
  for (const auto& [key, text] : words.chain().catalogues.front()->texts) {
    INFO(language << ": " << key << ": " << text.value);
    see(key, text.value);
    ++seen;
  }
  CHECK(seen > 800);
}

std::size_t count(const std::string& text, std::string_view of) {
  std::size_t out = 0;
  for (std::size_t at = 0; (at = text.find(of, at)) != std::string::npos; at += of.size()) ++out;
  return out;
}

bool before(const std::string& text, std::size_t at, std::string_view mark) {
  return at >= mark.size() && text.compare(at - mark.size(), mark.size(), mark) == 0;
}
}  // namespace

// Imprimerie nationale, Lexique des règles typographiques (from memory): a no-break space before
// high signs and inside quotation marks; the narrow one is what pages set.
TEST_CASE("French signs have a narrow no-break space", "[punctuation]") {
  each_text("fr", [](const std::string&, const std::string& text) {
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (std::string_view(":;!?").find(text[i]) != std::string_view::npos) {
        CHECK(before(text, i, narrow));
      }
    }
    for (std::size_t at = 0; (at = text.find("«", at)) != std::string::npos; ++at) {
      CHECK(text.compare(at + 2, narrow.size(), narrow) == 0);
    }
    for (std::size_t at = 0; (at = text.find("»", at)) != std::string::npos; ++at) {
      CHECK(before(text, at, narrow));
    }
  });
}

TEST_CASE("Spanish questions and calls begin with their sign", "[punctuation]") {
  each_text("es", [](const std::string&, const std::string& text) {
    CHECK(count(text, "?") == count(text, "¿"));
    CHECK(count(text, "!") == count(text, "¡"));
  });
}

TEST_CASE("quotation marks are those of the language, in pairs", "[punctuation]") {
  struct Marks {
    const char *language, *open, *close;
  };
  for (const auto& [language, open, close] :
       {Marks{"de", "„", "“"}, Marks{"fr", "«", "»"}, Marks{"es", "«", "»"}, Marks{"ar", "«", "»"},
        Marks{"pt", "“", "”"}, Marks{"vi", "“", "”"}, Marks{"en", "“", "”"}}) {
    each_text(language, [&](const std::string&, const std::string& text) {
      CHECK(count(text, open) == count(text, close));
      for (const std::string_view mark : {"„", "“", "”", "«", "»"}) {
        if (mark != open && mark != close) CHECK(count(text, mark) == 0);
      }
    });
  }
}

// BIPM, The International System of Units, 9th edition, 5.4.3: a space between number and unit; a
// line must not end there. What is counted is held the same.
TEST_CASE("a number and what it counts are never apart", "[punctuation]") {
  // A blade's number ("#10") is a name; the number of an isolate's code is none of ours.
  const std::regex number(R"((^|[^#0-9])[0-9]+ ([A-Za-z%]|[^\x01-\x7F]))");
  const std::regex counted(R"(# )"), measured(R"(\{[0-9]\}½? (%|min|h|Uhr|phút|giờ)(\W|$))");
  for (const char* language : shipped) {
    each_text(language, [&](const std::string& key, const std::string& text) {
      if (key != "sheet.note-mats-grade") CHECK_FALSE(std::regex_search(text, number));
      CHECK_FALSE(std::regex_search(text, measured));
      if (text.find(", plural,") != std::string::npos) {
        CHECK_FALSE(std::regex_search(text, counted));
      }
    });
    // One quantity: broken in the middle it reads as two.
    const std::string mix =
        ShippedWords(language).say(Phrase::mix, {std::string("A"), std::string("B")});
    INFO(mix);
    CHECK(mix.find(' ') == std::string::npos);
    CHECK(count(mix, wide) >= 2);
  }
}

// A percent sign stands apart by the SI; Brazilian and Vietnamese usage sets it close.
TEST_CASE("a percent sign stands as the language sets it", "[punctuation]") {
  for (const char* language : shipped) {
    const bool close = std::string_view(language) == "pt" || std::string_view(language) == "vi";
    each_text(language, [&](const std::string&, const std::string& text) {
      for (std::size_t at = 0; (at = text.find('%', at)) != std::string::npos; ++at) {
        CHECK(before(text, at, wide) != close);
      }
    });
  }
}
}  // namespace furnish::test
