#include <catch2/catch.hpp>

#include <filesystem>

#include "app/program.h"
#include "app/unpack.h"
#include "model/for_everyone.h"
#include "output/pdf.h"
#include "spec/reader.h"
#include "spec/writer.h"

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

Attachment toml(const std::string& name, const std::string& text) {
  Attachment out;
  out.name = name;
  out.bytes = text;
  return out;
}

const std::string rex =
    "[handling]\nhold = \"softly\"\n[pet]\nname = \"Rex\"\n[trim]\nbody.brush = true\n";
const std::string of_everyone =
    "# Out of a sheet that carries what is for everyone: staff's parts are not in this file.\n";

std::string pdf_with(std::vector<Attachment> files) {
  Frame page{{148_mm, 210_mm}, {}};
  DiagnosticSink sink;
  DocumentInfo info;
  info.title = "A sheet";
  info.language = "en-GB";
  info.date = std::string(demo_date);
  const auto bytes = to_pdf(std::vector{page}, info, {{}, std::move(files)}, sink);
  REQUIRE(bytes);
  return *bytes;
}

ToolOutput from_text(const TemporaryFolder& folder, const std::string& text,
                     const std::string& options = {}) {
  const std::string file = folder.file("phone.txt", text);
  return furnish("unpack - " + options + " < " + test::quoted(file),
                 "cd " + folder.path("") + " &&");
}
}  // namespace

TEST_CASE("unpack gives an attachment back byte for byte", "[unpack]") {
  const TemporaryFolder folder;
  const std::string text = "\xEF\xBB\xBF" + rex + "\r\n\r\n";
  const std::string pdf = folder.file("card.pdf", pdf_with({toml("rex.toml", text)}));
  const auto printed = furnish("unpack " + pdf);
  CHECK(printed.err == "");
  CHECK(printed.status == 0);
  CHECK(printed.out == text);
  const std::string to = folder.path("new.toml");
  CHECK(furnish("unpack " + pdf + " -o " + to).status == 0);
  CHECK(bytes_of(to) == text);
  CHECK(furnish("unpack - < " + pdf).out == text);
}

TEST_CASE("unpack says that staff's parts are not in a sheet for everyone", "[unpack]") {
  const TemporaryFolder folder;
  put(folder, "salon/pets/ada.toml",
      "[pet]\nname = \"Ada\"\n[owner]\nphone = \"555\"\n[[alert]]\nlevel = \"danger\"\n"
      "text = \"Bites.\"\n[[alert]]\nlevel = \"notice\"\ntext = \"Deaf.\"\nfor = \"everyone\"\n");
  const std::string card = folder.path("card.pdf"), to = folder.path("new.toml");
  const std::string make = "card ada --salon " + folder.path("salon") + " -o " + card;
  REQUIRE(furnish(make).status == 0);
  const auto ran = furnish("unpack " + card + " -o " + to);
  CHECK(ran.status == 0);
  CHECK(has(ran.err, "warning: staff's parts are not in ada.toml in " + card));
  CHECK(bytes_of(to).starts_with(of_everyone));
  CHECK(has(bytes_of(to), "Deaf."));
  CHECK_FALSE(has(bytes_of(to), "Bites."));
  REQUIRE(furnish(make + " --with-spec staff --force").status == 0);
  const auto whole = furnish("unpack " + card);
  CHECK(whole.err == "");
  CHECK(has(whole.out, "Bites."));
  CHECK_FALSE(has(whole.out, "# Out of"));
}

TEST_CASE("unpack takes a phone's text without what phones add", "[unpack]") {
  const TemporaryFolder folder;
  CHECK(from_text(folder, rex).out == rex);
  std::string windows = "\xEF\xBB\xBF";
  for (const char c : rex) windows += c == '\n' ? std::string("\r\n") : std::string(1, c);
  CHECK(from_text(folder, windows + "\r\n \t\n").out == rex);
  CHECK(from_text(folder, rex.substr(0, rex.size() - 1)).out == rex);
}

TEST_CASE("unpack never touches what is there", "[unpack]") {
  const TemporaryFolder folder;
  put(folder, "pets/rex.toml", "mine");
  fs::create_symlink("nowhere", folder.path("link.toml"));
  for (const char* there : {"pets/rex.toml", "link.toml", "pets"}) {
    const auto ran = from_text(folder, rex, "-o " + std::string(there));
    INFO(ran.err);
    CHECK(ran.status == 1);
    CHECK(has(ran.err, "is there already"));
  }
  CHECK(files_below(folder.path("")) ==
        std::vector<std::string>{"link.toml", "pets/rex.toml", "phone.txt"});
  CHECK(bytes_of(folder.path("pets/rex.toml")) == "mine");
  CHECK(from_text(folder, rex, "-o none/rex.toml").status == 1);
  const auto made = from_text(folder, rex, "-o pets/new.toml");
  CHECK(made.status == 0);
  CHECK(made.out == "pets/new.toml\n");
  CHECK(bytes_of(folder.path("pets/new.toml")) == rex);
}

