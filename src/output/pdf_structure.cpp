#include "output/pdf_structure.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>
#include <utility>

#include "output/drawn_box.h"
#include "output/structure.h"
#include "page/prepared_text.h"
#include "page/shaped_line.h"

namespace furnish {
namespace {
using Handle = QPDFObjectHandle;

/// The text of an element that holds no other, line after line, if any of it runs from right to
/// left: without the marks of direction, which are no part of what is read.
std::string read_from_right(const std::vector<Part>& parts) {
  std::string text;
  bool from_right = false;
  for (const Part& part : parts) {
    if (part.element != nullptr) return {};
    const auto* mark = std::get_if<TextMark>(part.mark);
    if (mark == nullptr) continue;
    if (!text.empty() && part.range.begin == 0) text += ' ';
    text += std::string_view(mark->line->text())
                .substr(part.range.begin, part.range.end - part.range.begin);
  }
  std::string read;
  for (const char32_t c : as_utf32(text)) {
    const bool direction = c == 0x61C || c == 0x200E || c == 0x200F ||
                           (c >= 0x202A && c <= 0x202E) || (c >= 0x2066 && c <= 0x2069);
    from_right = from_right || runs_from_right(c);
    if (!direction) append(read, c);
  }
  return from_right ? read : std::string();
}

/// "1" or "12.", in any of the digits that the catalogues use.
bool is_number(const std::vector<Part>& parts) {
  bool digits = false;
  for (const Part& part : parts) {
    const auto* const mark = part.mark != nullptr ? std::get_if<TextMark>(part.mark) : nullptr;
    if (mark == nullptr) return false;
    for (const char32_t c : as_utf32(mark->line->text())) {
      const bool digit = (c >= U'0' && c <= U'9') || (c >= 0x660 && c <= 0x669);
      if (!digit && c != U'.') return false;
      digits = digits || digit;
    }
  }
  return digits;
}

std::array<double, 4> box_in_points(const std::vector<Part>& parts, Length page_height) {
  const Rect box = drawn_box(parts).value_or(Rect{});
  return {box.left().in_points(), (page_height - box.bottom()).in_points(), box.right().in_points(),
          (page_height - box.top()).in_points()};
}

void collect(const std::vector<Part>& parts, std::size_t page, Length page_height,
             StructureTexts& texts) {
  for (const Part& part : parts) {
    if (part.element == nullptr) continue;
    const Element& element = *part.element;
    ElementTexts& own = texts.elements.emplace_back();
    own.drawn_as = cairo_name(element.tag);
    own.type = pdf_name(element.tag);
    own.read = read_from_right(element.parts);
    own.language = element.language;
    own.number = element.tag == Tag::item_label && is_number(element.parts);
    if (element.opened != nullptr) {
      own.alt = element.opened->alt;
      own.tick = element.opened->role == Structure::tick;
      if (!element.opened->id.empty()) own.place = place_name(page, element.opened->id);
      own.columns = element.opened->columns;
      own.bullets = element.opened->bullets;
    }
    if (element.tag == Tag::figure) own.box = box_in_points(element.parts, page_height);
    if (element.tag == Tag::link) {
      own.alt = element.link->says;
      texts.links.at(page).push_back(element.link->says);
    }
    collect(element.parts, page, page_height, texts);
  }
}

bool is(Handle element, const std::string& type) {
  return element.isDictionary() && element.getKey("/S").isNameAndEquals(type);
}

/// Cairo writes no tree for pages without a tag, and calls a file tagged only if it has a Document.
void ensure_tree(QPDF& pdf) {
  Handle catalog = pdf.getRoot();
  catalog.replaceKey("/MarkInfo", Handle::parse("<</Marked true>>"));
  if (catalog.hasKey("/StructTreeRoot")) return;
  Handle root = pdf.makeIndirectObject(Handle::parse("<</Type/StructTreeRoot/K[]>>"));
  catalog.replaceKey("/StructTreeRoot", root);
}

/// One Document holds all (ISO 32000-1, 14.8.4.2); cairo has one for each page that asks for it.
void gather_under_one_document(QPDF& pdf, Handle root) {
  std::vector<Handle> top = elements_below(root);
  if (top.size() == 1 && is(top.front(), "/Document")) return;
  Handle document = pdf.makeIndirectObject(Handle::parse("<</Type/StructElem/S/Document>>"));
  document.replaceKey("/P", root);
  document.replaceKey("/K", Handle::newArray(top));
  for (Handle element : top) {
    if (is(element, "/Document")) element.replaceKey("/S", Handle::newName("/Part"));
    element.replaceKey("/P", document);
  }
  root.replaceKey("/K", Handle::newArray({document}));
}

class Completion {
 public:
  Completion(QPDF& pdf, const StructureTexts& texts) : pdf_(pdf), texts_(texts) {}

