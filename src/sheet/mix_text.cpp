#include "sheet/mix_text.h"

#include "base/text.h"
#include "sheet/own_words.h"
#include "sheet/shown.h"
#include "sheet/terms.h"

namespace furnish {

std::vector<TextSpan> mix_text(const Mix& mix, const SheetVoice& voice, MixDetail detail) {
  const Words& words = voice.words;
  std::vector<TextSpan> spans{{capitalised(salons_words(mix.use.product.name, voice))}};
  if (mix.neat) {
    spans.push_back({comma(words) + words.say(Phrase::neat)});
  } else if (mix.measured) {
    spans.push_back({" "});
    spans.push_back({words.say(Phrase::mix, {shown(mix.measured->product, voice),
                                             shown(mix.measured->water, voice)}),
                     Face::semibold});
    if (detail == MixDetail::full && mix.bottles && *mix.bottles > 1) {
      spans.push_back({comma(words) + words.say(Phrase::bottles, {*mix.bottles})});
    }
  } else {
    spans.push_back({comma(words) + words.say(Phrase::no_dilution)});
  }
  if (mix.dwell) spans.push_back({comma(words) + shown(*mix.dwell, voice)});
  spans.push_back({"."});
  return spans;
}
}  // namespace furnish
