#include "output/content_path.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <optional>

#include "output/content_operators.h"

namespace furnish {
namespace {
constexpr std::string_view token_spaces = " \n\r\t";

/// The numbers before an operator, up to six; none if something else stands there.
std::optional<std::array<double, 6>> numbers_of(std::string_view operands, std::size_t count) {
  std::array<double, 6> out{};
  for (std::size_t i = 0;; ++i) {
    const std::size_t begin = operands.find_first_not_of(token_spaces);
    if (begin == operands.npos) return i == count ? std::optional(out) : std::nullopt;
    if (i == count) return std::nullopt;
    const char* const end = operands.data() + operands.size();
    const auto [after, fault] = std::from_chars(operands.data() + begin, end, out[i]);
    if (fault != std::errc() || (after != end && token_spaces.find(*after) == token_spaces.npos))
      return {};
    operands.remove_prefix(static_cast<std::size_t>(after - operands.data()));
  }
}

/// 0 for what makes no path.
char step_of(std::string_view word) {
  if (word == "re") return 'r';
  constexpr std::string_view steps = "mlcvyh";
  return word.size() == 1 && steps.find(word.front()) != steps.npos ? word.front() : '\0';
}

/// What of the state counts for how a line looks.
struct LineLook {
  double width = 1;
  bool dashed = false, butt = true;
};

/// Goes through a page and knows the state that its operators leave.
class ContentReader {
 public:
  std::vector<ContentItem> items(std::string_view content) {
    ContentOperators operators(content);
    std::size_t last = 0;
    for (auto word = operators.next(); !word.empty(); word = operators.next()) {
      const std::size_t end = operators.position();
      std::string_view all = content.substr(last, end - last);
      all.remove_prefix(std::min(all.find_first_not_of(token_spaces), all.size()));
      last = end;
      const std::string_view operands = all.substr(0, all.size() - word.size());
      if (!makes_path(step_of(word), operands))
        take(content.substr(end - word.size(), word.size()), all, operands);
    }
    std::string_view rest = content.substr(last);
    rest.remove_prefix(std::min(rest.find_first_not_of(token_spaces), rest.size()));
    take({}, rest, {});
    return std::move(out_);
  }

 private:
  bool makes_path(char op, std::string_view operands) {
    const auto read = op == '\0' ? std::nullopt : numbers_of(operands, operands_of(op));
    if (!read) return false;
    Step step{op, *read};
    auto& at = step.at;
    if (op == 'v' || op == 'y') {
      const Step* const before = path_.empty() ? nullptr : &path_.back();
      if (op == 'v' && before == nullptr) return false;
      step = op == 'v' ? Step{'c', {before->x(), before->y(), at[0], at[1], at[2], at[3]}}
                       : Step{'c', {at[0], at[1], at[2], at[3], at[2], at[3]}};
    }
    path_.push_back(step);
    return true;
  }

  void take(std::string_view word, std::string_view all, std::string_view operands) {
    // Where cairo left its pen.
    if (path_.size() > 1 && path_.back().op == 'm') path_.pop_back();
    out_.push_back({std::move(path_), word, all, line_.width, line_.dashed, line_.butt});
    path_.clear();
    if (word == "q") {
      kept_.push_back(line_);
    } else if (word == "Q" && !kept_.empty()) {
      line_ = kept_.back();
      kept_.pop_back();
    } else if (word == "w") {
      if (const auto width = numbers_of(operands, 1)) line_.width = width->front();
    } else if (word == "J") {
      line_.butt = operands.starts_with('0');
    } else if (word == "d") {
      line_.dashed = operands.find_first_of("0123456789") < operands.find(']');
    }
  }

  std::vector<ContentItem> out_;
  Path path_;
  LineLook line_;
  std::vector<LineLook> kept_;
};

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::ranges::find(words, word) != words.end();
}
}  // namespace

std::size_t operands_of(char op) {
  switch (op) {
    case 'c':
      return 6;
    case 'v':
    case 'y':
    case 'r':
      return 4;
    case 'h':
      return 0;
    default:
      return 2;
  }
}

bool ContentItem::paints() const {
  return is_one_of(word, {"S", "s", "f", "f*", "B", "B*", "b", "b*"});
}

bool ContentItem::changes() const {
  return path.empty() && is_one_of(word, {"rg", "RG", "g", "G", "w", "J", "j", "M", "d"});
}

std::vector<ContentItem> content_items(std::string_view content) {
  return ContentReader().items(content);
}

void append(std::string& out, double number, double parts) {
  const long all = std::lround(number * parts);
  const auto unit = static_cast<long>(parts);
  const long whole = std::labs(all) / unit, part = std::labs(all) % unit;
  if (all < 0) out += '-';
  if (whole > 0 || part == 0) out += std::to_string(whole);
  if (part == 0) return;
  std::string digits = std::to_string(unit + part);
  digits.front() = '.';
  while (digits.back() == '0') digits.pop_back();
  out += digits;
}

bool has_curves(const Path& path) {
  return std::ranges::any_of(
      path, [](const Step& one) { return one.op == 'c' || one.op == 'v' || one.op == 'y'; });
}

void append(std::string& out, const Path& path, bool coarse) {
  const double parts = coarse || has_curves(path) ? tenths : hundredths;
  for (const Step& step : path) {
    for (std::size_t i = 0; i < operands_of(step.op); ++i) {
      append(out, step.at[i], parts);
      out += ' ';
    }
    out += step.op;
    out += step.op == 'r' ? "e\n" : "\n";
  }
}
}  // namespace furnish
