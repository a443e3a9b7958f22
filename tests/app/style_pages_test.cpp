#include <catch2/catch.hpp>

#include <algorithm>

#include "app/program.h"
#include "app/promised.h"
#include "app/words_on_page.h"
#include "base/text.h"
#include "model/for_everyone.h"
#include "output/pdf_rules.h"
#include "share.h"
#include "spec/writer.h"

namespace furnish::test {
namespace {
constexpr const char* salons[] = {"lantern-street", "us-corner"};
constexpr const char* sheet_papers[] = {"A4", "letter"};

std::string on_paper(const std::string& salon, const std::string& paper) {
  return " --salon " + sample(salon) + " --on " + std::string(demo_date) + " --paper " + paper +
         " ";
}

/// All style sheets of a salon, a file each, named by pet.
struct Sheets {
  TemporaryFolder folder;
  explicit Sheets(const std::string& salon, const std::string& paper = "A4") {
    const auto ran = furnish("style" + on_paper(salon, paper) + "-o " + folder.path("") + "/");
    INFO(ran.err);
    REQUIRE(ran.status == 0);
  }
  std::string file(const std::string& pet) const { return folder.path(pet + "-style.pdf"); }
  std::string text(const std::string& pet) const {
    return run("pdftotext -raw " + file(pet) + " -").out;
  }
};

bool has_words(const std::string& text, const std::string& what) {
  return without_space(text).find(without_space(what)) != std::string::npos;
}
}  // namespace

TEST_CASE("every sample's style sheet is one good sheet of paper, in a long run on both papers",
          "[style]") {
  for (const char* salon : salons) {
    const std::size_t pets = Desk(sample(salon)).pets().size();
    for (const char* paper : sheet_papers) {
      // A short run tries that of the salon's own country.
      if (!long_run() && (salon == salons[0]) != (paper == sheet_papers[0])) continue;
      const TemporaryFolder folder;
      const std::string pdf = folder.path("all.pdf");
      const auto ran = furnish("style --together" + on_paper(salon, paper) + "-o " + pdf);
      INFO(salon << " on " << paper << "\n" << ran.err);
      REQUIRE(ran.status == 0);
      const std::string bytes = bytes_of(pdf);
      // As soon as one goes on over its other side, each but the last has two pages.
      const std::size_t count = PdfFile(bytes).pages().size();
      CHECK(count <= pets * 2);
      CHECK(count >= pets * 2 - 1);
      CHECK(pdf_faults(bytes) == std::vector<std::string>{});
      const ToolOutput check = run("qpdf --check " + pdf);
      CHECK(check.status == 0);
      CHECK(check.err == "");
      const auto pages = placed_pages(run("pdftotext -bbox-layout " + pdf + " -").out);
      CHECK(pages.size() == count);
      for (const PlacedPage& page : pages) {
        CHECK(misplaced(page, 0) == std::vector<std::string>{});
      }
    }
  }
}

// The five elements of a hand-over in their order: I-PASS, PMC10964397.
TEST_CASE("a style sheet reads in the order of a hand-over", "[style]") {
  for (const char* salon : salons) {
    Desk table(sample(salon));
    const Sheets sheets(salon);
    for (const std::string& key : table.pets()) {
      const Kennel kennel = table.kennel(key);
      const std::string text = sheets.text(key);
      INFO(key << ":\n" << text);
      std::vector<std::string> order{kennel.pet.name.value};
      if (!kennel.pet.alerts.empty()) {
        const auto gravest = std::ranges::min_element(kennel.pet.alerts, {}, &Alert::level);
        order.push_back(gravest->text.value);
      }
      // Poppler's raw order turns right-to-left words round; the frame's own text is held to the
      // file where pets are generated.
      for (const std::string& wish : kennel.pet.preferences.likes) {
        if (std::ranges::all_of(wish, [](char c) { return c > 0; })) order.push_back(wish);
      }
      for (const char* head : {"Part and how", "Order of work", "What if", "ears and tail end?",
                               "Said back to", "Local rules"}) {
        order.emplace_back(head);
      }
      const bool ends = std::ranges::any_of(kennel.pet.finish, [](const FinishLine& line) {
        return line.part == FinishPart::ears || line.part == FinishPart::tail ||
               line.part == FinishPart::feet;
      });
      if (!ends) std::erase(order, "ears and tail end?");
      CHECK(first_missing(text, order) == "");
    }
  }
}

TEST_CASE("every part of the trim is on its style sheet", "[style]") {
  for (const char* salon : salons) {
    Desk table(sample(salon));
    const Sheets sheets(salon);
    for (const std::string& key : table.pets()) {
      const std::string text = lower_ascii(sheets.text(key));
      INFO(key << ":\n" << text);
      for (const TrimPart& part : table.kennel(key).pet.trim) {
        const bool by_name = has_words(text, lower_ascii(to_text(part.place)));
        const bool by_group = std::ranges::any_of(groups(), [&](const GroupInfo& group) {
          return in_group(part.place.region, group.group) &&
                 has_words(text, std::string(group.key));
        });
        const bool other_side =
            part.place.side == Side::both &&
            (has_words(text, "left " + std::string(info(part.place.region).one)) ||
             has_words(text, "right " + std::string(info(part.place.region).one)));
        INFO(to_text(part.place));
        CHECK((by_name || by_group || other_side));
      }
    }
  }
}

TEST_CASE("the figure is told in words, and its discs lead to rows", "[style]") {
  Desk table(sample("lantern-street"));
  const Sheets sheets("lantern-street");
  for (const std::string& key : table.pets()) {
    const PdfFile file(bytes_of(sheets.file(key)));
    INFO(key);
    const auto elements = file.elements();
    const auto figure = std::ranges::find(elements, "/Figure", type_of);
    REQUIRE(figure != elements.end());
    const std::string alt = QPDFObjectHandle(*figure).getKey("/Alt").getUTF8Value();
    CHECK(alt.starts_with(table.kennel(key).pet.name.value));
    CHECK(file.root().getKey("/Lang").getUTF8Value() == "en-GB");
    // Half a second each: three will do.
    if (key == "marlow" || key == "moth" || key == "tuesday") {
      const std::string tree = run("pdfinfo -struct-text " + sheets.file(key)).out;
      CHECK(tree.find("Table") != std::string::npos);
    }
    std::size_t links = 0;
    for (QPDFObjectHandle note : items_of(file.pages().front().getKey("/Annots"))) {
      links += note.getKey("/Subtype").getName() == "/Link";
    }
    const bool trimmed = !table.kennel(key).pet.trim.empty();
    CHECK((links > 0) == trimmed);
  }
}

TEST_CASE("another reader finds the pet's file in the sheet, without what is for staff",
          "[style]") {
  Desk table(sample("lantern-street"));
  const Sheets sheets("lantern-street");
  for (const std::string& key : table.pets()) {
    const TemporaryFolder out;
    INFO(key);
    REQUIRE(run("pdfdetach -saveall -o " + out.path("") + " " + sheets.file(key)).status == 0);
    const Pet pet = table.kennel(key).pet;
    const std::string found = bytes_of(out.path(key + ".toml"));
    CHECK(found == pet_toml(for_everyone(pet)));
    if (!pet.owner.phone.empty()) CHECK(found.find(pet.owner.phone) == std::string::npos);
  }
}

TEST_CASE("a phone reads the trim off a grey print of every style sheet", "[style]") {
  for (const char* salon : salons) {
    Desk table(sample(salon));
    const Sheets sheets(salon, table.salon().paper.sheet.name == "letter" ? "letter" : "A4");
    for (const std::string& key : table.pets()) {
      INFO(salon << ": " << key);
      const std::string print = sheets.folder.path(key);
      // The code stands on the other side where there is one.
      REQUIRE(run("pdftoppm -r 150 -gray " + sheets.file(key) + " " + print).status == 0);
      const auto read = run("zbarimg -q --raw $(ls " + print + "-*.pgm | tail -n 1)");
      CHECK(read.status == 0);
      CHECK(read.out == trim_toml(table.kennel(key).pet) + "\n");
      CHECK(has_words(sheets.text(key), "hold a phone\u2019s camera over it"));
    }
  }
}
}  // namespace furnish::test
