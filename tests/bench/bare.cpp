// The least program that draws a finished page: reads marks (frame_file.h), opens the same four
// fonts by themselves, and draws with Pango and cairo. No reading of TOML, no plan, no fitting, no
// tags, no pass over the finished file: what the benchmark holds `furnish card` against.
//     furnish_bare FRAME FONTS OUT
#include <cairo-pdf.h>
#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>
#include <pango/pangofc-fontmap.h>

#include <cstdio>
#include <fstream>
#include <string>

namespace {
void ink(cairo_t* cr, double grey) {
  cairo_set_source_rgb(cr, grey, grey, grey);
}

PangoContext* open_fonts(const std::string& folder) {
  FcConfig* config = FcConfigCreate();
  for (const char* face : {"Regular", "SemiBold", "Bold", "Italic"}) {
    const std::string path = folder + "/SourceSans3-" + face + ".ttf";
    FcConfigAppFontAddFile(config, reinterpret_cast<const FcChar8*>(path.c_str()));
  }
  FcConfigSetCurrent(config);
  PangoFontMap* map = pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT);
  pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map), config);
  pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map), 72);
  PangoContext* context = pango_font_map_create_context(map);
  pango_context_set_round_glyph_positions(context, FALSE);
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context, options);
  cairo_font_options_destroy(options);
  return context;
}

void draw_text(std::istream& in, cairo_t* cr, PangoContext* context) {
  double grey = 0, x = 0, y = 0;
  std::size_t runs = 0, bytes = 0;
  in >> grey >> x >> y >> runs >> bytes;
  PangoAttrList* attributes = pango_attr_list_new();
  for (std::size_t i = 0; i < runs; ++i) {
    unsigned begin = 0, end = 0;
    int face = 0;
    double points = 0;
    in >> begin >> end >> face >> points;
    PangoFontDescription* font = pango_font_description_new();
    pango_font_description_set_family_static(font, "Source Sans 3");
    pango_font_description_set_weight(font, face == 1   ? PANGO_WEIGHT_SEMIBOLD
                                            : face == 2 ? PANGO_WEIGHT_BOLD
                                                        : PANGO_WEIGHT_NORMAL);
    if (face == 3) pango_font_description_set_style(font, PANGO_STYLE_ITALIC);
    pango_font_description_set_size(font, static_cast<int>(points * PANGO_SCALE));
    PangoAttribute* attribute = pango_attr_font_desc_new(font);
    attribute->start_index = begin;
    attribute->end_index = end;
    pango_attr_list_insert(attributes, attribute);
    pango_font_description_free(font);
  }
  in.get();
  std::string text(bytes, ' ');
  in.read(text.data(), static_cast<std::streamsize>(bytes));
  PangoLayout* layout = pango_layout_new(context);
  pango_layout_set_text(layout, text.data(), static_cast<int>(bytes));
  pango_layout_set_attributes(layout, attributes);
  ink(cr, grey);
  cairo_move_to(cr, x, y);
  pango_cairo_show_layout_line(cr, pango_layout_get_line_readonly(layout, 0));
  pango_attr_list_unref(attributes);
  g_object_unref(layout);
}

void draw_path(std::istream& in, cairo_t* cr) {
  double fill = 0, stroke = 0, weight = 0;
  int contours = 0;
  in >> fill >> stroke >> weight >> contours;
  for (int i = 0; i < contours; ++i) {
    int closed = 0, curves = 0;
    double x = 0, y = 0;
    in >> closed >> curves >> x >> y;
    cairo_move_to(cr, x, y);
    for (int j = 0; j < curves; ++j) {
      double p[6] = {};
      for (double& value : p) in >> value;
      cairo_curve_to(cr, p[0], p[1], p[2], p[3], p[4], p[5]);
    }
    if (closed != 0) cairo_close_path(cr);
  }
  if (fill >= 0) {
    ink(cr, fill);
    cairo_fill_preserve(cr);
  }
  if (stroke >= 0) {
    ink(cr, stroke);
    cairo_set_line_width(cr, weight);
    cairo_stroke_preserve(cr);
  }
  cairo_new_path(cr);
}

void draw_stroke(std::istream& in, cairo_t* cr) {
  double grey = 0, weight = 0, x1 = 0, y1 = 0, x2 = 0, y2 = 0;
  int dash = 0;
  in >> grey >> weight >> dash >> x1 >> y1 >> x2 >> y2;
  const double dots[] = {dash == 2 ? 0 : weight * 4, weight * 3};
  cairo_set_dash(cr, dots, dash == 0 ? 0 : 2, 0);
  cairo_set_line_cap(cr, dash == 2 ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
  ink(cr, grey);
  cairo_set_line_width(cr, weight);
  cairo_move_to(cr, x1, y1);
  cairo_line_to(cr, x2, y2);
  cairo_stroke(cr);
  cairo_set_dash(cr, nullptr, 0, 0);
}
}  // namespace

int main(int argc, char** argv) {
  if (argc != 4) return 2;
  std::ifstream in(argv[1]);
  std::string kind;
  double width = 0, height = 0;
  if (!(in >> kind >> width >> height)) return 1;
  PangoContext* context = open_fonts(argv[2]);
  cairo_surface_t* surface = cairo_pdf_surface_create(argv[3], width, height);
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, "2026-11-24T00:00:00Z");
  cairo_t* cr = cairo_create(surface);
  while (in >> kind) {
    if (kind == "text") {
      draw_text(in, cr, context);
    } else if (kind == "fill") {
      double grey = 0, x = 0, y = 0, w = 0, h = 0;
      in >> grey >> x >> y >> w >> h;
      ink(cr, grey);
      cairo_rectangle(cr, x, y, w, h);
      cairo_fill(cr);
    } else if (kind == "stroke") {
      draw_stroke(in, cr);
    } else if (kind == "path") {
      draw_path(in, cr);
    }
  }
  cairo_show_page(cr);
  const bool drawn = cairo_status(cr) == CAIRO_STATUS_SUCCESS;
  cairo_destroy(cr);
  cairo_surface_finish(surface);
  const bool written = cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS;
  cairo_surface_destroy(surface);
  return drawn && written ? 0 : 1;
}
