#pragma once

#include <string>
#include <utility>
#include <vector>

#include "sheet/note_words.h"
#include "sheet/own_words.h"
#include "sheet/parts.h"
#include "sheet/terms.h"

namespace furnish {

/// Collects "Head: text." pieces into one line, and those in another language each into a line of
/// its own after it.
class Pieces {
 public:
  explicit Pieces(const SheetVoice& voice) : voice_(voice) {}
  void add(const std::string& head, const FreeText& text) { add(head, own_words(text, voice_)); }
  void add(const std::string& head, const OwnWords& own) {
    if (own.language.empty()) return add_readable(head, own.text);
    apart_.push_back({{{lead_in(head, own.language, voice_), Face::semibold}},
                      stand_apart({sentence(own.text)}, own.language, voice_)});
  }
  void add_readable(const std::string& head, const std::string& text) {
    if (text.empty()) return;
    if (!spans_.empty()) spans_.push_back({" "});
    if (!head.empty()) spans_.push_back({head + colon(voice_.words), Face::semibold});
    spans_.push_back({sentence(text)});
  }
  std::vector<NoteLine> take() {
    if (!spans_.empty()) apart_.insert(apart_.begin(), NoteLine{std::move(spans_)});
    return std::move(apart_);
  }

 private:
  const SheetVoice& voice_;
  std::vector<TextSpan> spans_;
  std::vector<NoteLine> apart_;
};
}  // namespace furnish
