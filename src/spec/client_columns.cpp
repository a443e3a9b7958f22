#include "spec/client_columns.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <set>

#include "base/text.h"
#include "spec/client_words.h"

namespace furnish {
namespace {
constexpr std::array<ClientFactInfo, 26> infos{{
    {ClientFact::comment, "comment", "kept as a comment"},
    {ClientFact::nothing, "nothing", "left out"},
    {ClientFact::name, "name", "the pet's name"},
    {ClientFact::breed, "breed", "its breed"},
    {ClientFact::coat, "coat", "its coat"},
    {ClientFact::colour, "colour", "its colour"},
    {ClientFact::sex, "sex", "its sex"},
    {ClientFact::born, "born", "the day it was born"},
    {ClientFact::weight, "weight", "its weight"},
    {ClientFact::owner, "owner", "the owner's name"},
    {ClientFact::first_name, "first-name", "the owner's first name"},
    {ClientFact::last_name, "last-name", "the owner's last name"},
    {ClientFact::family_name, "family-name", "the owner's family name, before the first name"},
    {ClientFact::phone, "phone", "the owner's number"},
    {ClientFact::email, "email", "the owner's email"},
    {ClientFact::address, "address", "of the owner's address"},
    {ClientFact::language, "language", "the owner's language"},
    {ClientFact::collects, "collects", "who may collect the pet"},
    {ClientFact::vet, "vet", "the vet"},
    {ClientFact::vet_phone, "vet-phone", "the vet's number"},
    {ClientFact::alert, "alert", "an alert of the level warning, for staff"},
    {ClientFact::note, "note", "an alert of the level notice, for staff"},
    {ClientFact::allergies, "allergies", "an alert of the level warning, and its allergens"},
    {ClientFact::health, "health", "its health, for staff"},
    {ClientFact::every, "every", "how often it comes"},
    {ClientFact::rabies, "rabies", "the day it was vaccinated against rabies"},
}};

/// Of which a list may have several columns for one pet.
bool may_repeat(ClientFact fact) {
  switch (fact) {
    case ClientFact::comment:
    case ClientFact::nothing:
    case ClientFact::phone:
    case ClientFact::address:
    case ClientFact::collects:
    case ClientFact::alert:
    case ClientFact::note:
    case ClientFact::allergies:
    case ClientFact::health:
      return true;
    default:
      return false;
  }
}

/// A header for comparing: letters alone, its unit and number apart.
struct Heading {
  std::string words, unit;
  int number = 1;
};

Heading heading(std::string_view written) {
  Heading out;
  std::string word;
  const auto take = [&] {
    const bool unit = word == "kg" || word == "g" || word == "lb" || word == "lbs" || word == "oz";
    if (unit) {
      out.unit = word == "lbs" ? "lb" : word;
    } else if (!word.empty()) {
      out.words += (out.words.empty() ? "" : " ") + word;
    }
    word.clear();
  };
  for (const char c : plain_letters(written)) {
    const bool ascii = static_cast<unsigned char>(c) < 0x80;
    const bool letter = !ascii || (c >= 'a' && c <= 'z') || c == '\'';
    if (letter) {
      word += c;
      continue;
    }
    take();
    if (c >= '1' && c <= '9') out.number = c - '0';
  }
  take();
  return out;
}

/// The words of headers that are known, each as a heading has them. Made once for a list.
class KnownHeadings {
 public:
  KnownHeadings() {
    for (const HeaderWords& row : header_words()) {
      // A word of two facts is the first's.
      each(row.words, [&](std::string words) { facts_.try_emplace(std::move(words), row.fact); });
    }
    each(name_words(), [&](std::string words) { names_.insert(std::move(words)); });
  }
  std::optional<ClientFact> fact_of(const std::string& words) const {
    const auto found = facts_.find(words);
    return found == facts_.end() ? std::nullopt : std::optional(found->second);
  }
  bool some_name(const std::string& words) const { return names_.contains(words); }

 private:
  template <typename Take>
  static void each(std::string_view words, const Take& take) {
    while (!words.empty()) {
      const std::size_t end = std::min(words.find('|'), words.size());
      take(heading(words.substr(0, end)).words);
      words.remove_prefix(std::min(end + 1, words.size()));
    }
  }
  std::map<std::string, ClientFact> facts_;
  std::set<std::string> names_;
};

bool of_the_pet(ClientFact fact) {
  return fact >= ClientFact::name && fact <= ClientFact::weight;
}

class Proposal {
 public:
  explicit Proposal(const CsvLine& first) : first_(first) {
    const KnownHeadings known;
    for (const CsvCell& cell : first.cells) {
      headings_.push_back(heading(cell.text));
      facts_.push_back(known.fact_of(headings_.back().words));
      some_name_.push_back(known.some_name(headings_.back().words));
      out_.headed = out_.headed || facts_.back() || some_name_.back();
    }
    chosen_.resize(first.cells.size());
    out_.columns.resize(first.cells.size());
  }

