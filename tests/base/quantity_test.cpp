#include "base/quantity.h"

#include <catch2/catch.hpp>

using namespace furnish;
using std::chrono::seconds;

namespace {
/// Narrow and no-break spaces as plain ones.
std::string plain(std::string text) {
  for (const std::string_view space : {std::string_view("\u202F"), std::string_view("\u00A0")}) {
    for (auto at = text.find(space); at != std::string::npos; at = text.find(space)) {
      text.replace(at, space.size(), " ");
    }
  }
  return text;
}
}  // namespace

TEST_CASE("lengths as people write them") {
  CHECK(parse_length("13 mm").value == 13_mm);
  CHECK(parse_length("13mm").value == 13_mm);
  CHECK(parse_length("1.3 cm").value == 13_mm);
  CHECK(parse_length("1/2 in").value == 12700_um);
  CHECK(parse_length("½ in").value == 12700_um);
  CHECK(parse_length("1 1/4 in").value == 31750_um);
  CHECK(parse_length("1¼ in").value == 31750_um);
  CHECK(parse_length("  0.8 mm ").value == 800_um);
  CHECK(parse_length("13\u202Fmm").value == 13_mm);
}

TEST_CASE("what is no length says why") {
  CHECK(parse_length("13").fault.find("the unit is missing") != std::string::npos);
  CHECK(parse_length("13,5 mm").fault.find("not a comma") != std::string::npos);
  CHECK(parse_length("-3 mm").fault.find("negative") != std::string::npos);
  CHECK(parse_length("13 kg").fault.find("'kg' is not one of mm, cm or in") != std::string::npos);
  for (const char* const no : {"", " ", "mm", "1/0 in", "1/ in", "1..2 mm", "13 mm x", "NaN mm",
                               "inf mm", "1e3 mm", "99999999999 mm"}) {
    INFO(no);
    CHECK_FALSE(parse_length(no));
    CHECK_FALSE(parse_length(no).fault.empty());
  }
}

