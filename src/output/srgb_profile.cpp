#include "output/srgb_profile.h"

#include <array>
#include <cmath>
#include <cstdint>
#include <string_view>
#include <vector>

namespace furnish {
namespace {
/// Numbers of an ICC profile: big-endian, s15Fixed16 for fractions.
class Bytes {
 public:
  Bytes& text(std::string_view ascii) {
    out_ += ascii;
    return *this;
  }
  Bytes& u16(std::uint32_t n) {
    out_ += static_cast<char>(n >> 8 & 0xFF);
    out_ += static_cast<char>(n & 0xFF);
    return *this;
  }
  Bytes& u32(std::uint32_t n) { return u16(n >> 16).u16(n & 0xFFFF); }
  Bytes& zeros(std::size_t n) {
    out_.append(n, '\0');
    return *this;
  }
  Bytes& fraction(double x) {
    return u32(static_cast<std::uint32_t>(static_cast<std::int32_t>(std::lround(x * 65536))));
  }
  std::size_t size() const { return out_.size(); }
  std::string take() { return std::move(out_); }

 private:
  std::string out_;
};

using Xyz = std::array<double, 3>;

std::string xyz(const Xyz& v) {
  return Bytes().text("XYZ ").u32(0).fraction(v[0]).fraction(v[1]).fraction(v[2]).take();
}

/// A text in one language; padded to four bytes, as every element is.
std::string text(std::string_view ascii) {
  Bytes b;
  b.text("mluc").u32(0).u32(1).u32(12).text("enUS");
  b.u32(static_cast<std::uint32_t>(2 * ascii.size())).u32(28);
  for (const char c : ascii) b.u16(static_cast<unsigned char>(c));
  return b.zeros(b.size() % 4).take();
}

/// IEC 61966-2-1: ((x + 0.055) / 1.055)^2.4 from 0.04045 up, x / 12.92 below.
std::string curve() {
  return Bytes()
      .text("para")
      .u32(0)
      .u16(3)
      .u16(0)
      .fraction(2.4)
      .fraction(1 / 1.055)
      .fraction(0.055 / 1.055)
      .fraction(1 / 12.92)
      .fraction(0.04045)
      .take();
}

/// sRGB's white, D65, seen from the profile's D50: Bradford's transform (ICC.1:2004-10, annex E).
std::string adaptation() {
  Bytes b;
  b.text("sf32").u32(0);
  for (const double x : {1.04788208, 0.02291870, -0.05021667, 0.02958679, 0.99047852, -0.01707458,
                         -0.00923157, 0.01507568, 0.75167847}) {
    b.fraction(x);
  }
  return b.take();
}

constexpr Xyz d50{0.9642, 1.0, 0.8249};

std::string header(std::size_t size) {
  Bytes b;
  b.u32(static_cast<std::uint32_t>(size)).u32(0).u32(0x04200000).text("mntrRGB XYZ ");
  b.u16(2026).u16(1).u16(1).zeros(6).text("acsp").zeros(24);  // date; no platform, maker or model
  b.u32(0);                                                   // perceptual
  return b.fraction(d50[0]).fraction(d50[1]).fraction(d50[2]).zeros(48).take();
}
}  // namespace

std::string srgb_profile() {
  struct Element {
    std::vector<std::string_view> tags;
    std::string data;
  };
  // Colorants: IEC 61966-2-1's primaries, adapted to D50; they add up to it.
  const std::vector<Element> elements{{{"desc"}, text("sRGB")},
                                      {{"cprt"}, text("CC0")},
                                      {{"wtpt"}, xyz(d50)},
                                      {{"chad"}, adaptation()},
                                      {{"rXYZ"}, xyz({0.43606567, 0.22248840, 0.01391602})},
                                      {{"gXYZ"}, xyz({0.38514709, 0.71687317, 0.09707642})},
                                      {{"bXYZ"}, xyz({0.14306641, 0.06060791, 0.71409607})},
                                      {{"rTRC", "gTRC", "bTRC"}, curve()}};
  std::uint32_t count = 0;
  for (const Element& element : elements) count += static_cast<std::uint32_t>(element.tags.size());
  std::size_t offset = 128 + 4 + std::size_t{12} * count;
  Bytes table;
  std::string data;
  table.u32(count);
  for (const Element& element : elements) {
    for (const std::string_view tag : element.tags) {
      table.text(tag)
          .u32(static_cast<std::uint32_t>(offset))
          .u32(static_cast<std::uint32_t>(element.data.size()));
    }
    data += element.data;
    offset += element.data.size();
  }
  return header(offset) + table.take() + data;
}
}  // namespace furnish
