#include <catch2/catch.hpp>

#include <filesystem>
#include <regex>
#include <set>

#include "base/text.h"
#include "spec/edit_fix.h"
#include "spec/fault_case.h"
#include "spec/file_kinds.h"
#include "spec/said.h"

// Every hint of tests/spec/faults is followed, as a person would who knows no more than it says:
// the fault must be gone then, and no other have come in its place.

namespace furnish::test {
namespace {
namespace fs = std::filesystem;

/// Text of a file, changed by lines.
class Page {
 public:
  explicit Page(const std::string& text) {
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines_.push_back(line);
  }
  std::string text() const {
    std::string out;
    for (const std::string& line : lines_) out += line + "\n";
    return out;
  }
  std::string& line(std::uint32_t number) { return lines_.at(number - 1); }
  void insert_after(std::uint32_t number, const std::string& line) {
    lines_.insert(lines_.begin() + number, line);
  }
  /// Takes a line away and puts it under a heading, which may be new.
  void move(std::uint32_t number, const std::string& heading) {
    const std::string moved = std::exchange(line(number), "");
    const auto found = std::ranges::find(lines_, heading);
    if (found == lines_.end()) {
      lines_.push_back(heading);
      lines_.push_back(moved);
    } else {
      lines_.insert(found + 1, moved);
      // Lines behind it are counted as they were.
      lines_.erase(lines_.begin() + number - (found - lines_.begin() < number ? 0 : 1));
    }
  }
  void append(const std::string& line) { lines_.push_back(line); }

