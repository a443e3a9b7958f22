#pragma once

#include "model/pet.h"
#include "spec/keys.h"
#include "spec/product_format.h"
#include "spec/trim_format.h"
#include "spec/word_tables.h"
#include "trade/coat.h"
#include "trade/health.h"
#include "trade/safety.h"

// A pet's file, a table a section.

namespace furnish::keys {

namespace identity {
inline constexpr auto name = must(text("name", "\"Marlow\"", "what it is called"));
inline constexpr auto breed = text("breed", "\"spitz cross\"", "breed or cross, in your words");
inline constexpr auto coat = choice("coat", "coat", parse_coat, coat_words, "\"double\"",
                                    "growth, mats, time and safety rules follow from it");
inline constexpr auto colour = text("colour", "\"orange sable\"", "colour and markings");
inline constexpr auto sex = text("sex", "\"male, neutered\"", "sex, and whether neutered");
constexpr DateKey about(DateKey key) {
  key.kind = Kind::birth;
  return key;
}
inline constexpr auto born =
    about(date("born", "2021-04-09", "day of birth; 2021 or \"2021-04\" where no more is known"));
inline constexpr auto weight = quantity<bounds::weight>(
    "weight", "\"4.6 kg\"", "the last one known; \"10 lb 3 oz\" is fine too");
inline constexpr auto weighed = date("weighed", "2026-09-29", "the day of that weight");
inline constexpr auto photo = staff(
    of<PhotoKey>(Kind::photo, "photo", "\"photos/marlow.jpg\"", "a picture in the salon's folder"));
inline constexpr auto since = about(
    date("since", "2014", "since when it comes, of a regular whose visits are not all on file"));
inline constexpr std::array<const KeyInfo*, 10> list{&name, &breed,  &coat,    &colour, &sex,
                                                     &born, &weight, &weighed, &photo,  &since};
inline constexpr TableInfo table{"identity", "who it is", list};
}  // namespace identity

namespace vet {
inline constexpr auto name = staff(text("name", "\"Dr Ahn\"", "the vet's name"));
inline constexpr auto phone = staff(text("phone", "\"555 0199\"", "the vet's number"));
inline constexpr std::array<const KeyInfo*, 2> list{&name, &phone};
inline constexpr TableInfo table{"vet", "whom to call when it is ill", list};
}  // namespace vet

namespace owner {
inline constexpr auto name = text("name", "\"R. Adeyemi\"", "who brings it");
inline constexpr auto phone =
    staff(text("phone", "\"555 0101\"", "a card shows it only with contact_on_card in salon.toml"));
inline constexpr auto email = staff(text("email", "\"r@home.example\"", "for messages"));
inline constexpr auto address =
    staff(texts("address", "[\"1 Hill Road\", \"Eastmere\"]", "line by line"));
inline constexpr auto language =
    staff(of<LanguageKey>(Kind::language, "language", "\"es\"", "what the owner's pages speak"));
inline constexpr auto collects =
    staff(texts("collects", "[\"R. Adeyemi\", \"Tunde\"]", "who may fetch the pet"));
inline constexpr auto vet =
    staff(make_key::table("vet", vet::table, "{ name = \"Dr Ahn\", phone = \"555 0199\" }"));
inline constexpr std::array<const KeyInfo*, 7> list{&name,     &phone,    &email, &address,
                                                    &language, &collects, &vet};
inline constexpr TableInfo table{"owner", "whose it is", list};
}  // namespace owner

namespace alert {
inline constexpr auto level =
    must(choice("level", "signal word", parse_signal, signal_words, "\"warning\"",
                "danger will, warning could cause death or serious injury; caution could cause a "
                "minor one; notice is about practice"));
inline constexpr auto text =
    must(free_text("text", "\"Snaps when a rear foot is held.\"", "what to beware of"));
inline constexpr auto action =
    free_text("do", "\"Second person at the head.\"", "what to do about it");
inline constexpr auto avoid =
    of<TextsKey>(Kind::places, "avoid", "[\"left hock\"]", "places that no tool may touch");
inline constexpr auto allergens =
    texts("allergens", "[\"lavender\"]", "what no product of the bath may contain");
inline constexpr std::array<const KeyInfo*, 6> list{&level, &text,      &action,
                                                    &avoid, &allergens, &audience};
inline constexpr TableInfo table{"alert", "what to beware of; one heading for each", list};
}  // namespace alert

namespace handling {
inline constexpr auto hold = staff(text("hold", "\"under the chest\"", "how to hold it"));
inline constexpr auto lift = staff(text("lift", "\"one arm at each end\"", "how to lift it"));
inline constexpr auto dryer =
    staff(text("dryer", "\"force dryer, not on the head\"", "which dryer, and where not"));
inline constexpr auto stop = staff(text("stop", "\"when he pants hard\"", "when to stop"));
inline constexpr auto rest_every =
    staff(quantity<bounds::rest_every>("rest_every", "\"15 min\"", "a rest so often"));
inline constexpr auto comes_with =
    staff(texts("comes_with", "[\"blue lead\", \"towel\"]", "what leaves with the pet again"));
inline constexpr std::array<const KeyInfo*, 6> list{&hold, &lift,       &dryer,
                                                    &stop, &rest_every, &comes_with};
inline constexpr TableInfo table{"handling", "how to handle it, for staff only", list};
}  // namespace handling

namespace health {
inline constexpr auto conditions =
    or_so_called(several(choice("conditions", "condition", parse_condition, condition_words,
                                "[\"seizures\"]", "those that safety rules ask for")));
inline constexpr auto notes =
    staff(text("notes", "\"Soft lump on the side, vet knows.\"", "all else about its health"));
inline constexpr std::array<const KeyInfo*, 2> list{&conditions, &notes};
inline constexpr TableInfo table{"health", "its health", list};
}  // namespace health

namespace build {
template <const auto& table, typename Enum>
constexpr ChoiceKey<Enum> one_of(std::string_view name, std::string_view noun,
                                 std::string_view example, std::string_view doc) {
  return choice<Enum>(name, noun, words::parse_in<table, Enum>, words::all<table>, example, doc);
}
inline constexpr auto nose =
    one_of<words::sizes, NoseLength>("nose", "length of nose", "\"short\"", "length of the nose");
inline constexpr auto legs =
    one_of<words::sizes, Legs>("legs", "length of legs", "\"medium\"", "length of the legs");
inline constexpr auto body =
    one_of<words::sizes, BodyLength>("body", "length of body", "\"long\"", "length of the body");
inline constexpr auto ears =
    one_of<words::ears, EarType>("ears", "kind of ears", "\"drop\"", "kind of ears");
inline constexpr auto tail =
    one_of<words::tails, TailType>("tail", "kind of tail", "\"plume\"", "kind of tail");
inline constexpr auto bone =
    one_of<words::bones, Bone>("bone", "weight of bone", "\"heavy\"", "how heavy its frame is");
inline constexpr std::array<const KeyInfo*, 6> list{&nose, &legs, &body, &ears, &tail, &bone};
inline constexpr TableInfo table{"build", "how the dog is built, for the figure and some rules",
                                 list};
}  // namespace build

namespace vaccination {
inline constexpr auto on = must(date("on", "2025-05-02", "the day it was given"));
inline constexpr auto booster = flag("booster", "true", "it was not the first dose");
inline constexpr std::array<const KeyInfo*, 2> list{&on, &booster};
inline constexpr TableInfo table{"vaccination", "a vaccination", list};
constexpr KeyInfo given() {
  auto made = of(Kind::vaccination, "rabies", "2025-05-02",
                 "a vaccination and the day it was given, or { on = 2025-05-02, booster = true }");
  made.table = &table;
  return made;
}
inline constexpr KeyInfo one = given();
inline constexpr TableInfo all{
    "vaccinations", "what was given, and when", {}, {OpenKeys::names, &one}};
}  // namespace vaccination

namespace bath {
inline constexpr auto none = flag("none", "true", "it is not bathed here");
inline constexpr auto before =
    text("before", "\"slicker brush and comb to the skin\"", "before the water");
inline constexpr auto shampoo = product::use_of(
    "shampoo", "{ product = \"oat\", dwell = \"4 min\" }", "its word in salon.toml, or a table");
inline constexpr auto conditioner =
    product::use_of("conditioner", "\"nourish\"", "the same of a conditioner");
inline constexpr auto others =
    make_key::tables("others", product::use, "[{ product = \"glide\" }]");
inline constexpr auto dry =
    text("dry", "\"towel, then force dryer with the lay\"", "how it is dried");
inline constexpr auto when =
    choice<BathWhen>("when", "time of the bath", words::parse_in<words::bath_when, BathWhen>,
                     words::all<words::bath_when>, "\"after clipping\"", "first, unless it says");
inline constexpr std::array<const KeyInfo*, 7> list{&none,   &before, &shampoo, &conditioner,
                                                    &others, &dry,    &when};
inline constexpr TableInfo table{"bath", "the bath, in its order", list};
}  // namespace bath

namespace pet_trim {
inline constexpr auto style = text("style", "\"natural-tidy\"", "the style it follows");
inline constexpr auto visit_every =
    quantity<bounds::visit_every>("visit_every", "\"8 weeks\"", "how often it comes");
constexpr KeyInfo place(const TableInfo& table) {
  auto made = of(Kind::table, "chest", "{ shears = \"thinning\", leave = \"30 mm\" }",
                 "a place, and what is done to it");
  made.table = &table;
  return made;
}
inline constexpr KeyInfo work = place(work::table);
inline constexpr std::array<const KeyInfo*, 2> list{&style, &visit_every};
inline constexpr TableInfo table{
    "trim", "the style, and places that differ from it", list, {OpenKeys::places, &work}};
}  // namespace pet_trim

namespace home {
inline constexpr auto bath_every =
    quantity<bounds::home_bath_every>("bath_every", "\"4 weeks\"", "how often to bathe at home");
inline constexpr auto product = product::use_of("product", "\"oat\"", "what to bathe it with");
inline constexpr auto bottle =
    quantity<bounds::bottle>("bottle", "\"500 ml\"", "the owner's bottle, to mix the product in");
inline constexpr auto notes = of<FreeTextsKey>(
    Kind::free_texts, "notes", "[\"Comb behind the ears.\"]", "what else to do, in your words");
inline constexpr std::array<const KeyInfo*, 4> list{&bath_every, &product, &bottle, &notes};
inline constexpr TableInfo table{"home", "what the salon recommends until the next visit", list};
}  // namespace home

namespace preferences {
inline constexpr auto likes = texts("likes", "[\"full breeches\"]", "in the owner's words");
inline constexpr auto dislikes = texts("dislikes", "[\"rounded ears\"]", "the same");
inline constexpr auto shorter =
    quantity<bounds::keep_under>("ears", "\"40 mm\"", "a place, and how long it may get at most");
inline constexpr TableInfo lengths{
    "keep-under", "places that may not get longer", {}, {OpenKeys::places, &shorter}};
inline constexpr auto keep_under = make_key::table("keep_under", lengths, "{ ears = \"40 mm\" }");
inline constexpr std::array<const KeyInfo*, 3> list{&likes, &dislikes, &keep_under};
inline constexpr TableInfo table{"preferences", "what the owner wants", list};
}  // namespace preferences

namespace acceptance {
inline constexpr auto rule = must(choice("rule", "rule", parse_rule, rule_words,
                                         "\"double-coat-short\"", "the rule that is gone against"));
inline constexpr auto reason =
    must(text("reason", "\"Vet's order, hot spots.\"", "why it is done all the same"));
inline constexpr auto signed_on = must(date("signed", "2026-04-28", "the day the owner agreed"));
inline constexpr std::array<const KeyInfo*, 3> list{&rule, &reason, &signed_on};
inline constexpr TableInfo table{"acceptance", "a safety rule that is gone against on purpose",
                                 list};
}  // namespace acceptance

/// The file itself.
namespace pet_file {
using make_key::table;
using make_key::tables;
inline constexpr auto pet = must(table("pet", identity::table, "name = \"Marlow\""));
inline constexpr auto owner = table("owner", owner::table, "");
inline constexpr auto alert = tables("alert", alert::table, "");
inline constexpr auto handling = staff(table("handling", handling::table, ""));
inline constexpr auto health = table("health", health::table, "");
inline constexpr auto build = table("build", build::table, "");
inline constexpr auto vaccinations = table("vaccinations", vaccination::all, "");
inline constexpr auto bath = table("bath", bath::table, "");
inline constexpr auto trim = table("trim", pet_trim::table, "");
inline constexpr auto finish = table("finish", finish::table, "");
inline constexpr auto home = table("home", home::table, "");
inline constexpr auto preferences = table("preferences", preferences::table, "");
inline constexpr auto accept = staff(tables("accept", acceptance::table, ""));
inline constexpr std::array<const KeyInfo*, 13> list{
    &pet,  &owner, &alert,  &handling, &health,      &build, &vaccinations,
    &bath, &trim,  &finish, &home,     &preferences, &accept};
inline constexpr TableInfo file{"a pet's file", "one pet: pets/PET.toml", list};
}  // namespace pet_file
}  // namespace furnish::keys
