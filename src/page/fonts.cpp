#include "page/fonts.h"

#include <fmt/format.h>
#include <fontconfig/fontconfig.h>
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
#include "page/open_face.h"
#include "page/pango_threads.h"
#include "page/script_family.h"

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

struct FaceFile {
  Face face;
  std::string_view file;
};
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

bool add_file(FcConfig* config, const std::string& path) {
  return FcConfigAppFontAddFile(config, reinterpret_cast<const FcChar8*>(path.c_str())) != FcFalse;
}

const FcCharSet* characters_of(const FcPattern* pattern) {
  FcCharSet* set = nullptr;
  return FcPatternGetCharSet(pattern, FC_CHARSET, 0, &set) == FcResultMatch ? set : nullptr;
}

/// One thread's first use of a face at a time; who holds one already only finds it.
std::mutex& first_use() {
  static std::mutex one_at_a_time;
  return one_at_a_time;
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
  std::array<std::unique_ptr<OpenFace>, face_count> faces;
  Charset covered;
  std::map<std::pair<Face, TypeSize>, Font> sized;
  std::array<std::optional<bool>, face_count> drawable;
  mutable std::array<std::array<double, 128>, face_count> ascii_advances{};  ///< zero: not read yet
  Config system;  ///< read when the first character is missing
  std::map<std::pair<std::string, char32_t>, std::string> fallbacks;  ///< by language
  std::map<std::string, Charset> opened;  ///< families added from the system
  std::vector<Font> held;
  int looked_at = 0;  ///< of the configuration's fonts: as far as they are held

  /// The bundled family for a letter's script, opened; empty if there is none or lacks it.
  /// `lost`: set where one of its files cannot be read.
  std::string bundled_for(char32_t, bool& lost);
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

  // A fixed order, so that what is found does not hang on how a disk lists its files.
  for (const FaceFile& wanted : face_files) {
    const std::string path = (std::filesystem::path(folder) / wanted.file).string();
    std::error_code fault;
    if (!std::filesystem::is_regular_file(path, fault)) {
      return missing(fmt::format("no font '{}' in the folder '{}'", wanted.file, folder));
    }
    std::unique_ptr<OpenFace> face = OpenFace::open(path);
    if (!face || !add_file(parts->config.get(), path)) {
      return missing(fmt::format("'{}' is not a font, or has no capital height", path));
    }
    parts->faces[static_cast<std::size_t>(wanted.face)] = std::move(face);
  }
  // Else which sheet of a run fails would hang on which one asks for such a letter first.
  for (const ScriptFamily& script : script_families) {
    for (const char* const file : script.files) {
      const std::string path = (std::filesystem::path(folder) / file).string();
      if (!begins_as_font(path)) {
        return missing(fmt::format("'{}' is not there, or is not a font", path));
      }
    }
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

const OpenFace& FontSet::open_face(Face face) const {
  return *parts_->faces[static_cast<std::size_t>(face)];
}

double FontSet::capital_height(Face face) const {
  return open_face(face).capital_height();
}

double FontSet::capital_height() const {
  double least = capital_height(Face::regular);
  for (const auto& face : parts_->faces) least = std::min(least, face->capital_height());
  return least;
}

double FontSet::small_height() const {
  return open_face(Face::regular).small_height();
}

double FontSet::advance(Face face, char32_t character) const {
  const auto index = static_cast<std::size_t>(face);
  double* const known = character < 128 ? &parts_->ascii_advances[index][character] : nullptr;
  if (known && *known > 0) return *known;
  const double width = open_face(face).advance(character);
  if (width < 0 && g_unichar_iszerowidth(character)) return 0;
  if (width < 0) return g_unichar_iswide(character) ? 1 : 0.6;
  if (known) *known = width;
  return width;
}

PangoFontDescription* FontSet::description(const std::string& family, Face face, TypeSize size) {
  PangoFontDescription* font = pango_font_description_new();
  pango_font_description_set_family(
      font, family.empty() ? std::string(FontSet::family()).c_str() : family.c_str());
  const PangoWeight weight = face == Face::bold       ? PANGO_WEIGHT_BOLD
                             : face == Face::semibold ? PANGO_WEIGHT_SEMIBOLD
                                                      : PANGO_WEIGHT_NORMAL;
  pango_font_description_set_weight(font, weight);
  if (face == Face::italic) pango_font_description_set_style(font, PANGO_STYLE_ITALIC);
  pango_font_description_set_size(font, size.quarters() * PANGO_SCALE / 4);
  return font;
}

PangoFont* FontSet::font(Face face, TypeSize size) {
  const auto [at, fresh] = parts_->sized.try_emplace({face, size});
  if (fresh) {
    PangoFontDescription* const wanted = description({}, face, size);
    at->second.reset(pango_font_map_load_font(parts_->map.get(), context("en"), wanted));
    pango_font_description_free(wanted);
  }
  return at->second.get();
}

bool FontSet::can_draw(Face face) {
  std::optional<bool>& can = parts_->drawable[static_cast<std::size_t>(face)];
  if (!can) {
    const std::scoped_lock lock(first_use());
    // Whatever its size: a scaled font keeps its face.
    auto* const font = PANGO_CAIRO_FONT(this->font(face, TypeSize::quarters(40)));
    cairo_scaled_font_t* const scaled = font ? pango_cairo_font_get_scaled_font(font) : nullptr;
    can = scaled != nullptr && cairo_scaled_font_status(scaled) == CAIRO_STATUS_SUCCESS;
  }
  return *can;
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
  for (const ScriptFamily& script : script_families) parts_->bundled_for(script.letter, broken_);
  hold_new_faces();
}

void FontSet::hold_new_faces() {
  const std::scoped_lock lock(first_use());
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

std::string FontSet::Parts::bundled_for(char32_t character, bool& lost) {
  for (const ScriptFamily& script : script_families) {
    if (!script.has(character)) continue;
    const std::string family(script.family);
    if (!opened.contains(family)) {
      for (const char* const file : script.files) {
        lost |= !add_file(config.get(), (std::filesystem::path(folder) / file).string());
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
  if (!add_file(config.get(), file)) return;
  Charset& have = opened[family];
  FcCharSet* set = const_cast<FcCharSet*>(characters_of(font));
  have.reset(have ? FcCharSetUnion(have.get(), set) : FcCharSetCopy(set));
}

std::string FontSet::fallback_family(char32_t character, const std::string& language) {
  const std::pair key(language, character);
  const auto known = parts_->fallbacks.find(key);
  if (known != parts_->fallbacks.end()) return known->second;
  if (std::string bundled = parts_->bundled_for(character, broken_); !bundled.empty()) {
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
