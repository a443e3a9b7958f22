#include "trade/noise.h"

#include <catch2/catch.hpp>

using namespace furnish;

TEST_CASE("a machine's noise is named with the machine") {
  const auto of = [](std::string_view words, Naming how = Naming::lists) {
    const NoiseWords read = read_noise(words, how);
    return std::string(read.clipper ? "c" : "") + (read.grinder ? "g" : "") +
           (read.dryer ? "d" : "");
  };
  CHECK(of("clipper noise") == "c");
  CHECK(of("the buzz of clippers, and grinding sounds") == "cg");
  CHECK(of("loud dryers") == "d");
  CHECK(of("noise") == "cgd");
  CHECK(of("loud children") == "");
  CHECK(of("clipper lines") == "");
  CHECK(of("force dryer") == "");  // what is not wanted for itself is read elsewhere
  CHECK(of("Panics at clipper noise.", Naming::says) == "c");
  CHECK(of("Does not mind clipper noise.", Naming::says) == "");
}
