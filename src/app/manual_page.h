#pragma once

#include <span>
#include <string>
#include <string_view>

#include "app/command_info.h"

namespace furnish {
/// furnish(1) in the macros of man(7): a section a command. `day`: of the release, 2026-11-24.
std::string manual_page(std::span<const CommandInfo>, std::string_view version,
                        std::string_view day);
}  // namespace furnish
