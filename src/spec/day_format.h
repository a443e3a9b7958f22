#pragma once

#include "spec/keys.h"

// A day's file.

namespace furnish::keys {

namespace booking {
using namespace make_key;
inline constexpr auto at =
    must(of<TimeKey>(Kind::time, "at", "09:30:00", "when it comes; \"9:30\" is fine too"));
inline constexpr auto collect = of<TimeKey>(Kind::time, "collect", "11:45:00", "when it goes");
inline constexpr auto pet =
    must(text("pet", "\"marlow\"", "the name of its file in pets/, without .toml"));
inline constexpr auto groomer = text("groomer", "\"Ines\"", "who has it");
inline constexpr auto note = text("note", "\"brings his own towel\"", "for that day");
inline constexpr std::array<const KeyInfo*, 5> list{&at, &collect, &pet, &groomer, &note};
inline constexpr TableInfo table{"booking", "one booking; one heading for each", list};
}  // namespace booking

namespace day_file {
using namespace make_key;
inline constexpr auto date = must(make_key::date("date", "2026-11-24", "the day"));
inline constexpr auto booking = tables("booking", booking::table, "");
inline constexpr std::array<const KeyInfo*, 2> list{&date, &booking};
inline constexpr TableInfo file{"a day's file", "a day's bookings: days/YYYY-MM-DD.toml", list};
}  // namespace day_file
}  // namespace furnish::keys
