#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "spec/edit_value.h"

namespace furnish {

/// Where everything stands in a text of TOML, in bytes: what the tree of a parser does not tell.
struct TextLayout {
  struct Span {
    std::size_t begin = 0, end = 0;
    std::string_view of(std::string_view text) const { return text.substr(begin, end - begin); }
  };
  struct Key {
    std::string name;
    Span at;  ///< with its quotes
  };
  struct Pair;
  struct Value {
    enum class Kind : std::uint8_t { bare, text, list, braces };
    Kind kind{};
    Span at;
    std::vector<Value> items;
    std::vector<Pair> pairs;
  };
  struct Pair {
    std::vector<Key> keys;  ///< parts of a dotted key
    Value value;
    std::size_t begin() const { return keys.front().at.begin; }
    std::size_t end() const { return value.at.end; }
  };
  /// What stands under one header.
  struct Block {
    Span at;  ///< of the header, with its brackets
    bool element = false;
    std::vector<Key> keys;
    EditPath path;  ///< with the places in lists that the header means
    std::vector<Pair> pairs;
  };
  std::vector<Block> blocks;   ///< the first has no header: what stands above all of them
  std::vector<Span> comments;  ///< without their line ends
};

/// `begin`: behind a byte order mark. pre: the text was read as TOML. Empty where this reads it in
/// another way, which would be a fault of ours.
std::optional<TextLayout> lay_out(std::string_view text, std::size_t begin);
}  // namespace furnish
