#include <catch2/catch.hpp>

#include "spec/said.h"

namespace furnish::test {
namespace {
class CountingFiles final : public Files {
 public:
  FileContent read_up_to(const std::string& path, std::size_t most) const override {
    ++reads;
    return inner.read_up_to(path, most);
  }
  bool exists(const std::string& path) const override { return inner.exists(path); }
  FolderContent list(const std::string& folder) const override { return inner.list(folder); }
  MemoryFiles inner{FileMap{{"house/a.toml", "[style]\nname = \"A\"\nextends = \"b\"\n"},
                            {"house/b.toml", "[style]\nname = \"B\"\n"},
                            {"house/broken.toml", "[style]\n"}}};
  mutable int reads = 0;
};
}  // namespace

TEST_CASE("a chain of styles has a bound, and its fault shows where it begins", "[style]") {
  const auto chain = [](std::size_t length) {
    FileMap files;
    for (std::size_t i = 0; i < length; ++i) {
      std::string& text = files["house/s" + std::to_string(1000 + i) + ".toml"];
      text = "[style]\nname = \"S\"\n";
      if (i + 1 < length) text += "extends = \"s" + std::to_string(1001 + i) + "\"\n";
    }
    return files;
  };
  Desk good(chain(StyleLibrary::most_extended));
  CHECK(good.styles().find("s1000", {}) != nullptr);
  CHECK(good.said() == "");
  Desk bad(chain(12'000));
  CHECK(bad.styles().find("s1000", {}) == nullptr);
  CHECK(bad.sink().error_count() == 1);
  CHECK(bad.said().find("more than 32 styles extend each other: s1000 extends s1001 extends s1002 "
                        "extends s1003 extends …") != std::string::npos);
}

TEST_CASE("a style lies over what it extends, all the way down", "[style]") {
  Desk desk(FileMap{{"house/base.toml",
                     "[style]\nname = \"Base\"\ncoats = [\"curly\"]\nlooks = \"plain\"\n"
                     "grown_out = \"6 weeks\"\nlines = [[\"neck\", \"cheeks\"]]\n"
                     "[trim]\nbody = { blade = \"4F\" }\nears = { shears = \"straight\" }\n"
                     "[finish]\nears = \"natural\"\ntail = \"plume\"\n"},
                    {"house/middle.toml",
                     "[style]\nname = \"Middle\"\nextends = \"base\"\nlooks = \"neat\"\n"
                     "[trim]\nback = { blade = \"5F\" }\n\"left ear\" = { shears = \"curved\" }\n"
                     "[finish]\ntail = \"docked\"\n"},
                    {"house/top.toml",
                     "[style]\nname = \"Top\"\nextends = \"middle\"\n"
                     "[trim]\nbody = { blade = \"7F\" }\n"}});
  const Style* const top = desk.styles().find("top", {});
  REQUIRE(desk.said() == "");
  REQUIRE(top != nullptr);
  CHECK(top->name == "Top");
  CHECK(top->key == "top");
  CHECK(top->lineage == std::vector<std::string>{"middle", "base"});
  CHECK(top->coats == std::vector<Coat>{Coat::curly});
  CHECK(top->looks == "neat");
  CHECK(top->grown_out == std::chrono::weeks(6));
  CHECK(top->lines == std::vector<Seam>{{Region::cheeks, Region::neck}});
  CHECK(top->finish.tail->value == "docked");
  CHECK(top->finish.ears->value == "natural");
  const ResolvedTrim trim = resolve_trim(top->trim, {});
  const auto blade = [&](Place place) {
    return std::get<Clip>(find_part(trim, place)->entry.tool).blade->name;
  };
  CHECK(blade({Region::back}) == "7F");
  CHECK(blade({Region::rump}) == "7F");
  const auto shears = [&](Side side) {
    return std::get<Scissor>(find_part(trim, {Region::ears, side})->entry.tool).shears;
  };
  CHECK(shears(Side::left) == Shears::curved);
  CHECK(shears(Side::right) == Shears::straight);
  CHECK(desk.place(find_part(trim, {Region::ears, Side::left})->entry.span) ==
        "house/middle.toml:7");
}

TEST_CASE("the salon's own style of one name counts", "[style]") {
  Desk desk(FileMap{{"house/tidy.toml", "[style]\nname = \"House\"\n"},
                    {"house/other.toml", "[style]\nname = \"Other\"\n"},
                    {"styles/tidy.toml", "[style]\nname = \"Ours\"\n"}});
  CHECK(desk.styles().find("tidy", {})->name == "Ours");
  CHECK(desk.styles().path("tidy") == "styles/tidy.toml");
  CHECK(desk.styles().keys() == std::vector<std::string>{"other", "tidy"});
}

TEST_CASE("each style is read when first asked for, and once", "[style]") {
  const CountingFiles files;
  SourceSet sources;
  DiagnosticSink sink;
  StyleLibrary styles({files, sources, sink}, "house", "");
  CHECK(files.reads == 0);
  const Style* const first = styles.find("a", {});
  CHECK(files.reads == 2);
  CHECK(styles.find("b", {}) != nullptr);
  CHECK(styles.find("a", {}) == first);
  CHECK(files.reads == 2);
  const SourceSpan asked_at{sources.add("pets/rex.toml", "style"), {1, 1}, {1, 6}};
  CHECK(styles.find("broken", asked_at) == nullptr);
  CHECK(styles.find("broken", asked_at) == nullptr);
  CHECK(files.reads == 3);
  // The fault itself once; that the style cannot be used, each time somebody asks.
  CHECK(sink.error_count() == 3);
}

TEST_CASE("without any folder there is no style, and that is said", "[style]") {
  const MemoryFiles files({});
  SourceSet sources;
  DiagnosticSink sink;
  StyleLibrary styles({files, sources, sink}, "nowhere", "");
  CHECK(styles.keys().empty());
  CHECK(styles.find("tidy", {}) == nullptr);
  CHECK(said(sink, sources) == "furnish: error: no style 'tidy'\n");
}

TEST_CASE("faults of one file leave the others alone", "[style][isolation]") {
  Desk desk(FileMap{{"house/good.toml", "[style]\nname = \"Good\"\n"},
                    {"house/bad.toml", "[style]\nnmae = \"Bad\"\n"}});
  CHECK_FALSE(desk.pet("[pet]\nname = \"A\"\n[trim]\nstyle = \"bad\"\n"));
  CHECK(desk.pet("[pet]\nname = \"B\"\n[trim]\nstyle = \"good\"\n"));
  CHECK_FALSE(desk.pet("[pet]\nname = 3\n"));
  CHECK(desk.salon(""));
  CHECK(desk.sink().has_errors());
}
TEST_CASE("who asks for a style hears what is wrong with the asking, the salon what with its file",
          "[style]") {
  const CountingFiles files;
  SourceSet sources;
  DiagnosticSink salon, asker;
  StyleLibrary styles({files, sources, salon}, "house", "");
  CHECK(styles.find("tidy", {}, asker) == nullptr);
  REQUIRE(asker.all().size() == 1);
  CHECK(asker.all()[0].code == "unknown-style");
  CHECK(salon.all().empty());
  CHECK(styles.find("broken", {sources.add("pets/rex.toml", ""), {}, {}}, asker) == nullptr);
  CHECK(asker.all().size() == 2);
  CHECK(asker.all()[1].code == "style-has-faults");
  REQUIRE(salon.all().size() == 1);
  CHECK(sources.at(salon.all()[0].span.file).path() == "house/broken.toml");
}
}  // namespace furnish::test
