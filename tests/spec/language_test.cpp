#include <catch2/catch.hpp>

#include "spec/language.h"

namespace furnish::test {

// RFC 5646, appendix A: its examples of well-formed tags but for the grandfathered ones, which we
// do not take, and its examples of tags that are not well formed.
TEST_CASE("tags of RFC 5646, appendix A", "[language]") {
  for (const char* tag : {"de",
                          "fr",
                          "ja",
                          "zh-Hant",
                          "zh-Hans",
                          "sr-Cyrl",
                          "sr-Latn",
                          "zh-cmn-Hans-CN",
                          "cmn-Hans-CN",
                          "zh-yue-HK",
                          "yue-HK",
                          "zh-Hans-CN",
                          "sr-Latn-RS",
                          "sl-rozaj",
                          "sl-rozaj-biske",
                          "sl-nedis",
                          "de-CH-1901",
                          "sl-IT-nedis",
                          "hy-Latn-IT-arevela",
                          "de-DE",
                          "en-US",
                          "es-419",
                          "de-CH-x-phonebk",
                          "az-Arab-x-AZE-derbend",
                          "x-whatever",
                          "qaa-Qaaa-QM-x-southern",
                          "de-Qaaa",
                          "sr-Latn-QM",
                          "sr-Qaaa-RS",
                          "en-US-u-islamcal",
                          "zh-CN-a-myext-x-private",
                          "en-a-myext-b-another"}) {
    INFO(tag);
    CHECK(well_formed_language(tag));
  }
  for (const char* tag : {"de-419-DE", "a-DE"}) {
    INFO(tag);
    CHECK_FALSE(well_formed_language(tag));
  }
}

TEST_CASE("what is no tag by the grammar of RFC 5646", "[language]") {
  for (const char* tag : {"", "-", "e", "english", "en_GB", "en-", "-en", "en--GB", "en-GB-", "x",
                          "en-x", "en-a", "en-a-b", "12", "en GB", "ñ", "en-toolonganame"}) {
    INFO(tag);
    CHECK_FALSE(well_formed_language(tag));
  }
}
}  // namespace furnish::test
