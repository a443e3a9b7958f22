#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "spec/client_list.h"

namespace furnish {

/// A value of a line, with something in it.
struct ClientValue {
  const ClientColumn* column = nullptr;
  DateOrder order = DateOrder::day_first;  ///< of a date
  std::string text;                        ///< trimmed
  SourceSpan span;
  bool open = false;  ///< "?": that somebody meant to ask is kept as a comment
};

struct ClientLine {
  std::vector<ClientValue> values;
  std::string_view weight_unit;  ///< where neither value nor header has one
  Date today;
};

/// The pets of a line: one for each name that its columns give, and for each that one value lists
/// unless a value is one name. What is wrong with a value is reported; with an error the pets are
/// not to be used.
std::vector<ClientPet> client_pets(const ClientLine&, bool whole_names, DiagnosticSink&);
}  // namespace furnish
