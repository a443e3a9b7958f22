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
/// Whether furnish wrote this, and nobody has changed it since.
bool seal_holds(std::string_view bytes);
}  // namespace furnish
