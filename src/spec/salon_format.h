#pragma once

#include "base/measures.h"
#include "base/paper.h"
#include "model/salon.h"
#include "spec/keys.h"
#include "spec/product_format.h"
#include "spec/word_tables.h"
#include "trade/tools.h"

// A salon's file, a table a section; everything has a default.

namespace furnish::keys {
using namespace make_key;

/// A weekday by its English name, letters of either case.
std::optional<std::chrono::weekday> parse_weekday(std::string_view);
/// The names of papers.
std::span<const std::string_view> paper_words();

namespace salon {
inline constexpr auto name = text("name", "\"Lantern Street Dogs\"", "as it stands on sheets");
inline constexpr auto phone = text("phone", "\"555 0170\"", "for owners");
inline constexpr auto email = text("email", "\"hello@salon.example\"", "for owners");
inline constexpr auto address =
    texts("address", "[\"3 Lantern Street\", \"Eastmere\"]", "line by line");
inline constexpr auto language = of<LanguageKey>(Kind::language, "language", "\"en-GB\"",
                                                 "what sheets speak: en-GB, en-US, es, fr, de …");
inline constexpr auto units =
    choice<Units>("units", "units", words::parse_in<words::units, Units>, words::all<words::units>,
                  "\"metric\"", "what sheets measure in");
inline constexpr auto closed =
    or_so_called(several(choice("closed", "weekday", parse_weekday, words::all<words::weekdays>,
                                "[\"sunday\", \"monday\"]", "days on which nobody is booked")));
inline constexpr auto rules =
    of<FreeTextsKey>(Kind::free_texts, "rules", "[\"a dog on a table has a hand on it\"]",
                     "the house's own, for the wall");
inline constexpr auto contact_on_card =
    flag("contact_on_card", "true", "cards show the owner's number");
inline constexpr auto tools_for_owners =
    flag("tools_for_owners", "true", "care sheets name blades and combs");
inline constexpr auto felted = choice<FeltedWay>(
    "felted", "way", words::parse_in<words::felted, FeltedWay>, words::all<words::felted>,
    "\"clip first\"", "what comes first on a felted coat; else it is proposed");
inline constexpr auto shorten_visits =
    flag("shorten_visits", "true",
         "a coat that would mat, or pass keep_under, brings the next visit forward");
inline constexpr auto photos_anywhere =
    flag("photos_anywhere", "true", "photos may lie outside this folder");
inline constexpr std::array<const KeyInfo*, 13> list{
    &name,   &phone,          &email,          &address,         &language,
    &units,  &closed,         &rules,          &contact_on_card, &tools_for_owners,
    &felted, &shorten_visits, &photos_anywhere};
inline constexpr TableInfo table{"salon", "the salon's name and ways", list};
}  // namespace salon

namespace paper {
constexpr ChoiceKey<Paper> one(std::string_view name, std::string_view example,
                               std::string_view doc) {
  auto made = choice<Paper>(name, "paper", parse_paper, paper_words, example, doc);
  made.kind = Kind::paper;
  return made;
}
constexpr auto far(std::string_view name, std::string_view example, std::string_view doc) {
  return quantity<bounds::reading_distance>(name, example, doc);
}
inline constexpr auto card = one("card", "\"A5\"", "what cards are printed on");
inline constexpr auto sheet = one("sheet", "\"A4\"", "what all else is printed on");
inline constexpr auto name = far("name", "\"200 cm\"", "from how far the name is read");
inline constexpr auto alert = far("alert", "\"100 cm\"", "from how far alerts are read");
inline constexpr auto action = far("action", "\"100 cm\"", "from how far what to do is read");
inline constexpr auto body = far("body", "\"60 cm\"", "from how far the text is read");
inline constexpr auto footer = far("footer", "\"40 cm\"", "from how far the last line is read");
inline constexpr std::array<const KeyInfo*, 7> list{&card,   &sheet, &name,  &alert,
                                                    &action, &body,  &footer};
inline constexpr TableInfo table{"paper", "paper, and from how far it is read", list};
}  // namespace paper

namespace kit {
inline constexpr auto blades = of(Kind::blades, "blades", "[\"40\", \"30\", \"10\", \"7F\"]",
                                  "the blades in the drawer; all, unless it says");
constexpr KeyInfo guard_combs() {
  auto made = of(Kind::lengths, "combs", "[\"1/8 in\", \"1/2 in\", \"19 mm\"]",
                 "the guard combs, by the length they leave");
  made.bounds = bounds_text<bounds::comb>;
  return made;
}
inline constexpr KeyInfo combs = guard_combs();
inline constexpr auto shears = or_so_called(several(choice(
    "shears", "shears", parse_shears, shears_words, "[\"straight\", \"thinning\"]", "the shears")));
inline constexpr auto bottle =
    quantity<bounds::bottle>("bottle", "\"500 ml\"", "the mixing bottle");
inline constexpr auto left =
    quantity<bounds::blade>("7F", "\"3.4 mm\"", "a blade, and what yours really leaves");
inline constexpr TableInfo lengths{
    "measured", "what a blade of this drawer really leaves", {}, {OpenKeys::blades, &left}};
inline constexpr auto measured = make_key::table("measured", lengths, "{ \"7F\" = \"3.4 mm\" }");
inline constexpr std::array<const KeyInfo*, 5> list{&blades, &combs, &shears, &bottle, &measured};
inline constexpr TableInfo table{"kit", "what is in the drawer", list};
}  // namespace kit

namespace shelf {
constexpr KeyInfo one() {
  auto made = of(Kind::table, "oat", "{ name = \"oat shampoo\", dilution = \"10:1\" }",
                 "a product under a short key of your own");
  made.table = &product::shelf;
  return made;
}
inline constexpr KeyInfo product = one();
inline constexpr TableInfo table{"shelf", "what is on the shelf", {}, {OpenKeys::names, &product}};
}  // namespace shelf

namespace rule {
inline constexpr auto wait = quantity<bounds::vaccination_wait>(
    "wait", "\"28 days\"", "how long after a first dose it counts");
inline constexpr auto valid =
    quantity<bounds::vaccination_valid>("valid", "\"3 years\"", "how long it holds");
inline constexpr auto required = flag("required", "true", "no pet without it");
inline constexpr std::array<const KeyInfo*, 3> list{&wait, &valid, &required};
inline constexpr TableInfo table{"rule", "when a vaccination counts", list};
constexpr KeyInfo rabies() {
  auto made = of(Kind::table, "rabies", "{ valid = \"3 years\", required = true }",
                 "a vaccination, and when it counts");
  made.table = &table;
  return made;
}
inline constexpr KeyInfo one = rabies();
inline constexpr TableInfo all{
    "vaccination-rules", "which vaccinations are asked for", {}, {OpenKeys::names, &one}};
}  // namespace rule

namespace blends {
inline constexpr auto step =
    quantity<bounds::blend_step>("step", "\"6 mm\"", "a jump of more is blended …");
inline constexpr auto ratio =
    number<bounds::blend_ratio>(Kind::number, "ratio", "1.5", "… if it is more than so many times");
inline constexpr std::array<const KeyInfo*, 2> list{&step, &ratio};
inline constexpr TableInfo table{"blends", "which jumps in length are blended", list};
}  // namespace blends

namespace time {
constexpr auto share(std::string_view name, std::string_view example, std::string_view doc) {
  return number<bounds::minutes_a_share>(Kind::number, name, example, doc);
}
inline constexpr auto base = share("base", "15", "minutes for check-in, nails, check-out");
inline constexpr auto bath_per_m2 = share("bath_per_m2", "30", "bathing a square metre of dog");
inline constexpr auto dry_per_m2 = share("dry_per_m2", "50", "drying a square metre");
inline constexpr auto brush_per_m2 = share("brush_per_m2", "25", "brushing a square metre out");
inline constexpr auto clip_per_part = share("clip_per_part", "3", "each part that is clipped");
inline constexpr auto scissor_per_part =
    share("scissor_per_part", "5", "each part that is scissored");
inline constexpr auto spread =
    number<bounds::spread>(Kind::number, "spread", "0.25", "how far off it may be, as a share");
inline constexpr std::array<const KeyInfo*, 7> list{
    &base, &bath_per_m2, &dry_per_m2, &brush_per_m2, &clip_per_part, &scissor_per_part, &spread};
inline constexpr TableInfo table{"time", "minutes of a visit, before a pet has visits of its own",
                                 list};
}  // namespace time

namespace mixing {
constexpr auto of_coat(std::string_view name, std::string_view example) {
  return quantity<bounds::mix_per_m2>(name, example, "mix for a square metre of that coat");
}
inline constexpr auto keeps =
    quantity<bounds::mix_keeps>("keeps", "\"7 days\"", "how long a mixed bottle is used");
inline constexpr auto double_coat = of_coat("double", "\"1.6 l\"");
inline constexpr auto curly = of_coat("curly", "\"1.4 l\"");
inline constexpr auto drop = of_coat("drop", "\"1.4 l\"");
inline constexpr auto silky = of_coat("silky", "\"1.2 l\"");
inline constexpr auto wire = of_coat("wire", "\"1.0 l\"");
inline constexpr auto smooth = of_coat("smooth", "\"0.7 l\"");
inline constexpr auto hairless = of_coat("hairless", "\"0.4 l\"");
/// In the order of the coats.
inline constexpr std::array coats{&double_coat, &curly, &drop, &silky, &wire, &smooth, &hairless};
inline constexpr std::array<const KeyInfo*, 8> list{&keeps, &double_coat, &curly,  &drop,
                                                    &silky, &wire,        &smooth, &hairless};
inline constexpr TableInfo table{"mixing", "how much is mixed, and for how long", list};
}  // namespace mixing

namespace salon_file {
using make_key::table;
inline constexpr auto salon = table("salon", salon::table, "");
inline constexpr auto paper = table("paper", paper::table, "");
inline constexpr auto kit = table("kit", kit::table, "");
inline constexpr auto products = table("products", shelf::table, "");
inline constexpr auto vaccinations = table("vaccinations", rule::all, "");
inline constexpr auto blends = table("blends", blends::table, "");
inline constexpr auto time = table("time", time::table, "");
inline constexpr auto mixing = table("mixing", mixing::table, "");
inline constexpr std::array<const KeyInfo*, 8> list{&salon,        &paper,  &kit,  &products,
                                                    &vaccinations, &blends, &time, &mixing};
inline constexpr TableInfo file{"a salon's file", "the salon: salon.toml", list};
}  // namespace salon_file
}  // namespace furnish::keys
