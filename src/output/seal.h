#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

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
/// Whether furnish wrote this, and nobody has changed it since: of bytes that come in stretches,
/// each of which is summed once, whatever stands in them.
class SealReader {
 public:
  /// A file that speaks of seals more often is not ours.
  static constexpr std::size_t most_marks = 64;
  void take(std::string_view stretch);
  /// After the last stretch.
  bool holds();

 private:
  struct Mark {
    std::uint32_t before;       ///< the sum up to its digits
    std::uint32_t with_digits;  ///< and with what is left out of the sum
    std::uintmax_t end;         ///< where that ends
    std::string digits;
  };
  void look(bool at_end);
  void sum_up_to(std::size_t end);

  std::string held_;  ///< the last bytes, of which so many are summed
  std::size_t summed_ = 0;
  std::uintmax_t size_ = 0;  ///< of all that was summed
  std::uint32_t sum_ = 0;
  std::vector<Mark> marks_;
};
bool seal_holds(std::string_view bytes);
}  // namespace furnish
