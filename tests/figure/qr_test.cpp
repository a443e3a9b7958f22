#include "figure/qr.h"

#include <qrencode.h>

#include <array>
#include <catch2/catch.hpp>
#include <cstdio>
#include <filesystem>

#include "figure/qr_sizes.h"
#include "figure/setting.h"
#include "share.h"

namespace furnish {
namespace {
/// What zbarimg, a reader that is not ours, sees in the code at 150 dpi; empty if nothing.
std::string read_by_zbar(const Frame& frame, const std::string& name) {
  const std::string path = written(rasterised(frame, 150), name);
  const std::string command =
      "zbarimg --quiet --raw -Sdisable -Sqrcode.enable " + path + " 2>/dev/null";
  std::string out;
  FILE* pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::array<char, 512> buffer{};
  while (const std::size_t n = std::fread(buffer.data(), 1, buffer.size(), pipe)) {
    out.append(buffer.data(), n);
  }
  pclose(pipe);
  std::filesystem::remove(path);
  if (!out.empty() && out.back() == '\n') out.pop_back();
  return out;
}

Frame page_of(const QrCode& code, Length side, const HandHeld& page) {
  Frame frame;
  frame.size = {side, side};
  qr_block(code, side, "QR code of the trim")->place({{}, frame.size}, page.setting(), frame);
  return frame;
}

/// What a maker of codes that is not ours makes of so many bytes; 0 if it cannot.
int version_made(std::size_t bytes, QRecLevel level) {
  const std::string text(bytes, 'a');
  const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
      QRcode_encodeData(static_cast<int>(bytes),
                        reinterpret_cast<const unsigned char*>(text.data()), 0, level),
      QRcode_free);
  return code ? code->version : 0;
}
}  // namespace

TEST_CASE("zbarimg reads the code at 150 dpi, text identical", "[figure][qr]") {
  const HandHeld page;
  const std::string ascii = "[trim]\nbody = \"1/2 in comb\"\nhocks = { tool = \"#10\" }\n# end";
  const std::string utf8 =
      "[pet]\nname = \"Mária Ñandú, 犬\"\n[trim]\nbody = \"½ in comb\"  # – 13 mm";
  std::string longer;
  for (int i = 0; i < 12; ++i) longer += ascii;
  using Case = std::pair<const std::string*, Length>;
  const std::array cases{Case{&ascii, 30_mm}, Case{&utf8, 30_mm}, Case{&longer, 60_mm}};
  for (const auto& [text, side] : cases) {
    DiagnosticSink sink;
    const auto code = qr_code(*text, side, sink);
    REQUIRE(code);
    CHECK(sink.all().empty());
    CHECK(read_by_zbar(page_of(*code, side, page), "furnish-qr-test.pgm") == *text);
  }
}

TEST_CASE("what a code holds is known before it is made", "[figure][qr]") {
  using Column = std::pair<QRecLevel, const QrCapacities*>;
  const std::array columns{
      Column{QR_ECLEVEL_L, &qr_holds_at_l}, Column{QR_ECLEVEL_M, &qr_holds_at_m},
      Column{QR_ECLEVEL_Q, &qr_holds_at_q}, Column{QR_ECLEVEL_H, &qr_holds_at_h}};
  constexpr std::size_t cases = 40 * columns.size();
  for (std::size_t i = 0; i < test::share_of(cases); ++i) {
    const std::size_t one = i * 67 % cases, version = 1 + one / columns.size();  // in a mixed order
    const auto& [level, holds] = columns.at(one % columns.size());
    const std::size_t most = holds->at(version - 1) - (version < 10 ? 2 : 3);
    INFO("version " << version << ", level " << level);
    CHECK(qr_version(most, 0, *holds) == static_cast<int>(version));
    CHECK(version_made(most, level) == static_cast<int>(version));
    const int next = version == 40 ? 0 : static_cast<int>(version) + 1;
    CHECK(qr_version(most + 1, 0, *holds) == next);
    CHECK(version_made(most + 1, level) == next);
  }
}

TEST_CASE("a code of large modules gives up correction for them", "[figure][qr]") {
  DiagnosticSink sink;
  const std::string text(300, 'a');
  const auto corrected = qr_code(text, 42_mm, sink), large = large_qr_code(text, 42_mm, sink);
  REQUIRE(corrected);
  REQUIRE(large);
  CHECK(large->modules < corrected->modules);
  // 65 modules and the quiet zone in 42 mm (ISO/IEC 18004: 321 bytes in version 11 at level L).
  CHECK(42.0 / (large->modules + 2 * qr_quiet_zone) >= 0.6);
  CHECK(sink.all().empty());
  CHECK_FALSE(large_qr_code(std::string(900, 'a'), 30_mm, sink));
  CHECK(sink.all().size() == 1);
}

TEST_CASE("modules, quiet zone and path of a code", "[figure][qr]") {
  const HandHeld page;
  DiagnosticSink sink;
  const auto code = qr_code("short", 25_mm, sink);
  REQUIRE(code);
  CHECK(code->modules == 17 + 4 * code->version);  // ISO/IEC 18004
  CHECK(code->level == 'H');                       // there is room for the best
  const Frame frame = page_of(*code, 25_mm, page);
  int paths = 0;
  Rect black{{25_mm, 25_mm}, {}};
  Length right{}, bottom{};
  for (const Mark& mark : frame.marks) {
    const auto* path = std::get_if<PathMark>(&mark);
    if (path == nullptr) continue;
    ++paths;
    for (const Contour& contour : path->contours) {
      black.origin.x = std::min(black.origin.x, contour.start.x);
      black.origin.y = std::min(black.origin.y, contour.start.y);
      right = std::max(right, contour.curves[0].end.x);
      bottom = std::max(bottom, contour.curves[1].end.y);
    }
  }
  CHECK(paths == 1);
  const Length module = (right - black.left()) / code->modules;
  CHECK(module >= least_qr_module);
  CHECK(black.left() >= module * qr_quiet_zone);
  CHECK(black.top() >= module * qr_quiet_zone);
  CHECK(25_mm - right >= module * qr_quiet_zone);
  CHECK(25_mm - bottom >= module * qr_quiet_zone);
}

TEST_CASE("less room or more text lowers the level, then the code is left out", "[figure][qr]") {
  DiagnosticSink sink;
  const std::string text(200, 'x');
  std::string levels;
  for (const Length side : {40_mm, 30_mm, 28_mm, 26_mm, 25_mm, 24_mm, 23_mm, 22_mm}) {
    const auto code = qr_code(text, side, sink);
    if (code && (levels.empty() || levels.back() != code->level)) levels += code->level;
  }
  CHECK(levels == "HQML");
  CHECK(sink.all().size() >= 1);
  DiagnosticSink none;
  CHECK_FALSE(qr_code(text, 15_mm, none));
  REQUIRE(none.all().size() == 1);
  CHECK(none.all()[0].code == "qr-too-long");
  CHECK(none.all()[0].severity == Severity::warning);
  CHECK_FALSE(qr_code(std::string(5000, 'x'), 400_mm, none));
}
}  // namespace furnish
