#include <catch2/catch.hpp>

#include "app/program.h"
#include "output/pdf_rules.h"
#include "sheet/desk.h"

// Which standard a sheet claims: `--standard`.

namespace furnish::test {
namespace {
std::string made(const TemporaryFolder& folder, const std::string& sheet, const std::string& more) {
  const std::string pdf = folder.path("a.pdf");
  const auto ran = furnish(sheet + " --salon " + sample("lantern-street") + " --on " +
                           std::string(demo_date) + " --force -o " + pdf + " " + more);
  INFO(ran.err);
  REQUIRE(ran.status == 0);
  return bytes_of(pdf);
}
}  // namespace

TEST_CASE("a sheet claims PDF/UA-1 unless it is to claim PDF/UA-2", "[standards]") {
  const TemporaryFolder folder;
  const std::string first = made(folder, "card sol", ""),
                    again = made(folder, "card sol", "--standard ua-1");
  CHECK(first == again);
  CHECK(has(first, "%PDF-1.7\n"));
  for (const std::string sheet :
       {"card marlow", "style marlow --language ar", "care gao moth --together", "day", "due"}) {
    INFO(sheet);
    const std::string pdf = made(folder, sheet, "--standard ua-2");
    CHECK(pdf.starts_with("%PDF-2.0\n"));
    CHECK(pdf_faults(pdf) == std::vector<std::string>{});
    CHECK(run("qpdf --check " + folder.path("a.pdf")).status == 0);
  }
}

TEST_CASE("what is read of a sheet is the same in both standards", "[standards]") {
  const TemporaryFolder folder;
  const auto words = [&](const std::string& standard) {
    made(folder, "style juniper", standard);
    return run("pdftotext -raw " + folder.path("a.pdf") + " -").out +
           run("mutool draw -q -F txt " + folder.path("a.pdf")).out;
  };
  CHECK(words("") == words("--standard ua-2"));
  const auto unpacked = furnish("unpack " + folder.path("a.pdf"));
  CHECK(unpacked.status == 0);
  CHECK(has(unpacked.out, "Juniper"));
}

TEST_CASE("a sheet of the other standard is not left as it was made", "[standards]") {
  const TemporaryFolder folder;
  put(folder, "salon/salon.toml", "[salon]\nname = \"S\"\n");
  put(folder, "salon/pets/rex.toml", "[pet]\nname = \"Rex\"\n");
  for (const auto& [asked, version] :
       {std::pair{"ua-1", "%PDF-1.7\n"}, std::pair{"ua-2", "%PDF-2.0\n"}}) {
    CHECK(furnish("card --salon " + folder.path("salon") + " --standard " + asked).status == 0);
    CHECK(bytes_of(folder.path("salon/sheets/rex-card.pdf")).starts_with(version));
  }
  const auto wrong = furnish("card --salon " + folder.path("salon") + " --standard ua2");
  CHECK(wrong.status == 2);
  CHECK(has(wrong.err, "did you mean ua-2?"));
}
}  // namespace furnish::test
