#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <utility>

#include "page/block.h"

namespace furnish {

/// What a block worked out last for a width and a setting. Arrangements share blocks and ask them
/// again and again for the same; as a block never changes, what it answered holds.
template <typename Answer>
class Remembered {
 public:
  template <typename Work>
  const Answer& of(Length width, const Setting& setting, Work work) {
    const Asked asked{width,           setting.type,      setting.rhythm,
                      &setting.shaper, setting.precision, setting.leading};
    for (const auto& one : last_) {
      if (one && one->first == asked) return one->second;
    }
    Answer answer = work();
    auto& into = last_[next_];
    next_ = (next_ + 1) % last_.size();
    return into.emplace(asked, std::move(answer)).second;
  }

 private:
  struct Asked {
    Length width;
    TypeScale type;
    Length rhythm;
    const TextShaper* shaper;
    Precision precision;
    double leading;
    friend bool operator==(const Asked&, const Asked&) = default;
  };
  std::array<std::optional<std::pair<Asked, Answer>>, 2> last_;
  std::size_t next_ = 0;
};
}  // namespace furnish
