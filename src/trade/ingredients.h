#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace furnish {

/// True if words for what a pet may not have and words for what is in a product can mean one thing:
/// the words of either stand one after another in the other, case and accents aside. Two words are
/// one where either begins with the other, plural or not: "oat", "oats" and "oatmeal" meet, "oat"
/// and "goat" do not. A word of a product under three letters meets only itself. In doubt they meet
/// ("rose", "rosemary"), so that a safety rule speaks rather than keeps silent.
bool same_ingredient(std::string_view unwanted, std::string_view contained);
/// The same of a product's name, which has other words too: not by those of the name alone.
bool names_ingredient(std::string_view product_name, std::string_view unwanted);

/// What a text says that a pet is "allergic to", or has an "allergy to": as far as its sentence
/// lists it, each in lower case. English only; what is taken back ("not allergic to") is left out.
std::vector<std::string> told_allergies(std::string_view text);
}  // namespace furnish
