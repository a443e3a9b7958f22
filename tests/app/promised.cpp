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

void add_finish(std::vector<std::string>& out, const Pet& pet, bool brief) {
  const bool few = brief && pet.style && !std::ranges::all_of(pet.finish, &FinishLine::differs);
  for (const FinishLine& line : pet.finish) {
    if (!few || line.differs) add(out, line.words.value);
  }
}

bool same(const std::string& a, const std::string& b) {
  return lower_ascii(trimmed(a)) == lower_ascii(trimmed(b));
}
/// The handling's line about the dryer stands among the others, unless it is the one that says how
/// the dog is dried.
bool dryer_says_how(const Kennel& kennel) {
  return same(kennel.plan.drying.words, kennel.pet.handling.dryer);
}
void add_drying(std::vector<std::string>& out, const Kennel& kennel) {
  const Pet& pet = kennel.pet;
  if (pet.bath.dry) add(out, pet.bath.dry->value);
  const bool said = pet.bath.dry && same(pet.bath.dry->value, pet.handling.dryer);
  if (dryer_says_how(kennel) && !said) add(out, pet.handling.dryer);
}
void add_handling(std::vector<std::string>& out, const Kennel& kennel) {
  const Handling& handling = kennel.pet.handling;
  add(out, handling.hold);
  add(out, handling.lift);
  if (!dryer_says_how(kennel)) add(out, handling.dryer);
  add(out, handling.stop);
}
/// A long text may go on on another side, behind what stands at its top.
bool said_in_parts(const std::string& page, const std::string& value) {
  constexpr std::size_t least = 20, most_parts = 6;
  std::size_t at = 0;
  for (std::size_t part = 0; part < most_parts && at < value.size(); ++part) {
    std::size_t size = value.size() - at;
    while (size > 0 && page.find(value.substr(at, size)) == std::string::npos) --size;
    if (size < least && at + size < value.size()) return false;
    at += size;
  }
  return at == value.size();
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

std::vector<std::string> promised(const Kennel& kennel, bool brief) {
  const Pet& pet = kennel.pet;
  std::vector<std::string> out{pet.name.value};
  for (const std::string& value : {pet.breed, pet.colour, pet.sex}) add(out, value);
  add_alerts(out, pet);
  if (const auto booking = kennel.booking()) {
    add(out, booking->groomer);
    add(out, booking->note);
  }
  add_handling(out, kennel);
  add_trim(out, pet);
  add_bath(out, pet);
  add_drying(out, kennel);
  add_finish(out, pet, brief);
  for (const std::string& value : pet.preferences.dislikes) add(out, value);
  for (const std::string& value : pet.owner.collects) add(out, value);
  for (const std::string& value : pet.handling.comes_with) add(out, value);
  return out;
}

std::vector<std::string> promised_work(const Kennel& kennel, bool brief) {
  std::vector<std::string> out;
  add_trim(out, kennel.pet);
  add_bath(out, kennel.pet);
  add_finish(out, kennel.pet, brief);
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
  const std::string page = without_direction(without_space(text));
  for (const std::string& value : values) {
    if (!first_missing(text, {value}).empty() && !said_in_parts(page, without_space(value)) &&
        !said_in_parts(page, without_space(capitalised(value)))) {
      return value;
    }
  }
  return {};
}
}  // namespace furnish::test
