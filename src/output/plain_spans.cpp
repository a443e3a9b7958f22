#include "output/plain_spans.h"

#include <qpdf/QPDF.hh>
#include <qpdf/QPDFNumberTreeObjectHelper.hh>

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace furnish {
namespace {
using Handle = QPDFObjectHandle;

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

/// What may hold text itself (ISO 32000-1, 14.8.4.3 and 14.8.4.4).
bool holds_text(Handle element) {
  constexpr std::array<std::string_view, 9> types{"/P",  "/H1", "/H2",     "/LBody", "/Lbl",
                                                  "/TD", "/TH", "/Strong", "/Em"};
  Handle type = element.getKey("/S");
  return type.isName() && std::ranges::find(types, type.getName()) != types.end();
}

bool is_plain_span(Handle kid) {
  static const std::set<std::string> plain{"/Type", "/S", "/P", "/Pg", "/K"};
  return kid.isDictionary() && kid.getKey("/S").isNameAndEquals("/Span") &&
         kid.getKey("/K").isInteger() && std::ranges::includes(plain, kid.getKeys());
}

class SpanFold {
 public:
  void below(Handle element) {
    if (holds_text(element)) fold(element);
    for (const Handle& kid : elements_below(element)) below(kid);
  }
  /// Who says what a mark on a page belongs to.
  void correct(Handle owners) const {
    for (int i = 0; owners.isArray() && i < owners.getArrayNItems(); ++i) {
      const auto found = owners_.find(owners.getArrayItem(i).getObjGen());
      if (found != owners_.end()) owners.setArrayItem(i, found->second);
    }
  }

 private:
  void fold(Handle element) {
    Handle kids = element.getKey("/K");
    if (!kids.isArray()) return;
    std::vector<Handle> all = kids.getArrayAsVector();
    for (Handle& kid : all) {
      if (!is_plain_span(kid)) continue;
      Handle page = kid.getKey("/Pg");
      if (!element.hasKey("/Pg")) element.replaceKey("/Pg", page);
      if (element.getKey("/Pg").getObjGen() != page.getObjGen()) continue;
      owners_.emplace(kid.getObjGen(), element);
      kid = kid.getKey("/K");
    }
    element.replaceKey("/K", all.size() == 1 ? all.front() : Handle::newArray(all));
  }

  std::map<QPDFObjGen, Handle> owners_;
};
}  // namespace

void fold_plain_spans(QPDF& pdf) {
  Handle root = pdf.getRoot().getKey("/StructTreeRoot");
  if (!root.isDictionary() || !root.hasKey("/ParentTree")) return;
  SpanFold fold;
  for (const Handle& element : elements_below(root)) fold.below(element);
  QPDFNumberTreeObjectHelper parents(root.getKey("/ParentTree"), pdf);
  for (const auto& [key, owners] : parents) fold.correct(owners);
}
}  // namespace furnish