  /// False, and a fault, if there is no such column.
  bool choose(const ColumnChoice& choice, std::string& fault) {
    const auto at = found(choice.column);
    if (!at) {
      fault = fmt::format("there is no column \"{}\"; the list has {}", choice.column,
                          first_.cells.size());
      return false;
    }
    chosen_[*at] = true;
    out_.columns[*at].fact = choice.fact;
    out_.columns[*at].pet = choice.pet;
    return true;
  }

  ClientColumns all() && {
    for (std::size_t i = 0; i < out_.columns.size(); ++i) {
      ClientColumn& column = out_.columns[i];
      if (out_.headed) column.header = trimmed(first_.cells[i].text);
      column.unit = headings_[i].unit;
      if (chosen_[i]) continue;
      const ClientFact fact = by_header(i);
      const int pet = of_the_pet(fact) ? headings_[i].number : 1;
      if (may_repeat(fact) || !taken(fact, pet, i)) {
        column.fact = fact;
        column.pet = pet;
      }
    }
    return std::move(out_);
  }

 private:
  std::optional<std::size_t> found(const std::string& column) const {
    std::size_t number = 0;
    const auto read = std::from_chars(column.data(), column.data() + column.size(), number);
    if (read.ec == std::errc() && read.ptr == column.data() + column.size()) {
      if (number >= 1 && number <= first_.cells.size()) return number - 1;
      return std::nullopt;
    }
    for (std::size_t i = 0; i < first_.cells.size(); ++i) {
      if (plain_letters(trimmed(first_.cells[i].text)) == plain_letters(trimmed(column))) return i;
    }
    return std::nullopt;
  }

  /// Whether another column is said or chosen to be this.
  bool elsewhere(ClientFact fact) const {
    for (std::size_t i = 0; i < facts_.size(); ++i) {
      if (chosen_[i] ? out_.columns[i].fact == fact : facts_[i] == fact) return true;
    }
    return false;
  }

  /// Where nothing says whose it is, "name" is the pet's, unless another column is; then it is the
  /// owner's, and beside a first name the owner's last.
  ClientFact by_header(std::size_t i) const {
    if (!some_name_[i]) return facts_[i].value_or(ClientFact::comment);
    if (elsewhere(ClientFact::first_name)) return ClientFact::last_name;
    if (elsewhere(ClientFact::family_name)) return ClientFact::first_name;
    return elsewhere(ClientFact::name) ? ClientFact::owner : ClientFact::name;
  }

  bool taken(ClientFact fact, int pet, std::size_t before) const {
    for (std::size_t i = 0; i < out_.columns.size(); ++i) {
      const bool set = i < before || chosen_[i];
      if (set && out_.columns[i].fact == fact && out_.columns[i].pet == pet) return true;
    }
    return false;
  }

  const CsvLine& first_;
  std::vector<Heading> headings_;
  std::vector<std::optional<ClientFact>> facts_;
  std::vector<bool> some_name_, chosen_;
  ClientColumns out_;
};
}  // namespace

std::span<const ClientFactInfo> client_facts() {
  return infos;
}

const ClientFactInfo& info(ClientFact fact) {
  return *std::ranges::find(infos, fact, &ClientFactInfo::fact);
}

std::optional<ColumnChoice> parse_column_choice(std::string_view text, std::string& fault) {
  const std::size_t equals = text.find('=');
  if (equals == std::string_view::npos || trimmed(text.substr(equals + 1)).empty()) {
    fault = fmt::format("expected a choice such as name=2 or phone=Mobile, found \"{}\"", text);
    return std::nullopt;
  }
  ColumnChoice out;
  out.column = trimmed(text.substr(equals + 1));
  std::string_view word = trimmed(text.substr(0, equals));
  if (word.size() > 1 && word.back() >= '1' && word.back() <= '9') {
    out.pet = word.back() - '0';
    word.remove_suffix(1);
  }
  std::vector<std::string_view> words;
  for (const ClientFactInfo& one : infos) words.push_back(one.word);
  const auto* const found = std::ranges::find(infos, word, &ClientFactInfo::word);
  if (found != infos.end()) {
    out.fact = found->fact;
    return out;
  }
  const auto near = nearest(word, words);
  fault = fmt::format("a column cannot be \"{}\"; {}", word,
                      near ? fmt::format("did you mean {}?", *near)
                           : fmt::format("one of {}", fmt::join(words, ", ")));
  return std::nullopt;
}

std::optional<ClientColumns> propose_columns(const CsvLine& first,
                                             std::span<const ColumnChoice> choices,
                                             std::string& fault) {
  Proposal out(first);
  for (const ColumnChoice& choice : choices) {
    if (!out.choose(choice, fault)) return std::nullopt;
  }
  return std::move(out).all();
}
}  // namespace furnish
