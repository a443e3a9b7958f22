#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "base/diagnostic.h"
#include "page/photograph.h"

namespace furnish {

/// What a photo's file may have at most: far more than a telephone makes, and little enough to be
/// worked through in a second or two.
inline constexpr std::size_t most_photo_bytes = std::size_t{32} * 1024 * 1024;
inline constexpr std::uint64_t most_photo_pixels = 64'000'000;

/// Pixels to the inch on paper: what a photo is reduced to, and never enlarged to.
inline constexpr int photo_dpi = 300;

/// Looks through a photo's file: its kind by its bytes, its size, and that all of it can be
/// decoded. `name` is what messages call it. Anything wrong is one warning at `from` that says what
/// to do, and an empty result: "photo-size", "photo-kind" or "photo-broken".
std::optional<Photograph> open_photograph(std::string name, std::string bytes, SourceSpan from,
                                          DiagnosticSink&);

/// A photo ready for a page.
struct ReducedPhoto {
  std::string jpeg;  ///< baseline, grey or sRGB, upright, without a word of metadata
  std::uint32_t width, height;
};

/// A part of a photo with at most `width` × `height` pixels. Same input, same bytes. Empty if the
/// photo cannot be decoded after all, which open_photograph() has ruled out but for want of memory.
std::optional<ReducedPhoto> reduced(const Photograph&, const PixelRect& crop, std::uint32_t width,
                                    std::uint32_t height);
}  // namespace furnish
