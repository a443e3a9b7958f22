#include "trade/stock.h"

#include <algorithm>
#include <array>
#include <vector>

#include "base/text.h"

namespace furnish {
namespace {
constexpr std::array table = std::to_array<StockPhrase>({
    {StockKind::finding, "lump"},
    {StockKind::finding, "lump, pea-sized"},
    {StockKind::finding, "lump, larger than last time"},
    {StockKind::finding, "wart"},
    {StockKind::finding, "wart, bleeds when combed"},
    {StockKind::finding, "wound"},
    {StockKind::finding, "wound, small and dry"},
    {StockKind::finding, "scratch"},
    {StockKind::finding, "scab"},
    {StockKind::finding, "sore skin"},
    {StockKind::finding, "red skin"},
    {StockKind::finding, "dry, flaky skin"},
    {StockKind::finding, "itchy skin"},
    {StockKind::finding, "hot spot"},
    {StockKind::finding, "hot spot, palm-sized, weeping"},
    {StockKind::finding, "hives, fading"},
    {StockKind::finding, "brown and greasy between the toes"},
    {StockKind::finding, "red between the toes"},
    {StockKind::finding, "cracked pad"},
    {StockKind::finding, "grass seed in the skin"},
    {StockKind::finding, "flea dirt"},
    {StockKind::finding, "fleas"},
    {StockKind::finding, "tick"},
    {StockKind::finding, "ear smells"},
    {StockKind::finding, "ear red"},
    {StockKind::finding, "ear waxy"},
    {StockKind::finding, "shakes the head"},
    {StockKind::finding, "shakes the head since the mats are off"},
    {StockKind::finding, "eyes weep"},
    {StockKind::finding, "eyes red"},
    {StockKind::finding, "cloudy, as before"},
    {StockKind::finding, "broken nail"},
    {StockKind::finding, "ingrown nail"},
    {StockKind::finding, "nail bled, stopped"},
    {StockKind::finding, "loose tooth"},
    {StockKind::finding, "tartar on the teeth"},
    {StockKind::finding, "breath smells"},
    {StockKind::finding, "gums red"},
    {StockKind::finding, "hair loss"},
    {StockKind::finding, "bald patch"},
    {StockKind::finding, "mats"},
    {StockKind::finding, "mats behind the ears"},
    {StockKind::finding, "mats in the armpits"},
    {StockKind::finding, "matted to the skin"},
    {StockKind::finding, "mat all round"},
    {StockKind::finding, "mat all round, foot warm and pink after"},
    {StockKind::finding, "sore when bent, warm"},
    {StockKind::finding, "still sore, no longer warm"},
    {StockKind::finding, "limps"},
    {StockKind::finding, "stiff when getting up"},
    {StockKind::finding, "stiff hip after the stairs"},
    {StockKind::finding, "drags the toes on the ramp"},
    {StockKind::finding, "sore under the tail"},
    {StockKind::finding, "scoots on the floor"},
    {StockKind::finding, "thinner than last time"},
    {StockKind::finding, "coughs"},
    {StockKind::finding, "breathes hard"},
    {StockKind::finding, "nothing new"},
    {StockKind::advice, "vet today"},
    {StockKind::advice, "vet this week"},
    {StockKind::advice, "vet at the next check"},
    {StockKind::advice, "vet before the next trim"},
    {StockKind::advice, "vet if it grows"},
    {StockKind::advice, "vet if it does not heal"},
    {StockKind::advice, "vet if they come back"},
    {StockKind::advice, "vet if a leather swells"},
    {StockKind::advice, "show it to the vet"},
    {StockKind::advice, "ask what the vet said"},
    {StockKind::advice, "ask the vet about it"},
    {StockKind::advice, "go on with the vet's plan"},
    {StockKind::advice, "treat dog and house, ask your vet what with"},
    {StockKind::advice, "watch it, tell us next time"},
    {StockKind::advice, "keep it dry"},
    {StockKind::advice, "keep it clean and dry"},
    {StockKind::advice, "do not let the dog lick it"},
    {StockKind::advice, "put nothing on it before a vet has seen it"},
    {StockKind::advice, "brush this place daily"},
    {StockKind::advice, "brush every two days"},
    {StockKind::advice, "comb down to the skin"},
    {StockKind::advice, "take the collar off at home"},
    {StockKind::advice, "take the harness off at home"},
    {StockKind::advice, "dry well after rain"},
    {StockKind::advice, "dry between the toes"},
    {StockKind::advice, "come sooner next time"},
    {StockKind::advice, "touch the feet at home every day"},
    {StockKind::behaviour, "calm throughout"},
    {StockKind::behaviour, "calm"},
    {StockKind::behaviour, "easy"},
    {StockKind::behaviour, "friendly with everyone"},
    {StockKind::behaviour, "shy at first, then calm"},
    {StockKind::behaviour, "worried"},
    {StockKind::behaviour, "worried at the dryer"},
    {StockKind::behaviour, "worried in the tub"},
    {StockKind::behaviour, "pulls away"},
    {StockKind::behaviour, "pulls the feet away"},
    {StockKind::behaviour, "snaps"},
    {StockKind::behaviour, "snaps when feet are held"},
    {StockKind::behaviour, "growls"},
    {StockKind::behaviour, "barks at other dogs"},
    {StockKind::behaviour, "cannot stand long"},
    {StockKind::behaviour, "tires soon"},
    {StockKind::behaviour, "fidgets"},
    {StockKind::behaviour, "trembles"},
    {StockKind::behaviour, "slept on the table"},
    {StockKind::behaviour, "better than last time"},
    {StockKind::helped, "towel over the ears"},
    {StockKind::helped, "rest after each foot"},
    {StockKind::helped, "many rests"},
    {StockKind::helped, "second person at the head"},
    {StockKind::helped, "owner in the room"},
    {StockKind::helped, "low air, from behind"},
    {StockKind::helped, "dryer off, towel instead"},
    {StockKind::helped, "quiet room"},
    {StockKind::helped, "treats"},
    {StockKind::helped, "lying on the side"},
    {StockKind::helped, "soft voice"},
    {StockKind::helped, "nails first, then a break"},
    {StockKind::reason, "thinners out for sharpening"},
    {StockKind::reason, "owner asked for it"},
    {StockKind::reason, "coat was matted"},
    {StockKind::reason, "felted"},
    {StockKind::reason, "felted; blade under the mats"},
    {StockKind::reason, "skin was sore there"},
    {StockKind::reason, "sore, left alone"},
    {StockKind::reason, "hives"},
    {StockKind::reason, "lump there"},
    {StockKind::reason, "time ran out"},
    {StockKind::reason, "too frightened to go on"},
    {StockKind::reason, "too tired to go on"},
    {StockKind::reason, "would not stand for it"},
    {StockKind::reason, "still growing in"},
    {StockKind::reason, "shorter for the summer"},
    {StockKind::reason, "longer for the winter"},
    {StockKind::reason, "owner wants them fuller for the summer"},
    {StockKind::reason, "vet's order"},
    {StockKind::reason, "mats taken out from below"},
    {StockKind::reason, "stopped after the seizure"},
    {StockKind::not_done, "came in coughing"},
    {StockKind::not_done, "came in hot and panting"},
    {StockKind::not_done, "needs a vet first"},
    {StockKind::not_done, "too stressed today"},
    {StockKind::not_done, "bit, so we stopped"},
    {StockKind::not_done, "matted too tightly to brush out"},
    {StockKind::not_done, "owner called it off"},
    {StockKind::state, "clean"},
    {StockKind::state, "dust"},
    {StockKind::state, "mud"},
    {StockKind::state, "dry mud on the belly"},
    {StockKind::state, "sand"},
    {StockKind::state, "greasy"},
    {StockKind::state, "none"},
    {StockKind::state, "none seen"},
    {StockKind::state, "little"},
    {StockKind::state, "heavy"},
    {StockKind::state, "blowing in tufts"},
    {StockKind::state, "sound"},
    {StockKind::state, "dry"},
    {StockKind::state, "red"},
    {StockKind::state, "sore"},
    {StockKind::state, "waxy"},
    {StockKind::state, "smelling"},
    {StockKind::state, "clear"},
    {StockKind::state, "weeping"},
    {StockKind::state, "stained"},
    {StockKind::state, "short"},
    {StockKind::state, "long"},
    {StockKind::state, "curled"},
    {StockKind::state, "split"},
    {StockKind::left, "clipped and ground"},
    {StockKind::left, "ears and tail as planned"},
    {StockKind::left, "bandana"},
    {StockKind::left, "no bow, no scent"},
    {StockKind::consent, "cutting out mats"},
    {StockKind::consent, "cutting out mats behind the left ear"},
    {StockKind::consent, "clipping the coat short"},
    {StockKind::consent, "short coat on the rump"},
    {StockKind::consent, "matted release, short all over"},
    {StockKind::consent, "a straight edge on the ears"},
});

/// Without what does not matter to a reader: a capital at the start, a full stop at the end, curled
/// apostrophes.
std::string folded(std::string_view text) {
  constexpr std::string_view curled = "\u2019";
  std::string out = uncapitalised(trimmed(text));
  if (out.ends_with('.')) out.pop_back();
  for (std::size_t at; (at = out.find(curled)) != std::string::npos;) {
    out.replace(at, curled.size(), "'");
  }
  return out;
}
}  // namespace

std::span<const StockPhrase> stock_phrases() {
  return table;
}

std::string stock_key(std::string_view words) {
  std::string out;
  for (const char c : lower_ascii(words)) {
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
      out += c;
    } else if (c != '\'' && !out.empty() && out.back() != '-') {
      out += '-';
    }
  }
  if (out.ends_with('-')) out.pop_back();
  return out;
}

bool same_phrase(std::string_view a, std::string_view b) {
  return folded(a) == folded(b);
}

const StockPhrase* find_stock(std::string_view text) {
  const std::string wanted = folded(text);
  const auto* const found = std::ranges::find(table, wanted, &StockPhrase::words);
  return found == table.end() ? nullptr : found;
}

std::optional<std::string_view> nearest_stock(std::string_view text) {
  const std::string wanted = folded(text);
  std::vector<std::string_view> all;
  for (const StockPhrase& row : table) all.push_back(row.words);
  // A letter in five may be other.
  if (const auto near = nearest(wanted, all, std::max<std::size_t>(1, wanted.size() / 5))) {
    return near;
  }
  // The longest phrase of two words or more that the text begins with or has more to say after.
  std::optional<std::string_view> best;
  for (const std::string_view words : all) {
    if (words.find(' ') == std::string_view::npos) continue;
    if (wanted.find(words) == std::string::npos) continue;
    if (!best || words.size() > best->size()) best = words;
  }
  return best;
}
}  // namespace furnish
