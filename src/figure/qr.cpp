#include "figure/qr.h"

#include <fmt/format.h>
#include <qrencode.h>

#include <algorithm>
#include <array>
#include <optional>

#include "figure/hatching.h"
#include "figure/qr_sizes.h"
#include "page/canvas.h"

namespace furnish {
namespace {
using Input = std::unique_ptr<QRinput, decltype(&QRinput_free)>;
using Code = std::unique_ptr<QRcode, decltype(&QRcode_free)>;

constexpr unsigned utf8_eci = 26;  // AIM ECI assignments
struct Level {
  QRecLevel level;
  char name;
  const QrCapacities& holds;
};
constexpr std::array levels{
    Level{QR_ECLEVEL_H, 'H', qr_holds_at_h}, Level{QR_ECLEVEL_Q, 'Q', qr_holds_at_q},
    Level{QR_ECLEVEL_M, 'M', qr_holds_at_m}, Level{QR_ECLEVEL_L, 'L', qr_holds_at_l}};

bool is_ascii(std::string_view text) {
  return std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

/// Modules on each side of the code that the text needs, known before it is made, which takes
/// long; 0 if none holds it.
int modules_of(std::string_view text, const Level& level) {
  const int version = qr_version(text.size(), is_ascii(text) ? 0 : 12, level.holds);
  return version == 0 ? 0 : 17 + 4 * version;
}

Code encoded(std::string_view text, QRecLevel level) {
  Code none(nullptr, QRcode_free);
  if (text.empty()) return none;
  // Capitals and digits in the modes that are made for them: fewer modules, which are larger.
  if (is_ascii(text) && text.find('\0') == std::string_view::npos) {
    constexpr int any_version = 0, case_matters = 1;
    return {
        QRcode_encodeString(std::string(text).c_str(), any_version, level, QR_MODE_8, case_matters),
        QRcode_free};
  }
  const Input input(QRinput_new2(0, level), QRinput_free);
  if (!input || QRinput_appendECIheader(input.get(), utf8_eci) != 0) return none;
  const auto* bytes = reinterpret_cast<const unsigned char*>(text.data());
  if (QRinput_append(input.get(), QR_MODE_8, static_cast<int>(text.size()), bytes) != 0) {
    return none;
  }
  return {QRcode_encodeInput(input.get()), QRcode_free};
}

Length width_of(int modules, Length module) {
  return module * (modules + 2 * qr_quiet_zone);
}
}  // namespace

std::optional<QrCode> qr_code(std::string_view text, Length side, DiagnosticSink& sink,
                              SourceSpan from, Length least_module) {
  for (const Level& level : levels) {
    const int modules = modules_of(text, level);
    if (modules == 0 || width_of(modules, least_module) > side) continue;
    const Code code = encoded(text, level.level);
    if (!code || width_of(code->width, least_module) > side) continue;
    QrCode out{code->width, code->version, level.name, {}};
    const auto count =
        static_cast<std::size_t>(code->width) * static_cast<std::size_t>(code->width);
    for (std::size_t i = 0; i < count; ++i) out.black.push_back((code->data[i] & 1) != 0);
    return out;
  }
  sink.warning("qr-too-long", from,
               fmt::format("the text of {} bytes does not fit into a QR code of {} mm with modules "
                           "of at least {} mm; the sheet goes without one",
                           text.size(), side.in_mm(), least_module.in_mm()))
      .hint = "shorten notes, or give the code more room";
  return std::nullopt;
}

std::optional<QrCode> large_qr_code(std::string_view text, Length side, DiagnosticSink& sink,
                                    SourceSpan from, Length least_module) {
  constexpr std::array modules{0.8_mm, 0.7_mm, 0.6_mm, 0.55_mm, 0.5_mm, 0.45_mm};
  DiagnosticSink unheard;
  for (const Length module : modules) {
    if (module <= least_module) break;
    if (auto code = qr_code(text, side, unheard, from, module)) return code;
  }
  return qr_code(text, side, sink, from, least_module);
}

BlockPtr qr_block(QrCode code, Length side, std::string alt, Origin origin) {
  auto draw = [code = std::move(code)](const Rect& box, const Setting&, Frame& frame) {
    // Whole micrometres a module, so that all are equal; what is left over widens the quiet zone.
    const Length module = box.size.width / (code.modules + 2 * qr_quiet_zone);
    const Length margin = (box.size.width - module * code.modules) / 2;
    const Point corner{box.left() + margin, box.top() + margin};
    PathMark path{{}, Ink::text, std::nullopt, {}, Dash::solid};
    for (int row = 0; row < code.modules; ++row) {
      for (int column = 0; column < code.modules; ++column) {
        if (!code.at(column, row)) continue;
        int run = 1;
        while (column + run < code.modules && code.at(column + run, row)) ++run;
        path.contours.push_back(rectangle_contour(
            {{corner.x + module * column, corner.y + module * row}, {module * run, module}}));
        column += run;
      }
    }
    frame.marks.emplace_back(std::move(path));
  };
  return std::make_shared<Canvas>(Size{side, side}, std::move(draw), std::move(alt),
                                  std::move(origin));
}
}  // namespace furnish
