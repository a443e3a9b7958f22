#pragma once

#include "model/visit.h"
#include "spec/keys.h"
#include "spec/product_format.h"
#include "spec/trim_format.h"
#include "spec/word_tables.h"
#include "trade/region.h"

// A visit's file, a table a section.

namespace furnish::keys {

inline constexpr auto side = choice("side", "side", parse_side, words::all<words::sides>,
                                    "\"left\"", "the dog's own left or right");

/// How a place came in or went out.
namespace state {
inline constexpr auto mats = number<bounds::mats>(
    Kind::whole, "mats", "2",
    "0 none, 1 the comb opens them, 2 fingers open them, 3 cut out, 4 felted to the skin");
inline constexpr auto encircling = flag("encircling", "true", "the mat goes right round");
inline constexpr auto side = keys::side;
inline constexpr auto length =
    quantity<bounds::coat>("length", "\"38 mm\"", "how long the coat was");
inline constexpr auto soil = free_text("soil", "\"mud\"", "the dirt there");
inline constexpr auto shedding = free_text("shedding", "\"blowing\"", "loose coat");
inline constexpr auto skin = free_text("skin", "\"dry, flaky\"", "the skin there");
inline constexpr auto note =
    staff_text("note", "\"hid it under the ear\"", "all else; for staff unless it says");
inline constexpr std::array<const KeyInfo*, 8> list{&mats, &encircling, &side, &length,
                                                    &soil, &shedding,   &skin, &note};
inline constexpr TableInfo table{"state", "how a place was", list};
constexpr KeyInfo place(std::string_view example) {
  auto made = of(Kind::table, "ears", example, "a place, and how it was");
  made.table = &table;
  return made;
}
inline constexpr KeyInfo before = place("{ mats = 2, side = \"left\", length = \"38 mm\" }");
inline constexpr KeyInfo after = place("{ length = \"20 mm\" }");
}  // namespace state

namespace came_in {
inline constexpr auto behaviour =
    staff(free_text("behaviour", "\"worried at the dryer\"", "how it behaved, for staff"));
inline constexpr auto helped =
    staff(free_text("helped", "\"towel over the ears\"", "what made it easier, for staff"));
inline constexpr auto ears = free_text("ears", "\"clean\"", "the ears; or a place, see below");
inline constexpr auto eyes = free_text("eyes", "\"clear\"", "the eyes; or a place, see below");
inline constexpr auto nails = free_text("nails", "\"long\"", "the nails");
inline constexpr auto parasites = free_text("parasites", "\"none seen\"", "fleas, ticks");
inline constexpr auto soil = free_text("soil", "\"pond\"", "the dirt");
inline constexpr auto shedding = free_text("shedding", "\"blowing\"", "loose coat");
inline constexpr auto skin = free_text("skin", "\"clear\"", "the skin");
inline constexpr auto well = staff(of<TextsKey>(Kind::places, "well", "[\"left hock\"]",
                                                "places looked at and found well, for staff"));
inline constexpr std::array<const KeyInfo*, 10> list{&behaviour, &helped, &ears,     &eyes, &nails,
                                                     &parasites, &soil,   &shedding, &skin, &well};
inline constexpr TableInfo table{
    "came-in", "how it came in", list, {OpenKeys::places, &state::before}};
}  // namespace came_in

namespace done {
constexpr KeyInfo place() {
  auto made =
      of(Kind::table, "chest", "{ shears = \"straight\", why = \"thinners out for sharpening\" }",
         "a place, what was done instead, and why");
  made.table = &work_done::table;
  return made;
}
inline constexpr KeyInfo work = place();
inline constexpr TableInfo table{
    "done", "what was not done as planned", {}, {OpenKeys::places, &work}};
}  // namespace done

namespace went_out {
inline constexpr auto finish = free_text("finish", "\"ears straight\"", "how it was finished");
inline constexpr auto nails = free_text("nails", "\"ground\"", "how the nails were done");
inline constexpr auto extras = free_text("extras", "\"red bow\"", "bow, scent, scarf");
inline constexpr std::array<const KeyInfo*, 3> list{&finish, &nails, &extras};
inline constexpr TableInfo table{
    "went-out", "how it went out", list, {OpenKeys::places, &state::after}};
}  // namespace went_out

namespace finding {
inline constexpr auto region =
    must(of<TextKey>(Kind::place, "region", "\"belly\"", "where, or the nearest region to it"));
inline constexpr auto side = keys::side;
inline constexpr auto what =
    free_text("what", "\"lump, pea-sized\"", "what was found; must be there unless closed");
inline constexpr auto advised =
    free_text("advised", "\"vet this week\"", "what the owner was advised");
inline constexpr auto closed = flag("closed", "true", "an earlier one is over");
inline constexpr std::array<const KeyInfo*, 6> list{&region,  &side,   &what,
                                                    &advised, &closed, &audience};
inline constexpr TableInfo table{"finding", "what was found; one heading for each", list};
}  // namespace finding

namespace photo {
inline constexpr auto file = must(staff(of<PhotoKey>(
    Kind::photo, "file", "\"photos/marlow-before.jpg\"", "a picture in the salon's folder")));
inline constexpr auto when = must(
    choice<PhotoTime>("when", "time of a photo", words::parse_in<words::photo_times, PhotoTime>,
                      words::all<words::photo_times>, "\"before\"", "before or after"));
inline constexpr auto caption = free_text("caption", "\"left side\"", "words under it");
inline constexpr auto focus =
    of(Kind::focus, "focus", "[0.5, 0.3]", "what to keep in the middle, as shares");
inline constexpr std::array<const KeyInfo*, 4> list{&file, &when, &caption, &focus};
inline constexpr TableInfo table{"photo", "a photo; one heading for each", list};
}  // namespace photo

namespace consent {
inline constexpr auto to = must(free_text("to", "\"cutting out mats\"", "what was agreed to"));
inline constexpr auto by = text("by", "\"R. Adeyemi\"", "who agreed");
inline constexpr auto on = date("on", "2026-11-24", "the day");
inline constexpr std::array<const KeyInfo*, 3> list{&to, &by, &on};
inline constexpr TableInfo table{"consent", "what was agreed; one heading for each", list};
}  // namespace consent

namespace visit_file {
using make_key::table;
using make_key::tables;
inline constexpr auto date = must(make_key::date("date", "2026-11-24", "the day of the visit"));
inline constexpr auto unfinished =
    make_key::flag("unfinished", "true", "begun, not done yet; false: all went as planned");
inline constexpr auto not_done =
    free_text("not_done", "\"coughs, vet first\"", "why it was not groomed; the owner reads it");
inline constexpr auto did = several(choice<DonePart>(
    "did", "part of a groom", words::parse_in<words::done_parts, DonePart>,
    words::all<words::done_parts>, "[\"bath\"]", "what was done all the same, of one not done"));
inline constexpr auto groomer = text("groomer", "\"Ines\"", "who did it");
inline constexpr auto minutes = number<bounds::minutes_number>(
    Kind::minutes, "minutes", "85", "how long it took; \"1 h 25 min\" is fine too");
inline constexpr auto weight = quantity<bounds::weight>("weight", "\"4.5 kg\"", "on that day");
inline constexpr auto next = make_key::date("next", "2027-01-19", "when it comes again");
inline constexpr auto told =
    free_text("told", "\"Comb the belly daily.\"", "what the owner was told");
inline constexpr auto came_in = table("came_in", came_in::table, "");
inline constexpr auto done = table("done", done::table, "");
inline constexpr auto went_out = table("went_out", went_out::table, "");
inline constexpr auto product = tables("product", product::used, "");
inline constexpr auto finding = tables("finding", finding::table, "");
inline constexpr auto photo = tables("photo", photo::table, "");
inline constexpr auto consent = tables("consent", consent::table, "");
inline constexpr std::array<const KeyInfo*, 16> list{
    &date, &unfinished, &not_done, &did,      &groomer, &minutes, &weight, &next,
    &told, &came_in,    &done,     &went_out, &product, &finding, &photo,  &consent};
inline constexpr TableInfo file{"a visit's file", "one visit: visits/PET/YYYY-MM-DD.toml", list};
}  // namespace visit_file
}  // namespace furnish::keys
