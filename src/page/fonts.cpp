#include "page/fonts.h"

#include <fmt/format.h>
#include <fontconfig/fontconfig.h>
#include <ft2build.h>
#include FT_ADVANCES_H
#include FT_FREETYPE_H
#include FT_TRUETYPE_TABLES_H
#include <pango/pangocairo.h>
#include <pango/pangofc-fontmap.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <mutex>
#include <optional>
#include <set>
#include <vector>

#include "page/direction.h"
#include "page/pango_threads.h"

namespace furnish {
namespace {
template <auto Release>
struct Releaser {
  template <typename T>
  void operator()(T* held) const {
    Release(held);
  }
};
using Config = std::unique_ptr<FcConfig, Releaser<FcConfigDestroy>>;
using Pattern = std::unique_ptr<FcPattern, Releaser<FcPatternDestroy>>;
using Charset = std::unique_ptr<FcCharSet, Releaser<FcCharSetDestroy>>;

/// Pango 1.50 keeps its reference to the configuration for ever unless it is given another.
void release_map(PangoFontMap* map) {
  pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map), nullptr);
  g_object_unref(map);
}
using FontMap = std::unique_ptr<PangoFontMap, Releaser<release_map>>;
using Context = std::unique_ptr<PangoContext, Releaser<g_object_unref>>;
using Font = std::unique_ptr<PangoFont, Releaser<g_object_unref>>;

using FreeType = std::unique_ptr<FT_LibraryRec_, Releaser<FT_Done_FreeType>>;
using FreeTypeFace = std::unique_ptr<FT_FaceRec_, Releaser<FT_Done_Face>>;

struct FaceFile {
  Face face;
  std::string_view file;
};
/// A bundled family for letters that the main one lacks; opened when the first of them comes.
struct ScriptFamily {
  std::string_view family;
  std::array<std::string_view, 3> files;
  bool (*has)(char32_t);
  char32_t letter;  ///< one that it has
};
/// Unicode's blocks of Arabic letters.
bool is_arabic(char32_t c) {
  return (c >= 0x600 && c <= 0x6FF) || (c >= 0x750 && c <= 0x77F) || (c >= 0x8A0 && c <= 0x8FF) ||
         (c >= 0xFB50 && c <= 0xFDFF) || (c >= 0xFE70 && c <= 0xFEFE);
}
constexpr std::array<ScriptFamily, 1> script_families{
    {{"Vazirmatn",
      {"Vazirmatn-Regular.ttf", "Vazirmatn-SemiBold.ttf", "Vazirmatn-Bold.ttf"},
      is_arabic,
      U'\u0627'}}};

constexpr std::array<FaceFile, face_count> face_files{{{Face::regular, "SourceSans3-Regular.ttf"},
                                                       {Face::semibold, "SourceSans3-SemiBold.ttf"},
                                                       {Face::bold, "SourceSans3-Bold.ttf"},
                                                       {Face::italic, "SourceSans3-Italic.ttf"}}};

std::string_view text_of(const FcPattern* pattern, const char* object) {
  FcChar8* value = nullptr;
  if (FcPatternGetString(pattern, object, 0, &value) != FcResultMatch) return {};
  return reinterpret_cast<const char*>(value);
}

bool flag_of(const FcPattern* pattern, const char* object) {
  FcBool value = FcFalse;
  return FcPatternGetBool(pattern, object, 0, &value) == FcResultMatch && value != FcFalse;
}

const FcCharSet* characters_of(const FcPattern* pattern) {
  FcCharSet* set = nullptr;
  return FcPatternGetCharSet(pattern, FC_CHARSET, 0, &set) == FcResultMatch ? set : nullptr;
}

struct Metrics {
  double capital = 0, small = 0;  ///< em
};

/// Height of a letter's outline in em; zero if the face lacks it.
double outline_height(FT_Face face, char letter) {
  if (FT_Load_Char(face, static_cast<FT_ULong>(letter), FT_LOAD_NO_SCALE) != 0) return 0;
  return static_cast<double>(face->glyph->metrics.horiBearingY) / face->units_per_EM;
}

