#include "spec/edit_layout.h"

#include <algorithm>
#include <charconv>
#include <map>

namespace furnish {
namespace {
bool bare_key(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_';
}

void add_utf8(std::string& out, std::uint32_t c) {
  const auto byte = [&](std::uint32_t value) { out += static_cast<char>(value); };
  if (c < 0x80) {
    byte(c);
  } else if (c < 0x800) {
    byte(0xC0U | (c >> 6U));
    byte(0x80U | (c & 0x3FU));
  } else if (c < 0x10000) {
    byte(0xE0U | (c >> 12U));
    byte(0x80U | ((c >> 6U) & 0x3FU));
    byte(0x80U | (c & 0x3FU));
  } else {
    byte(0xF0U | (c >> 18U));
    byte(0x80U | ((c >> 12U) & 0x3FU));
    byte(0x80U | ((c >> 6U) & 0x3FU));
    byte(0x80U | (c & 0x3FU));
  }
}

/// What a basic string of one line means, without its quotes.
std::string unescaped(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '\\' || i + 1 >= text.size()) {
      out += text[i];
      continue;
    }
    const char c = text[++i];
    constexpr std::string_view letters = "btnfre", meant = "\b\t\n\f\r\x1B";
    if (const std::size_t n = letters.find(c); n != std::string_view::npos) {
      out += meant[n];
    } else if (c == 'u' || c == 'U') {
      const std::string_view digits = text.substr(i + 1, c == 'u' ? 4 : 8);
      std::uint32_t code = 0;
      std::from_chars(digits.data(), digits.data() + digits.size(), code, 16);
      add_utf8(out, code);
      i += digits.size();
    } else {
      out += c;
    }
  }
  return out;
}

class Scanner {
 public:
  Scanner(std::string_view text, std::size_t begin) : text_(text), i_(begin) {}

  std::optional<TextLayout> run() {
    out_.blocks.emplace_back();
    out_.blocks.front().at = {i_, i_};
    for (skip(true); i_ < text_.size() && good_; skip(true)) {
      if (text_[i_] == '[') {
        header();
      } else {
        TextLayout::Pair one = pair();
        out_.blocks.back().pairs.push_back(std::move(one));
      }
      skip(false);
      if (i_ < text_.size() && text_[i_] != '\n' && text_[i_] != '\r') good_ = false;
    }
    if (!good_) return std::nullopt;
    return std::move(out_);
  }

 private:
  bool at(char c) const { return i_ < text_.size() && text_[i_] == c; }
  bool take(char c) {
    const bool there = at(c);
    if (there) ++i_;
    good_ = good_ && there;
    return there;
  }

  /// Spaces and remarks; line ends too if they mean nothing here.
  void skip(bool lines) {
    for (; i_ < text_.size(); ++i_) {
      const char c = text_[i_];
      if (c == '#') {
        const std::size_t end = std::min(text_.find_first_of("\r\n", i_), text_.size());
        out_.comments.push_back({i_, end});
        i_ = end;
        if (!lines || i_ == text_.size()) return;
      } else if (c != ' ' && c != '\t' && !(lines && (c == '\n' || c == '\r'))) {
        return;
      }
    }
  }

  void string() {
    const char quote = text_[i_];
    const bool many = text_.substr(i_, 3) == std::string(3, quote);
    const std::string end(many ? 3 : 1, quote);
    for (i_ += end.size(); i_ < text_.size() && text_.substr(i_, end.size()) != end; ++i_) {
      if (quote == '"' && text_[i_] == '\\') ++i_;
    }
    good_ = good_ && i_ < text_.size();
    i_ = std::min(i_ + end.size(), text_.size());
    for (int more = 0; many && more < 2 && at(quote); ++more) ++i_;
  }

  std::vector<TextLayout::Key> keys() {
    std::vector<TextLayout::Key> out;
    do {
      skip_blanks();
      const std::size_t begin = i_;
      if (at('"') || at('\'')) {
        string();
      } else {
        while (i_ < text_.size() && bare_key(text_[i_])) ++i_;
      }
      if (i_ == begin) good_ = false;
      std::string_view name = text_.substr(begin, i_ - begin);
      const bool basic = name.starts_with('"');
      if ((basic || name.starts_with('\'')) && name.size() > 1)
        name = name.substr(1, name.size() - 2);
      out.push_back({basic ? unescaped(name) : std::string(name), {begin, i_}});
      skip_blanks();
    } while (good_ && at('.') && ++i_ > 0);
    return out;
  }
  void skip_blanks() {
    while (at(' ') || at('\t')) ++i_;
  }

  TextLayout::Pair pair() {
    TextLayout::Pair out;
    out.keys = keys();
    if (!take('=')) return out;
    skip_blanks();
    out.value = value();
    return out;
  }

  TextLayout::Value value() {
    TextLayout::Value out;
    out.at.begin = i_;
    if (at('[') || at('{')) {
      const bool list = at('[');
      out.kind = list ? TextLayout::Value::Kind::list : TextLayout::Value::Kind::braces;
      ++i_;
      for (skip(true); good_ && !at(list ? ']' : '}'); skip(true)) {
        if (list) {
          out.items.push_back(value());
        } else {
          out.pairs.push_back(pair());
        }
        skip(true);
        if (!at(',')) break;
        ++i_;
      }
      take(list ? ']' : '}');
    } else if (at('"') || at('\'')) {
      out.kind = TextLayout::Value::Kind::text;
      string();
    } else {
      i_ = std::min(text_.find_first_of(",]}#\r\n", i_), text_.size());
      while (i_ > out.at.begin && (text_[i_ - 1] == ' ' || text_[i_ - 1] == '\t')) --i_;
      if (i_ == out.at.begin) good_ = false;
    }
    out.at.end = i_;
    return out;
  }

  void header() {
    TextLayout::Block out;
    out.at.begin = i_++;
    out.element = at('[');
    if (out.element) ++i_;
    out.keys = keys();
    if (take(']') && out.element) take(']');
    out.at.end = i_;
    for (std::size_t n = 0; n < out.keys.size(); ++n) {
      out.path.emplace_back(out.keys[n].name);
      const bool counted = out.element && n + 1 == out.keys.size();
      if (counted) ++elements_[out.path];
      if (const auto found = elements_.find(out.path); found != elements_.end()) {
        out.path.emplace_back(found->second - 1);
      }
    }
    out_.blocks.push_back(std::move(out));
  }

  std::string_view text_;
  std::size_t i_;
  bool good_ = true;
  TextLayout out_;
  std::map<EditPath, std::size_t> elements_;  ///< how many of each [[list]] so far
};
}  // namespace

std::optional<TextLayout> lay_out(std::string_view text, std::size_t begin) {
  return Scanner(text, begin).run();
}
}  // namespace furnish
