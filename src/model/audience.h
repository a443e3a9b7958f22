#pragma once

#include <cstdint>

namespace furnish {

/// Who may read a field. A property of the data, not of a layout: owner's pages never show, attach
/// or encode a `staff` field. Owner's contact details, where photos lie, handling, health notes,
/// accepted rules and visits' behaviour are staff; alerts and findings say for themselves, and so
/// do the reasons and notes of a visit; the rest is for everyone. for_everyone.h takes out what is
/// not.
enum class Audience : std::uint8_t { staff, everyone };
}  // namespace furnish
