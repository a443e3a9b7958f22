#include "app/made_record.h"

#include <algorithm>
#include <utility>

#include "output/seal.h"

namespace furnish {
namespace {
constexpr std::string_view first_line = "furnish made 1";
constexpr std::string_view day_line = "#day";
constexpr std::size_t room_for_seal = 100;

/// What stands between tabs: no tab, no line end.
std::string field(std::string_view text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '\t':
        out += "\\t";
        break;
      case '\n':
        out += "\\n";
        break;
      case '\\':
        out += "\\\\";
        break;
      default:
        out += c;
    }
  }
  return out;
}

std::string text_of(std::string_view field) {
  std::string out;
  for (std::size_t i = 0; i < field.size(); ++i) {
    if (field[i] != '\\' || i + 1 == field.size()) {
      out += field[i];
      continue;
    }
    const char c = field[++i];
    out += c == 't' ? '\t' : c == 'n' ? '\n' : c;
  }
  return out;
}

std::string_view next(std::string_view& rest, char end) {
  const auto at = rest.find(end);
  const std::string_view out = rest.substr(0, at);
  rest = at == rest.npos ? std::string_view() : rest.substr(at + 1);
  return out;
}

std::string key_of(std::string_view pet, std::string_view what) {
  return field(pet) + "\t" + field(what);
}

std::string line_of(const MadeSheet& one) {
  std::string out = key_of(one.pet, one.what);
  for (const std::string* const part : {&one.day, &one.shared, &one.days}) {
    out += "\t" + field(*part);
  }
  for (const Input& input : one.inputs) {
    out += "\t<";
    out += static_cast<char>(input.kind);
    out += input.mark + " " + field(input.path);
  }
  for (const MadeSheet::File& file : one.files) out += "\t>" + file.mark + " " + field(file.path);
  for (const SaidBefore& said : one.said) {
    out += "\t!" + field(said.once) + "\t=" + field(said.text);
  }
  return out;
}

std::optional<MadeSheet> sheet_of(std::string_view rest) {
  MadeSheet out;
  for (std::string* const part : {&out.pet, &out.what, &out.day, &out.shared, &out.days}) {
    *part = text_of(next(rest, '\t'));
  }
  while (!rest.empty()) {
    std::string_view part = next(rest, '\t');
    if (part.empty()) return std::nullopt;
    const char sort = part.front();
    part.remove_prefix(1);
    if (sort == '<' && !part.empty()) {
      const auto kind = static_cast<Input::Kind>(part.front());
      part.remove_prefix(1);
      const std::string mark(next(part, ' '));
      out.inputs.push_back({kind, text_of(part), mark});
    } else if (sort == '>') {
      const std::string mark(next(part, ' '));
      out.files.push_back({text_of(part), mark});
    } else if (sort == '!') {
      out.said.push_back({text_of(part), {}});
    } else if (sort == '=' && !out.said.empty()) {
      out.said.back().text = text_of(part);
    } else {
      return std::nullopt;
    }
  }
  return out;
}

std::string_view key_in(std::string_view line) {
  const auto pet = line.find('\t');
  return line.substr(0, pet == line.npos ? pet : line.find('\t', pet + 1));
}

std::string_view day_in(std::string_view line) {
  next(line, '\t');
  next(line, '\t');
  return next(line, '\t');
}
}  // namespace

MadeRecord::MadeRecord(std::string text) : text_(std::move(text)) {
  std::string_view rest = text_;
  if (next(rest, '\n') != first_line || !seal_holds(text_)) return;
  while (!rest.empty()) {
    std::string_view line = next(rest, '\n');
    if (!line.starts_with(day_line)) {
      // Without a tab it is the seal.
      if (line.find('\t') != line.npos) lines_[key_in(line)] = line;
      continue;
    }
    next(line, '\t');
    const std::string path = text_of(next(line, '\t'));
    days_[path] = line;
  }
}

std::optional<MadeSheet> MadeRecord::find(std::string_view pet, std::string_view what) const {
  const auto known = lines_.find(key_of(pet, what));
  return known == lines_.end() ? std::nullopt : sheet_of(known->second);
}

void MadeRecord::put(const MadeSheet& one) {
  std::string line = line_of(one);
  if (const auto before = fresh_.find(line); before != fresh_.end()) fresh_.erase(before);
  fresh_.insert(std::move(line));
  changed_ = true;
}

bool MadeRecord::ByKey::operator()(std::string_view one, std::string_view other) const {
  return key_in(one) < key_in(other);
}

std::optional<bool> MadeRecord::day_was_good(const std::string& path,
                                             const std::string& mark) const {
  const auto known = days_.find(path);
  if (known == days_.end()) return std::nullopt;
  if (known->second == mark + "\tgood") return true;
  if (known->second == mark + "\tbad") return false;
  return std::nullopt;
}

void MadeRecord::put_day(const std::string& path, const std::string& mark, bool good) {
  days_[path] = mark + (good ? "\tgood" : "\tbad");
  changed_ = true;
}

std::string MadeRecord::text(std::string_view day) const {
  std::string out(first_line);
  out += '\n';
  for (const auto& [path, how] : days_) {
    out += std::string(day_line) + "\t" + field(path) + "\t" + how + "\n";
  }
  std::vector<std::string_view> lines(fresh_.begin(), fresh_.end());
  for (const auto& [key, line] : lines_) {
    if (day_in(line) == day && !fresh_.contains(line)) lines.push_back(line);
  }
  std::ranges::sort(lines, ByKey());
  // Of ten thousand pets it is megabytes, which growing would hold twice.
  std::size_t size = out.size() + room_for_seal;
  for (const std::string_view line : lines) size += line.size() + 1;
  out.reserve(size);
  for (const std::string_view line : lines) {
    out += line;
    out += '\n';
  }
  return sealed(std::move(out), SealedAs::text);
}

bool MadeRecord::begins(std::string_view bytes) {
  const std::size_t size = std::min(bytes.size(), first_line.size());
  return bytes.substr(0, size) == first_line.substr(0, size);
}
}  // namespace furnish
