#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "model/finish.h"
#include "model/trim.h"
#include "trade/coat.h"

namespace furnish {

/// A named trim, complete: what it extends is already laid under it.
struct Style {
  std::string key;   ///< file name without ending: "natural-tidy"
  std::string name;  ///< on paper: "Natural tidy"
  std::vector<Coat> coats;
  std::string looks;                           ///< what it looks like, one sentence
  std::optional<std::chrono::days> grown_out;  ///< until the outline is lost
  std::vector<std::string> lineage;            ///< keys of what it extends, nearest first
  std::vector<Seam> lines;                     ///< seams where a line is wanted, not a blend
  TrimRules trim;
  Finish finish;
  SourceSpan span;  ///< of its name
};
}  // namespace furnish