 private:
  std::vector<std::string> lines_;
};

std::string at(std::string_view line, SourceSpan span) {
  const std::size_t begin = byte_of_code_point(line, span.begin.column - 1);
  const std::size_t end = span.end.line == span.begin.line
                              ? byte_of_code_point(line, span.end.column - 1)
                              : line.size();
  return std::string(line.substr(begin, end - begin));
}

void replace_at(std::string& line, SourceSpan span, const std::string& by) {
  const std::size_t begin = byte_of_code_point(line, span.begin.column - 1);
  line.replace(begin, at(line, span).size(), by);
}

/// A word of ours where a word of the person's stands, in its quotes if it has them.
std::string like(const std::string& old, const std::string& word) {
  const bool quoted = old.starts_with('"') || old.starts_with('[');
  const bool bare = word.find_first_of(" .½¾/") == std::string::npos;
  return quoted || !bare ? "\"" + word + "\"" : word;
}

/// The words that a hint offers: "write 'a', 'b' or 'c'".
std::vector<std::string> offered(const std::string& hint) {
  std::vector<std::string> out;
  static const std::regex word("'([^']+)'");
  static const std::regex list(
      "^(did you mean|write|write one such as|the nearest are|write a region such as) '.*");
  if (!std::regex_match(hint, list)) return {};
  for (std::sregex_iterator at(hint.begin(), hint.end(), word), end; at != end; ++at) {
    out.push_back((*at)[1]);
  }
  return out;
}

/// Does what the hint says. `word` is the one that is chosen where it offers some. False if it says
/// it in words that take a person to follow.
bool follow(const Diagnostic& fault, const std::string& word, Page& page) {
  const std::string& hint = fault.hint;
  std::smatch found;
  const SourceSpan span = fault.span;
  static const std::regex section(R"(^write (\[\w+\]) and under it (.+)$)");
  static const std::regex key(R"(^(?:write|say how often:) ((\w+) = .+?)(?:  # .*)?$)");
  static const std::regex value(
      R"(^write (.+?)(?:, (?:with a point|with its unit and in quotes|in quotes|without quotes|in double brackets|and copy the picture there)| with the day first.*|,? or .*)?$)");
  static const std::regex beside(R"(^write one tool beside it, such as (.+?) or .*$)");
  static const std::regex under(R"(^write it under (\[\[?\w+\]\]?)$)");
  static const std::regex awake(R"(^take the # off (\[\[\w+\]\]) above it$)");
  static const std::regex take(
      R"(^take '?(\w+)'? out\b.*|^keep one of the two$|^leave the key out.*)");
  if (std::regex_match(hint, found, section)) {
    page.append(found[1]);
    page.append(found[2]);
    return true;
  }
  if (span.begin.line == 0) {
    if (!std::regex_match(hint, found, key)) return false;
    page.insert_after(0, found[1]);
    return true;
  }
  std::string& line = page.line(span.begin.line);
  if (std::regex_match(hint, found, awake)) {
    for (std::uint32_t above = span.begin.line; above-- > 1;) {
      std::string& asleep = page.line(above);
      if (!asleep.starts_with("# " + found[1].str())) continue;
      asleep.erase(0, 2);
      return true;
    }
    return false;
  }
  if (std::regex_match(hint, found, take)) {
    line.clear();
    return true;
  }
  if (!word.empty()) {
    replace_at(line, span, like(at(line, span), word));
    return true;
  }
  if (std::regex_match(hint, found, beside)) {
    line.insert(line.rfind('}'), ", " + found[1].str() + " ");
    return true;
  }
  if (std::regex_match(hint, found, under)) {
    page.move(span.begin.line, found[1]);
    return true;
  }
  if (fault.code == "missing-key" || hint.starts_with("say how")) {
    if (!std::regex_match(hint, found, key)) return false;
    const std::size_t brace = line.find('{', byte_of_code_point(line, span.begin.column - 1));
    if (line.starts_with('[')) {
      page.insert_after(span.begin.line, found[1]);
    } else if (brace != std::string::npos) {
      line.insert(brace + 1, " " + found[1].str() + ",");
    } else {
      page.insert_after(span.begin.line - 1, found[1]);
    }
    return true;
  }
  if (fault.code == "syntax" && std::regex_match(hint, found, key)) {
    line = found[1];
    return true;
  }
  if (std::regex_match(hint, found, value)) {
    static const std::regex toml(R"(^("|\[|\{|[0-9]|true$|false$|[a-z]+-[a-z]+$).*)");
    if (!std::regex_match(found[1].str(), toml)) return false;
    replace_at(line, span, found[1]);
    return true;
  }
  return false;
}

struct Heard {
  std::vector<Diagnostic> errors;
  std::string text;
};
Heard hear(const FaultCase& test) {
  Heard out;
  out.text = read_fault_case(test, &out.errors).said;
  return out;
}

/// Errors that begin in a line of the main file, or the file as a whole.
std::size_t errors_in(const std::vector<Diagnostic>& all, std::uint32_t line,
                      const std::string& code) {
  return static_cast<std::size_t>(std::ranges::count_if(all, [&](const Diagnostic& one) {
    return one.span.begin.line == line && (line != 0 || one.code == code);
  }));
}

/// True if the fault is gone, and no other stands in its line for it. That something stands there
/// twice then is no fault of the hint.
bool rid_of(const Diagnostic& fault, const Heard& before, const Heard& after) {
  if (fault.code == "missing-key" || fault.hint.starts_with("say how")) {
    return after.errors.size() + 1 == before.errors.size();
  }
  const std::uint32_t line = fault.span.begin.line;
  if (fault.code == "syntax") {  // it hid what else is wrong with its line
    return std::ranges::none_of(after.errors, [&](const Diagnostic& one) {
      return one.span.begin.line == line && one.code == fault.code;
    });
  }
  std::size_t twice = 0;
  for (const Diagnostic& one : after.errors) {
    if (one.span.begin.line == line && one.code == "given-twice") ++twice;
  }
  return errors_in(after.errors, line, fault.code) <
         errors_in(before.errors, line, fault.code) + std::min<std::size_t>(twice, 1);
}

/// Hints that take a person: what to write is for them to know.
bool for_a_person(const std::string& hint) {
  static const std::regex known(
      "^(name .* own: what is named itself wins|one of them must stand on its own|"
      "rename the file|leave the time out|write text = .*, or one by its language|"
      "write a code as of BCP 47|copy it into photos/|put both parts under one heading|"
      "write key = value, or|write it in one line|write it in \\[products\\]|"
      "write straight quotes|hours go from|name the one region|name the comb too|"
      "leave the part out|write a .*booking.* for each|only 'why' and 'note'|a "
      "text has languages|close it in the same line|"
      "one key and its value to a line|write .* and its name under it|write .* once, in single|"
      "take it out|it stands in|write the day itself|did you mean '(rabies|oat)'|only tabs|write "
      "out in one file).*");
  return std::regex_search(hint, known);
}
}  // namespace

TEST_CASE("whoever follows a hint is rid of the fault", "[hints]") {
  std::size_t followed = 0, others = 0;
  for (const auto& entry :
       fs::directory_iterator(fs::path(FURNISH_SOURCE_DIR) / "tests/spec/faults")) {
    const FaultCase test = load_fault_case(entry.path().string());
    const Heard before = hear(test);
    for (const Diagnostic& fault : before.errors) {
      if (fault.hint.empty()) continue;
      INFO(entry.path().filename().string() << ": " << fault.message << "\nhint: " << fault.hint);
      std::vector<std::string> choices = offered(fault.hint);
      if (choices.empty()) choices.emplace_back();
      bool applied = false, mended = false;
      std::string heard;
      for (const std::string& word : choices) {
        Page page(test.files.at(test.main));
        if (for_a_person(fault.hint) || !follow(fault, word, page)) continue;
        applied = true;
        FaultCase changed = test;
        changed.files.at(test.main) = page.text();
        const Heard after = hear(changed);
        heard = page.text() + after.text;
        if (rid_of(fault, before, after)) mended = true;
      }
      if (!applied) {
        CHECK(for_a_person(fault.hint));
        ++others;
        continue;
      }
      ++followed;
      INFO("followed:\n" << heard);
      CHECK(mended);
    }
  }
  CAPTURE(followed, others);
  CHECK(followed > 120);
  CHECK(others < followed / 2);
}

TEST_CASE("what a hint offers can be had as an edit, which mends the fault", "[hints][edit]") {
  std::size_t mended_by_edit = 0, offers = 0;
  for (const auto& entry :
       fs::directory_iterator(fs::path(FURNISH_SOURCE_DIR) / "tests/spec/faults")) {
    const FaultCase test = load_fault_case(entry.path().string());
    const std::string name = entry.path().filename().string();
    const FileKind* const kind = find_file_kind(name.substr(0, name.find('-')));
    REQUIRE(kind != nullptr);
    const EditedText file(test.files.at(test.main), kind->table);
    const Heard before = hear(test);
    for (const Diagnostic& fault : before.errors) {
      const std::vector<Edit> edits = fixes(file, fault);
      INFO(name << ": " << fault.message << "\nhint: " << fault.hint);
      // Offered as data is what is offered in words.
      if (!offered(fault.hint).empty() && fault.hint.find(" such as ") == std::string::npos) {
        CHECK(fault.instead.size() == offered(fault.hint).size());
      }
      if (!file.good() || fault.instead.empty()) continue;
      ++offers;
      bool mended = false;
      for (const Edit& edit : edits) {
        EditedText changed = file;
        REQUIRE(changed.apply(edit));
        CHECK(changed.lost().empty());
        FaultCase other = test;
        other.files.at(test.main) = changed.text();
        if (rid_of(fault, before, hear(other))) mended = true;
      }
      CHECK(mended);
      if (mended) ++mended_by_edit;
    }
  }
  CHECK(offers > 60);
  CHECK(mended_by_edit == offers);
}
}  // namespace furnish::test
