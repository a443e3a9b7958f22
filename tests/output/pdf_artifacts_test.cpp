#include "output/pdf_artifacts.h"

#include <catch2/catch.hpp>

using furnish::with_artifacts;

TEST_CASE("What is shown outside the structure is marked as an artifact") {
  CHECK(with_artifacts("0 0 m 9 9 l S") == "\n/Artifact BMC0 0 m 9 9 l S\nEMC");
  CHECK(with_artifacts("q 1 w\n0 0 9 9 re f Q") == "q 1 w\n/Artifact BMC\n0 0 9 9 re f\nEMC Q");
  CHECK(with_artifacts("BT /f 1 Tf (a) Tj ET") == "\n/Artifact BMCBT /f 1 Tf (a) Tj ET\nEMC");
  CHECK(with_artifacts("/x Do") == "\n/Artifact BMC/x Do\nEMC");
}

TEST_CASE("What is in the structure, or shows nothing, stays as it is") {
  CHECK(with_artifacts("/P << /MCID 0 >> BDC\nBT (a) Tj ET\nEMC").empty());
  CHECK(with_artifacts("/Artifact BMC 0 0 m 9 9 l S EMC").empty());
  CHECK(with_artifacts("q 0 0 9 9 re W n 1 0 0 rg Q").empty());
  CHECK(with_artifacts("").empty());
}

TEST_CASE("Operators are told from what looks like them") {
  // In strings, hexadecimal strings, names, comments and dictionaries.
  CHECK(with_artifacts("/P <</MCID 0>> BDC BT (S \\) EMC f) Tj ET EMC").empty());
  CHECK(with_artifacts("/P <</MCID 0>> BDC BT (a (S) f) Tj <feed> Tj [(S)-3(f)]TJ ET EMC").empty());
  CHECK(with_artifacts("/S gs /EMC gs % 0 0 m S\n1 w").empty());
  CHECK(with_artifacts("/P <</MCID 0>> BDC EMC % x\n0 0 m S") ==
        "/P <</MCID 0>> BDC EMC\n/Artifact BMC % x\n0 0 m S\nEMC");
}

TEST_CASE("Broken content ends somewhere") {
  for (const char* broken : {"(", "(a\\", "<", "<<", "%", "/", "EMC EMC S", "BT (a) Tj", "0 0 m"}) {
    CHECK(with_artifacts(broken).size() < 100);
  }
}
