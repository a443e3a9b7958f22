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

/// Cairo writes no tree for pages without a tag, and calls a file tagged only if it has a Document.
void ensure_tree(DrawnPdf& pdf) {
  pdf.root().set("/MarkInfo", "<</Marked true>>");
  if (pdf.root().has("/StructTreeRoot")) return;
  pdf.root().set("/StructTreeRoot", reference(pdf.add(PdfDict("<</Type/StructTreeRoot/K[]>>"))));
}

/// One Document holds all (ISO 32000-1, 14.8.4.2); cairo has one for each page that asks for it.
void gather_under_one_document(DrawnPdf& pdf, PdfDict& root) {
  const std::vector<int> top = elements_below(pdf, root);
  if (top.size() == 1 && pdf.at(top.front())["/S"] == "/Document") return;
  const int document = pdf.add(PdfDict("<</Type/StructElem/S/Document>>"));
  pdf.at(document).set("/P", std::string(pdf.root()["/StructTreeRoot"]));
  std::string kids = "[";
  for (const int number : top) {
    PdfDict& element = pdf.at(number);
    if (element["/S"] == "/Document") element.set("/S", "/Part");
    element.set("/P", reference(document));
    kids += reference(number) + " ";
  }
  pdf.at(document).set("/K", kids + "]");
  root.set("/K", fmt::format("[{}]", reference(document)));
}

class Completion {
 public:
  Completion(DrawnPdf& pdf, const StructureTexts& texts) : pdf_(pdf), texts_(texts) {}

  void complete(int number) {
    PdfDict& element = pdf_.at(number);
    const ElementTexts& texts = next(element);
    if (!texts.place.empty()) known.places.emplace(pdf_text(texts.place), number);
    if (texts.number) known.numbers.insert(number);
    if (texts.type != texts.drawn_as) element.set("/S", "/" + texts.type);
    if (!texts.language.empty()) element.set("/Lang", pdf_text(texts.language));
    if (!texts.read.empty()) element.set("/ActualText", pdf_text(texts.read));
    if (texts.type == "Figure") describe_figure(element, texts);
    if (texts.type == "Form") describe_blank(element, texts);
    if (texts.type == "Link" && !texts.alt.empty()) element.set("/Alt", pdf_text(texts.alt));
    if (texts.type == "Span" && !texts.alt.empty()) {
      element.set("/ActualText", pdf_text(texts.alt));
    }
    if (texts.columns > 1) span_columns(element, texts.columns);
    if (texts.bullets) element.set("/A", "<</O/List/ListNumbering/Disc>>");
    if (texts.type == "Note") number_note(number);
    const std::vector<int> below = elements_below(pdf_, element);
    if (element["/S"] == "/TR") scope_heads(below);
    for (const int child : below) complete(child);
  }

  /// Elements with an ID must be found by it (ISO 32000-1, table 322).
  void index_notes(PdfDict& root) {
    if (notes_.empty()) return;
    std::string names;
    for (const auto& [id, note] : notes_) names += fmt::format("{} {} ", id, reference(note));
    const int leaf = pdf_.add({});
    pdf_.at(leaf).set("/Names", "[" + names + "]");
    pdf_.at(leaf).set("/Limits", fmt::format("[{}{}]", notes_.front().first, notes_.back().first));
    const int tree = pdf_.add({});
    pdf_.at(tree).set("/Kids", fmt::format("[{}]", reference(leaf)));
    root.set("/IDTree", reference(tree));
  }

  KnownElements known;

 private:
  const ElementTexts& next(const PdfDict& element) {
    if (next_ >= texts_.elements.size() ||
        element["/S"].substr(1) != texts_.elements[next_].drawn_as) {
      throw std::runtime_error("its structure is not that of the pages");
    }
    return texts_.elements[next_++];
  }

  static void describe_figure(PdfDict& element, const ElementTexts& texts) {
    element.set("/Alt", pdf_text(texts.alt));
    element.set("/A", fmt::format("<</O/Layout/BBox[{:.2f} {:.2f} {:.2f} {:.2f}]>>", texts.box[0],
                                  texts.box[1], texts.box[2], texts.box[3]));
  }

  static void describe_blank(PdfDict& element, const ElementTexts& texts) {
    std::string description;
    if (!texts.alt.empty()) {
      description = "/Desc" + pdf_text(texts.alt);
      element.set("/Alt", pdf_text(texts.alt));
    }
    element.set("/A",
                fmt::format("<</O/PrintField/Role/{}{}>>", texts.tick ? "cb" : "tv", description));
  }

  static void span_columns(PdfDict& cell, int columns) {
    const std::string_view other = cell["/A"].empty() ? "<</O/Table>>" : cell["/A"];
    cell.set("/A", fmt::format("{}/ColSpan {}>>", other.substr(0, other.size() - 2), columns));
  }

  void number_note(int number) {
    // Zeros in front, as the tree is sorted by bytes.
    const std::string id = fmt::format("(note-{:06})", notes_.size() + 1);
    pdf_.at(number).set("/ID", id);
    notes_.emplace_back(id, number);
  }

  /// A row of heads stands over columns; else, and where it is the only cell, the head is that of
  /// its row.
  void scope_heads(const std::vector<int>& cells) {
    const auto is_head = [&](int cell) { return pdf_.at(cell)["/S"] == "/TH"; };
    const bool over_columns = cells.size() > 1 && std::ranges::all_of(cells, is_head);
    for (const int cell : cells) {
      if (!is_head(cell)) continue;
      pdf_.at(cell).set("/A",
                        over_columns ? "<</O/Table/Scope/Column>>" : "<</O/Table/Scope/Row>>");
    }
  }

  DrawnPdf& pdf_;
  const StructureTexts& texts_;
  std::size_t next_ = 0;
  std::vector<std::pair<std::string, int>> notes_;
};
}  // namespace

std::vector<int> elements_below(DrawnPdf& pdf, const PdfDict& element) {
  std::vector<int> list;
  for (const std::string_view kid : items_of(element["/K"])) {
    const int number = referred_to(kid);
    if (pdf.holds_dictionary(number) && pdf.at(number).has("/S")) list.push_back(number);
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

KnownElements complete_structure(DrawnPdf& pdf, const StructureTexts& texts) {
  ensure_tree(pdf);
  PdfDict& root = pdf.at(referred_to(pdf.root()["/StructTreeRoot"]));
  // PDF 2.0 has them; to a program that knows only 1.7 they are Spans.
  root.set("/RoleMap", "<</Strong/Span/Em/Span>>");
  Completion completion(pdf, texts);
  for (const int element : elements_below(pdf, root)) completion.complete(element);
  completion.index_notes(root);
  gather_under_one_document(pdf, root);
  return std::move(completion.known);
}
}  // namespace furnish
