#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/source.h"
#include "spec/edit_layout.h"
#include "spec/edit_value.h"

namespace furnish {

/// A text of TOML with what it means and where it stands.
struct ParsedText {
  std::string text;
  std::size_t begin = 0;  ///< behind a byte order mark
  EditValue tree;
  TextLayout layout;
  std::vector<std::size_t> starts;  ///< of lines, in bytes

  /// Lines from 0.
  std::size_t line_of(std::size_t byte) const;
  std::size_t line_end(std::size_t line) const;  ///< behind its line end
  std::string_view line(std::size_t) const;      ///< without its line end
  bool blank(std::size_t line) const;            ///< also past the last
  std::string_view indent(std::size_t line) const;
  /// What ends that line, or else most lines.
  std::string newline(std::size_t near) const;
  /// The first line of the remark that stands right above one.
  std::size_t lead(std::size_t line) const;
  Position position(std::size_t byte) const;
  std::size_t byte(Position) const;
  std::size_t first_line(const TextLayout::Pair& pair) const { return line_of(pair.begin()); }
  std::size_t last_line(const TextLayout::Pair& pair) const { return line_of(pair.end() - 1); }
  /// Of a block's header and its keys.
  std::size_t last_line(const TextLayout::Block&) const;
  std::string_view of(TextLayout::Span span) const { return span.of(text); }
};

/// Null if it is no TOML: then `fault` says why.
std::shared_ptr<const ParsedText> parse_for_edits(std::string text, std::string& fault);

/// What is written at a path and below it.
struct Site {
  struct Statement {
    std::size_t block, pair;
  };
  std::vector<std::size_t> blocks;    ///< headers at or below it
  std::vector<Statement> statements;  ///< lines at or below it, under headers above it
  /// If it is one value as written; null of what is spread over headers and dotted keys.
  const TextLayout::Value* value = nullptr;
  const TextLayout::Pair* pair = nullptr;  ///< whose value that is, of a key
  /// Within braces or a list: these, and which of their parts are at or below it.
  const TextLayout::Value* around = nullptr;
  std::vector<std::size_t> parts;
  std::size_t below = 0;  ///< how many steps of the path lie within `around`

  bool empty() const { return blocks.empty() && statements.empty() && parts.empty(); }
};
/// Where a path stands in a text; empty() if it stands nowhere.
Site find_site(const TextLayout&, const EditPath&);
}  // namespace furnish
