#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "plan/day_plan.h"
#include "sheet/day_columns.h"
#include "sheet/day_row.h"
#include "sheet/parts.h"
#include "sheet/pieces.h"

namespace furnish {

/// Puts a day's page together: its head, its bookings by groomer, what to mix and whom to ring.
class DayMaker {
 public:
  /// Keeps references to both.
  DayMaker(const DayPlan& plan, const DayDesk& desk) : plan_(plan), desk_(desk) {}

  std::size_t bookings() const;
  /// After how many bookings another groomer's begin, those nearest to the middle first.
  std::vector<std::size_t> cuts() const;

  BlockPtr heading_block() const { return column(head()); }
  /// All in one column.
  BlockPtr whole(DayDetail) const;
  /// Up to a number of bookings, and what comes after them.
  std::vector<BlockPtr> front(std::size_t cut, DayDetail) const;
  std::vector<BlockPtr> back(std::size_t cut, DayDetail) const;

  /// What columns are made of, each as high as in a setting of a width: the bookings, then the
  /// entries of the lists where they are to stand in columns too.
  enum class Lists : std::uint8_t { none, entries };
  std::vector<ColumnItem> items(Length width, const Setting&, Lists) const;
  /// Two of these columns beside each other, from the items that they begin with.
  BlockPtr two_columns(std::size_t first, std::size_t second, std::size_t end) const;
  /// The lists beside each other.
  BlockPtr lists_block() const { return column(lists()); }
  /// A booking a piece, each with its groomer's name.
  std::vector<BlockPtr> pieces(DayDetail) const;

  FootText foot() const;

 private:
  /// An entry of a list, under the head of that.
  struct Entry {
    Phrase head;
    BlockPtr block;
  };
  std::string say(Phrase, const std::vector<WordArgument>& = {}) const;
  std::vector<BlockPtr> head() const;
  std::string groomer(const DayBlock&) const;
  BlockPtr block_head(const DayBlock&, bool continued, DayDetail) const;
  /// The bookings from one number up to another, under their groomers.
  std::vector<BlockPtr> blocks(std::size_t from, std::size_t to, DayDetail) const;
  BlockPtr one_column(std::size_t from, std::size_t to) const;
  std::vector<Entry> entries() const;
  std::vector<BlockPtr> stacked_lists() const;
  BlockPtr list_head(Phrase) const;
  std::vector<BlockPtr> lists() const;

  const DayPlan& plan_;
  const DayDesk& desk_;
};
}  // namespace furnish
