#include "output/pdf_rules.h"

#include <qpdf/QPDFEFStreamObjectHelper.hh>
#include <qpdf/QPDFEmbeddedFileDocumentHelper.hh>
#include <qpdf/QPDFFileSpecObjectHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <map>

#include "output/pdf.h"
#include "output/pdf_draw.h"
#include "output/sample_page.h"

using namespace furnish;
using namespace furnish::test;
using Handle = QPDFObjectHandle;

namespace {
std::string to_string(const std::shared_ptr<Buffer>& buffer) {
  return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}

std::string written(QPDF& pdf) {
  QPDFWriter writer(pdf);
  writer.setOutputMemory();
  writer.setDeterministicID(true);
  writer.setNewlineBeforeEndstream(true);
  writer.setObjectStreamMode(qpdf_o_disable);
  writer.write();
  return to_string(writer.getBufferSharedPointer());
}

std::vector<Frame> sample_pages(Type& type) {
  return {sample_page(type), sample_page(type)};
}

/// As cairo writes it; with an attachment as libqpdf makes it by itself, as cairo has none.
std::string raw_file(Type& type) {
  DiagnosticSink sink;
  const auto pages = sample_pages(type);
  const auto drawn = draw_pdf(pages, sample_info(), {}, sink);
  REQUIRE(drawn);
  return *drawn;
}
std::string raw_with_attachment(Type& type) {
  const PdfFile file(raw_file(type));
  auto stream = QPDFEFStreamObjectHelper::createEFStream(file.pdf(), std::string("[pet]\n"));
  QPDFEmbeddedFileDocumentHelper(file.pdf())
      .replaceEmbeddedFile("a.toml",
                           QPDFFileSpecObjectHelper::createFileSpec(file.pdf(), "a.toml", stream));
  return written(file.pdf());
}

/// `of` is one of the two standards.
std::string finished_file(Type& type, RuleOf of) {
  DiagnosticSink sink;
  PdfExtras extras;
  extras.standard = of == RuleOf::two ? PdfStandard::ua2 : PdfStandard::ua1;
  extras.outline = {{"Marlow", 0, 0}, {"Trim", 1, 1}};
  extras.attachments = {
      {"marlow.toml", "[pet]\nname = \"Marlow\"\n", "application/toml", "The pet"}};
  const auto bytes = to_pdf(sample_pages(type), sample_info(), extras, sink);
  REQUIRE(bytes);
  return *bytes;
}

Handle element(const PdfFile& file, std::string_view type) {
  for (Handle e : file.elements()) {
    if (type_of(e) == type) return e;
  }
  FAIL("no element " << type);
  return {};
}

void replace_in_xmp(const PdfFile& file, const std::string& old, const std::string& by) {
  std::string xmp = file.xmp();
  REQUIRE(xmp.find(old) != std::string::npos);
  xmp.replace(xmp.find(old), old.size(), by);
  file.root().getKey("/Metadata").replaceStreamData(xmp, Handle::newNull(), Handle::newNull());
}

Handle object_with(const PdfFile& file, const std::string& key, const std::string& name = "") {
  for (Handle object : file.pdf().getAllObjects()) {
    if (!object.isDictionary() || !object.hasKey(key)) continue;
    if (name.empty() || object.getKey(key).isNameAndEquals(name)) return object;
  }
  FAIL("no object with " << key << " " << name);
  return {};
}

void append_content(const PdfFile& file, const std::string& operators) {
  Handle content = file.pages().front().getKey("/Contents");
  content.replaceStreamData(to_string(content.getStreamData()) + operators, Handle::newNull(),
                            Handle::newNull());
}

/// How to break each rule, and no other, in a good file.
const std::map<std::string_view, std::function<void(const PdfFile&)>> spoilers{
    {"language", [](const PdfFile& f) { f.root().removeKey("/Lang"); }},
    {"shows-title", [](const PdfFile& f) { f.root().removeKey("/ViewerPreferences"); }},
    {"title", [](const PdfFile& f) { replace_in_xmp(f, "dc:title>", "dc:name>"); }},
    {"metadata-language", [](const PdfFile& f) { replace_in_xmp(f, "<rdf:li>en-GB", "<rdf:li>"); }},
    {"claims-pdfua",
     [](const PdfFile& f) { replace_in_xmp(f, "pdfuaid:part>1", "pdfuaid:part>2"); }},
    {"claims-pdfa", [](const PdfFile& f) { replace_in_xmp(f, "conformance>A", "conformance>B"); }},
    {"extension-schema", [](const PdfFile& f) { replace_in_xmp(f, "prefix>pdfuaid", "prefix>x"); }},
    {"creation-date",
     [](const PdfFile& f) {
       f.info().replaceKey("/CreationDate", Handle::newString("20261124000000Z"));
     }},
    {"output-intent", [](const PdfFile& f) { f.root().removeKey("/OutputIntents"); }},
    {"attachments",
     [](const PdfFile& f) { object_with(f, "/AFRelationship").removeKey("/AFRelationship"); }},
    {"tagged",
     [](const PdfFile& f) {
       f.root().getKey("/MarkInfo").replaceKey("/Marked", Handle::newBool(false));
     }},
    {"one-root",
     [](const PdfFile& f) {
       f.root()
           .getKey("/StructTreeRoot")
           .getKey("/K")
           .appendItem(f.pdf().makeIndirectObject(element(f, "/H1").shallowCopy()));
     }},
    {"figure-text", [](const PdfFile& f) { element(f, "/Figure").removeKey("/Alt"); }},
    {"head-scope", [](const PdfFile& f) { element(f, "/TH").removeKey("/A"); }},
    {"blank-role", [](const PdfFile& f) { element(f, "/Form").getKey("/A").removeKey("/Role"); }},
    {"blank-words", [](const PdfFile& f) { element(f, "/Form").removeKey("/Alt"); }},
    {"figure-box", [](const PdfFile& f) { element(f, "/Figure").getKey("/A").removeKey("/BBox"); }},
    {"link-words", [](const PdfFile& f) { element(f, "/Link").removeKey("/Alt"); }},
    {"full-cells",
     [](const PdfFile& f) { element(f, "/TD").replaceKey("/K", Handle::newArray()); }},
    {"row-heads",
     [](const PdfFile& f) {
       for (Handle cell : elements_below(element(f, "/TR"))) {
         cell.replaceKey("/S", Handle::newName("/TD"));
       }
     }},
    {"captions-inside",
     [](const PdfFile& f) { element(f, "/P").replaceKey("/S", Handle::newName("/Caption")); }},
    {"note-id", [](const PdfFile& f) { element(f, "/Note").removeKey("/ID"); }},
    {"element-language",
     [](const PdfFile& f) { element(f, "/P").replaceKey("/Lang", Handle::newString("en_GB")); }},
    {"even-tables", [](const PdfFile& f) { element(f, "/TR").getKey("/K").eraseItem(0); }},
    {"nesting",
     [](const PdfFile& f) { element(f, "/TD").replaceKey("/S", Handle::newName("/P")); }},
    {"heading-levels",
     [](const PdfFile& f) { element(f, "/H1").replaceKey("/S", Handle::newName("/P")); }},
    {"standard-types",
     [](const PdfFile& f) { element(f, "/Sect").replaceKey("/S", Handle::newName("/Artifact")); }},
    {"all-marked", [](const PdfFile& f) { append_content(f, "\n0 0 m 9 9 l S\n"); }},
    {"tab-order", [](const PdfFile& f) { f.pages().front().removeKey("/Tabs"); }},
    {"link-text",
     [](const PdfFile& f) {
       f.pages().front().getKey("/Annots").getArrayItem(0).removeKey("/Contents");
     }},
    {"links-printed",
     [](const PdfFile& f) { f.pages().front().getKey("/Annots").getArrayItem(0).removeKey("/F"); }},
    {"links-in-structure",
     [](const PdfFile& f) {
       f.pages().front().getKey("/Annots").getArrayItem(0).removeKey("/StructParent");
     }},
    {"glyph-numbers",
     [](const PdfFile& f) {
       object_with(f, "/Subtype", "/CIDFontType2").removeKey("/CIDToGIDMap");
     }},
    {"embedded-fonts",
     [](const PdfFile& f) { object_with(f, "/FontFile2").removeKey("/FontFile2"); }},
    {"unicode-fonts",
     [](const PdfFile& f) { object_with(f, "/ToUnicode").removeKey("/ToUnicode"); }},
    {"no-private-use",
     [](const PdfFile& f) {
       element(f, "/Figure").replaceKey("/Alt", Handle::newUnicodeString("\uF041 dog"));
     }},
    {"no-interpolation",
     [](const PdfFile& f) {
       f.pages()
           .front()
           .getKey("/Contents")
           .getDict()
           .replaceKey("/Interpolate", Handle::newBool(true));
     }},
    {"claims-pdfua-2",
     [](const PdfFile& f) { replace_in_xmp(f, "pdfuaid:rev>2024", "pdfuaid:rev>24"); }},
    {"claims-pdfa-4",
     [](const PdfFile& f) { replace_in_xmp(f, "conformance>F", "conformance>E"); }},
    {"declares-wtpdf", [](const PdfFile& f) { replace_in_xmp(f, "wtpdf#reuse", "wtpdf/#reuse"); }},
    {"no-info",
     [](const PdfFile& f) {
       f.pdf().getTrailer().replaceKey("/Info", Handle::parse("<</Title(Marlow)>>"));
     }},
    {"namespaces", [](const PdfFile& f) { element(f, "/TD").removeKey("/NS"); }},
    {"parents", [](const PdfFile& f) { element(f, "/TD").replaceKey("/P", element(f, "/H1")); }},
    {"fenotes", [](const PdfFile& f) { element(f, "/FENote").removeKey("/A"); }},
    {"list-numbering", [](const PdfFile& f) { element(f, "/L").removeKey("/A"); }},
    {"structure-destinations",
     [](const PdfFile& f) {
       f.root().getKey("/Outlines").getKey("/First").getKey("/A").removeKey("/SD");
     }},
    {"drawn-in-words", [](const PdfFile& f) { element(f, "/Form").removeKey("/ActualText"); }},
    {"same-words",
     [](const PdfFile& f) {
       element(f, "/Link").replaceKey("/Alt", Handle::newString("elsewhere"));
     }},
    {"files-described", [](const PdfFile& f) { object_with(f, "/EF").removeKey("/Desc"); }},
    {"nothing-deprecated",
     [](const PdfFile& f) {
       f.pages().front().getKey("/Resources").replaceKey("/ProcSet", Handle::parse("[/PDF]"));
     }},
    {"containment",
     [](const PdfFile& f) { element(f, "/Sect").replaceKey("/S", Handle::newName("/Artifact")); }}};

/// Rules about bytes that libqpdf does not let one break.
std::string spoiled_bytes(std::string_view rule, std::string bytes) {
  const auto put = [&](const std::string& old, const std::string& by) {
    REQUIRE(bytes.find(old) != std::string::npos);
    bytes.replace(bytes.find(old), old.size(), by);
  };
  if (rule == "endstream") put("\nendstream", " endstream");
  if (rule == "version") put("%PDF-1.7", "%PDF-1.5");
  if (rule == "version-two") put("%PDF-2.0\n", "%PDF-2.1\n");
  if (rule == "file-id") bytes.replace(bytes.rfind("/ID "), 3, "/XX");
  return bytes;
}
}  // namespace

