#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include "base/diagnostic.h"
#include "page/type.h"

typedef struct _PangoContext PangoContext;
typedef struct _PangoFont PangoFont;
typedef struct _PangoFontDescription PangoFontDescription;

namespace furnish {

class OpenFace;

/// The cuts of the one family a page is set in.
enum class Face : std::uint8_t { regular, semibold, bold, italic };
inline constexpr std::size_t face_count = 4;
std::string_view name(Face);

/// The bundled fonts, opened once: a private font configuration that sees nothing else, a font map
/// at 72 units per inch without hinting, and the one kind of context that both measuring and
/// drawing use. System fonts come in only for characters that the family lacks. For use by one
/// thread; open one set for each thread, and before the threads start one that holds the faces.
/// What was set with it may be painted while it lives.
class FontSet {
 public:
  /// Opens the fonts in `folder`. Empty if the folder, the family or one of its four faces is not
  /// there, or no capital height can be read; each is an error ("fonts-missing") without a place.
  static std::unique_ptr<FontSet> open(const std::string& folder, DiagnosticSink&);
  ~FontSet();
  FontSet(const FontSet&) = delete;
  FontSet& operator=(const FontSet&) = delete;

  /// "Source Sans 3".
  static std::string_view family();
  /// Height of the face's drawn capitals in em, and never more than its OS/2 table says.
  double capital_height(Face) const;
  /// The smallest of the four faces: what sizes are worked out from.
  double capital_height() const;
  /// Height of small letters of the regular face in em, found likewise.
  double small_height() const;

  /// Width of a character in em, from the face's advances; for what the family lacks, a guess:
  /// nothing for marks, 1 for the wide scripts of East Asia, else 0.6. Without kerning: an
  /// estimate, not the set width.
  double advance(Face, char32_t) const;

  /// Loads every bundled face, and keeps it loaded while the set lives: cairo 1.16 has a list of
  /// faces without a lock, and two threads that load one at the same time may embed it twice. Faces
  /// of this machine every set holds as soon as it opens them, one set at a time.
  void hold_faces();

  /// The context to make layouts of a language (BCP 47) with: the language chooses between forms of
  /// shared characters, and the direction of paragraphs. Belongs to the set; one a language.
  PangoContext* context(const std::string& language);

  /// The bundled family's own file of a face.
  const OpenFace& open_face(Face) const;
  /// The bundled face as Pango sets and draws it; belongs to the set.
  PangoFont* font(Face, TypeSize);
  /// False if the face's file could not be opened again to be drawn; else it is held open from now
  /// on, so that every size of it can be.
  bool can_draw(Face);
  /// What Pango finds a face by; the bundled one if `family` is empty. The caller frees it.
  static PangoFontDescription* description(const std::string& family, Face, TypeSize);

  /// True once a font's file could not be opened when it was needed: pages that were set since may
  /// lack their text. Never heals, as Pango does not try again.
  bool broken() const { return broken_; }
  void mark_broken() { broken_ = true; }

  /// True if the bundled family has the character in every upright face.
  bool covers(char32_t) const;
  /// Family that has the character, and is then open to all contexts: a bundled one for its script,
  /// else one of this machine, for a text of that language; empty if none has it. Scalable, not
  /// variable and not colour. Reads the system's configuration on its first call (tens of
  /// milliseconds).
  std::string fallback_family(char32_t, const std::string& language);
  /// True if a family opened by fallback_family() has the character.
  bool family_covers(const std::string& family, char32_t) const;

 private:
  struct Parts;
  void hold_new_faces();
  explicit FontSet(std::unique_ptr<Parts>);
  std::unique_ptr<Parts> parts_;
  bool broken_ = false;
};
}  // namespace furnish
