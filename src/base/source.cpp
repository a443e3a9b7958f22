#include "base/source.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>

#include "base/text.h"

namespace furnish {

SourceText::SourceText(std::string path, std::string text)
    : path_(std::move(path)), text_(std::move(text)), starts_{0} {
  for (std::size_t i = 0; i < text_.size(); ++i) {
    if (text_[i] == '\n') starts_.push_back(i + 1);
  }
}

std::string_view SourceText::line(std::uint32_t number) const {
  if (number == 0 || number > starts_.size()) return {};
  const std::size_t begin = starts_[number - 1];
  std::string_view rest = std::string_view(text_).substr(begin);
  rest = rest.substr(0, rest.find('\n'));
  if (!rest.empty() && rest.back() == '\r') rest.remove_suffix(1);
  return rest;
}

Position SourceText::position(std::size_t byte) const {
  byte = std::min(byte, text_.size());
  const auto next = std::ranges::upper_bound(starts_, byte);
  const auto line = static_cast<std::uint32_t>(next - starts_.begin());
  const std::size_t begin = starts_[line - 1];
  const std::size_t before = code_points(std::string_view(text_).substr(begin, byte - begin));
  return {line, static_cast<std::uint32_t>(before + 1)};
}

std::uint32_t SourceSet::add(std::string path, std::string text, bool passing) {
  if (size_ == SourceSpan::no_file) throw std::length_error("too many files in one run");
  texts_.emplace_hint(
      texts_.end(), size_,
      Kept{std::make_unique<const SourceText>(std::move(path), std::move(text)), passing});
  return size_++;
}

const SourceText& SourceSet::at(std::uint32_t file) const {
  static const SourceText gone({}, {});
  if (file >= size_) throw std::out_of_range("no such file in this run");
  const auto kept = texts_.find(file);
  return kept == texts_.end() ? gone : *kept->second.text;
}

bool SourceSet::passing(std::uint32_t file) const {
  const auto kept = texts_.find(file);
  return kept == texts_.end() || kept->second.passing;
}

void SourceSet::forget_passing(std::uint32_t from) {
  for (auto at = texts_.lower_bound(from); at != texts_.end();) {
    at = at->second.passing ? texts_.erase(at) : std::next(at);
  }
}

std::vector<SourceSet::Text> SourceSet::handed_over(std::uint32_t from) {
  std::vector<Text> out;
  for (std::uint32_t i = from; i < size_; ++i) {
    const SourceText& one = at(i);
    out.push_back({one.path(), std::string(one.text()), passing(i)});
  }
  forget_passing(from);
  return out;
}
}  // namespace furnish