TEST_CASE("A finished PDF keeps every rule") {
  Type type;
  for (const RuleOf of : {RuleOf::one, RuleOf::two}) {
    CHECK(pdf_faults(finished_file(type, of)) == std::vector<std::string>{});
  }
}

TEST_CASE("A PDF as cairo writes it breaks every rule that cairo does not keep") {
  Type type;
  const PdfFile plain(raw_file(type)), attached(raw_with_attachment(type));
  for (const PdfRule& rule : pdf_rules(RuleOf::both)) {
    INFO(rule.name << " (" << rule.source << ")");
    const PdfFile& file = rule.name == "attachments" ? attached : plain;
    CHECK(rule.faults(file).empty() == rule.cairo_keeps_it);
  }
}

TEST_CASE("Each rule notices when it alone is broken") {
  Type type;
  for (const RuleOf of : {RuleOf::one, RuleOf::two}) {
    const std::string good = finished_file(type, of);
    for (const PdfRule& rule : pdf_rules(of)) {
      INFO(rule.name << " (" << rule.source << ")");
      PdfFile file(good);
      std::string bytes;
      if (const auto spoil = spoilers.find(rule.name); spoil != spoilers.end()) {
        spoil->second(file);
        bytes = written(file.pdf());
      } else {
        bytes = spoiled_bytes(rule.name, written(file.pdf()));
      }
      const auto faults = pdf_faults(bytes);
      CHECK_FALSE(faults.empty());
      for (const std::string& fault : faults) {
        // What may stand in what is told of PDF 2.0 once more.
        const std::string told = fault.substr(0, fault.find(':'));
        const bool again = rule.name == "nesting" || rule.name == "captions-inside";
        CHECK((told == rule.name || (told == "containment" && again)));
      }
    }
  }
}
