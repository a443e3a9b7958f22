#include "output/pdf_two.h"

#include <qpdf/QPDFNameTreeObjectHelper.hh>

#include <stdexcept>
#include <vector>

namespace furnish {
namespace {
using Handle = QPDFObjectHandle;

bool is(Handle element, const char* type) {
  return element.getKey("/S").isNameAndEquals(type);
}

/// What items of a list have as labels.
struct Labels {
  bool any = false, ticks = false, numbers = false;
};
Labels labels_of(Handle list, const KnownElements& known) {
  Labels out;
  for (const Handle& item : elements_below(list)) {
    for (Handle part : elements_below(item)) {
      if (!is(part, "/Lbl")) continue;
      out.any = true;
      out.numbers = out.numbers || known.numbers.contains(part.getObjGen());
      for (const Handle& below : elements_below(part)) out.ticks = out.ticks || is(below, "/Form");
    }
  }
  return out;
}

/// Boxes are of no order; words before an item say what it is about.
void number_list(Handle list, const KnownElements& known) {
  const Labels labels = labels_of(list, known);
  if (!labels.any || list.hasKey("/A")) return;
  Handle attributes = Handle::parse("<</O/List>>");
  attributes.replaceKey("/ListNumbering", Handle::newName(labels.numbers ? "/Decimal"
                                                          : labels.ticks ? "/Unordered"
                                                                         : "/Description"));
  list.replaceKey("/A", attributes);
}

void say_in_two(Handle element, Handle space, const KnownElements& known) {
  element.replaceKey("/NS", space);
  if (is(element, "/Note")) {
    element.replaceKey("/S", Handle::newName("/FENote"));
    element.replaceKey("/A", Handle::parse("<</O/FENote/NoteType/None>>"));
  }
  if (is(element, "/L")) number_list(element, known);
  if (is(element, "/Form") && element.hasKey("/Alt")) {
    element.replaceKey("/ActualText", element.getKey("/Alt"));
  }
  for (const Handle& below : elements_below(element)) say_in_two(below, space, known);
}

void find_first(Handle element, std::map<QPDFObjGen, Handle>& found) {
  Handle page = element.getKey("/Pg");
  if (page.isDictionary()) found.try_emplace(page.getObjGen(), element);
  for (const Handle& below : elements_below(element)) find_first(below, found);
}

/// The same place by an element, and for who does not know such places by the page.
void lead_to(Handle holder, Handle place, Handle element) {
  Handle to = Handle::newArray(place.getArrayAsVector());
  to.setArrayItem(0, element);
  Handle action = Handle::parse("<</Type/Action/S/GoTo>>");
  action.replaceKey("/D", place);
  action.replaceKey("/SD", to);
  holder.replaceKey("/A", action);
  holder.removeKey("/Dest");
}

class Leading {
 public:
  Leading(QPDF& pdf, const KnownElements& known)
      : pdf_(pdf), known_(known), first_(first_on_pages(pdf.getRoot().getKey("/StructTreeRoot"))) {}

  void links() {
    Handle names = pdf_.getRoot().getKey("/Names");
    if (!names.isDictionary() || !names.hasKey("/Dests")) return;
    QPDFNameTreeObjectHelper places(names.getKey("/Dests"), pdf_);
    for (Handle page : pdf_.getAllPages()) {
      Handle annotations = page.getKey("/Annots");
      for (int i = 0; annotations.isArray() && i < annotations.getArrayNItems(); ++i) {
        Handle link = annotations.getArrayItem(i), place;
        const std::string name = link.getKey("/Dest").getStringValue();
        const auto element = known_.places.find(name);
        if (element == known_.places.end() || !places.findObject(name, place)) {
          throw std::runtime_error("a link leads nowhere");
        }
        lead_to(link, place.isDictionary() ? place.getKey("/D") : place, element->second);
      }
    }
    names.removeKey("/Dests");
    if (names.getKeys().empty()) pdf_.getRoot().removeKey("/Names");
  }

  void outline(Handle entry) {
    for (; entry.isDictionary(); entry = entry.getKey("/Next")) {
      Handle place = entry.getKey("/Dest");
      if (place.isArray()) lead_to(entry, place, on_page(place.getArrayItem(0)));
      outline(entry.getKey("/First"));
    }
  }

 private:
  /// Of a page that nothing is read on, the document.
  Handle on_page(Handle page) const {
    const auto found = first_.find(page.getObjGen());
    if (found != first_.end()) return found->second;
    return elements_below(pdf_.getRoot().getKey("/StructTreeRoot")).at(0);
  }

  QPDF& pdf_;
  const KnownElements& known_;
  std::map<QPDFObjGen, Handle> first_;
};
}  // namespace

const char* version_of(PdfStandard standard) {
  return standard == PdfStandard::ua2 ? "2.0" : "1.7";
}

std::map<QPDFObjGen, Handle> first_on_pages(Handle structure) {
  std::map<QPDFObjGen, Handle> found;
  for (const Handle& element : elements_below(structure)) find_first(element, found);
  return found;
}

void make_two(QPDF& pdf, const KnownElements& known) {
  Handle root = pdf.getRoot().getKey("/StructTreeRoot");
  Handle space =
      pdf.makeIndirectObject(Handle::parse("<</Type/Namespace/NS(http://iso.org/pdf2/ssn)>>"));
  root.replaceKey("/Namespaces", Handle::newArray({space}));
  // Of no meaning for elements with a namespace; programs that know none read the types by it.
  root.replaceKey("/RoleMap", Handle::parse("<</Strong/Span/Em/Span/FENote/Note>>"));
  for (const Handle& element : elements_below(root)) say_in_two(element, space, known);
  Leading leading(pdf, known);
  leading.links();
  Handle outlines = pdf.getRoot().getKey("/Outlines");
  if (outlines.isDictionary()) leading.outline(outlines.getKey("/First"));
  pdf.getTrailer().removeKey("/Info");
}
}  // namespace furnish