/// Of the drawn letters H and x, and never more than the OS/2 table says: its capital height is
/// that of the whole family, and the bolder faces of ours stand 1 % lower than it. Empty without
/// either.
std::optional<Metrics> metrics_of(FT_Face face) {
  const auto* os2 = static_cast<const TT_OS2*>(FT_Get_Sfnt_Table(face, FT_SFNT_OS2));
  if (!os2 || os2->version < 2 || face->units_per_EM == 0) return std::nullopt;
  const double em = face->units_per_EM;
  const Metrics metrics{std::min(outline_height(face, 'H'), os2->sCapHeight / em),
                        std::min(outline_height(face, 'x'), os2->sxHeight / em)};
  return metrics.capital > 0 && metrics.small > 0 ? std::optional(metrics) : std::nullopt;
}

/// Pango starts a thread that reads the whole system's configuration unless there is a current one
/// before its first font map. An empty one will do, as every font map is given its own.
void have_current_config() {
  run_pango_inline();
  static std::once_flag once;
  std::call_once(once, [] {
    const Config empty(FcConfigCreate());
    FcConfigSetCurrent(empty.get());
  });
}
}  // namespace

std::string_view name(Face face) {
  constexpr std::array<std::string_view, face_count> names{"regular", "semibold", "bold", "italic"};
  return names[static_cast<std::size_t>(face)];
}

struct FontSet::Parts {
  Config config;
  FontMap map;
  std::map<std::string, Context> contexts;  ///< by language
  std::string folder;
  std::array<Metrics, face_count> metrics{};
  Charset covered;
  FreeType library;
  std::array<FreeTypeFace, face_count> faces;  ///< for advances; destroyed before the library
  mutable std::array<std::array<double, 128>, face_count> ascii_advances{};  ///< zero: not read yet
  Config system;  ///< read when the first character is missing
  std::map<std::pair<std::string, char32_t>, std::string> fallbacks;  ///< by language
  std::map<std::string, Charset> opened;  ///< families added from the system
  std::vector<Font> held;
  int looked_at = 0;  ///< of the configuration's fonts: as far as they are held

  /// The bundled family for a letter's script, opened; empty if there is none or lacks it.
  std::string bundled_for(char32_t);
  FcPattern* find_on_system(char32_t, const std::string& family, int weight,
                            const std::string& language);
  void open_from_system(const FcPattern*);
  /// Tells the map and all that was made with it of a family that was opened.
  void fonts_changed();
};

FontSet::FontSet(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
FontSet::~FontSet() = default;

std::unique_ptr<FontSet> FontSet::open(const std::string& folder, DiagnosticSink& sink) {
  const auto missing = [&](std::string message) {
    sink.error("fonts-missing", {}, std::move(message)).hint =
        "the fonts come with furnish, in its folder 'fonts'; install it again";
    return nullptr;
  };
  auto parts = std::make_unique<Parts>();
  parts->config.reset(FcConfigCreate());
  FT_Library library = nullptr;
  if (FT_Init_FreeType(&library) != 0) return missing("the font library does not start");
  parts->library.reset(library);

  // A fixed order, so that what is found does not hang on how a disk lists its files.
  for (const FaceFile& wanted : face_files) {
    const std::string path = (std::filesystem::path(folder) / wanted.file).string();
    std::error_code fault;
    if (!std::filesystem::is_regular_file(path, fault)) {
      return missing(fmt::format("no font '{}' in the folder '{}'", wanted.file, folder));
    }
    FT_Face face = nullptr;
    FT_New_Face(library, path.c_str(), 0, &face);
    const auto metrics = face ? metrics_of(face) : std::nullopt;
    parts->faces[static_cast<std::size_t>(wanted.face)].reset(face);
    if (!metrics || FcConfigAppFontAddFile(parts->config.get(),
                                           reinterpret_cast<const FcChar8*>(path.c_str())) == 0) {
      return missing(fmt::format("'{}' is not a font, or has no capital height", path));
    }
    parts->metrics[static_cast<std::size_t>(wanted.face)] = *metrics;
  }
  const FcFontSet* fonts = FcConfigGetFonts(parts->config.get(), FcSetApplication);
  for (int i = 0; i < fonts->nfont; ++i) {
    const FcPattern* font = fonts->fonts[i];
    const FcCharSet* set = characters_of(font);
    if (text_of(font, FC_FAMILY) != family() || !set) {
      return missing(fmt::format("'{}' is not of the family {}", text_of(font, FC_FILE), family()));
    }
    parts->covered.reset(parts->covered ? FcCharSetIntersect(parts->covered.get(), set)
                                        : FcCharSetCopy(const_cast<FcCharSet*>(set)));
  }

  have_current_config();
  parts->map.reset(pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT));
  if (!parts->map) return missing("this Pango cannot set FreeType fonts");
  pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(parts->map.get()), parts->config.get());
  pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(parts->map.get()), 72);
  parts->folder = folder;
  return std::unique_ptr<FontSet>(new FontSet(std::move(parts)));
}

