#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sheet/parts.h"

namespace furnish {

// What a sheet is divided into where it goes on over its other side.

/// What the last line of a sheet says at its two ends.
struct FootText {
  std::string left, right;
};
/// Lets the request go on: a foot that counts the sides and says where to turn over, and at the top
/// of each side after the first whose sheet it is, and what can hurt: `hurts` may be null. `title`
/// is the document's.
void go_on(PageRequest&, const SheetDesk&, const FootText& alone, const FootText& divided,
           const std::string& title, const BlockPtr& hurts = nullptr);

/// The head of a sheet whose name is too long for the size of a title, in pieces.
std::vector<BlockPtr> plain_head(const Pet&, std::vector<std::vector<TextSpan>> facts);

/// A text in pieces that any paper holds, cut between words; none of nothing.
std::vector<std::string> cut_text(const std::string&);
/// Its first letters, with a sign that there are more; as it is if there are none.
std::string shortened(const std::string&, std::size_t letters);
/// With spaces at which no line ends.
std::string without_breaks(std::string);
/// A name as it stands beside an hour or a number on a page from left to right: one in a script
/// from right to left is set apart (UAX #9), or it would turn the number to its other side.
std::string beside_number(std::string name);
/// True if it need not be cut.
bool fits_piece(const std::string&);

/// A row as one paragraph that begins with its label, if it has one; `name` is for messages.
BlockPtr as_text(const SheetRow&, Face label, std::string_view after = after_label,
                 const std::string& name = {});

/// The same rows in pieces that any paper holds: each point by itself, long texts cut between
/// words. Only the first piece of a row has its label.
std::vector<SheetRow> cut(const std::vector<SheetRow>&);
}  // namespace furnish
