#pragma once

#include "spec/keys.h"
#include "spec/trim_format.h"
#include "trade/coat.h"

// A style's file.

namespace furnish::keys {

namespace style {
inline constexpr auto name = must(text("name", "\"Mud season\"", "as it stands on paper"));
inline constexpr auto extends =
    text("extends", "\"curly-mid\"", "the style that holds where this one says nothing");
inline constexpr auto coats =
    several(choice("coats", "coat", parse_coat, coat_words, "[\"curly\"]", "the coats it is for"));
inline constexpr auto looks =
    text("looks", "\"Legs and belly a comb shorter, feet tight.\"", "how it looks");
inline constexpr auto grown_out =
    quantity<bounds::grown_out>("grown_out", "\"5 weeks\"", "after so long it is grown out");
inline constexpr auto lines = of(Kind::seams, "lines", "[[\"cheeks\", \"neck\"]]",
                                 "neighbours between which a line is wanted, not a blend");
inline constexpr std::array<const KeyInfo*, 6> list{&name,  &extends,   &coats,
                                                    &looks, &grown_out, &lines};
inline constexpr TableInfo table{"style", "the style", list};
}  // namespace style

namespace style_trim {
constexpr KeyInfo place() {
  auto made = of(Kind::table, "belly", "{ blade = \"10\" }", "a place, and what is done to it");
  made.table = &work::table;
  return made;
}
inline constexpr KeyInfo work = place();
inline constexpr TableInfo table{
    "style-trim", "places, and what is done to each", {}, {OpenKeys::places, &work}};
}  // namespace style_trim

namespace style_file {
using make_key::table;
inline constexpr auto style = must(table("style", style::table, "name = \"Mud season\""));
inline constexpr auto trim = table("trim", style_trim::table, "");
inline constexpr auto finish = table("finish", finish::table, "");
inline constexpr std::array<const KeyInfo*, 3> list{&style, &trim, &finish};
inline constexpr TableInfo file{"a style's file", "a style of your own: styles/STYLE.toml", list};
}  // namespace style_file
}  // namespace furnish::keys