TEST_CASE("weights, volumes, times and spans") {
  CHECK(parse_mass("4.6 kg").value == Mass::micrograms(4'600'000'000));
  CHECK(parse_mass("10 lb 3 oz").value->in_kg() == Approx(4.62097).epsilon(1e-5));
  CHECK(parse_mass("70 lb").value == Mass::micrograms(31'751'465'900));
  CHECK(parse_volume("16 fl oz").value->in_ml() == Approx(473.176473).epsilon(1e-8));
  CHECK(parse_volume("1.6 l").value == Volume::ml(1600));
  CHECK(parse_duration("1 h 25 min").value == seconds(5100));
  CHECK(parse_duration("90 s").value == seconds(90));
  CHECK(parse_span("8 weeks").value->days == std::chrono::days(56));
  CHECK(parse_span("2 months").value->months == 2);
  CHECK(parse_span("1 year 2 months 3 days").value->months == 14);
  CHECK(parse_span("1 year 2 months 3 days").value->days == std::chrono::days(3));
  CHECK(parse_span("1/2 year").value->months == 6);
  CHECK(parse_span("1.5 months").value->months == 1);
  CHECK(parse_span("1.5 months").value->days == std::chrono::days(15));  // half of 30.44
  CHECK(parse_span("1 week 3 days").value->days == std::chrono::days(10));
  CHECK(parse_span("3 years").value->months == 36);
  CHECK_FALSE(parse_mass("4.6"));
  CHECK_FALSE(parse_duration("4 weeks"));
}

TEST_CASE("units as people write them out, or cut them short") {
  CHECK(parse_length("13 MM").value == 13_mm);
  CHECK(parse_length("1/2 inch").value == 12700_um);
  CHECK(parse_length("1/2\"").value == 12700_um);
  CHECK(parse_mass("19.4 lbs").value == parse_mass("19.4 lb").value);
  CHECK(parse_mass("19.4 lbs.").value == parse_mass("19.4 lb").value);
  CHECK(parse_mass("10 pounds 3 ounces").value == parse_mass("10 lb 3 oz").value);
  CHECK(parse_mass("4.6 Kilos").value == parse_mass("4.6 kg").value);
  CHECK(parse_volume("16 Fl Oz").value == parse_volume("16 fl oz").value);
  CHECK(parse_volume("2 litres").value == Volume::ml(2000));
  CHECK(parse_duration("5 minutes").value == seconds(300));
  CHECK(parse_duration("1 hr 25 mins").value == seconds(5100));
  CHECK(parse_span("10 wks").value->days == std::chrono::days(70));
  CHECK(parse_span("1 yr").value->months == 12);
}

TEST_CASE("from one to another is told so") {
  for (const char* const range : {"5-10 min", "5–10 min", "5 to 10 min", "5 - 10 min"}) {
    INFO(range);
    CHECK_FALSE(parse_duration(range));
    CHECK(parse_duration(range).fault.find("one number") != std::string::npos);
  }
  CHECK_FALSE(parse_length("10 - mm"));
}

TEST_CASE("the meanings of a ratio") {
  CHECK(parse_dilution("10:1").value == Dilution{1, 11});
  CHECK(parse_dilution("1:10").value == Dilution{1, 11});
  CHECK(parse_dilution("1 in 10").value == Dilution{1, 10});
  CHECK(parse_dilution("1 to 10").value == Dilution{1, 11});
  CHECK(parse_dilution("10 to 1").value == Dilution{1, 11});
  CHECK(parse_dilution("undiluted").value == Dilution{1, 1});
  CHECK(parse_dilution("1:1").value == Dilution{1, 2});
  CHECK(parse_dilution("neat").value == Dilution{1, 1});
  CHECK(parse_dilution("1 in 1").value == Dilution{1, 1});
  for (const char* const no :
       {"", "10", "10:", ":1", "2:3", "0:1", "1:0", "1 in 0.5", "2 in 10", "2 to 3", "10:1:1"}) {
    INFO(no);
    CHECK_FALSE(parse_dilution(no));
  }
}

TEST_CASE("how quantities are shown") {
  CHECK(plain(to_text(13_mm, Units::metric)) == "13 mm");
  CHECK(plain(to_text(12700_um, Units::us)) == "½ in");
  CHECK(plain(to_text(800_um, Units::us)) == "1⁄32 in");
  CHECK(plain(to_text(16_mm, Units::us)) == "⅝ in");
  CHECK(plain(to_text(800_um, Units::metric)) == "0.8 mm");
  CHECK(plain(to_text(6350_um, Units::metric)) == "6.4 mm");
  CHECK(plain(to_text(3_mm, Units::metric)) == "3 mm");
  CHECK(plain(to_text(LengthRange{13_mm, 25_mm}, Units::metric)) == "13–25 mm");
  CHECK(plain(to_text(LengthRange{13_mm, 13100_um}, Units::metric)) == "13 mm");
  CHECK(plain(to_text(Mass::kg(4.6), Units::metric)) == "4.6 kg");
  CHECK(plain(to_text(Mass::kg(4.62097), Units::us)) == "10 lb 3 oz");
  CHECK(plain(to_text(Volume::ml(455), Units::metric)) == "455 ml");
  CHECK(plain(to_text(Volume::us_fl_oz(15.5), Units::us)) == "15½ fl oz");
  CHECK(plain(to_text(seconds(240))) == "4 min");
  CHECK(plain(to_text(seconds(5400))) == "1 h 30 min");
  CHECK(plain(to_text(seconds(90))) == "90 s");
}

TEST_CASE("inches to the nearest sixteenth") {
  CHECK(inches_text(0.5, 16) == "½");
  CHECK(inches_text(1.25, 16) == "1¼");
  CHECK(inches_text(0, 16) == "0");
  CHECK(plain(inches_text(1.1875, 16)) == "1 3⁄16");
  CHECK(inches_text(0.0625, 16) == "1⁄16");
  CHECK(inches_text(0.99, 16) == "1");
}

TEST_CASE("what is shown reads back within its rounding") {
  for (std::int64_t um = 0; um < 120'000; um += 317) {
    const Length length = Length::micrometres(um);
    const auto mm = parse_length(to_text(length, Units::metric));
    REQUIRE(mm);
    CHECK(std::abs((*mm.value - length).um()) <= (um < 9950 ? 51 : 501));
    const auto inch = parse_length(to_text(length, Units::us));
    INFO(to_text(length, Units::us));
    REQUIRE(inch);
    // Half of a mark: 1/32 in below an eighth, 1/16 below a half, an eighth beyond.
    const int mark = um < 3175 ? 397 : um < 12'700 ? 794 : 1588;
    CHECK(std::abs((*inch.value - length).um()) <= mark + 1);
  }
}
