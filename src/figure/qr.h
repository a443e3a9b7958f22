#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "page/block.h"

namespace furnish {

/// A QR code (ISO/IEC 18004), ready to be drawn.
struct QrCode {
  int modules = 0;          ///< on each side, without the quiet zone
  int version = 0;          ///< 1 to 40
  char level = 'M';         ///< of error correction: L, M, Q or H
  std::vector<bool> black;  ///< by rows, modules × modules
  bool at(int column, int row) const {
    return black[static_cast<std::size_t>(row * modules + column)];
  }
};

inline constexpr Length least_qr_module = Length::micrometres(400);
inline constexpr int qr_quiet_zone = 4;  ///< modules on every side (ISO/IEC 18004)

/// The code for `text`, in the fewest modules that hold it, with the highest level of correction
/// that stays within `side` at modules of at least `least_module`, quiet zone included. UTF-8 is
/// announced by an ECI 26 header, so that no reader takes it for Shift-JIS; plain ASCII needs none.
/// Empty, with the warning "qr-too-long" at `from`, if even level L does not fit.
std::optional<QrCode> qr_code(std::string_view text, Length side, DiagnosticSink&,
                              SourceSpan from = {}, Length least_module = least_qr_module);
/// The code of the largest modules that `side` has room for, at whatever level of correction they
/// are had: a screen's grey or a shaken hand blurs small modules all over, which no correction
/// mends. Errors as with qr_code().
std::optional<QrCode> large_qr_code(std::string_view text, Length side, DiagnosticSink&,
                                    SourceSpan from = {}, Length least_module = least_qr_module);

/// The code as one path in a square of `side`, quiet zone included, with `alt` to stand for it.
BlockPtr qr_block(QrCode, Length side, std::string alt, Origin = {});
}  // namespace furnish
