#include "base/csv.h"

#include <algorithm>
#include <utility>

#include "base/text.h"

namespace furnish {
namespace {
/// In bytes; what is longer is no value but the rest of a list whose quote was not closed.
constexpr std::size_t longest_value = 32768;

class Parser {
 public:
  Parser(std::string_view text, char separator, std::size_t most)
      : text_(text), separator_(separator), most_(most) {}

  CsvList all() && {
    while (at_ < text_.size() && list_.lines.size() < most_) line();
    return std::move(list_);
  }

 private:
  bool at_end_of_line() const {
    return at_ == text_.size() || text_[at_] == '\n' || text_.substr(at_, 2) == "\r\n";
  }
  bool blank() const {
    return text_[at_] != separator_ && (text_[at_] == ' ' || text_[at_] == '\t');
  }
  void skip_blanks() {
    while (!at_end_of_line() && blank()) ++at_;
  }

  /// The line is lost, the lines below it are not: after a quote that is not closed a value would
  /// go on to the next quote, wherever that is.
  void fault(std::size_t begin, std::size_t at, std::string_view message) {
    list_.faults.push_back({begin, at, message, "write \"\" for a quote inside a value"});
    good_ = false;
    at_ = std::min(text_.find('\n', begin), text_.size());
    if (at_ < text_.size() && text_[at_ - 1] == '\r') --at_;
  }

  void line() {
    CsvLine one;
    one.begin = at_;
    good_ = true;
    one.cells.push_back(cell());
    while (!at_end_of_line()) {
      ++at_;  // the separator
      one.cells.push_back(cell());
    }
    if (at_ < text_.size()) at_ += text_[at_] == '\r' ? 2 : 1;
    one.good = good_;
    const bool seen = std::ranges::any_of(
        one.cells, [](const CsvCell& cell) { return !furnish::blank(cell.text); });
    if (seen || !good_) list_.lines.push_back(std::move(one));
  }

  CsvCell cell() {
    CsvCell out;
    out.begin = at_;
    skip_blanks();
    if (!at_end_of_line() && text_[at_] == '"') {
      quoted(out);
    } else {
      while (!at_end_of_line() && text_[at_] != separator_) ++at_;
      out.text = text_.substr(out.begin, at_ - out.begin);
    }
    out.end = at_;
    return out;
  }

  void quoted(CsvCell& out) {
    const std::size_t open = at_++;
    while (true) {
      const std::size_t quote = text_.substr(0, open + longest_value).find('"', at_);
      if (quote == std::string_view::npos) {
        fault(open, open, "this quote is not closed");
        return;
      }
      out.text += text_.substr(at_, quote - at_);
      at_ = quote + 1;
      if (at_ == text_.size() || text_[at_] != '"') break;
      out.text += '"';
      ++at_;
    }
    skip_blanks();
    if (at_end_of_line() || text_[at_] == separator_) return;
    fault(open, at_, "the value that begins here has something behind its closing quote");
  }

  std::string_view text_;
  char separator_;
  std::size_t most_;
  std::size_t at_ = 0;
  bool good_ = true;
  CsvList list_;
};
}  // namespace

CsvList parse_csv(std::string_view utf8, char separator) {
  return Parser(utf8, separator, utf8.size() + 1).all();
}

char csv_separator(std::string_view utf8) {
  constexpr std::size_t looked_at = 20;
  char best = ',';
  std::pair<std::size_t, std::size_t> most{0, 0};
  for (const char candidate : {',', ';', '\t'}) {
    const CsvList list = Parser(utf8, candidate, looked_at).all();
    std::size_t alike = 0;
    for (std::size_t i = 1; i < list.lines.size(); ++i) {
      const std::size_t cells = list.lines[i].cells.size();
      alike += cells > 1 && cells == list.lines[i - 1].cells.size();
    }
    const std::size_t cells = list.lines.empty() ? 0 : list.lines.front().cells.size();
    const std::pair score{alike, cells > 1 ? cells : 0};
    if (score > most) {
      most = score;
      best = candidate;
    }
  }
  return best;
}
}  // namespace furnish
