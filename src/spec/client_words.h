#pragma once

#include <set>
#include <span>
#include <string>
#include <string_view>

#include "spec/client_columns.h"

namespace furnish {

/// Headers of one meaning as client lists have them, with bars between; letters alone count, not
/// their case nor their accents. Common practice in the languages of the catalogues, no source.
struct HeaderWords {
  ClientFact fact;
  std::string_view words;
};
std::span<const HeaderWords> header_words();
/// "Name" alone, which may be the pet's or the owner's.
std::string_view name_words();
/// What people write where there is nothing to write: "none", "n/a", "keine"; without accents.
std::set<std::string> nothing_words();
/// True of a column's header such as "Last visit", in the same languages.
bool heads_last_visits(std::string_view header);
/// The tag of a language that is called so in one of the catalogues' languages: "es" of "Spanish"
/// and of "español"; empty if none is.
std::string_view language_named(std::string_view name);
}  // namespace furnish
