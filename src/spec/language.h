#pragma once

#include <string>
#include <string_view>

namespace furnish {
class Fields;
struct LanguageKey;

/// True if `tag` is well formed by the grammar of RFC 5646 section 2.1 (BCP 47): language, extended
/// languages, script, region, variants, extensions, private use. Letters of either case. Narrower
/// in two points: a language has two or three letters (four are reserved there and none of five to
/// eight is registered), and the irregular tags that it only grandfathers are not taken.
bool well_formed_language(std::string_view tag);
/// Such a tag, and it says no more than a language: not which digits or calendar the reader has
/// (RFC 6067, "-u-"). Measures, blades and telephone numbers have the digits of the files, and days
/// are Gregorian, whoever reads.
bool plain_language(std::string_view tag);
/// The tag without what plain_language() does not take.
std::string_view language_part(std::string_view tag);
/// Such a plain tag behind a key; empty after a fault or without the key.
std::string read_language(Fields&, const LanguageKey&);
}  // namespace furnish
