#pragma once

#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "model/pet.h"
#include "plan/plan.h"

namespace furnish {

// What a front desk asks of the whole salon. Values in an order, and the same as text and JSON.

/// How to reach an owner: the phone, else the address for mail; empty if neither is on file.
std::string reach(const Owner&);

/// A pet that is due.
struct DueRow {
  std::string key, name, owner, contact;
  std::optional<Date> last;              ///< the last visit; empty: none on file
  std::optional<int> since;              ///< the year from which it comes, where that is on file
  std::optional<CalendarSpan> interval;  ///< the owner's
  Date due;                              ///< without a visit on file no day of theirs
  DueReason reason{};
  std::optional<Date> unread;   ///< from that day on it may be booked: not all can be read
  bool all_visits = true;       ///< false: not all can be read, and what is said is without them
  std::optional<Length> limit;  ///< what the coat would pass, where that is the reason
  int days_over = 0;            ///< negative: still to come
};
/// Empty if nobody said when the pet comes, or it is later than so many days from the plan's.
std::optional<DueRow> due_row(const Pet&, const Plan&, const CalendarSpan& within);
/// Longest over first, then by name; last those of which no visit is on file.
void sort_rows(std::vector<DueRow>&);

/// A vaccination that ran out, runs out soon, does not count yet or is not on file.
struct ExpiringRow {
  std::string key, name, owner, contact, vaccination;
  VaccinationStatus status{};
  std::optional<Date> until;  ///< expired and valid: the last day; not yet: the first
  bool required = false;
};
/// Of the salon's rules, required or not: missing ones only where they are required.
std::vector<ExpiringRow> expiring_rows(const Pet&, const Plan&, const CalendarSpan& within);
/// Those that ran out first, by their day, then by name.
void sort_rows(std::vector<ExpiringRow>&);

/// A text that a pet is found by, ready to be looked through again and again.
struct SearchText {
  std::string where, text;    ///< "owner", as written
  std::string plain, digits;  ///< without case and accents; only its digits
};
/// Its names, its owner's, who collects it, numbers and addresses, alerts.
std::vector<SearchText> search_texts(const Pet&);
/// What is looked for.
struct SearchWord {
  explicit SearchWord(std::string_view written);
  std::string plain;
  std::string number;  ///< its digits, if it is nothing but a number that is worth looking for
};
/// The first text that has all words; null: none has.
const SearchText* first_with(std::span<const SearchText>, std::span<const SearchWord>);

/// Where words were found in a pet's file.
struct FoundRow {
  std::string key, name, owner, contact;
  std::string where, text;  ///< "alert", and what it says
};
/// All words are in one text of the pet. Without case and accents; digits are found however a
/// number is grouped.
std::optional<FoundRow> found_row(const Pet&, std::span<const std::string> words);

std::string text(std::span<const DueRow>, Date today);
std::string text(std::span<const ExpiringRow>);
std::string text(std::span<const FoundRow>);
std::string json(std::span<const DueRow>);
std::string json(std::span<const ExpiringRow>);
std::string json(std::span<const FoundRow>);
}  // namespace furnish