TEST_CASE("unpack tells every fault with its place, and writes nothing", "[unpack]") {
  const TemporaryFolder folder;
  const std::string bad = "[pet]\nnam = \"Rex\"\n[trim]\nbak.brush = true\n";
  const auto typed = from_text(folder, bad, "-o new.toml");
  CHECK(typed.status == 1);
  CHECK(has(typed.err, "standard input:2:1: error"));
  CHECK(has(typed.err, "standard input:4:1: error"));
  CHECK(!fs::exists(folder.path("new.toml")));
  const std::string pdf = folder.file("card.pdf", pdf_with({toml("rex.toml", bad)}));
  const auto attached = furnish("unpack " + pdf);
  CHECK(attached.status == 1);
  CHECK(attached.out == "");
  CHECK(has(attached.err, "rex.toml in " + pdf + ":2:1: error"));
  CHECK(from_text(folder, "").status == 1);
  CHECK(has(from_text(folder, "\xFF\xFE[").err, "UTF-16"));
  CHECK(has(from_text(folder, "[pet]\n#" + std::string(70'000, 'x')).err, "64 KiB"));
  CHECK(furnish("unpack " + folder.path("none.pdf")).status == 1);
  CHECK(furnish("unpack " + folder.path("")).status == 1);
  CHECK(furnish("unpack").status == 2);
  fs::resize_file(folder.file("huge.pdf", "%PDF-1.7\n"), largest_sheet + 1);
  CHECK(has(furnish("unpack " + folder.path("huge.pdf")).err, "64 MiB"));
  CHECK(has(furnish("unpack " + folder.file("cut.pdf", "%PDF-1.7\n")).err, "PDF is broken"));
}

TEST_CASE("of several attachments, unpack takes the pet's", "[unpack]") {
  const TemporaryFolder folder;
  const Attachment style = toml("plain.toml", "[style]\nname = \"Plain\"\n");
  const Attachment note{"note.txt", "x", "text/plain", ""};
  const Attachment one = toml("rex.toml", rex);
  const Attachment two = toml("ada.toml", "[pet]\nname = \"Ada\"\n");
  CHECK(furnish("unpack " + folder.file("a.pdf", pdf_with({style, note, one}))).out == rex);
  const std::string both = folder.file("b.pdf", pdf_with({one, two}));
  const auto asked = furnish("unpack " + both);
  CHECK(asked.status == 1);
  CHECK(has(asked.err, "ada and rex"));
  CHECK(has(asked.err, "--pet"));
  CHECK(furnish("unpack --pet ada " + both).out == of_everyone + two.bytes);
  CHECK(furnish("unpack --pet eve " + both).status == 1);
  const auto none = furnish("unpack " + folder.file("c.pdf", pdf_with({note})));
  CHECK(none.status == 1);
  CHECK(has(none.err, "no pet's file"));
}

TEST_CASE("unpack takes another salon's products and style as they are", "[unpack]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"S\"\n[products.own]\nname = \"Own\"\n");
  const std::string text = rex + "style = \"theirs\"\n[bath]\nshampoo = \"theirs\"\n";
  const auto ran = from_text(folder, text);
  INFO(ran.err);
  CHECK(ran.status == 0);
  CHECK(ran.out == text);
  CHECK(has(ran.err, "warning: no style 'theirs'"));
  CHECK(!has(ran.err, "error"));
}

TEST_CASE("what the program writes of every sample unpacks to itself", "[unpack]") {
  const TemporaryFolder folder;
  for (const char* name : {"lantern-street", "us-corner"}) {
    const std::string salon = std::string(FURNISH_SOURCE_DIR) + "/samples/" + name;
    const DiskFiles files;
    SourceSet sources;
    DiagnosticSink sink;
    const ReadContext context{files, sources, sink};
    StyleLibrary styles(context, std::string(FURNISH_SOURCE_DIR) + "/styles", salon + "/styles");
    const auto house = read_salon(context, salon + "/salon.toml");
    for (const std::string& file : files.toml_files(salon + "/pets")) {
      const auto pet = read_pet(context, salon + "/pets/" + file, &*house, styles);
      REQUIRE(pet);
      for (const std::string& text : {trim_toml(*pet), pet_toml(for_everyone(*pet))}) {
        const std::string pdf = folder.file("a.pdf", pdf_with({toml(file, text)}));
        const auto attached = furnish("unpack --salon " + salon + " " + pdf);
        INFO(attached.err);
        CHECK(attached.status == 0);
        const bool lacks = has(attached.err, "staff's parts are not in");
        CHECK((lacks || attached.err == ""));
        CHECK(attached.out == (lacks ? of_everyone + text : text));
        CHECK(from_text(folder, text, "--salon " + salon).out == text);
      }
    }
  }
}
}  // namespace furnish::test
