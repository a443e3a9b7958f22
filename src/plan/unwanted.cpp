#include "plan/unwanted.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string_view>

#include "base/diagnostic.h"
#include "base/text.h"
#include "trade/ingredients.h"

namespace furnish {
namespace {
bool contains(const Product& product, std::string_view unwanted) {
  return names_ingredient(product.name, unwanted) ||
         std::ranges::any_of(product.contains, [&](const std::string& ingredient) {
           return same_ingredient(unwanted, ingredient);
         });
}

/// What the texts of an alert say, in every language that they are given in.
std::vector<std::string> told(const Alert& alert) {
  std::vector<std::string> out;
  const auto add = [&](const FreeText& text) {
    std::ranges::copy(told_allergies(text.value), std::back_inserter(out));
    for (const auto& other : text.others) {
      std::ranges::copy(told_allergies(other.text), std::back_inserter(out));
    }
  };
  add(alert.text);
  add(alert.action);
  return out;
}

/// The ingredients in lower case, and each of their words that can be told from another.
std::vector<std::string> words_in(const Product& product) {
  constexpr std::size_t tellable = 4;
  std::vector<std::string> out;
  for (const std::string& written : product.contains) {
    const std::string ingredient = lower_ascii(written);
    out.push_back(ingredient);
    for (std::size_t at = 0; at < ingredient.size();) {
      const std::size_t end = std::min(ingredient.find_first_of(" -", at), ingredient.size());
      if (end - at >= tellable) out.push_back(ingredient.substr(at, end - at));
      at = end + 1;
    }
  }
  return out;
}
}  // namespace

std::vector<std::string> unwanted_in(const Product& product, const Pet& pet) {
  std::vector<std::string> out;
  for (const Alert& alert : pet.alerts) {
    for (const Located<std::string>& one : alert.allergens) {
      if (contains(product, one.value)) out.push_back(one.value);
    }
  }
  std::vector<std::string> more;
  for (const Alert& alert : pet.alerts) {
    for (const std::string& one : told(alert)) {
      if (names_ingredient(product.name, one)) more.push_back(one);
      std::ranges::copy_if(
          product.contains, std::back_inserter(more),
          [&](const std::string& ingredient) { return same_ingredient(one, ingredient); });
    }
  }
  for (const std::string& one : more) {
    const auto same = [&](const std::string& named) { return same_ingredient(named, one); };
    if (std::ranges::none_of(out, same)) out.push_back(one);
  }
  std::ranges::sort(out);
  const auto twice = std::ranges::unique(out);
  out.erase(twice.begin(), twice.end());
  return out;
}

void check_allergens(const Pet& pet, const std::vector<Product>& of_salon, DiagnosticSink& sink) {
  std::vector<const Product*> all;
  for (const Product& one : of_salon) all.push_back(&one);
  if (pet.bath.shampoo) all.push_back(&pet.bath.shampoo->product);
  if (pet.bath.conditioner) all.push_back(&pet.bath.conditioner->product);
  for (const ProductUse& use : pet.bath.others) all.push_back(&use.product);
  std::vector<std::string> words;
  for (const Product* const one : all) std::ranges::move(words_in(*one), std::back_inserter(words));
  const std::vector<std::string_view> known(words.begin(), words.end());
  for (const Alert& alert : pet.alerts) {
    for (const Located<std::string>& one : alert.allergens) {
      const bool met = std::ranges::any_of(
          all, [&](const Product* product) { return contains(*product, one.value); });
      if (met) continue;
      constexpr std::size_t short_word = 6;
      const std::string word = lower_ascii(trimmed(one.value));
      const auto near = nearest(word, known, word.size() < short_word ? 1 : 2);
      if (!near) continue;
      sink.warning(
              "unknown-allergen", one.span,
              fmt::format("no product contains '{}', so nothing is held against it", one.value))
          .hint = fmt::format("did you mean '{}'?", *near);
    }
  }
}
}  // namespace furnish
