#include "app/terminal.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <cstdlib>
#include <string_view>

namespace furnish {
namespace {
std::string_view variable(const char* name) {
  const char* const value = std::getenv(name);
  return value == nullptr ? std::string_view() : value;
}
}  // namespace

bool can_rewrite(std::FILE* stream) {
  const std::string_view kind = variable("TERM");
  return !kind.empty() && kind != "dumb" && ::isatty(::fileno(stream)) == 1;
}

Colours colours_of(std::FILE* stream) {
  return variable("NO_COLOR").empty() && can_rewrite(stream) ? Colours::terminal : Colours::none;
}

std::size_t columns_of(std::FILE* stream) {
  constexpr std::size_t usual = 80;
  ::winsize size{};
  const bool told = ::ioctl(::fileno(stream), TIOCGWINSZ, &size) == 0 && size.ws_col > 0;
  return told ? size.ws_col : usual;
}
}  // namespace furnish
