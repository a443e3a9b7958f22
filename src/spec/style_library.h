#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/source.h"
#include "model/style.h"
#include "spec/context.h"

namespace furnish {

/// The styles that pets may name: those shipped with furnish and the salon's own; of two with one
/// key the salon's counts. Each file is read once, when first asked for, with what it extends.
class StyleLibrary {
 public:
  /// Folders of `.toml` files; either may be empty or missing. Keeps the references in `context`.
  StyleLibrary(const ReadContext& context, const std::string& shipped_folder,
               const std::string& salon_folder);

  /// A chain of styles that extend each other is no longer than this.
  static constexpr std::size_t most_extended = 32;

  /// The style, or null after a fault: no style of that key (with the nearest), a cycle of styles
  /// that extend each other (shown whole, once), a chain of more than most_extended, or faults in
  /// its file (which stand there; that they are why is said at `asked_at`, if it is a place). What
  /// is wrong with the asking goes to `asker`, faults of the styles' files to the library's own
  /// sink. The pointer lives as long as the library.
  const Style* find(std::string_view key, SourceSpan asked_at, DiagnosticSink& asker);
  /// As above, all to the library's own sink.
  const Style* find(std::string_view key, SourceSpan asked_at) {
    return find(key, asked_at, context_.sink);
  }
  /// All keys, sorted.
  std::vector<std::string> keys() const;
  /// Path of the file that a key stands for; empty if there is none.
  std::string path(std::string_view key) const;

 private:
  enum class State : std::uint8_t { unread, reading, good, bad };
  struct Shelf {
    std::string path;
    State state = State::unread;
    Style style;
    SourceSpan span;     ///< of the file, once read
    SourceSpan extends;  ///< of the key it extends, once read
    bool in_cycle = false;
    bool in_long_chain = false;
  };
  void read(Shelf&);
  void report_long_chain(SourceSpan asked_at);
  void report_cycle(const std::string& key, SourceSpan asked_at);

  ReadContext context_;
  std::map<std::string, Shelf, std::less<>> shelves_;
  std::vector<std::string> chain_;  ///< being read: each extends the next
};
}  // namespace furnish
