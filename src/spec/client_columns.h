#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/csv.h"

namespace furnish {

/// What a column of a client list tells.
enum class ClientFact : std::uint8_t {
  comment,  ///< nothing that a pet's file has a key for: kept as a comment line
  nothing,  ///< left out
  name,
  breed,
  coat,
  colour,
  sex,
  born,
  weight,
  owner,
  first_name,
  last_name,
  family_name,  ///< stands before the first name
  phone,
  email,
  address,
  language,
  collects,
  vet,
  vet_phone,
  alert,
  note,
  allergies,
  health,
  every,
  rabies
};

/// As `--columns` has it, and what it becomes; a phrase, for people.
struct ClientFactInfo {
  ClientFact fact;
  std::string_view word, meaning;
};
std::span<const ClientFactInfo> client_facts();
const ClientFactInfo& info(ClientFact);

struct ClientColumn {
  std::string header;  ///< as written; empty where the list has no headers
  ClientFact fact = ClientFact::comment;
  int pet = 1;       ///< which of a line's: "Dog 2" is of the second
  std::string unit;  ///< of weights without one: "kg", from a header such as "Weight (kg)"
};

/// One part of `--columns`, such as name=2 or phone=Mobile; `name2=5` is the name of a line's
/// second pet.
struct ColumnChoice {
  ClientFact fact = ClientFact::comment;
  int pet = 1;
  std::string column;  ///< its number from 1, or its header
};
/// Empty, and a fault in words, if it is none.
std::optional<ColumnChoice> parse_column_choice(std::string_view, std::string& fault);

struct ClientColumns {
  std::vector<ClientColumn> columns;
  bool headed = false;  ///< the list's first line names them
};

/// What each column is by the words of the first line, in the languages of the catalogues, and by
/// what was chosen, which goes before them. A choice of a column that is not there is a fault in
/// words, and gives nothing.
std::optional<ClientColumns> propose_columns(const CsvLine& first, std::span<const ColumnChoice>,
                                             std::string& fault);
}  // namespace furnish
