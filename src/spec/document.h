#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/date.h"
#include "base/source.h"
#include "spec/context.h"

namespace furnish {

struct TomlNode;
struct TomlEntry;
using TomlList = std::vector<TomlNode>;
using TomlTable = std::vector<TomlEntry>;  ///< in the order of the file
/// A day as written; empty where make_date() is.
struct TomlDate {
  std::optional<Date> date;
  std::string written;
};
struct TomlTime {
  TimeOfDay time{};     ///< whole minutes; see `whole`
  bool whole = true;    ///< false if seconds were given that are not zero
  std::string written;  ///< "09:30:00"
};
struct TomlDateTime {
  std::string date;     ///< "2026-11-24", without the time
  std::string written;  ///< with it
};

/// What stands behind a key, and where. Tables under a `[header]` have the header as their span.
struct TomlNode {
  std::variant<std::string, std::int64_t, double, bool, TomlDate, TomlTime, TomlDateTime, TomlList,
               TomlTable>
      value;
  SourceSpan span;
};

struct TomlEntry {
  std::string key;
  SourceSpan key_span;
  TomlNode node;
};

/// A `[[heading]]` that is a comment, as templates have them: "# [[alert]]".
struct SleepingHeading {
  std::uint32_t line = 0;
  std::string name;
};

/// A file of TOML as a tree in which everything has its place.
struct Document {
  std::uint32_t file = SourceSpan::no_file;
  TomlTable root;
  /// False if lines with faults of syntax were left out of the tree: then what seems to be missing
  /// may stand in them.
  bool whole = true;
  std::vector<SleepingHeading> sleeping = {};  ///< in the order of the file
  std::vector<std::uint32_t> left_out = {};    ///< the first lines of what was left out: a
                                               ///< line, a list, or a heading's section

  /// The file, without a place in it.
  SourceSpan span() const { return {file, {}, {}}; }
};

/// The bytes of a file; empty after a fault.
std::optional<std::string> read_bytes(const ReadContext&, const std::string& path);

/// Files::list(); a folder that cannot be read is a fault, and `read` false.
std::vector<std::string> list_folder(const ReadContext&, const std::string& folder, bool& read);
inline std::vector<std::string> list_folder(const ReadContext& context, const std::string& folder) {
  bool ignored = true;
  return list_folder(context, folder, ignored);
}

/// Parses a text, a byte order mark or not in front, and adds it to the sources. Faults of syntax
/// are all reported, as far as one can be told from the next; empty after one that hides what
/// follows it. `must_have` says what an empty file lacks.
std::optional<Document> read_document(const ReadContext&, std::string path, std::string text,
                                      std::string_view must_have);

/// A file of the sources, and its document unless it cannot be read.
struct ReadFile {
  std::uint32_t file = SourceSpan::no_file;
  std::optional<Document> document;
};
/// read_bytes() and read_document() in one, for who has to name the file in any case.
/// `most`: the bytes a file of its kind may have.
ReadFile read_file(const ReadContext&, const std::string& path, std::string_view must_have,
                   std::size_t most = Files::largest);

/// Whether a link leads to what is no TOML file. Faults quote the lines they are about, and these
/// are nobody's business here.
bool leads_astray(const FileContent&);
/// The name of a file without folders and ".toml".
std::string stem(std::string_view path);
}  // namespace furnish