  void complete(Handle element) {
    const ElementTexts& texts = next(element);
    if (!texts.place.empty()) known.places.emplace(texts.place, element);
    if (texts.number) known.numbers.insert(element.getObjGen());
    if (texts.type != texts.drawn_as) element.replaceKey("/S", Handle::newName("/" + texts.type));
    if (!texts.language.empty()) element.replaceKey("/Lang", text(texts.language));
    if (!texts.read.empty()) element.replaceKey("/ActualText", text(texts.read));
    if (texts.type == "Figure") describe_figure(element, texts);
    if (texts.type == "Form") describe_blank(element, texts);
    if (texts.type == "Link" && !texts.alt.empty()) element.replaceKey("/Alt", text(texts.alt));
    if (texts.type == "Span" && !texts.alt.empty()) {
      element.replaceKey("/ActualText", text(texts.alt));
    }
    if (texts.columns > 1) span_columns(element, texts.columns);
    if (texts.bullets) element.replaceKey("/A", Handle::parse("<</O/List/ListNumbering/Disc>>"));
    if (texts.type == "Note") number_note(element);
    const std::vector<Handle> below = elements_below(element);
    if (is(element, "/TR")) scope_heads(below);
    for (const Handle& child : below) complete(child);
  }

  /// Elements with an ID must be found by it (ISO 32000-1, table 322).
  void index_notes(Handle root) {
    if (notes_.empty()) return;
    Handle names = Handle::newArray();
    for (auto& [id, note] : notes_) {
      names.appendItem(Handle::newString(id));
      names.appendItem(note);
    }
    Handle limits = Handle::newArray();
    limits.appendItem(Handle::newString(notes_.front().first));
    limits.appendItem(Handle::newString(notes_.back().first));
    Handle leaf = Handle::newDictionary();
    leaf.replaceKey("/Names", names);
    leaf.replaceKey("/Limits", limits);
    Handle tree = Handle::newDictionary();
    tree.replaceKey("/Kids", Handle::newArray({pdf_.makeIndirectObject(leaf)}));
    root.replaceKey("/IDTree", pdf_.makeIndirectObject(tree));
  }

  KnownElements known;

 private:
  static Handle text(const std::string& utf8) { return Handle::newUnicodeString(utf8); }

  const ElementTexts& next(Handle element) {
    if (next_ >= texts_.elements.size() || !is(element, "/" + texts_.elements[next_].drawn_as)) {
      throw std::runtime_error("its structure is not that of the pages");
    }
    return texts_.elements[next_++];
  }

  static void describe_figure(Handle element, const ElementTexts& texts) {
    element.replaceKey("/Alt", text(texts.alt));
    Handle box = Handle::newArray();
    for (const double edge : texts.box) box.appendItem(Handle::newReal(edge, 2));
    Handle attributes = Handle::parse("<</O/Layout>>");
    attributes.replaceKey("/BBox", box);
    element.replaceKey("/A", attributes);
  }

  static void describe_blank(Handle element, const ElementTexts& texts) {
    Handle attributes =
        Handle::parse(texts.tick ? "<</O/PrintField/Role/cb>>" : "<</O/PrintField/Role/tv>>");
    if (!texts.alt.empty()) {
      attributes.replaceKey("/Desc", text(texts.alt));
      element.replaceKey("/Alt", text(texts.alt));
    }
    element.replaceKey("/A", attributes);
  }

  static void span_columns(Handle cell, int columns) {
    Handle attributes = cell.getKey("/A");
    if (!attributes.isDictionary()) {
      attributes = Handle::parse("<</O/Table>>");
      cell.replaceKey("/A", attributes);
    }
    attributes.replaceKey("/ColSpan", Handle::newInteger(columns));
  }

  void number_note(Handle element) {
    // Zeros in front, as the tree is sorted by bytes.
    const std::string id = fmt::format("note-{:06}", notes_.size() + 1);
    element.replaceKey("/ID", Handle::newString(id));
    notes_.emplace_back(id, element);
  }

  /// A row of heads stands over columns; else, and where it is the only cell, the head is that of
  /// its row.
  static void scope_heads(const std::vector<Handle>& cells) {
    const auto is_head = [](const Handle& cell) { return is(cell, "/TH"); };
    const bool over_columns = cells.size() > 1 && std::ranges::all_of(cells, is_head);
    for (Handle cell : cells) {
      if (!is_head(cell)) continue;
      cell.replaceKey("/A", Handle::parse(over_columns ? "<</O/Table/Scope/Column>>"
                                                       : "<</O/Table/Scope/Row>>"));
    }
  }

  QPDF& pdf_;
  const StructureTexts& texts_;
  std::size_t next_ = 0;
  std::vector<std::pair<std::string, Handle>> notes_;
};
}  // namespace

std::vector<Handle> elements_below(Handle element) {
  std::vector<Handle> list;
  Handle kids = element.getKey("/K");
  const auto add = [&](Handle kid) {
    if (kid.isDictionary() && kid.hasKey("/S")) list.push_back(kid);
  };
  if (kids.isArray()) {
    for (Handle kid : kids.aitems()) add(kid);
  } else {
    add(kids);
  }
  return list;
}

StructureTexts structure_texts(std::span<const Frame> pages) {
  StructureTexts texts;
  for (const Frame& page : pages) {
    texts.links.emplace_back();
    collect(structure_of(page), texts.links.size() - 1, page.size.height, texts);
  }
  return texts;
}

KnownElements complete_structure(QPDF& pdf, const StructureTexts& texts) {
  ensure_tree(pdf);
  Handle root = pdf.getRoot().getKey("/StructTreeRoot");
  // PDF 2.0 has them; to a program that knows only 1.7 they are Spans.
  root.replaceKey("/RoleMap", Handle::parse("<</Strong/Span/Em/Span>>"));
  Completion completion(pdf, texts);
  for (const Handle& element : elements_below(root)) completion.complete(element);
  completion.index_notes(root);
  gather_under_one_document(pdf, root);
  return std::move(completion.known);
}
}  // namespace furnish