std::string_view FontSet::family() {
  return "Source Sans 3";
}

double FontSet::capital_height(Face face) const {
  return parts_->metrics[static_cast<std::size_t>(face)].capital;
}

double FontSet::capital_height() const {
  return std::ranges::min(parts_->metrics, {}, &Metrics::capital).capital;
}

double FontSet::small_height() const {
  return parts_->metrics[0].small;
}

double FontSet::advance(Face face, char32_t character) const {
  const auto index = static_cast<std::size_t>(face);
  double* const known = character < 128 ? &parts_->ascii_advances[index][character] : nullptr;
  if (known && *known > 0) return *known;
  FT_Face file = parts_->faces[index].get();
  FT_Fixed units = 0;
  const FT_UInt glyph = FT_Get_Char_Index(file, character);
  if (glyph == 0) {
    if (g_unichar_iszerowidth(character)) return 0;
    return g_unichar_iswide(character) ? 1 : 0.6;
  }
  FT_Get_Advance(file, glyph, FT_LOAD_NO_SCALE, &units);
  const double width = static_cast<double>(units) / file->units_per_EM;
  if (known) *known = width;
  return width;
}

PangoContext* FontSet::context(const std::string& language) {
  Context& made = parts_->contexts[language];
  if (made) return made.get();
  made.reset(pango_font_map_create_context(parts_->map.get()));
  PangoContext* const context = made.get();
  pango_context_set_round_glyph_positions(context, FALSE);
  const std::unique_ptr<cairo_font_options_t, Releaser<cairo_font_options_destroy>> options(
      cairo_font_options_create());
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context, options.get());
  // A weak direction, Pango's default, would let the first letter of each paragraph decide after
  // all.
  pango_context_set_base_dir(context,
                             right_to_left(language) ? PANGO_DIRECTION_RTL : PANGO_DIRECTION_LTR);
  pango_context_set_language(context, pango_language_from_string(language.c_str()));
  return context;
}

bool FontSet::covers(char32_t character) const {
  return FcCharSetHasChar(parts_->covered.get(), character) != FcFalse;
}

bool FontSet::family_covers(const std::string& family, char32_t character) const {
  const auto found = parts_->opened.find(family);
  return found != parts_->opened.end() &&
         FcCharSetHasChar(found->second.get(), character) != FcFalse;
}

void FontSet::hold_faces() {
  for (const ScriptFamily& script : script_families) parts_->bundled_for(script.letter);
  hold_new_faces();
}

void FontSet::hold_new_faces() {
  // One thread's first use of a face at a time; who holds one already only finds it.
  static std::mutex one_at_a_time;
  const std::scoped_lock lock(one_at_a_time);
  const FcFontSet* fonts = FcConfigGetFonts(parts_->config.get(), FcSetApplication);
  for (int& i = parts_->looked_at; i < fonts->nfont; ++i) {
    // Whatever its size: a scaled font keeps its face.
    PangoFontDescription* wanted = pango_fc_font_description_from_pattern(fonts->fonts[i], FALSE);
    pango_font_description_set_size(wanted, 10 * PANGO_SCALE);
    Font font(pango_context_load_font(context("en"), wanted));
    pango_font_description_free(wanted);
    if (!font) continue;
    pango_cairo_font_get_scaled_font(PANGO_CAIRO_FONT(font.get()));
    parts_->held.push_back(std::move(font));
  }
}

std::string FontSet::Parts::bundled_for(char32_t character) {
  for (const ScriptFamily& script : script_families) {
    if (!script.has(character)) continue;
    const std::string family(script.family);
    if (!opened.contains(family)) {
      for (const std::string_view file : script.files) {
        const std::string path = (std::filesystem::path(folder) / file).string();
        FcConfigAppFontAddFile(config.get(), reinterpret_cast<const FcChar8*>(path.c_str()));
      }
      Charset& have = opened[family];
      const FcFontSet* fonts = FcConfigGetFonts(config.get(), FcSetApplication);
      for (int i = 0; i < fonts->nfont; ++i) {
        if (text_of(fonts->fonts[i], FC_FAMILY) != family) continue;
        FcCharSet* set = const_cast<FcCharSet*>(characters_of(fonts->fonts[i]));
        have.reset(have ? FcCharSetIntersect(have.get(), set) : FcCharSetCopy(set));
      }
      if (!have) have.reset(FcCharSetCreate());
      fonts_changed();
    }
    if (FcCharSetHasChar(opened[family].get(), character) != FcFalse) return family;
  }
  return {};
}

