#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "output/pdf_rule_groups.h"

// Clauses of ISO 14289-2:2024 (PDF/UA-2), WTPDF 1.0 and ISO 19005-4:2020 (PDF/A-4). What they ask
// as PDF/UA-1 and PDF/A-3 did is in the rules for both.

namespace furnish::test {
namespace {
using Handle = QPDFObjectHandle;
using Faults = std::vector<std::string>;

Faults unless(bool holds, std::string what) {
  return holds ? Faults{} : Faults{std::move(what)};
}

bool says(const PdfFile& file, std::string_view what) {
  return file.xmp().find(what) != std::string::npos;
}

Handle entry(Handle dictionary, const char* key) {
  return dictionary.isDictionary() ? dictionary.getKey(key) : Handle::newNull();
}

Faults version_two(const PdfFile& file) {
  Handle version = file.root().getKey("/Version");
  const bool plain = version.isNull() || version.isNameAndEquals("/2.0");
  return unless(file.bytes().starts_with("%PDF-2.0\n%") && plain && !file.pdf().isEncrypted(),
                "the header is not that of PDF 2.0, or the file is encrypted");
}

Faults claims_ua(const PdfFile& file) {
  return unless(says(file, "<pdfuaid:part>2<") && says(file, "<pdfuaid:rev>2024<"),
                "no claim to PDF/UA-2 of 2024");
}

/// Level F exactly where files travel inside.
Faults claims_a(const PdfFile& file) {
  const bool carries = !entry(file.root().getKey("/Names"), "/EmbeddedFiles").isNull();
  const bool level = carries == says(file, "<pdfaid:conformance>F<") &&
                     carries == says(file, "<pdfaid:conformance>");
  return unless(says(file, "<pdfaid:part>4<") && says(file, "<pdfaid:rev>2020<") && level,
                "no claim to PDF/A-4, or to another level than its files want");
}

Faults declares_wtpdf(const PdfFile& file) {
  Faults faults;
  for (const char* const level : {"accessibility1.0", "reuse1.0"}) {
    const std::string claim =
        std::string("<pdfd:conformsTo>http://pdfa.org/declarations/wtpdf#") + level + "<";
    if (!says(file, claim)) faults.push_back(std::string("no declaration of WTPDF ") + level);
  }
  return faults;
}

Faults no_info(const PdfFile& file) {
  return unless(!file.pdf().getTrailer().hasKey("/Info"), "an information dictionary");
}

Faults namespaces(const PdfFile& file) {
  std::set<QPDFObjGen> known;
  for (Handle space : items_of(entry(file.root().getKey("/StructTreeRoot"), "/Namespaces"))) {
    Handle name = space.getKey("/NS");
    if (name.isString() && name.getStringValue() == "http://iso.org/pdf2/ssn") {
      known.insert(space.getObjGen());
    }
  }
  Faults faults;
  for (Handle element : file.elements()) {
    if (!known.contains(element.getKey("/NS").getObjGen())) {
      faults.push_back(type_of(element) + " is not of the namespace of PDF 2.0");
    }
  }
  return faults;
}

Faults parents(const PdfFile& file) {
  Faults faults;
  for (Handle element : file.elements()) {
    for (Handle below : elements_below(element)) {
      if (below.getKey("/P").getObjGen() != element.getObjGen()) {
        faults.push_back(type_of(below) + " does not name what holds it");
      }
    }
  }
  return faults;
}

Faults notes(const PdfFile& file) {
  Faults faults;
  for (Handle element : file.elements()) {
    if (type_of(element) == "/Note") faults.emplace_back("a Note");
    if (type_of(element) != "/FENote") continue;
    Handle kind = entry(element.getKey("/A"), "/NoteType");
    if (!kind.isNameAndEquals("/Footnote") && !kind.isNameAndEquals("/Endnote") &&
        !kind.isNameAndEquals("/None")) {
      faults.emplace_back("an FENote of no NoteType");
    }
  }
  return faults;
}

Faults list_numbering(const PdfFile& file) {
  static const std::set<std::string> kinds{"/Disc", "/Decimal", "/Unordered", "/Description"};
  Faults faults;
  for (Handle list : file.elements()) {
    if (type_of(list) != "/L") continue;
    bool labels = false;
    for (Handle item : elements_below(list)) {
      for (const Handle& part : elements_below(item)) labels = labels || type_of(part) == "/Lbl";
    }
    Handle attributes = list.getKey("/A");
    Handle kind = entry(attributes, "/ListNumbering");
    const bool said = kind.isName() && kinds.contains(kind.getName()) &&
                      attributes.getKey("/O").isNameAndEquals("/List");
    if (labels && !said) faults.emplace_back("a list with labels of no ListNumbering");
  }
  return faults;
}

/// What is wrong with a link or an entry of the outline: it has an action that leads to a page, and
/// to an element there.
std::string wrong_lead(const PdfFile& file, Handle holder, const std::set<QPDFObjGen>& elements) {
  if (holder.hasKey("/Dest")) return "a destination that is no element";
  Handle action = holder.getKey("/A");
  if (!entry(action, "/S").isNameAndEquals("/GoTo")) return "no action that goes anywhere";
  const auto to = items_of(action.getKey("/SD")), at = items_of(action.getKey("/D"));
  if (to.empty() || !elements.contains(Handle(to[0]).getObjGen())) {
    return "a destination that is no element of the structure";
  }
  const auto pages = file.pages();
  const bool there = !at.empty() && std::ranges::any_of(pages, [&](Handle page) {
    return page.getObjGen() == Handle(at[0]).getObjGen();
  });
  return there ? "" : "a destination on no page";
}

Faults structure_destinations(const PdfFile& file) {
  std::set<QPDFObjGen> elements;
  for (Handle element : file.elements()) elements.insert(element.getObjGen());
  Faults faults;
  const auto look_at = [&](Handle holder) {
    const std::string wrong = wrong_lead(file, holder, elements);
    if (!wrong.empty()) faults.push_back(wrong);
  };
  for (Handle page : file.pages()) {
    for (const Handle& link : items_of(page.getKey("/Annots"))) look_at(link);
  }
  for (Handle object : file.pdf().getAllObjects()) {
    if (object.isDictionary() && object.hasKey("/Title") && object.hasKey("/Parent")) {
      look_at(object);
    }
  }
  const bool by_name = !entry(file.root().getKey("/Names"), "/Dests").isNull();
  if (by_name || file.root().hasKey("/Dests")) faults.emplace_back("places by name");
  return faults;
}

/// What is drawn and no figure has words that stand for it.
Faults drawn_in_words(const PdfFile& file) {
  Faults faults;
  for (Handle element : file.elements()) {
    if (type_of(element) == "/Form" && !element.getKey("/ActualText").isString()) {
      faults.emplace_back("a blank that is drawn has no ActualText");
    }
  }
  return faults;
}

/// The words of a link are those of its element.
Faults same_words(const PdfFile& file) {
  std::map<QPDFObjGen, std::string> said;
  for (Handle element : file.elements()) {
    if (!element.getKey("/Alt").isString()) continue;
    for (Handle kid : items_of(element.getKey("/K"))) {
      if (entry(kid, "/Type").isNameAndEquals("/OBJR")) {
        said[kid.getKey("/Obj").getObjGen()] = element.getKey("/Alt").getUTF8Value();
      }
    }
  }
  Faults faults;
  for (Handle page : file.pages()) {
    for (Handle link : items_of(page.getKey("/Annots"))) {
      const auto words = said.find(link.getObjGen());
      Handle own = link.getKey("/Contents");
      if (words != said.end() && own.isString() && own.getUTF8Value() != words->second) {
        faults.emplace_back("a link and its element say different things");
      }
    }
  }
  return faults;
}

Faults files_described(const PdfFile& file) {
  Faults faults;
  for (Handle object : file.pdf().getAllObjects()) {
    if (!entry(object, "/Type").isNameAndEquals("/Filespec")) continue;
    Handle words = object.getKey("/Desc");
    if (!words.isString() || words.getUTF8Value().empty()) {
      faults.emplace_back("an attachment without Desc");
    }
  }
  return faults;
}

/// In resources, descriptors of fonts and what is said of marks.
Faults nothing_deprecated(const PdfFile& file) {
  Faults faults;
  const auto look_at = [&](Handle dictionary) {
    if (!dictionary.isDictionary()) return;
    for (const char* const key : {"/ProcSet", "/CharSet", "/CIDSet", "/Suspects"}) {
      if (dictionary.hasKey(key)) faults.push_back(std::string("a deprecated ") + key);
    }
  };
  for (Handle object : file.pdf().getAllObjects()) {
    Handle dictionary = object.isStream() ? object.getDict() : object;
    look_at(dictionary);
    for (const char* const key : {"/Resources", "/MarkInfo"}) {
      Handle own = entry(dictionary, key);
      if (!own.isIndirect()) look_at(own);
    }
  }
  return faults;
}

/// What may stand directly in what, of the types that are written.
Faults containment(const PdfFile& file) {
  using Types = std::set<std::string>;
  static const Types blocks{"/Part",   "/Sect", "/P",    "/H1",    "/H2",    "/L",
                            "/Figure", "/Form", "/Link", "/Table", "/FENote"};
  static const Types in_lines{"/Span", "/Strong", "/Em", "/Link", "/Form", "/Figure", "/FENote"};
  static const Types both{"/P",    "/L",    "/Span",   "/Strong", "/Em",
                          "/Link", "/Form", "/Figure", "/Table"};
  static const std::map<std::string, Types> may_hold{
      {"/Document", blocks}, {"/Part", blocks},
      {"/Sect", blocks},     {"/P", in_lines},
      {"/H1", in_lines},     {"/H2", in_lines},
      {"/Span", in_lines},   {"/Strong", in_lines},
      {"/Em", in_lines},     {"/Link", in_lines},
      {"/Form", in_lines},   {"/FENote", both},
      {"/L", {"/LI"}},       {"/Lbl", in_lines},
      {"/LBody", both},      {"/LI", {"/Lbl", "/LBody"}},
      {"/Table", {"/TR"}},   {"/TH", both},
      {"/TD", both},         {"/TR", {"/TH", "/TD"}},
      {"/Caption", both},    {"/Figure", {"/Caption", "/Span", "/P", "/Strong", "/Em", "/Link"}}};
  Faults faults;
  for (Handle element : file.elements()) {
    const auto rule = may_hold.find(type_of(element));
    if (rule == may_hold.end()) faults.push_back("unknown type " + type_of(element));
    for (Handle below : elements_below(element)) {
      if (rule == may_hold.end() || rule->second.contains(type_of(below))) continue;
      faults.push_back(type_of(below) + " stands in " + type_of(element));
    }
  }
  return faults;
}

constexpr auto two = RuleOf::two;
constexpr std::array rules{
    PdfRule{"version-two", "ISO 19005-4, 6.1.2 and 6.1.12", false, version_two, two},
    PdfRule{"claims-pdfua-2", "ISO 14289-2, 5", false, claims_ua, two},
    PdfRule{"claims-pdfa-4", "ISO 19005-4, 6.7.3 and annex A", false, claims_a, two},
    PdfRule{"declares-wtpdf", "WTPDF 1.0, 6.1.2 and 6.1.3", false, declares_wtpdf, two},
    PdfRule{"no-info", "ISO 19005-4, 6.1.3", false, no_info, two},
    PdfRule{"namespaces", "ISO 32000-2, 14.7.4; ISO 14289-2, 8.2.4", false, namespaces, two},
    PdfRule{"parents", "ISO 14289-2, 8.2.1", true, parents, two},
    PdfRule{"fenotes", "ISO 14289-2, 8.2.5.14", false, notes, two},
    PdfRule{"list-numbering", "ISO 14289-2, 8.2.5.25", false, list_numbering, two},
    PdfRule{"structure-destinations", "ISO 14289-2, 8.8", false, structure_destinations, two},
    PdfRule{"drawn-in-words", "ISO 14289-2, 8.5.1", false, drawn_in_words, two},
    PdfRule{"same-words", "ISO 14289-2, 8.9.4.2", true, same_words, two},
    PdfRule{"files-described", "ISO 14289-2, 8.14.1", true, files_described, two},
    PdfRule{"nothing-deprecated", "ISO 32000-2, 7.8.3, 9.8 and 14.7.1", true, nothing_deprecated,
            two},
    PdfRule{"containment", "ISO 32000-2, annex L; ISO/TS 32005", false, containment, two}};
}  // namespace

std::span<const PdfRule> two_rules() {
  return rules;
}
}  // namespace furnish::test
