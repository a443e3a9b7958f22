#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/calendar_span.h"
#include "base/date.h"
#include "base/measures.h"
#include "model/audience.h"
#include "output/pdf_standard.h"

namespace furnish {

struct SheetMaker;
namespace sheets {
extern const SheetMaker card;
}  // namespace sheets

enum class Command : std::uint8_t {
  sheet,
  rules,
  day,
  book,
  check,
  plan,
  unpack,
  new_visit,
  new_files,
  schema,
  due,
  expiring,
  find,
  rename,
  import_list,
  desk,
  watch
};
/// Whether a command makes pages, so that an output's name says in which format.
constexpr bool makes_pages(Command command) {
  return command == Command::sheet || command == Command::rules || command == Command::day ||
         command == Command::book;
}
/// Whether it may make one, of what it else says as text.
constexpr bool may_make_a_page(Command command) {
  return command == Command::due || command == Command::expiring || command == Command::find;
}
enum class Format : std::uint8_t { pdf, png, svg, text };

/// What was asked for on the command line.
struct Options {
  Command command = Command::sheet;
  const SheetMaker* sheet = &sheets::card;  ///< of `sheet`: which
  std::vector<std::string> pets;            ///< files or names; for `check` the folder
  std::string input, only_pet;       ///< of `unpack`: a sheet or "-", and which of several pets
  std::string kind;                  ///< of `schema` and `new`: which files
  std::vector<std::string> words;    ///< of `find`
  std::string from;                  ///< of `import` and `new pet`: a client list
  std::vector<std::string> columns;  ///< of such a list: "name=2"
  std::string dates;                 ///< of such a list: "day-first"; empty: as it has them
  bool whole_names = false;          ///< of such a list: "Salt & Pepper" is one pet
  bool write = false;                ///< of `import`: else it only shows
  CalendarSpan within{std::chrono::days(14)};  ///< of `due` and `expiring`
  bool booked = false;                         ///< the pets of today's bookings, in their order
  bool foreign = false;     ///< of `check`: what a page shows in another language
  bool week = false;        ///< of `day`: seven days from that day on
  bool verbose = false;     ///< of `check`: with the lines of every warning
  std::string output;       ///< file, folder, "-" or empty for the salon's sheets/
  bool look = false;        ///< of `desk`: nothing can be changed
  bool no_browser = false;  ///< of `desk`: its page is not opened
  Format format = Format::pdf;
  PdfStandard standard = PdfStandard::ua1;  ///< of a PDF
  bool as_page = false;  ///< of `due`, `expiring` and `find`: not as text or JSON
  std::optional<Date> on;
  std::string paper, salon, data;
  std::string language;        ///< BCP 47; empty: the reader's own
  std::optional<Units> units;  ///< empty: the reader's own
  std::optional<Date> visit;   ///< of `note` and `care`; empty: the last one
  int visit_number = 0;        ///< which of that day; 0: the last
  int copies_per_sheet = 0;
  int dpi = 200;
  bool fresh = false;  ///< nothing is left as it was made before
  int jobs = 0;        ///< how many sheets are made at once; 0: as many as there are cores
  bool together = false, strict = false, json = false, sources = false;
  bool force = false;                      ///< a file of another's may be replaced
  Audience spec_for = Audience::everyone;  ///< the pet's file inside a sheet of the salon's own
  /// The salon's folder: what was named, else the one a person stands in.
  std::string root() const { return salon.empty() ? "." : salon; }
};

/// Exit statuses of the program. Warnings are `ok` unless --strict makes them count.
/// `stopped` is what shells give a program that Ctrl-C ended: 128 and the signal's number.
enum class Exit : int { ok = 0, faults = 1, usage = 2, stopped = 130 };

/// What parsing gave: options, or the status to leave with, help and faults already printed.
struct ParsedOptions {
  std::optional<Options> options;
  Exit exit = Exit::ok;
};
/// What the command line asks for. After a slip, or for help and version, no options: all is said.
ParsedOptions parse_options(int argc, const char* const* argv);
}  // namespace furnish
