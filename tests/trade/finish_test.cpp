#include "trade/finish.h"

#include <catch2/catch.hpp>

#include <set>

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
  }
}

TEST_CASE("each part of a finish has its key, and ears, tail and feet are regions") {
  std::set<std::string_view> keys;
  for (std::size_t i = 0; i < finish_part_count; ++i) keys.insert(key(static_cast<FinishPart>(i)));
  CHECK(keys == std::set<std::string_view>{"ears", "extras", "feet", "nails", "tail"});
  for (const RegionInfo& row : regions()) {
    const auto part = finish_part(row.region);
    if (part) CHECK(key(*part) == row.key);
    const bool ends =
        row.region == Region::ears || row.region == Region::tail || row.region == Region::feet;
    CHECK(part.has_value() == ends);
  }
}

TEST_CASE("a line for a newer groomer for each part of the work") {
  std::set<std::string_view> keys;
  for (std::size_t i = 0; i < method_count; ++i) keys.insert(key(static_cast<Method>(i)));
  CHECK(keys.size() == method_count);
  CHECK_FALSE(keys.contains(""));
  CHECK(find_finish(FinishPart::tail, "plume")->how == Method::tail);
  CHECK(find_finish(FinishPart::nails, "grind")->how == Method::nails_grind);
  CHECK(method_of(Region::pads) == Method::pads);
  CHECK(method_of(Region::chest) == Method::belly_and_chest);
  CHECK_FALSE(method_of(Region::back));
}

TEST_CASE("how a tail ends is read from the trade's words, a ball from free ones too") {
  CHECK(tail_end("carrot") == TailEnd::carrot);
  CHECK(tail_end("flag, trimmed to the hock") == TailEnd::flag);
  CHECK(tail_end("round ball on a clean root") == TailEnd::ball);
  CHECK(tail_end("natural") == TailEnd::natural);
  CHECK(tail_end("as she likes it") == TailEnd::natural);
  CHECK(tail_end("") == TailEnd::natural);
}
