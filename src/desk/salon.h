#pragma once

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/date.h"

namespace furnish::desk {

/// A file that can be changed at the desk: "pet" and "marlow", "visit" and "marlow/2026-11-24",
/// "day" and "2026-11-24", "style" and "summer", "salon" and "".
struct FileId {
  std::string kind, id;
  friend auto operator<=>(const FileId&, const FileId&) = default;
};

/// A text as it lies on the disk, or why it cannot be had.
struct FileText {
  std::optional<std::string> text;
  std::string fault;
};

/// What is to be shown of a text.
struct LookOrder {
  FileId file;
  std::string text;           ///< in place of what is on the disk
  std::string sheet;          ///< "card", "note-owner"; empty: none
  std::string language = {};  ///< of the sheet; empty: as it is usual
  bool figure = false;        ///< the dog to point at
};

/// A sheet to be printed, about a pet or a visit.
struct SheetWanted {
  FileId file;
  std::string sheet;
  std::string language = {};  ///< empty: as it is usual
};
/// The bytes of a PDF; or empty, and what stood against it.
struct Printed {
  std::optional<std::string> pdf;
  std::string fault;
  std::string code = {};   ///< of the fault, for the page's own words: "faults", "no-day"
  std::string about = {};  ///< whom it is about
};

/// What has been made, or why not: one of the two is empty.
struct Made {
  FileId file;
  std::string fault;
  std::string code = {};  ///< of the fault, for the page's own words: "exists"
};
struct PhotoMade {
  std::string path;  ///< as a visit names it
  std::string fault;
};

/// The salon behind the desk: its files, and what furnish makes of them. Whoever implements it
/// looks names up in the folder's own lists, and never joins one into a path. What the desk only
/// hands on is JSON already. Nothing here throws for what a person wrote.
class Salon {
 public:
  using Json = nlohmann::ordered_json;

  virtual ~Salon() = default;
  /// What a page asks for first: who the salon is, its words, and what forms choose from.
  virtual Json facts() = 0;
  /// Rows of pets, at most so many: all words are found in each. Without any, those booked today
  /// by their hour, then who is due, longest over first. Under "pets"; under "reading" how many are
  /// not known yet.
  virtual Json find(std::string_view words, std::size_t most) = 0;
  /// Bookings of a day, what to mix, whom to ring.
  virtual Json day(Date) = 0;

  /// "pets/marlow.toml", as shown; empty: there is no such file.
  virtual std::optional<std::string> shown_path(const FileId&) = 0;
  virtual FileText read(const FileId&) = 0;
  /// Ids and days of a pet's visits, the last first.
  virtual std::vector<std::pair<std::string, std::string>> visits(std::string_view pet) = 0;
  /// Faults, alerts and cautions with their paths, sides of the sheet as SVG, the figure: keys
  /// "faults", "alerts", "cautions", "pages", "figure"; "read" is "whole", "rest" where alerts and
  /// cautions are of what could be read of a faulty file, else "nothing".
  virtual Json look(const LookOrder&) = 0;
  /// A visit out of its pet's history, or back into it: nothing that a person wrote is lost, it
  /// lies under put-away/. Empty, or why not.
  virtual std::string put_away(const FileId&) = 0;
  virtual std::string put_back(const FileId&) = 0;
  /// Ids and days of what was put away of a pet's visits, the last first.
  virtual std::vector<std::pair<std::string, std::string>> away(std::string_view pet) = 0;
  /// Puts a whole text in place of a file that is there. Empty, or why not. Never through a link.
  virtual std::string write(const FileId&, std::string_view text) = 0;
  /// A file where none is, with what is known filled in: named after `name`; of a visit, which is
  /// today's, that is its pet.
  virtual Made create(std::string_view kind, std::string_view name) = 0;
  /// Takes a file away again that create() just made, and that nobody has seen.
  virtual void take_back(const FileId&) = 0;
  /// Copies a photo into the salon's folder, upright and without what a camera adds.
  virtual PhotoMade add_photo(std::string_view visit, std::string_view bytes) = 0;
  /// All in one file.
  virtual Printed print(const std::vector<SheetWanted>&) = 0;
  /// The sheets of all pets of a day, by the hour; or, of "day", the day's own.
  virtual Printed print_day(Date, std::string_view sheet) = 0;
  /// A font of the sheets by its name without ending; empty: the page has no use for it.
  virtual std::optional<std::string> font(std::string_view name) = 0;
};
}  // namespace furnish::desk
