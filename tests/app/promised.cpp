#include "app/promised.h"

#include <algorithm>

#include "base/quantity.h"
#include "base/text.h"
#include "plan/places.h"

namespace furnish::test {
namespace {
void add(std::vector<std::string>& out, const std::string& value) {
  if (!trimmed(value).empty()) out.push_back(value);
}

void add_alerts(std::vector<std::string>& out, const Pet& pet) {
  for (const Signal level : {Signal::danger, Signal::warning, Signal::caution, Signal::notice}) {
    for (const Alert& alert : pet.alerts) {
      if (alert.level != level) continue;
      add(out, alert.text.value);
      add(out, alert.action.value);
      for (const auto& place : alert.avoid) add(out, to_text(place.value));
    }
  }
}

/// Of each part that differs from the style, or of all without one: words that the file has itself.
void add_trim(std::vector<std::string>& out, const Pet& pet) {
  if (pet.style) add(out, pet.style->name);
  std::vector<const TrimPart*> told;
  for (const TrimPart& part : pet.trim) {
    if (pet.style && !part.differs()) continue;
    // Where no tool may go the card says only that.
    if (!workable(part.place, pet.alerts)) continue;
    // Parts of equal work share a line, at the place of the first.
    const bool shared = std::ranges::any_of(
        told, [&](const TrimPart* one) { return same_work(one->entry, part.entry); });
    if (!shared) add(out, part.entry.note);
    told.push_back(&part);
  }
}

void add_bath(std::vector<std::string>& out, const Pet& pet) {
  if (!pet.bath.none) {
    if (pet.bath.before) add(out, pet.bath.before->value);
    if (pet.bath.shampoo) add(out, pet.bath.shampoo->product.name);
    if (pet.bath.conditioner) add(out, pet.bath.conditioner->product.name);
    for (const ProductUse& use : pet.bath.others) add(out, use.product.name);
  }
}

void add_drying(std::vector<std::string>& out, const Pet& pet) {
  if (pet.bath.dry) add(out, pet.bath.dry->value);
  // Said once where both say the same.
  const bool same = pet.bath.dry && lower_ascii(trimmed(pet.bath.dry->value)) ==
                                        lower_ascii(trimmed(pet.handling.dryer));
  if (!same) add(out, pet.handling.dryer);
}
/// U+200E, U+200F, U+202A to U+202E and U+2066 to U+2069 left out.
std::string without_direction(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const std::string_view next = std::string_view(text).substr(i, 3);
    const bool mark = next == "\u200E" || next == "\u200F" ||
                      (next >= "\u202A" && next <= "\u202E") ||
                      (next >= "\u2066" && next <= "\u2069");
    if (mark) {
      i += 2;
    } else {
      out += text[i];
    }
  }
  return out;
}
}  // namespace

std::vector<std::string> promised(const Kennel& kennel) {
  const Pet& pet = kennel.pet;
  std::vector<std::string> out{pet.name.value};
  for (const std::string& value : {pet.breed, pet.colour, pet.sex}) add(out, value);
  add_alerts(out, pet);
  if (const auto booking = kennel.booking()) {
    add(out, booking->groomer);
    add(out, booking->note);
  }
  for (const std::string& value : {pet.handling.hold, pet.handling.lift, pet.handling.stop}) {
    add(out, value);
  }
  add_trim(out, pet);
  add_bath(out, pet);
  add_drying(out, pet);
  for (const FinishLine& line : pet.finish) add(out, line.words.value);
  for (const std::string& value : pet.preferences.dislikes) add(out, value);
  for (const std::string& value : pet.owner.collects) add(out, value);
  for (const std::string& value : pet.handling.comes_with) add(out, value);
  return out;
}

std::string first_missing(std::string_view text, const std::vector<std::string>& values) {
  const std::string page = without_direction(without_space(text));
  std::size_t at = 0;
  for (const std::string& value : values) {
    const std::string plain = without_space(value), upper = without_space(capitalised(value));
    const std::size_t found = std::min(page.find(plain, at), page.find(upper, at));
    if (found == std::string::npos) return value;
    at = found + plain.size();
  }
  return {};
}

std::string first_lost(const std::string& text, const std::vector<std::string>& values) {
  for (const std::string& value : values) {
    if (!first_missing(text, {value}).empty()) return value;
  }
  return {};
}
}  // namespace furnish::test
