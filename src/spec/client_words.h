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
/// Languages by name, each as "es=Spanish|español|…".
std::span<const std::string_view> language_names();

/// Whether one of the words between the bars is this one, case and accents aside.
bool is_one_of(std::string_view word, std::string_view words);
}  // namespace furnish
