#include "page/line_breaks.h"

#include <algorithm>
#include <string_view>

namespace furnish {
namespace {
void keep(std::size_t begin, std::size_t end, PangoAttrList* attributes) {
  PangoAttribute* attribute = pango_attr_allow_breaks_new(FALSE);
  attribute->start_index = static_cast<guint>(begin);
  attribute->end_index = static_cast<guint>(end);
  pango_attr_list_insert(attributes, attribute);
}

/// As the layout itself says it, which would measure each font for it, and set a sample text in it.
int width_of(PangoLayout* layout) {
  const GSList* const lines = pango_layout_get_lines_readonly(layout);
  int widest = 0;
  for (const GSList* at = lines; at; at = at->next) {
    auto* const line = static_cast<PangoLayoutLine*>(at->data);
    PangoRectangle logical{};
    pango_layout_line_get_extents(line, nullptr, &logical);
    const bool indented = line->is_paragraph_start && lines->next != nullptr;
    widest = std::max(widest, logical.width + (indented ? pango_layout_get_indent(layout) : 0));
  }
  return widest;
}

/// "e-mail", "E-Mail": a letter alone at the end of a line is no word.
void keep_lone_letters(const std::string& text, PangoAttrList* attributes) {
  const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
  for (std::size_t at = text.find('-'); at != std::string::npos; at = text.find('-', at + 1)) {
    if (at == 0 || at + 1 >= text.size() || !letter(text[at - 1]) || !letter(text[at + 1]))
      continue;
    // A byte of a longer character is no letter of ours, but of a word.
    const bool alone = at == 1 || text[at - 2] == ' ' || text[at - 2] == '(';
    if (alone) keep(at - 1, at + 2, attributes);
  }
}
/// "2026", as the last part of a date.
bool is_year(std::string_view text) {
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  if (text.size() < 4 || !std::ranges::all_of(text.substr(0, 4), digit)) return false;
  return (text.starts_with("19") || text.starts_with("20")) &&
         (text.size() == 4 || !digit(text[4]));
}
}  // namespace

void keep_ranges(const std::string& text, PangoAttrList* attributes) {
  keep_lone_letters(text, attributes);
  constexpr std::string_view dash = "\u2013";
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  for (std::size_t at = text.find(dash); at != std::string::npos; at = text.find(dash, at + 1)) {
    const std::size_t end = at + dash.size();
    if (at == 0 || end >= text.size() || !digit(text[at - 1]) || !digit(text[end])) continue;
    keep(at - 1, end + 1, attributes);
  }
}

bool keep_pairs(const std::string& text, Keeping kept, PangoAttrList* attributes) {
  const char* const begin = text.data();
  bool any = false;
  for (std::size_t at = text.find(' '); at != std::string::npos; at = text.find(' ', at + 1)) {
    if (at == 0 || at + 1 >= text.size()) continue;
    const char* const before = g_utf8_prev_char(begin + at);
    const char* const after = begin + at + 1;
    const bool year = kept != Keeping::nothing && is_year(std::string_view(text).substr(at + 1));
    if (!year && !kept_together(g_utf8_get_char(before), g_utf8_get_char(after), kept)) continue;
    keep(static_cast<std::size_t>(before - begin),
         static_cast<std::size_t>(g_utf8_next_char(after) - begin), attributes);
    any = true;
  }
  return any;
}

bool strained(PangoLayout* layout) {
  const char* const text = pango_layout_get_text(layout);
  int count = 0;
  const PangoLogAttr* const breaks = pango_layout_get_log_attrs_readonly(layout, &count);
  for (const GSList* at = pango_layout_get_lines_readonly(layout); at; at = at->next) {
    const auto* const line = static_cast<const PangoLayoutLine*>(at->data);
    if (line->start_index == 0 || line->is_paragraph_start) continue;
    const char* const start = text + line->start_index;
    if (!breaks[g_utf8_pointer_to_offset(text, start)].is_line_break || start[-1] == '/') {
      return true;
    }
  }
  return width_of(layout) > pango_layout_get_width(layout);
}
}  // namespace furnish
