#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace furnish {

// What the values of a client list are made of.

/// A text cut at each of these; blank parts are left out.
std::vector<std::string> parts_of(std::string_view text, std::span<const std::string_view> at);
/// A list in one value: cut at ends of lines, semicolons, commas, slashes, "+" and "&".
std::vector<std::string> listed_parts(std::string_view);
/// The same, and at "and" in the languages of the catalogues: "Rex and Bella".
std::vector<std::string> named_parts(std::string_view);
/// On one line, as a key's text must be: "one / two".
std::string on_one_line(std::string_view);
/// In pieces as long as a key's text may be, cut between words.
std::vector<std::string> in_pieces(std::string text);
/// The digits of a text; of a number they are what it is compared by.
std::string digits_of(std::string_view);
/// Its sum (see base/fnv.h), as 16 digits of base 16.
std::string hash_of(std::string_view);
/// "4,6" as "4.6 kg". A comma before three digits may divide thousands, and stays a fault unless
/// that would make no dog.
std::string weight_text(std::string text, std::string_view unit);
}  // namespace furnish
