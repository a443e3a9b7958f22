#include <catch2/catch.hpp>

#include "output/pdf_text.h"

using namespace furnish;

TEST_CASE("Spans that say what spaces and ligatures are go, what they hold stays") {
  CHECK(without_plain_spans(
            "/P <</MCID 0>> BDC BT (o)Tj\n"
            "/Span << /ActualText <feff00660066> >> BDC\n<0001>Tj\nEMC\n(e)Tj ET EMC") ==
        "/P <</MCID 0>> BDC BT (o)Tj\n<0001>Tj\n(e)Tj ET EMC");
  CHECK(without_plain_spans("BT /Span << /ActualText <feff00a0> >> BDC ( )Tj EMC ET") ==
        "BT ( )Tj ET");
}

TEST_CASE("Spans that say more stay, and so does what only looks like one") {
  CHECK(without_plain_spans("BT /Span << /ActualText <feff0661> >> BDC <01>Tj EMC ET").empty());
  CHECK(without_plain_spans("BT (/Span << /ActualText <feff00a0> >> BDC) Tj ET").empty());
  CHECK(without_plain_spans("/P <</MCID 0>> BDC EMC").empty());
  CHECK(without_plain_spans("").empty());
  // The inner span goes, the outer one and its end stay.
  CHECK(without_plain_spans("/Span << /ActualText <feff0661> >> BDC "
                            "/Span << /ActualText <feff0020> >> BDC ( )Tj EMC (a)Tj EMC") ==
        "/Span << /ActualText <feff0661> >> BDC ( )Tj (a)Tj EMC");
}

TEST_CASE("A map to Unicode reads ligatures as letters") {
  // Unicode 15, NormalizationTest.txt: FB00 is 0066 0066, FB03 is 0066 0066 0069, 00A0 is 0020.
  CHECK(with_plain_characters(
            "2 beginbfchar\n<0001> <fb00>\n<0002> <fb03>\n<20> <00a0>\nendbfchar") ==
        "2 beginbfchar\n<0001> <00660066>\n<0002> <006600660069>\n<20> <0020>\nendbfchar");
  CHECK(with_plain_characters("<fb00> <0041>").empty());
}
