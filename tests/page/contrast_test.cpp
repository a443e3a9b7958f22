#include "page/contrast.h"

#include <catch2/catch.hpp>

using namespace furnish;

namespace {
constexpr Rgb white{255, 255, 255}, black{0, 0, 0};
constexpr Rgb grey(std::uint8_t level) {
  return {level, level, level};
}
}  // namespace

TEST_CASE("contrast as WCAG 2.2 publishes it", "[page][contrast]") {
  // Pairs of TRADE.md, section 5; 21:1 is the definition's own end.
  CHECK(contrast(grey(0x76), white) == Approx(4.5422).margin(0.0001));
  CHECK(contrast(grey(0x77), white) == Approx(4.4781).margin(0.0001));
  CHECK(contrast(grey(0x59), white) == Approx(7.0047).margin(0.0001));
  CHECK(contrast({255, 0, 0}, white) == Approx(3.9985).margin(0.0001));
  CHECK(contrast(black, white) == Approx(21));
  CHECK(contrast(white, black) == contrast(black, white));
}

TEST_CASE("every ink that text is set in reaches 7:1 on its ground, also in grey",
          "[page][contrast]") {
  for (const Ink ink : {Ink::text, Ink::quiet}) {
    CHECK(contrast(rgb(ink), rgb(Ink::paper)) >= 7);
    CHECK(contrast(to_grey(rgb(ink)), to_grey(rgb(Ink::paper))) >= 7);
  }
  CHECK(contrast(rgb(Ink::paper), rgb(Ink::text)) >= 7);
  CHECK(contrast(rgb(Ink::text), rgb(Ink::tint)) >= 7);
}

TEST_CASE("grey keeps luminance", "[page][contrast]") {
  CHECK(to_grey(grey(0x55)) == grey(0x55));
  CHECK(luminance(to_grey({200, 30, 60})) == Approx(luminance({200, 30, 60})).margin(0.002));
}
