#include "output/pdf_rules.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "output/pdf_rule_groups.h"

namespace furnish::test {
using Handle = QPDFObjectHandle;
using Faults = std::vector<std::string>;

PdfFile::PdfFile(std::string bytes) : bytes_(std::move(bytes)), pdf_(std::make_unique<QPDF>()) {
  pdf_->setSuppressWarnings(true);
  pdf_->processMemoryFile("checked", bytes_.data(), bytes_.size());
}

std::string PdfFile::xmp() const {
  Handle metadata = root().getKey("/Metadata");
  if (!metadata.isStream()) return {};
  const auto data = metadata.getStreamData();
  return {reinterpret_cast<const char*>(data->getBuffer()), data->getSize()};
}

std::vector<Handle> PdfFile::pages() const {
  return pdf_->getAllPages();
}

std::vector<Handle> items_of(Handle array) {
  return array.isArray() ? array.getArrayAsVector() : std::vector<Handle>{};
}

std::string type_of(Handle element) {
  Handle type = element.getKey("/S");
  return type.isName() ? type.getName() : "";
}

std::vector<Handle> elements_below(Handle element) {
  std::vector<Handle> list;
  for (Handle kid : items_of(element.getKey("/K"))) {
    if (kid.isDictionary() && kid.hasKey("/S")) list.push_back(kid);
  }
  Handle only = element.getKey("/K");
  if (only.isDictionary() && only.hasKey("/S")) list.push_back(only);
  return list;
}

std::vector<Handle> PdfFile::elements() const {
  std::vector<Handle> list;
  const auto add = [&](const auto& self, Handle element) -> void {
    list.push_back(element);
    for (Handle below : elements_below(element)) self(self, below);
  };
  Handle tree = root().getKey("/StructTreeRoot");
  if (tree.isDictionary()) {
    for (Handle element : elements_below(tree)) add(add, element);
  }
  return list;
}

namespace {
Faults unless(bool holds, std::string what) {
  return holds ? Faults{} : Faults{std::move(what)};
}

/// The first of `parts` that is not in the metadata is a fault.
Faults xmp_has(const PdfFile& file, std::initializer_list<const char*> parts) {
  const std::string xmp = file.xmp();
  for (const char* part : parts) {
    if (xmp.find(part) == std::string::npos)
      return {std::string("no ") + part + " in the metadata"};
  }
  return {};
}

/// The text between two parts of the metadata; empty if they are not there.
std::string between(const std::string& xmp, std::string_view before, std::string_view after) {
  const auto begin = xmp.find(before);
  if (begin == std::string::npos) return {};
  const auto from = begin + before.size(), end = xmp.find(after, from);
  return end == std::string::npos ? std::string() : xmp.substr(from, end - from);
}

Faults language(const PdfFile& file) {
  Handle lang = file.root().getKey("/Lang");
  return unless(lang.isString() && !lang.getUTF8Value().empty(), "the catalog has no Lang");
}

Faults shows_title(const PdfFile& file) {
  Handle preferences = file.root().getKey("/ViewerPreferences");
  Handle flag = preferences.isDictionary() ? preferences.getKey("/DisplayDocTitle") : preferences;
  return unless(flag.isBool() && flag.getBoolValue(), "DisplayDocTitle is not true");
}

Faults title(const PdfFile& file) {
  return unless(
      !between(file.xmp(), "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">", "<").empty(),
      "the metadata has no title");
}
Faults metadata_language(const PdfFile& file) {
  return unless(!between(file.xmp(), "<dc:language><rdf:Bag><rdf:li>", "<").empty(),
                "the metadata has no language");
}
Faults claims_ua(const PdfFile& file) {
  return xmp_has(file, {"<pdfuaid:part>1</pdfuaid:part>"});
}
Faults claims_a(const PdfFile& file) {
  return xmp_has(file, {"<pdfaid:part>3<", "<pdfaid:conformance>A<"});
}
Faults extension_schema(const PdfFile& file) {
  return xmp_has(file, {"<pdfaExtension:schemas>",
                        "<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/<",
                        "<pdfaSchema:prefix>pdfuaid<", "<pdfaProperty:name>part<",
                        "<pdfaProperty:valueType>Integer<"});
}

Faults creation_date(const PdfFile& file) {
  Handle date =
      file.info().isDictionary() ? file.info().getKey("/CreationDate") : Handle::newNull();
  const std::string text = date.isString() ? date.getStringValue() : "";
  const bool digits =
      text.size() >= 16 && std::all_of(text.begin() + 2, text.begin() + 16, ::isdigit);
  return unless(text.starts_with("D:") && digits, "CreationDate is not a PDF date");
}

Faults output_intent(const PdfFile& file) {
  Handle intents = file.root().getKey("/OutputIntents");
  for (Handle intent : items_of(intents)) {
    if (!intent.getKey("/S").isNameAndEquals("/GTS_PDFA1")) continue;
    Handle profile = intent.getKey("/DestOutputProfile");
    if (!profile.isStream()) return {"the output intent has no profile"};
    const auto data = profile.getStreamData();
    const std::string_view icc(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
    const bool rgb = icc.size() > 132 && icc.substr(16, 4) == "RGB " && icc.substr(36, 4) == "acsp";
    return unless(rgb && profile.getDict().getKey("/N").isInteger() &&
                      profile.getDict().getKey("/N").getIntValue() == 3,
                  "the profile is not an ICC profile of RGB");
  }
  return {"no output intent for PDF/A"};
}

Faults file_id(const PdfFile& file) {
  Handle id = file.pdf().getTrailer().getKey("/ID");
  return unless(id.isArray() && id.getArrayNItems() == 2 && id.getArrayItem(0).isString() &&
                    !id.getArrayItem(0).getStringValue().empty(),
                "the trailer has no ID");
}

/// ISO 19005-3, 6.1.7.1.
Faults endstream(const PdfFile& file) {
  Faults faults;
  const std::string_view bytes = file.bytes();
  for (auto at = bytes.find("endstream"); at != std::string_view::npos;
       at = bytes.find("endstream", at + 9)) {
    if (at == 0 || (bytes[at - 1] != '\n' && bytes[at - 1] != '\r')) {
      faults.push_back("no line end before endstream at byte " + std::to_string(at));
    }
  }
  return faults;
}

Faults version(const PdfFile& file) {
  const std::string version = file.pdf().getPDFVersion();
  return unless(version == "1.7" && !file.pdf().isEncrypted(), "PDF " + version + " or encrypted");
}

Faults attachments(const PdfFile& file) {
  Faults faults;
  Handle associated = file.root().getKey("/AF");
  for (Handle object : file.pdf().getAllObjects()) {
    if (!object.isDictionary() || !object.getKey("/Type").isNameAndEquals("/Filespec")) continue;
    const auto want = [&](bool holds, const char* what) {
      if (!holds) faults.push_back(std::string("an attachment without ") + what);
    };
    want(object.getKey("/F").isString() && object.getKey("/UF").isString(), "F and UF");
    want(object.getKey("/AFRelationship").isNameAndEquals("/Source"), "AFRelationship Source");
    bool in_catalog = false;
    for (Handle entry : items_of(associated)) {
      in_catalog = in_catalog || entry.getObjGen() == object.getObjGen();
    }
    want(in_catalog, "a place in the catalog's AF");
    Handle stream =
        object.getKey("/EF").isDictionary() ? object.getKey("/EF").getKey("/F") : Handle::newNull();
    want(stream.isStream(), "its bytes");
    if (!stream.isStream()) continue;
    Handle subtype = stream.getDict().getKey("/Subtype");
    want(subtype.isName() && subtype.getName().find('/', 1) != std::string::npos, "a media type");
    Handle params = stream.getDict().getKey("/Params");
    want(params.isDictionary() && params.getKey("/ModDate").isString(), "ModDate");
  }
  return faults;
}

constexpr std::array document_rules{
    PdfRule{"language", "ISO 14289-1, 7.2", false, language},
    PdfRule{"shows-title", "ISO 14289-1, 7.1", false, shows_title},
    PdfRule{"title", "ISO 14289-1, 7.1", false, title},
    PdfRule{"metadata-language", "ISO 16684-1, 8.3", false, metadata_language},
    PdfRule{"claims-pdfua", "ISO 14289-1, 5", false, claims_ua, RuleOf::one},
    PdfRule{"claims-pdfa", "ISO 19005-3, 6.6.4", false, claims_a, RuleOf::one},
    PdfRule{"extension-schema", "ISO 19005-3, 6.6.2.3", false, extension_schema, RuleOf::one},
    PdfRule{"creation-date", "ISO 32000-1, 7.9.4", false, creation_date, RuleOf::one},
    PdfRule{"output-intent", "ISO 19005-3, 6.2.3", false, output_intent},
    PdfRule{"file-id", "ISO 19005-3, 6.1.3", false, file_id},
    PdfRule{"endstream", "ISO 19005-3, 6.1.7.1", true, endstream},
    PdfRule{"version", "ISO 14289-1, 6.1; ISO 19005-3, 6.1.3", false, version, RuleOf::one},
    PdfRule{"attachments", "ISO 19005-3, 6.8; ISO 14289-1, 7.11", false, attachments}};
}  // namespace

std::vector<PdfRule> pdf_rules(RuleOf of) {
  std::vector<PdfRule> list(document_rules.begin(), document_rules.end());
  for (const auto group : {structure_rules(), content_rules(), two_rules()}) {
    list.insert(list.end(), group.begin(), group.end());
  }
  std::erase_if(list, [&](const PdfRule& rule) {
    return rule.of != RuleOf::both && of != RuleOf::both && rule.of != of;
  });
  return list;
}

Faults pdf_faults(const std::string& bytes) {
  const PdfFile file(bytes);
  Faults faults;
  const RuleOf of = bytes.starts_with("%PDF-2") ? RuleOf::two : RuleOf::one;
  for (const PdfRule& rule : pdf_rules(of)) {
    for (const std::string& fault : rule.faults(file)) {
      faults.push_back(std::string(rule.name) + ": " + fault);
    }
  }
  return faults;
}
}  // namespace furnish::test
