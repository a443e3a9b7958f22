#pragma once

#include <memory>
#include <optional>
#include <set>
#include <string>
#include <unordered_map>
#include <vector>

#include "base/diagnostic.h"
#include "page/fonts.h"
#include "page/frame.h"
#include "page/shaped_line.h"
#include "page/type.h"

namespace furnish {

class PlainSetter;

/// A stretch of text in one size and face, ready to be set.
struct SizedText {
  std::string text;
  Face face = Face::regular;
  Role role = Role::body;
  TypeSize size;
};

enum class Breaking : std::uint8_t {
  words,     ///< at words; within a word only if it alone is wider than the line
  balanced,  ///< as words, but a last line of one short word gets company where lines allow
  never      ///< only where the text has a line end, however wide
};

/// A paragraph in lines, top to bottom; at least one.
struct ShapedText {
  std::vector<std::shared_ptr<const ShapedLine>> lines;
  Length width() const;  ///< of the widest line
};

/// Sets text in lines. What was set once is kept and given again, so a label costs nothing at the
/// next try; the answer depends on the request alone. A line end in the text begins a new line;
/// other control characters become spaces. Text runs as the shaper's language does, unless none of
/// its letters do.
class TextShaper {
 public:
  /// Keeps references to both. `language` is BCP 47. With `pango_only` Pango sets plain text too,
  /// with the same result: what the quicker way is held to.
  TextShaper(FontSet&, DiagnosticSink&, std::string language = "en", bool pango_only = false);
  ~TextShaper();

  /// `width` matters unless breaking is `never`. A character that no font has is set as U+25A1 (a
  /// box) and reported once, as the warning "no-glyph" at `from`. A font whose file cannot be
  /// opened is the error "font-unreadable", and the set of fonts is broken().
  std::shared_ptr<const ShapedText> shape(const std::vector<SizedText>&, Length width, Breaking,
                                          SourceSpan from = {}, Length indent = {});
  /// Width of the text where no line is broken but at its own line ends.
  Length natural_width(const std::vector<SizedText>&, SourceSpan from = {});

  const FontSet& fonts() const { return fonts_; }
  const std::string& language() const { return language_; }
  /// How many paragraphs were set, and not found among those set before; for tests and benchmarks.
  std::size_t layouts_made() const { return made_; }
  /// From now on reports go there; keeps the reference.
  void report_to(DiagnosticSink& sink) {
    sink_ = &sink;
    broken_told_ = false;
  }
  /// Forgets what was not asked for since the last call, so that a long run keeps the labels that
  /// every page has and not all that any page had; lines in frames stay good. What is missing in a
  /// font is reported anew, as said once (Diagnostic::once). Call between pages.
  void forget();

 private:
  struct Kept {
    std::shared_ptr<const ShapedText> text;
    bool asked = true;  ///< since forget() was called last
    std::vector<char32_t> missing{};
  };
  /// False, and told, if a font of the layout could not be opened.
  bool holds_fonts(PangoLayout*, SourceSpan from);
  /// Once to each sink.
  void tell_broken(SourceSpan from);
  FontSet& fonts_;
  DiagnosticSink* sink_;
  std::string language_;
  std::unique_ptr<PlainSetter> plain_;  ///< null: Pango sets all
  std::unordered_map<std::string, Kept> kept_;
  std::set<char32_t> reported_;
  bool broken_told_ = false;  ///< that a font could not be opened, to this sink
  std::size_t made_ = 0;
};
}  // namespace furnish
