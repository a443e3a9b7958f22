#include "sheet/mix_text.h"

#include "base/quantity.h"
#include "base/text.h"

namespace furnish {

std::vector<TextSpan> mix_text(const Mix& mix, const SheetVoice& voice, MixDetail detail) {
  const Words& words = voice.words;
  const Units units = voice.locale.units();
  std::vector<TextSpan> spans{{capitalised(mix.use.product.name)}};
  if (mix.neat) {
    spans.push_back({", " + words.say(Phrase::neat)});
  } else if (mix.measured) {
    spans.push_back({" "});
    spans.push_back({words.say(Phrase::mix, {to_text(mix.measured->product, units),
                                             to_text(mix.measured->water, units)}),
                     Face::semibold});
    if (detail == MixDetail::full && mix.bottles && *mix.bottles > 1) {
      spans.push_back({", " + words.say(Phrase::bottles, {*mix.bottles})});
    }
  } else {
    spans.push_back({", " + words.say(Phrase::no_dilution)});
  }
  if (mix.dwell) spans.push_back({", " + to_text(*mix.dwell)});
  spans.push_back({"."});
  return spans;
}
}  // namespace furnish
