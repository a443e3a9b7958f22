#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/salon.h"
#include "spec/client_columns.h"
#include "spec/client_dates.h"
#include "spec/context.h"
#include "spec/file_template.h"

namespace furnish {

/// How a list of clients is to be read; what is not said is proposed.
struct ClientListRequest {
  std::vector<ColumnChoice> columns;
  std::optional<DateOrder> dates;
  bool whole_names = false;  ///< "Salt & Pepper" is one pet
};

/// A pet of a list, as its file will say it.
struct ClientPet {
  KnownFacts facts;
  std::string remarks;  ///< comment lines: what its file has no key for
  std::string name, owner, phone;
  SourceSpan span;  ///< of its name
  /// The same for the same name, owner, number and email, whatever else changes and however they
  /// are spaced and cased; 16 digits of base 16.
  std::string mark;
};

/// A list that another program wrote.
struct ClientList {
  std::string_view encoding;
  char separator = ',';
  ClientColumns columns;
  std::vector<DateOrder> orders;  ///< of each column's dates, if it has any
  std::size_t lines = 0;          ///< with something in them, without the headers
  std::size_t unusable = 0;       ///< of which no pet can be made, each with its faults
  std::vector<ClientPet> pets;
};

/// A list may be as large as this; a line with all there is to say has a few hundred bytes.
inline constexpr std::size_t largest_client_list = std::size_t{32} * 1024 * 1024;

/// Reads a list (see CsvList, decoded(), propose_columns()). A line with a fault gives no pet, and
/// its faults are reported; empty after one that concerns them all. The salon says which unit a
/// weight without one has.
std::optional<ClientList> read_client_list(const ReadContext&, const std::string& path,
                                           const ClientListRequest&, const Salon&, Date today);
}  // namespace furnish
