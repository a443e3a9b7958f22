#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace furnish {

/// Code points in valid UTF-8.
std::size_t code_points(std::string_view utf8);
/// Byte offset of code point `n` (from 0); the size if there are fewer.
std::size_t byte_of_code_point(std::string_view utf8, std::size_t n);
/// Byte offset of the first byte that is not UTF-8 (overlong forms and surrogates count); empty if
/// all is well.
std::optional<std::size_t> first_bad_utf8(std::string_view bytes);

/// Without white space at both ends.
std::string_view trimmed(std::string_view);
/// True if nothing of it can be seen: white space, and characters that have no form of their own,
/// such as a space of no width (Unicode's Default_Ignorable_Code_Point).
bool blank(std::string_view utf8);
/// With each character that steers what shows it, and is not seen itself, as "\u{202E}": controls
/// but the tab, ends of lines and marks of direction. So that a terminal shows what a file holds.
std::string visible(std::string_view utf8);
/// The same, and ends of lines stay.
std::string visible_lines(std::string_view utf8);
/// JSON of valid UTF-8 with those characters written as its own escapes (RFC 8259, section 7),
/// which mean the same to who parses it.
std::string visible_json(std::string_view json);
/// True if it holds a mark that turns the direction of what follows (UAX #9: embedding, override,
/// isolate).
bool turns_direction(std::string_view utf8);
/// True if it turns the direction of what follows it too: an embedding or override that stands in
/// no isolate.
bool turns_what_follows(std::string_view utf8);
/// ASCII letters in lower case, all else as it is.
std::string lower_ascii(std::string_view);
/// For comparing what people write: letters of any script without their case and their accents
/// ("Nefeli" and "NÉFÉLI" alike).
std::string plain_letters(std::string_view utf8);
/// First letter as a capital, in any script that has them.
std::string capitalised(std::string_view);
/// First letter in lower case; the rest as it is.
std::string uncapitalised(std::string_view);
std::string joined(std::span<const std::string> parts, std::string_view between);
/// "a, b and c".
std::string listed(std::span<const std::string> parts, std::string_view last = " and ");

/// Edits (insert, delete, replace, swap of neighbours) that turn `a` into `b`, by bytes.
std::size_t edit_distance(std::string_view a, std::string_view b);
/// The candidate with the fewest edits from `word`, the first of equals; empty beyond `limit` edits
/// or where as many letters would change as the word has.
std::optional<std::string_view> nearest(std::string_view word,
                                        std::span<const std::string_view> candidates,
                                        std::size_t limit = 2);
}  // namespace furnish
