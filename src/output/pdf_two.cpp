#include "output/pdf_two.h"

#include <fmt/format.h>

#include <map>
#include <stdexcept>
#include <vector>

namespace furnish {
namespace {
/// What items of a list have as labels.
struct Labels {
  bool any = false, ticks = false, numbers = false;
};
Labels labels_of(DrawnPdf& pdf, const PdfDict& list, const KnownElements& known) {
  Labels out;
  for (const int item : elements_below(pdf, list)) {
    for (const int part : elements_below(pdf, pdf.at(item))) {
      if (pdf.at(part)["/S"] != "/Lbl") continue;
      out.any = true;
      out.numbers = out.numbers || known.numbers.contains(part);
      for (const int below : elements_below(pdf, pdf.at(part))) {
        out.ticks = out.ticks || pdf.at(below)["/S"] == "/Form";
      }
    }
  }
  return out;
}

/// Boxes are of no order; words before an item say what it is about.
void number_list(DrawnPdf& pdf, PdfDict& list, const KnownElements& known) {
  const Labels labels = labels_of(pdf, list, known);
  if (!labels.any || list.has("/A")) return;
  list.set("/A", fmt::format("<</O/List/ListNumbering/{}>>", labels.numbers ? "Decimal"
                                                             : labels.ticks ? "Unordered"
                                                                            : "Description"));
}

void say_in_two(DrawnPdf& pdf, int number, const std::string& space, const KnownElements& known) {
  PdfDict& element = pdf.at(number);
  element.set("/NS", space);
  if (element["/S"] == "/Note") {
    element.set("/S", "/FENote");
    element.set("/A", "<</O/FENote/NoteType/None>>");
  }
  if (element["/S"] == "/L") number_list(pdf, element, known);
  if (element["/S"] == "/Form" && element.has("/Alt")) {
    element.set("/ActualText", std::string(element["/Alt"]));
  }
  for (const int below : elements_below(pdf, element)) say_in_two(pdf, below, space, known);
}

void find_first(DrawnPdf& pdf, const PdfDict& element, int number, std::map<int, int>& found) {
  if (element.has("/Pg")) found.try_emplace(referred_to(element["/Pg"]), number);
  for (const int below : elements_below(pdf, element)) {
    find_first(pdf, pdf.at(below), below, found);
  }
}

/// The same place by an element, and for who does not know such places by the page.
void lead_to(PdfDict& holder, std::string_view place, int element) {
  const std::vector<std::string_view> items = items_of(place);
  std::string to = "[" + reference(element);
  for (std::size_t i = 1; i < items.size(); ++i) to += " " + std::string(items[i]);
  holder.set("/A", fmt::format("<</Type/Action/S/GoTo/D{}/SD{}]>>", place, to));
  holder.remove("/Dest");
}

class Leading {
 public:
  Leading(DrawnPdf& pdf, const KnownElements& known) : pdf_(pdf), known_(known) {
    document_ = elements_below(pdf, structure()).at(0);
    find_first(pdf, structure(), 0, first_);
  }

  void links() {
    if (!pdf_.root().has("/Names")) return;
    const int names = referred_to(pdf_.root()["/Names"]);
    const int places = referred_to(pdf_.at(names)["/Dests"]);
    if (places == 0) return;
    // Cairo gives them in one array: a name, a place.
    const std::vector<std::string_view> all = items_of(pdf_.at(places)["/Names"]);
    std::map<std::string_view, std::string_view> place_of;
    for (std::size_t i = 0; i + 1 < all.size(); i += 2) place_of[all[i]] = all[i + 1];
    for (const int page : pdf_.pages()) {
      if (!pdf_.at(page).has("/Annots")) continue;
      for (const std::string_view annotation : items_of(pdf_.at(page)["/Annots"])) {
        PdfDict& link = pdf_.at(referred_to(annotation));
        const auto element = known_.places.find(link["/Dest"]);
        const auto place = place_of.find(link["/Dest"]);
        if (element == known_.places.end() || place == place_of.end()) {
          throw std::runtime_error("a link leads nowhere");
        }
        lead_to(link, place->second, element->second);
      }
    }
    pdf_.at(names).remove("/Dests");
    if (pdf_.at(names).entries().empty()) pdf_.root().remove("/Names");
  }

  void outline(int number) {
    while (number != 0) {
      PdfDict& entry = pdf_.at(number);
      if (entry["/Dest"].starts_with('[')) {
        const std::string place(entry["/Dest"]);
        lead_to(entry, place, on_page(referred_to(items_of(place).at(0))));
      }
      outline(referred_to(entry["/First"]));
      number = referred_to(entry["/Next"]);
    }
  }

 private:
  PdfDict& structure() { return pdf_.at(referred_to(pdf_.root()["/StructTreeRoot"])); }
  /// Of a page that nothing is read on, the document.
  int on_page(int page) const {
    const auto found = first_.find(page);
    return found != first_.end() ? found->second : document_;
  }

  DrawnPdf& pdf_;
  const KnownElements& known_;
  int document_ = 0;
  std::map<int, int> first_;
};
}  // namespace

const char* version_of(PdfStandard standard) {
  return standard == PdfStandard::ua2 ? "2.0" : "1.7";
}

void make_two(DrawnPdf& pdf, const KnownElements& known) {
  PdfDict& root = pdf.at(referred_to(pdf.root()["/StructTreeRoot"]));
  const std::string space =
      reference(pdf.add(PdfDict("<</Type/Namespace/NS(http://iso.org/pdf2/ssn)>>")));
  root.set("/Namespaces", "[" + space + "]");
  // Of no meaning for elements with a namespace; programs that know none read the types by it.
  root.set("/RoleMap", "<</Strong/Span/Em/Span/FENote/Note>>");
  for (const int element : elements_below(pdf, root)) say_in_two(pdf, element, space, known);
  Leading leading(pdf, known);
  leading.links();
  if (pdf.root().has("/Outlines")) {
    leading.outline(referred_to(pdf.at(referred_to(pdf.root()["/Outlines"]))["/First"]));
  }
}
}  // namespace furnish
