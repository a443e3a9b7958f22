#include "model/finish.h"

#include <algorithm>
#include <array>
#include <utility>

namespace furnish {
namespace {
using Part = std::optional<FreeText> Finish::*;
constexpr std::array<std::pair<FinishPart, Part>, finish_part_count> parts{{
    {FinishPart::ears, &Finish::ears},
    {FinishPart::tail, &Finish::tail},
    {FinishPart::feet, &Finish::feet},
    {FinishPart::nails, &Finish::nails},
    {FinishPart::extras, &Finish::extras},
}};
}  // namespace

std::vector<FinishLine> resolve_finish(const Finish& style, const Finish& pet) {
  std::vector<FinishLine> lines;
  for (const auto& [part, member] : parts) {
    const auto& own = pet.*member;
    const auto& house = style.*member;
    if (!own && !house) continue;
    const FreeText& words = own ? *own : *house;
    lines.push_back({part, words, own ? SaidBy::pet : SaidBy::style, words.span,
                     own && (!house || house->value != own->value)});
  }
  return lines;
}

const FinishLine* find_line(const std::vector<FinishLine>& lines, FinishPart part) {
  const auto found = std::ranges::find(lines, part, &FinishLine::part);
  return found == lines.end() ? nullptr : &*found;
}

Finish overlay(const Finish& lower, const Finish& upper) {
  Finish out = upper;
  for (const auto& [part, member] : parts) {
    if (!(out.*member)) out.*member = lower.*member;
  }
  return out;
}
}  // namespace furnish
