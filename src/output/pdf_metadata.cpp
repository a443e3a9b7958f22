#include "output/pdf_metadata.h"

#include <fmt/format.h>

namespace furnish {
std::string xml_escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20 || c == '\t' || c == '\n') out += c;
    }
  }
  return out;
}

namespace {
/// What is said of a standard: the prefixes it needs, and the claim itself.
struct ClaimText {
  std::string_view prefixes, claim;
};

constexpr ClaimText first_standard{R"( xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
 xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"
 xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
 xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
 xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#")",
                                   R"(<pdfaid:part>3</pdfaid:part>
<pdfaid:conformance>A</pdfaid:conformance>
<pdfuaid:part>1</pdfuaid:part>
<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
<pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
<pdfaProperty:name>part</pdfaProperty:name>
<pdfaProperty:valueType>Integer</pdfaProperty:valueType>
<pdfaProperty:category>internal</pdfaProperty:category>
<pdfaProperty:description>Part of ISO 14289 to which the document conforms</pdfaProperty:description>
</rdf:li></rdf:Seq></pdfaSchema:property>
</rdf:li></rdf:Bag></pdfaExtension:schemas>
)"};

/// PDF/A-4 needs no description of other schemas (ISO 19005-4, 6.7); what is claimed beside ISO's
/// standards is a PDF Declaration (PDF Association, PDF Declarations, 8; WTPDF 1.0, 6.1).
constexpr std::string_view second_prefixes =
    R"( xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
 xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"
 xmlns:pdfd="http://pdfa.org/declarations/")";
constexpr ClaimText second_standard{second_prefixes, R"(<pdfaid:part>4</pdfaid:part>
<pdfaid:rev>2020</pdfaid:rev>
<pdfuaid:part>2</pdfuaid:part>
<pdfuaid:rev>2024</pdfuaid:rev>
<pdfd:declarations><rdf:Bag>
<rdf:li rdf:parseType="Resource"><pdfd:conformsTo>http://pdfa.org/declarations/wtpdf#accessibility1.0</pdfd:conformsTo></rdf:li>
<rdf:li rdf:parseType="Resource"><pdfd:conformsTo>http://pdfa.org/declarations/wtpdf#reuse1.0</pdfd:conformsTo></rdf:li>
</rdf:Bag></pdfd:declarations>
)"};
/// Of a file that carries others, which PDF/A-4 allows only so (ISO 19005-4, Annex A).
constexpr std::string_view with_files = "<pdfaid:conformance>F</pdfaid:conformance>\n";
}  // namespace

std::string xmp_packet(const DocumentInfo& info, const std::string& producer,
                       const PdfClaims& claims) {
  // The first bytes and the id are the standard's own; the byte order mark says UTF-8.
  static constexpr std::string_view form =
      R"(<?xpacket begin="{bom}" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about=""
 xmlns:dc="http://purl.org/dc/elements/1.1/"
 xmlns:xmp="http://ns.adobe.com/xap/1.0/"
 xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
{prefixes}>
<dc:format>application/pdf</dc:format>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
{description}<dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>
<xmp:CreatorTool>furnish</xmp:CreatorTool>
<xmp:CreateDate>{date}T00:00:00Z</xmp:CreateDate>
<pdf:Producer>{producer}</pdf:Producer>
{claim}</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>)";
  const ClaimText& text = claims.standard == PdfStandard::ua1 ? first_standard : second_standard;
  const bool says_files = claims.standard == PdfStandard::ua2 && claims.carries_files;
  const std::string description =
      info.subject.empty()
          ? std::string()
          : fmt::format(
                "<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">{}</rdf:li></rdf:Alt>"
                "</dc:description>\n",
                xml_escaped(info.subject));
  return fmt::format(
      form, fmt::arg("bom", "\xEF\xBB\xBF"), fmt::arg("title", xml_escaped(info.title)),
      fmt::arg("description", description), fmt::arg("language", xml_escaped(info.language)),
      fmt::arg("date", info.date), fmt::arg("producer", xml_escaped(producer)),
      fmt::arg("prefixes", text.prefixes),
      fmt::arg("claim", std::string(says_files ? with_files : "") + std::string(text.claim)));
}
}  // namespace furnish
