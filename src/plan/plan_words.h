#pragma once

#include <functional>
#include <string>
#include <variant>
#include <vector>

#include "base/date.h"
#include "base/measures.h"
#include "model/free_text.h"
#include "trade/health.h"
#include "trade/method.h"
#include "trade/region.h"
#include "trade/tools.h"
#include "trade/vet_words.h"

namespace furnish {

/// One thing that a caution's sentence names besides its own words.
using CautionFact = std::variant<std::vector<Place>, Date, Mass, std::chrono::seconds, Condition,
                                 const Blade*, int, double, VetTask, std::string, FreeText>;

/// A caution's sentence as data: the key of its pattern under [rule] in a catalogue of words, one
/// of caution_keys(), and what stands at the pattern's places, in order. A pattern need not name
/// all of it.
struct CautionText {
  std::string key;
  std::vector<CautionFact> facts;
  friend auto operator<=>(const CautionText&, const CautionText&) = default;
};

/// Who says a plan's sentences: all words are in the catalogues, which this layer does not know.
struct PlanWords {
  std::function<std::string(const CautionText&)> caution;  ///< no full stop
  std::function<std::string(Method)> how;                  ///< the line for a newer groomer
};
}  // namespace furnish
