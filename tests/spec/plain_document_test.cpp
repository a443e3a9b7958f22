#include "spec/plain_document.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "spec/context.h"

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

void check_same(const TomlTable& a, const TomlTable& b) {
  REQUIRE(a.size() == b.size());
  for (std::size_t i = 0; i < a.size(); ++i) {
    INFO(a[i].key);
    CHECK(a[i].key == b[i].key);
    CHECK(a[i].key_span == b[i].key_span);
    CHECK(a[i].node.span == b[i].node.span);
    REQUIRE(a[i].node.value.index() == b[i].node.value.index());
    if (const auto* const table = std::get_if<TomlTable>(&a[i].node.value)) {
      check_same(*table, std::get<TomlTable>(b[i].node.value));
    } else {
      CHECK(std::get<std::string>(a[i].node.value) == std::get<std::string>(b[i].node.value));
    }
  }
}

/// The tree by the two ways: a number below makes a file one for the parser. False if the plain one
/// leaves the text to it.
bool read_both_ways(const std::string& text) {
  const auto plain = plain_document(SourceText("plain", text), 0);
  if (!plain) return false;
  const MemoryFiles files({{"parsed", text + "\n[zz]\nz = 1\n"}});
  SourceSet sources;
  DiagnosticSink sink;
  auto parsed = read_file({files, sources, sink}, "parsed", "", 4 * Files::largest).document;
  REQUIRE(parsed);
  REQUIRE(sink.error_count() == 0);
  REQUIRE(parsed->root.back().key == "zz");
  parsed->root.pop_back();
  check_same(*plain, parsed->root);
  return true;
}
}  // namespace

TEST_CASE("a file of plain texts is read as TOML's parser reads it", "[spec][plain]") {
  for (const char* const text : {"", "# a remark\n", "[a]\n", "[a]\nb = \"c\"\n", "[a]\nb = \"c\"",
                                 "[a]\n\nb = \"\"\nc-1_X = \"# '{0}' [no]\"",
                                 "[a]\nb = \"żółw ليلى 小白\u202F!\"\n# x\n[b]\nb = \"same key\"\n",
                                 "[1]\n2 = \"3\"\n", "[a]\n\"b c\" = \"d\"\n\"Żółw\" = \"ö\"\n"}) {
    INFO(text);
    CHECK(read_both_ways(text));
  }
}

TEST_CASE("what may be anything else is left to TOML's parser", "[spec][plain]") {
  for (const char* const text : {"a = \"no heading\"\n",
                                 "[a]\nb = \"c\\n\"\n",
                                 "[a]\nb = 'c'\n",
                                 "[a]\nb = \"\"\"c\"\"\"\n",
                                 "[a]\nb = \"c\" # d\n",
                                 "[a]\nb = \"c\"d\"\n",
                                 "[a]\nb = \"\n",
                                 "[a]\nb = \"c\"\nb = \"d\"\n",
                                 "[a]\n[b]\n[a]\n",
                                 "[[a]]\n",
                                 "[a.b]\n",
                                 "[a]\nb.c = \"d\"\n",
                                 "[a]\n\"b\" = \"c\"\nb = \"d\"\n",
                                 "[a]\n\"b\\n\" = \"c\"\n",
                                 "[a]\n\"b = \"c\"\n",
                                 "[a]\n\"\" = \"c\"\n",
                                 "[a]\nb = 1\n",
                                 "[a]\nb= \"c\"\n",
                                 " [a]\n",
                                 "[a] \n",
                                 "[a]\r\n",
                                 "[a]\nb = \"c\td\"\n",
                                 "# a\tremark\n",
                                 "[]\n",
                                 "[a]\n = \"b\"\n"}) {
    INFO(text);
    CHECK_FALSE(plain_document(SourceText("plain", text), 0));
  }
}

TEST_CASE("the shipped catalogues are read plainly, and alike", "[spec][plain]") {
  int plain = 0;
  for (const auto& file : fs::directory_iterator(FURNISH_SOURCE_DIR "/styles/words")) {
    INFO(file.path());
    std::ifstream in(file.path(), std::ios::binary);
    plain += read_both_ways({std::istreambuf_iterator<char>(in), {}});
  }
  CHECK(plain >= 6);
}
}  // namespace furnish::test
