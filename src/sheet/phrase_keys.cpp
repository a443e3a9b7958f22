#include <array>
#include <string_view>

#include "sheet/phrase.h"

namespace furnish {
namespace {
/// All names one after another, each with a blank after it.
constexpr std::string_view names =
#define PHRASE(name) #name " "
#include "sheet/phrases.def"
#undef PHRASE
    ;

constexpr auto hyphened = [] {
  std::array<char, names.size()> out{};
  for (std::size_t i = 0; i < names.size(); ++i) out[i] = names[i] == '_' ? '-' : names[i];
  return out;
}();

constexpr auto keys = [] {
  std::array<std::string_view, phrase_count> out{};
  std::string_view rest(hyphened.data(), hyphened.size());
  for (std::string_view& key : out) {
    key = rest.substr(0, rest.find(' '));
    rest.remove_prefix(key.size() + 1);
  }
  return out;
}();
}  // namespace

std::string_view key_of(Phrase phrase) {
  return keys[static_cast<std::size_t>(phrase)];
}
}  // namespace furnish
