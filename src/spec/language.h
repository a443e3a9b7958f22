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
/// Such a tag behind a key; empty after a fault or without the key.
std::string read_language(Fields&, const LanguageKey&);
}  // namespace furnish
