#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>

#include "sheet/sheet.h"

namespace furnish {

/// Why something of a pet is missing from a salon's book.
enum class BookGap : std::uint8_t {
  nothing,  ///< all there is of it is there
  unread,   ///< its file, or a day's that may book it, has faults
  visit,    ///< a visit's file has faults, so there is no note
  not_made  ///< a sheet of it could not be made
};

/// A pet, as a book's index has it.
struct BookPet {
  std::string name, owner;  ///< of one that cannot be read the name of its file, and no owner
  std::string letter;       ///< its own
  std::optional<std::size_t> page;  ///< its first, from 0; empty: it is on none
  BookGap gap = BookGap::nothing;
  std::string where;  ///< of the fault: "pets/rex.toml:12"
};

/// How a link to a page of the book is named, from 0.
using PageLink = std::function<std::string(std::size_t page)>;

/// The pages at the front of a salon's book: its pets by their names, then by their owners' last
/// names, each with its page and a link, or with what is missing and why. `pets`: in the order of
/// their names. Each page is handed on as it is made, so that a long index takes no more room.
/// False iff an error was reported, or a page was not taken.
bool make_book_index(const SheetInput&, std::span<const BookPet> pets, const PageLink&,
                     const SheetVoice&, DiagnosticSink&, const std::function<bool(Sheet)>& take);
/// What the book is called, and what it is.
DocumentInfo book_info(const Salon&, Date, const SheetVoice&);
}  // namespace furnish
