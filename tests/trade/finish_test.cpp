#include "trade/finish.h"

#include <catch2/catch.hpp>

#include "trade/method.h"

using namespace furnish;

TEST_CASE("a finish is known by the words it begins with, the longest first") {
  CHECK(find_finish(FinishPart::tail, "plume, tip tidied")->words == "plume");
  CHECK(find_finish(FinishPart::nails, "clip, then grind")->words == "clip, then grind");
  CHECK(find_finish(FinishPart::nails, "clip")->words == "clip");
  CHECK(find_finish(FinishPart::ears, "Straight edge")->words == "straight edge");
  CHECK(find_finish(FinishPart::ears, "plume") == nullptr);
  CHECK(find_finish(FinishPart::ears, "as his brother has them") == nullptr);
  for (const FinishInfo& row : finishes()) {
    CHECK(find_finish(row.part, row.words) == &row);
    CHECK_FALSE(row.how.empty());
  }
}

TEST_CASE("a line for a newer groomer for each part of the work") {
  for (int i = 0; i <= static_cast<int>(Method::look); ++i) {
    CHECK_FALSE(how(static_cast<Method>(i)).empty());
    CHECK_FALSE(how(static_cast<Method>(i)).ends_with('.'));
  }
  CHECK(method_of(Region::pads) == Method::pads);
  CHECK(how(Method::pads).find("never straight in") != std::string_view::npos);
  CHECK(method_of(Region::chest) == Method::belly_and_chest);
  CHECK_FALSE(method_of(Region::back));
}
