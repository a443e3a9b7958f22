#include "trade/place_synonyms.h"

#include <algorithm>
#include <array>
#include <string>

#include "base/text.h"

namespace furnish {
namespace {
constexpr std::size_t most = 8;
struct Row {
  Region region;
  std::array<std::string_view, most> words;  ///< empty at the end
};

/// In lower case with spaces; one or many of a thing are the same word.
constexpr std::array<Row, region_count> table{{
    {Region::muzzle, {"snout", "beard", "moustache", "mustache", "chin", "lips", "mouth"}},
    {Region::cheeks, {"jowls", "jaw", "jaws", "side of the face", "sideburns", "side burns"}},
    {Region::crown, {"topknot", "top knot", "skull", "top of the head", "forehead", "poll"}},
    {Region::throat, {"throat latch", "gullet", "bib", "front of the neck", "under the neck"}},
    {Region::ears, {"ear leathers", "leathers", "ear flaps", "earflaps", "pinnae", "ear tips"}},
    {Region::eyes, {"eye corners", "brows", "eyebrows", "around the eyes", "stop", "eye area"}},
    {Region::neck, {"nape", "scruff", "crest", "back of the neck", "neck sides"}},
    {Region::ruff, {"mane", "collar", "frill", "neck ruff", "neck frill"}},
    {Region::shoulders, {"withers", "shoulder blades", "upper arms", "forequarters", "forehand"}},
    {Region::back, {"topline", "top line", "spine", "saddle", "along the back"}},
    {Region::sides, {"ribs", "rib cage", "ribcage", "barrel", "body sides"}},
    {Region::loin, {"loins", "waist", "lower back", "small of the back", "coupling"}},
    {Region::rump, {"bum", "bottom", "butt", "croup", "backside", "hips", "behind"}},
    {Region::chest, {"breast", "brisket", "forechest", "fore chest", "breastbone", "sternum"}},
    {Region::belly,
     {"tummy", "stomach", "abdomen", "undercarriage", "underbelly", "underside", "skirt"}},
    {Region::tuck_up, {"tuck", "tuckup", "flank fold", "skin fold at the flank", "flank skin"}},
    {Region::front_legs, {"forelegs", "fore legs", "forelimbs", "front limbs", "arms", "forearms"}},
    {Region::rear_legs,
     {"hind legs", "back legs", "hindlegs", "hind limbs", "thighs", "rear limbs"}},
    {Region::hocks, {"hock joints", "rear pasterns", "hind pasterns", "back pasterns", "heels"}},
    {Region::fringe, {"feathers", "feathering", "leg feathers", "leg fringe", "leg furnishings"}},
    {Region::breeches, {"trousers", "pants", "culottes", "britches", "back of the thighs"}},
    {Region::tail, {"flag", "stern", "tail plume", "tail feathers", "tail fringe"}},
    {Region::feet, {"paws", "toes", "paw tops", "tops of the feet", "trotters"}},
    {Region::pads,
     {"paw pads", "foot pads", "soles", "between the pads", "between the toes", "under the feet"}},
    {Region::sanitary,
     {"privates", "private parts", "hygiene area", "potty area", "groin", "under the tail"}},
}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < table.size(); ++i) {
    if (static_cast<std::size_t>(table[i].region) != i || table[i].words[4].empty()) return false;
  }
  return true;
}
static_assert(in_order(), "a row a region, in order, with five words or more");

constexpr std::array face{Region::muzzle, Region::cheeks};
constexpr std::array hindquarters{Region::rump, Region::rear_legs};

/// Lower case, words apart, without the article and the mark of many.
std::string normal(std::string_view word) {
  std::string out = lower_ascii(trimmed(word));
  std::ranges::replace(out, '-', ' ');
  std::ranges::replace(out, '_', ' ');
  for (std::size_t at; (at = out.find("the ")) != std::string::npos;) out.erase(at, 4);
  if (out.size() > 3 && out.ends_with('s')) out.pop_back();
  return out;
}

std::optional<Region> region_of(std::string_view words) {
  const std::string wanted = normal(words);
  for (const Row& row : table) {
    const auto same = [&](std::string_view one) { return !one.empty() && normal(one) == wanted; };
    if (std::ranges::any_of(row.words, same)) return row.region;
  }
  return std::nullopt;
}
}  // namespace

std::span<const std::string_view> synonyms(Region region) {
  const auto& words = table.at(static_cast<std::size_t>(region)).words;
  const auto* const end = std::ranges::find(words, std::string_view());
  return {words.begin(), end};
}

std::optional<Place> parse_synonym(std::string_view words, AnySide any_side) {
  if (const auto whole = region_of(words)) return Place{*whole, Side::both};
  words = trimmed(words);
  const std::size_t gap = words.find_first_of(" -_");
  if (gap == std::string_view::npos) return std::nullopt;
  const auto side = parse_side(words.substr(0, gap));
  const auto region = region_of(words.substr(gap + 1));
  if (!side || !region) return std::nullopt;
  if (*side != Side::both && !info(*region).paired && any_side == AnySide::no) return std::nullopt;
  return Place{*region, *side};
}

std::span<const Region> several_meant(std::string_view word) {
  const std::string wanted = normal(word);
  if (wanted == normal("face")) return face;
  if (wanted == normal("hindquarters") || wanted == normal("quarters")) return hindquarters;
  return {};
}
}  // namespace furnish
