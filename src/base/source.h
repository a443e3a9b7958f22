#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace furnish {

/// Line and column from 1; columns count code points, as the TOML parser does.
struct Position {
  std::uint32_t line = 0, column = 0;
  friend constexpr auto operator<=>(Position, Position) = default;
};

/// Half open, [begin, end), in one file of a SourceSet. Line 0 means a file but no place in it;
/// a default span means no file either.
struct SourceSpan {
  static constexpr std::uint32_t no_file = 0xFFFFFFFF;
  std::uint32_t file = no_file;
  Position begin, end;
  friend constexpr auto operator<=>(const SourceSpan&, const SourceSpan&) = default;
};

/// A value and where its author wrote it, so that a fault found three stages later still points at
/// the line to edit.
template <typename T>
struct Located {
  T value{};
  SourceSpan span{};
};

/// The text of one file and where its lines begin.
class SourceText {
 public:
  SourceText(std::string path, std::string text);
  const std::string& path() const { return path_; }
  std::string_view text() const { return text_; }
  /// Without its line end; empty past the last line. `number` counts from 1.
  std::string_view line(std::uint32_t number) const;
  /// Place of a byte; the end of the text for a byte past it.
  Position position(std::size_t byte) const;

 private:
  std::string path_, text_;
  std::vector<std::size_t> starts_;
};

/// Every file that was read in this run. Adding never moves what is there.
class SourceSet {
 public:
  /// A file as it goes from one set to another.
  struct Text {
    std::string path, text;
    bool passing = false;
  };

  /// The number that spans in this file carry. `passing`: it is about one thing of many, and nobody
  /// asks for it again once that is told.
  std::uint32_t add(std::string path, std::string text, bool passing = false);
  /// An empty one without a path if it was let go of.
  const SourceText& at(std::uint32_t file) const;
  /// How many were ever added.
  std::size_t size() const { return size_; }
  bool passing(std::uint32_t file) const;
  /// Lets go of passing files from that number on. No number is given twice.
  void forget_passing(std::uint32_t from = 0);
  /// What was added from that number on, in order, and lets go of what is passing.
  std::vector<Text> handed_over(std::uint32_t from);

 private:
  struct Kept {
    std::unique_ptr<const SourceText> text;
    bool passing = false;
  };
  /// By number. What was let go of leaves nothing, of however many pets it was.
  std::map<std::uint32_t, Kept> texts_;
  std::uint32_t size_ = 0;
};
}  // namespace furnish
