#pragma once

#include "spec/keys.h"
#include "spec/word_tables.h"
#include "trade/tools.h"

// What may be said of the trim: what is done to a place, and how parts end.

namespace furnish::keys {
using namespace make_key;

/// Languages of one text, beside the salon's own.
namespace languages {
inline constexpr auto plain = text("text", "\"…\"", "the text in the salon's language");
inline constexpr std::array<const KeyInfo*, 1> list{&plain};
inline constexpr auto other = text("es", "\"…\"", "the text in that language");
inline constexpr TableInfo table{
    "text", "a text in several languages", list, {OpenKeys::names, &other}};
}  // namespace languages

inline constexpr auto audience = choice<Audience>(
    "for", "audience", words::parse_in<words::audience, Audience>, words::all<words::audience>,
    "\"everyone\"",
    "who may read it: staff, unless it says everyone; what matters at home, owners need too");

/// The same, and who may read it.
namespace staff_languages {
inline constexpr std::array<const KeyInfo*, 2> list{&languages::plain, &audience};
inline constexpr TableInfo table{
    "staff-text", "a text that says whom it is for", list, {OpenKeys::names, &languages::other}};
}  // namespace staff_languages

/// What is done to one place.
namespace work {
inline constexpr auto blade = of(Kind::blade, "blade", "\"10\"", "clip with this blade");
inline constexpr auto comb =
    quantity<bounds::comb>("comb", "\"1/2 in\"", "clip with this guard comb");
inline constexpr auto over = of(Kind::blade, "over", "\"30\"", "the blade under the comb");
inline constexpr auto shears = or_so_called(
    choice("shears", "shears", parse_shears, shears_words, "\"thinning\"", "scissor with these"));
inline constexpr auto leave =
    quantity<bounds::coat>("leave", "\"30 mm\"", "how long the shears leave it");
inline constexpr auto brush = flag("brush", "true", "brush and comb only");
inline constexpr auto strip =
    choice<Strip>("strip", "way to strip", words::parse_in<words::strip, Strip>,
                  words::all<words::strip>, "\"hand\"", "strip it so");
inline constexpr auto lay = choice("lay", "lay", parse_lay, words::all<words::lay>, "\"with\"",
                                   "how the tool goes over the coat");
inline constexpr auto before_bath =
    flag("before_bath", "true", "done on the coat before it is washed");
inline constexpr auto note = text("note", "\"not rounded\"", "what else to see to");
inline constexpr std::array<const KeyInfo*, 10> list{&blade, &comb,  &over, &shears,      &leave,
                                                     &brush, &strip, &lay,  &before_bath, &note};
inline constexpr TableInfo table{"work", "what is done to a place", list};
}  // namespace work

/// The same in a visit, which says why it was not as planned.
namespace work_done {
inline constexpr auto why =
    staff_text("why", "\"thinners out for sharpening\"", "why it was not done as planned");
inline constexpr auto note = staff(work::note);
inline constexpr std::array<const KeyInfo*, 11> list{
    &work::blade, &work::comb, &work::over,        &work::shears, &work::leave, &work::brush,
    &work::strip, &work::lay,  &work::before_bath, &note,         &why};
inline constexpr TableInfo table{"work-done", "what was done to a place", list};
}  // namespace work_done

namespace finish {
inline constexpr auto ears = free_text("ears", "\"straight edge\"", "how the ears end");
inline constexpr auto tail = free_text("tail", "\"plume, tip tidied\"", "how the tail ends");
inline constexpr auto feet = free_text("feet", "\"hare foot\"", "how the feet end");
inline constexpr auto nails = free_text("nails", "\"clip, then grind\"", "how the nails are done");
inline constexpr auto extras = free_text("extras", "\"no bow, no scent\"", "bow, scent, scarf");
inline constexpr std::array<const KeyInfo*, 5> list{&ears, &tail, &feet, &nails, &extras};
inline constexpr TableInfo table{"finish", "how ears, tail, feet and nails end", list};
}  // namespace finish
}  // namespace furnish::keys
