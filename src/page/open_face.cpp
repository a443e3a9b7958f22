#include "page/open_face.h"

#include <hb-ot.h>
#include <hb.h>

#include <algorithm>
#include <array>
#include <fstream>

namespace furnish {
namespace {
struct HarfBuzzReleaser {
  void operator()(hb_blob_t* blob) const { hb_blob_destroy(blob); }
  void operator()(hb_face_t* face) const { hb_face_destroy(face); }
  void operator()(hb_buffer_t* buffer) const { hb_buffer_destroy(buffer); }
};
template <typename T>
using HarfBuzz = std::unique_ptr<T, HarfBuzzReleaser>;

/// As the OS/2 table says it, in units; 0 if it does not.
int said_height(hb_font_t* font, hb_ot_metrics_tag_t tag) {
  hb_position_t height = 0;
  return hb_ot_metrics_get_position(font, tag, &height) ? height : 0;
}
}  // namespace

std::unique_ptr<OpenFace> OpenFace::open(const std::string& path) {
  const HarfBuzz<hb_blob_t> file(hb_blob_create_from_file_or_fail(path.c_str()));
  if (!file) return nullptr;
  const HarfBuzz<hb_face_t> face(hb_face_create(file.get(), 0));
  if (hb_face_get_glyph_count(face.get()) == 0) return nullptr;
  std::unique_ptr<OpenFace> opened(new OpenFace(hb_font_create(face.get())));
  const bool whole = opened->capital_ > 0 && opened->small_ > 0;
  return whole ? std::move(opened) : nullptr;
}

OpenFace::OpenFace(hb_font_t* font)
    : font_(font), units_(static_cast<int>(hb_face_get_upem(hb_font_get_face(font)))) {
  hb_font_set_scale(font_, units_, units_);
  const double em = units_;
  capital_ = std::min(outline_height('H'), said_height(font_, HB_OT_METRICS_TAG_CAP_HEIGHT) / em);
  small_ = std::min(outline_height('x'), said_height(font_, HB_OT_METRICS_TAG_X_HEIGHT) / em);
  hb_font_extents_t extents{};
  hb_font_get_h_extents(font_, &extents);
  ascent_ = extents.ascender / em;
  descent_ = -extents.descender / em;
}

OpenFace::~OpenFace() {
  hb_font_destroy(font_);
}

/// In em; zero if the face lacks the letter.
double OpenFace::outline_height(char32_t letter) const {
  hb_codepoint_t glyph = 0;
  hb_glyph_extents_t extents{};
  if (!hb_font_get_nominal_glyph(font_, letter, &glyph) ||
      !hb_font_get_glyph_extents(font_, glyph, &extents)) {
    return 0;
  }
  return static_cast<double>(extents.y_bearing) / units_;
}

double OpenFace::advance(char32_t character) const {
  hb_codepoint_t glyph = 0;
  if (!hb_font_get_nominal_glyph(font_, character, &glyph)) return -1;
  return static_cast<double>(hb_font_get_glyph_h_advance(font_, glyph)) / units_;
}

std::vector<UnitGlyph> OpenFace::set(std::string_view text, bool latin,
                                     const std::string& language) const {
  const HarfBuzz<hb_buffer_t> buffer(hb_buffer_create());
  hb_buffer_t* const set = buffer.get();
  hb_buffer_set_direction(set, HB_DIRECTION_LTR);
  hb_buffer_set_script(set, latin ? HB_SCRIPT_LATIN : HB_SCRIPT_COMMON);
  hb_buffer_set_language(set, hb_language_from_string(language.c_str(), -1));
  hb_buffer_set_cluster_level(set, HB_BUFFER_CLUSTER_LEVEL_MONOTONE_CHARACTERS);
  hb_buffer_set_flags(set, static_cast<hb_buffer_flags_t>(HB_BUFFER_FLAG_BOT | HB_BUFFER_FLAG_EOT));
  const int length = static_cast<int>(text.size());
  hb_buffer_add_utf8(set, text.data(), length, 0, length);
  hb_shape(font_, set, nullptr, 0);
  unsigned count = 0;
  const hb_glyph_info_t* const infos = hb_buffer_get_glyph_infos(set, &count);
  const hb_glyph_position_t* const places = hb_buffer_get_glyph_positions(set, nullptr);
  std::vector<UnitGlyph> glyphs;
  glyphs.reserve(count);
  for (unsigned i = 0; i < count; ++i) {
    const int own = hb_font_get_glyph_h_advance(font_, infos[i].codepoint);
    const bool joined =
        (hb_glyph_info_get_glyph_flags(&infos[i]) & HB_GLYPH_FLAG_UNSAFE_TO_BREAK) != 0;
    glyphs.push_back({infos[i].codepoint, infos[i].cluster, own, places[i].x_advance - own,
                      places[i].x_offset, places[i].y_offset, joined});
  }
  return glyphs;
}

bool begins_as_font(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::array<char, 4> tag{};
  if (!file.read(tag.data(), tag.size())) return false;
  const std::string_view begin(tag.data(), tag.size());
  return begin == std::string_view("\0\1\0\0", 4) || begin == "OTTO" || begin == "true";
}
}  // namespace furnish
