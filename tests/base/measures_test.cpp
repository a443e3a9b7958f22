#include "base/measures.h"

#include <catch2/catch.hpp>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>

#include "base/quantity.h"

using namespace furnish;

// All exact: NIST Handbook 44, Appendix C.
TEST_CASE("conversions that are exact") {
  CHECK(Length::inches(1) == Length::micrometres(25'400));
  CHECK(Mass::pounds(1) == Mass::micrograms(453'592'370));
  CHECK(Mass::pounds(70).in_kg() == 31.7514659);
  CHECK(Volume::us_fl_oz(1).in_ml() == Approx(29.5735295625).epsilon(1e-7));
  CHECK(Volume::us_fl_oz(128).in_ml() == Approx(3785.411784).epsilon(1e-9));
  CHECK(parse_volume("1 gal").value == Volume::us_fl_oz(128));
}

TEST_CASE("lengths") {
  CHECK(0.8_mm == 800_um);
  CHECK(Length::mm(-0.8) == -800_um);
  CHECK(Length::inches(1, 3) == 8467_um);  // 8466.67
  CHECK(Length::points(72) == Length::inches(1));
  CHECK(scaled(10_mm, 0.333) == 3330_um);
}

TEST_CASE("a dilution's share") {
  CHECK(Dilution{1, 11}.share() == Approx(1.0 / 11));
  CHECK(Dilution{}.share() == 1);
}

#ifdef UNITS_PROGRAM
namespace {
double by_units(const std::string& from, const std::string& to) {
  const std::string command = std::string(UNITS_PROGRAM) + " -t -d 15 '" + from + "' '" + to + "'";
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
  REQUIRE(pipe);
  char line[128] = {};
  REQUIRE(std::fgets(line, sizeof line, pipe.get()) != nullptr);
  return std::strtod(line, nullptr);
}
}  // namespace

TEST_CASE("conversions agree with the units program") {
  for (const int sixteenths : {1, 2, 3, 5, 8, 13, 24, 40}) {
    const std::string inch = std::to_string(sixteenths) + "/16";
    CHECK(parse_length(inch + " in").value->in_mm() ==
          Approx(by_units(std::to_string(sixteenths) + "|16 inch", "mm")).margin(0.0006));
  }
  for (const std::string amount : {"1", "2.2", "10.5", "70", "139"}) {
    CHECK(parse_mass(amount + " lb").value->in_kg() ==
          Approx(by_units(amount + " lb", "kg")).epsilon(1e-9));
    CHECK(parse_mass(amount + " oz").value->in_kg() ==
          Approx(by_units(amount + " oz", "kg")).epsilon(1e-7));
    CHECK(parse_mass(amount + " kg").value->in_pounds() ==
          Approx(by_units(amount + " kg", "lb")).epsilon(1e-9));
    CHECK(parse_volume(amount + " fl oz").value->in_ml() ==
          Approx(by_units(amount + " usfloz", "ml")).epsilon(1e-7));
    CHECK(parse_volume(amount + " gal").value->in_ml() ==
          Approx(by_units(amount + " usgallon", "ml")).epsilon(1e-9));
    CHECK(parse_volume(amount + " l").value->in_us_fl_oz() ==
          Approx(by_units(amount + " l", "usfloz")).epsilon(1e-7));
    CHECK(parse_length(amount + " cm").value->in_inches() ==
          Approx(by_units(amount + " cm", "inch")).margin(0.00002));
  }
}
#endif