void FontSet::Parts::fonts_changed() {
  pango_fc_font_map_config_changed(PANGO_FC_FONT_MAP(map.get()));
  for (const auto& [language, context] : contexts) pango_context_changed(context.get());
}

/// The best outline font with the character; of `family` only, if that is not empty. To be
/// destroyed by the caller; null if there is none.
FcPattern* FontSet::Parts::find_on_system(char32_t character, const std::string& family, int weight,
                                          const std::string& language) {
  const Pattern query(FcPatternCreate());
  const Charset wanted(FcCharSetCreate());
  FcCharSetAddChar(wanted.get(), character);
  FcPatternAddCharSet(query.get(), FC_CHARSET, wanted.get());
  FcPatternAddBool(query.get(), FC_SCALABLE, FcTrue);
  FcPatternAddBool(query.get(), FC_VARIABLE, FcFalse);
  FcPatternAddBool(query.get(), FC_COLOR, FcFalse);
  FcPatternAddInteger(query.get(), FC_WEIGHT, weight);
  const std::string asked = family.empty() ? "sans-serif" : family;
  FcPatternAddString(query.get(), FC_FAMILY, reinterpret_cast<const FcChar8*>(asked.c_str()));
  FcPatternAddString(query.get(), FC_LANG, reinterpret_cast<const FcChar8*>(language.c_str()));
  FcConfigSubstitute(system.get(), query.get(), FcMatchPattern);
  FcDefaultSubstitute(query.get());
  FcResult result = FcResultNoMatch;
  FcFontSet* sorted = FcFontSort(system.get(), query.get(), FcFalse, nullptr, &result);
  if (!sorted) return nullptr;
  FcPattern* best = nullptr;
  for (int i = 0; i < sorted->nfont && !best; ++i) {
    FcPattern* font = sorted->fonts[i];
    const FcCharSet* set = characters_of(font);
    if (!set || FcCharSetHasChar(set, character) == FcFalse) continue;
    // Variable fonts embed without a name and colour fonts as pictures.
    if (!flag_of(font, FC_SCALABLE) || flag_of(font, FC_VARIABLE) || flag_of(font, FC_COLOR)) {
      continue;
    }
    if (!family.empty() && text_of(font, FC_FAMILY) != family) continue;
    FcPatternReference(font);
    best = font;
  }
  FcFontSetDestroy(sorted);
  return best;
}

void FontSet::Parts::open_from_system(const FcPattern* font) {
  const std::string family(text_of(font, FC_FAMILY)), file(text_of(font, FC_FILE));
  if (FcConfigAppFontAddFile(config.get(), reinterpret_cast<const FcChar8*>(file.c_str())) == 0) {
    return;
  }
  Charset& have = opened[family];
  FcCharSet* set = const_cast<FcCharSet*>(characters_of(font));
  have.reset(have ? FcCharSetUnion(have.get(), set) : FcCharSetCopy(set));
}

std::string FontSet::fallback_family(char32_t character, const std::string& language) {
  const std::pair key(language, character);
  const auto known = parts_->fallbacks.find(key);
  if (known != parts_->fallbacks.end()) return known->second;
  if (std::string bundled = parts_->bundled_for(character); !bundled.empty()) {
    return parts_->fallbacks[key] = std::move(bundled);
  }
  if (!parts_->system) parts_->system.reset(FcInitLoadConfigAndFonts());
  std::string family;
  if (parts_->system) {
    if (const Pattern regular{parts_->find_on_system(character, "", FC_WEIGHT_REGULAR, language)}) {
      family = text_of(regular.get(), FC_FAMILY);
      if (!parts_->opened.contains(family)) {
        parts_->open_from_system(regular.get());
        const Pattern bold(parts_->find_on_system(character, family, FC_WEIGHT_BOLD, language));
        if (bold && text_of(bold.get(), FC_FILE) != text_of(regular.get(), FC_FILE)) {
          parts_->open_from_system(bold.get());
        }
      }
      if (!family_covers(family, character)) parts_->open_from_system(regular.get());
      parts_->fonts_changed();
      hold_new_faces();
    }
  }
  parts_->fallbacks.emplace(key, family);
  return family;
}
}  // namespace furnish
