#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace furnish {

/// The kinds of file that furnish writes again and again.
enum class SealedAs : std::uint8_t { pdf, png, svg, calendar, text };

/// `bytes` with a seal in them, where the format has a place for remarks: a comment before a PDF's
/// startxref (ISO 32000-1, 7.2.4) and at the end of an SVG, a tEXt chunk of a PNG (ISO 15948,
/// 11.3.4.3), a property of an iCalendar (RFC 5545, 3.8.8.2), a last line of a text. The seal holds
/// a CRC-32 of all other bytes, so that a sheet which somebody wrote on is no longer ours.
std::string sealed(std::string bytes, SealedAs);
/// The same of a PDF that is written in stretches: its check sum with a further stretch, and its
/// end with the seal before it, where `sum` is of all that was written. The first sum is of
/// nothing.
std::uint32_t seal_sum(std::uint32_t sum, std::string_view stretch);
std::string seal_before(std::uint32_t sum, std::string_view end);
/// Whether furnish wrote this, and nobody has changed it since.
bool seal_holds(std::string_view bytes);
}  // namespace furnish
