#include <algorithm>
#include <array>
#include <map>
#include <regex>
#include <set>

#include "output/pdf_rule_groups.h"

namespace furnish::test {
namespace {
using Handle = QPDFObjectHandle;
using Faults = std::vector<std::string>;

/// A fault for each element of a type that does not satisfy `holds`.
template <typename Predicate>
Faults for_each(const PdfFile& file, std::string_view type, const char* fault, Predicate holds) {
  Faults faults;
  for (Handle element : file.elements()) {
    if (type_of(element) == type && !holds(element)) faults.emplace_back(fault);
  }
  return faults;
}

Faults tagged(const PdfFile& file) {
  Handle mark_info = file.root().getKey("/MarkInfo");
  const bool marked = mark_info.isDictionary() && mark_info.getKey("/Marked").isBool() &&
                      mark_info.getKey("/Marked").getBoolValue();
  if (!marked || file.elements().empty()) return {"the file has no structure"};
  return {};
}

Faults one_root(const PdfFile& file) {
  Handle tree = file.root().getKey("/StructTreeRoot");
  if (!tree.isDictionary()) return {"no structure tree"};
  const auto top = elements_below(tree);
  if (top.size() != 1 || type_of(top.front()) != "/Document") {
    return {"the structure tree has " + std::to_string(top.size()) + " roots, or not a Document"};
  }
  return {};
}

Faults figure_text(const PdfFile& file) {
  return for_each(file, "/Figure", "a figure has no Alt", [](Handle element) {
    return element.getKey("/Alt").isString() && !element.getKey("/Alt").getUTF8Value().empty();
  });
}

Handle attribute(Handle element, const char* owner, const char* key) {
  Handle attributes = element.getKey("/A");
  const bool ours = attributes.isDictionary() && attributes.getKey("/O").isNameAndEquals(owner);
  return ours ? attributes.getKey(key) : Handle::newNull();
}

Faults head_scope(const PdfFile& file) {
  return for_each(file, "/TH", "a head of a table has no Scope", [](Handle element) {
    Handle scope = attribute(element, "/Table", "/Scope");
    return scope.isNameAndEquals("/Row") || scope.isNameAndEquals("/Column") ||
           scope.isNameAndEquals("/Both");
  });
}

Faults blank_role(const PdfFile& file) {
  return for_each(file, "/Form", "a blank to fill in has no Role", [](Handle element) {
    return attribute(element, "/PrintField", "/Role").isName();
  });
}

/// A listener hears what a blank is for.
Faults blank_words(const PdfFile& file) {
  return for_each(file, "/Form", "a blank to fill in has no Desc and Alt", [](Handle element) {
    return attribute(element, "/PrintField", "/Desc").isString() &&
           element.getKey("/Alt").isString();
  });
}

/// True if an element, or one below it, shows something.
bool has_content(const PdfFile& file, Handle element) {
  Handle page = element.getKey("/Pg");
  const auto shows = [&](Handle kid) {
    if (kid.isInteger())
      return page.isDictionary() && file.shown_on(page).contains(kid.getIntValueAsInt());
    if (!kid.isDictionary()) return false;
    if (kid.hasKey("/S")) return has_content(file, kid);
    if (!kid.getKey("/MCID").isInteger()) return false;  // an annotation
    Handle own = kid.getKey("/Pg").isDictionary() ? kid.getKey("/Pg") : page;
    return own.isDictionary() &&
           file.shown_on(own).contains(kid.getKey("/MCID").getIntValueAsInt());
  };
  Handle kids = element.getKey("/K");
  if (!kids.isArray()) return shows(kids);
  return std::ranges::any_of(items_of(kids), shows);
}

Faults figure_box(const PdfFile& file) {
  return for_each(file, "/Figure", "a figure has no BBox with room in it", [&](Handle element) {
    if (!has_content(file, element)) return true;
    std::vector<double> edges;
    for (Handle edge : items_of(attribute(element, "/Layout", "/BBox"))) {
      if (edge.isNumber()) edges.push_back(edge.getNumericValue());
    }
    return edges.size() == 4 && edges[0] < edges[2] && edges[1] < edges[3];
  });
}

Faults link_words(const PdfFile& file) {
  return for_each(file, "/Link", "a link has no words", [&](Handle element) {
    return has_content(file, element) && element.getKey("/Alt").isString();
  });
}

Faults full_cells(const PdfFile& file) {
  Faults faults;
  for (const char* const cell : {"/TH", "/TD"}) {
    const Faults more = for_each(file, cell, "a cell of a table is blank",
                                 [&](Handle element) { return has_content(file, element); });
    faults.insert(faults.end(), more.begin(), more.end());
  }
  return faults;
}

Faults row_heads(const PdfFile& file) {
  return for_each(file, "/TR", "a row of a table has no head", [](Handle row) {
    return std::ranges::any_of(elements_below(row),
                               [](Handle cell) { return type_of(cell) == "/TH"; });
  });
}

Faults captions_inside(const PdfFile& file) {
  Faults faults;
  for (Handle element : file.elements()) {
    for (Handle below : elements_below(element)) {
      if (type_of(below) == "/Caption" && type_of(element) != "/Figure") {
        faults.push_back("a caption stands in " + type_of(element));
      }
    }
  }
  return faults;
}

Faults note_id(const PdfFile& file) {
  std::set<std::string> ids;
  return for_each(file, "/Note", "a note has no ID of its own", [&](Handle element) {
    Handle id = element.getKey("/ID");
    return id.isString() && ids.insert(id.getStringValue()).second;
  });
}

/// "en", "pt-BR" (RFC 5646): letters and digits between hyphens, two or three letters first.
Faults element_language(const PdfFile& file) {
  Faults faults;
  for (Handle element : file.elements()) {
    if (!element.hasKey("/Lang")) continue;
    const std::string tag =
        element.getKey("/Lang").isString() ? element.getKey("/Lang").getUTF8Value() : "";
    if (!std::regex_match(tag, std::regex("[A-Za-z]{2,3}(-[A-Za-z0-9]{1,8})*"))) {
      faults.emplace_back("the Lang of an element is no language");
    }
  }
  return faults;
}

Faults even_tables(const PdfFile& file) {
  return for_each(file, "/Table", "rows of a table have different numbers of cells",
                  [](Handle table) {
                    std::set<std::size_t> widths;
                    for (Handle row : elements_below(table)) {
                      std::size_t width = 0;
                      for (Handle cell : elements_below(row)) {
                        Handle span = attribute(cell, "/Table", "/ColSpan");
                        width += span.isInteger() ? span.getUIntValue() : 1;
                      }
                      widths.insert(width);
                    }
                    return widths.size() <= 1;
                  });
}

Faults nesting(const PdfFile& file) {
  // ISO 32000-1, tables 336 and 337.
  static const std::map<std::string, std::set<std::string>> may_hold{
      {"/Table", {"/TR"}}, {"/TR", {"/TH", "/TD"}}, {"/L", {"/LI"}}, {"/LI", {"/Lbl", "/LBody"}}};
  static const std::set<std::string> only_there{"/TR", "/TH", "/TD", "/LI", "/LBody"};
  Faults faults;
  for (Handle element : file.elements()) {
    const std::string outer = type_of(element);
    const auto rule = may_hold.find(outer);
    for (Handle below : elements_below(element)) {
      const std::string inner = type_of(below);
      const bool allowed =
          rule == may_hold.end() ? !only_there.contains(inner) : rule->second.contains(inner);
      if (!allowed) faults.push_back(inner + " stands in " + outer);
    }
  }
  return faults;
}

Faults heading_levels(const PdfFile& file) {
  Faults faults;
  int level = 0;
  for (Handle element : file.elements()) {
    const std::string type = type_of(element);
    if (type.size() != 3 || type[1] != 'H' || type[2] < '1' || type[2] > '6') continue;
    const int next = type[2] - '0';
    if (next > level + 1)
      faults.push_back(type.substr(1) + " comes after level " + std::to_string(level));
    level = next;
  }
  return faults;
}

Faults standard_types(const PdfFile& file) {
  // ISO 32000-1, 14.8.4, those that furnish has a use for.
  static const std::set<std::string> known{"/Document", "/Part", "/Sect",  "/H1",   "/H2",
                                           "/P",        "/Span", "/Table", "/TR",   "/TH",
                                           "/TD",       "/L",    "/LI",    "/Lbl",  "/LBody",
                                           "/Figure",   "/Form", "/Note",  "/Link", "/Caption"};
  Faults faults;
  Handle roles = file.root().getKey("/StructTreeRoot");
  roles = roles.isDictionary() ? roles.getKey("/RoleMap") : roles;
  for (Handle element : file.elements()) {
    std::string type = type_of(element);
    if (roles.isDictionary() && roles.hasKey(type)) type = roles.getKey(type).getName();
    if (!known.contains(type)) faults.push_back("unknown type " + type);
  }
  return faults;
}

constexpr std::array rules{
    PdfRule{"tagged", "ISO 14289-1, 7.1", true, tagged},
    PdfRule{"one-root", "ISO 32000-1, 14.8.4.2", false, one_root},
    PdfRule{"figure-text", "ISO 14289-1, 7.3", false, figure_text},
    PdfRule{"head-scope", "ISO 14289-1, 7.5", false, head_scope},
    PdfRule{"blank-role", "ISO 14289-1, 7.18.4", false, blank_role},
    PdfRule{"blank-words", "ISO 32000-1, 14.8.5.6; WCAG 2.2, 1.1.1", false, blank_words},
    PdfRule{"figure-box", "ISO 32000-1, 14.8.5.4.3", false, figure_box},
    PdfRule{"link-words", "ISO 14289-1, 7.18.5; WCAG 2.2, 2.4.4", false, link_words},
    PdfRule{"full-cells", "ISO 14289-1, 7.5; WCAG 2.2, 1.3.1", true, full_cells},
    PdfRule{"row-heads", "ISO 14289-1, 7.5; WCAG 2.2, 1.3.1", true, row_heads},
    PdfRule{"captions-inside", "ISO 32000-1, table 334", true, captions_inside},
    PdfRule{"note-id", "ISO 14289-1, 7.9", false, note_id, RuleOf::one},
    PdfRule{"element-language", "ISO 14289-1, 7.2", true, element_language},
    PdfRule{"even-tables", "ISO 14289-1, 7.5", true, even_tables},
    PdfRule{"nesting", "ISO 32000-1, 14.8.4.3", true, nesting},
    PdfRule{"heading-levels", "ISO 14289-1, 7.4.2", true, heading_levels},
    PdfRule{"standard-types", "ISO 14289-1, 7.1", true, standard_types, RuleOf::one}};
}  // namespace

std::span<const PdfRule> structure_rules() {
  return rules;
}
}  // namespace furnish::test
