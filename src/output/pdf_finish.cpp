#include "output/pdf_finish.h"

#include <fmt/format.h>
#include <glib.h>

#include <algorithm>
#include <exception>
#include <map>
#include <memory>
#include <set>
#include <string_view>
#include <utility>
#include <vector>

#include "output/pdf_artifacts.h"
#include "output/pdf_metadata.h"
#include "output/pdf_structure.h"
#include "output/pdf_text.h"
#include "output/pdf_two.h"
#include "output/srgb_profile.h"
#include "output/stand_ins.h"

namespace furnish {
namespace {
/// Midnight UTC of the document's day, as PDF writes it.
std::string pdf_date(const DocumentInfo& info) {
  std::string digits = info.date;
  std::erase(digits, '-');
  return "(D:" + digits + "000000Z)";
}

/// A name in which only letters, digits and what is harmless stand as they are.
std::string pdf_name_of(std::string_view text) {
  std::string out = "/";
  for (const char c : text) {
    const bool plain = g_ascii_isalnum(c) != 0 || c == '-' || c == '.' || c == '+';
    out += plain ? std::string(1, c) : fmt::format("#{:02x}", static_cast<unsigned char>(c));
  }
  return out;
}

/// Cairo leaves the "D:" out of a date it was given.
void correct_creation_date(DrawnPdf& pdf, const DocumentInfo& info) {
  pdf.info().set("/CreationDate", pdf_date(info));
}

void set_language(DrawnPdf& pdf, const DocumentInfo& info) {
  pdf.root().set("/Lang", pdf_text(info.language));
}

/// The window bears the title, not the name of the file.
void show_title(DrawnPdf& pdf) {
  pdf.root().set("/ViewerPreferences", "<</DisplayDocTitle true>>");
}

void add_metadata(DrawnPdf& pdf, const DocumentInfo& info, const PdfClaims& claims) {
  // In brackets; those inside come in pairs.
  const std::string_view producer = pdf.info()["/Producer"];
  const std::string xmp =
      xmp_packet(info, std::string(producer.substr(1, producer.size() - 2)), claims);
  constexpr bool pack = false;  // ISO 32000-1, 14.3.2: for programs that know no PDF
  pdf.root().set("/Metadata",
                 reference(pdf.add_stream(PdfDict("<</Type/Metadata/Subtype/XML>>"), xmp, pack)));
}

void add_output_intent(DrawnPdf& pdf) {
  const int profile = pdf.add_stream(PdfDict("<</N 3>>"), srgb_profile());
  pdf.root().set("/OutputIntents",
                 fmt::format("[<</Type/OutputIntent/S/GTS_PDFA1/OutputConditionIdentifier(sRGB)"
                             "/Info(sRGB IEC61966-2.1)/DestOutputProfile {}>>]",
                             reference(profile)));
}

/// The tab key goes through links in the order of the structure.
void order_tabs(PdfDict& page) {
  page.set("/Tabs", "/S");
}

/// What each link says, and that it is printed, which PDF/A asks of every annotation.
void describe_links(DrawnPdf& pdf, const PdfDict& page, const std::vector<std::string>& texts) {
  if (!page.has("/Annots")) return;
  constexpr int print = 4;
  std::size_t i = 0;
  for (const std::string_view annotation : items_of(page["/Annots"])) {
    PdfDict& link = pdf.at(referred_to(annotation));
    link.set("/Contents", pdf_text(texts.at(i++)));
    link.set("/F", std::to_string(print));
  }
}

/// Text that says itself what it is; decoration, and whatever else no element names, as artifacts.
void complete_content(DrawnPdf& pdf, const PdfDict& page) {
  const int content = referred_to(page["/Contents"]);
  std::string data = pdf.data(content);
  if (std::string plain = without_plain_spans(data); !plain.empty()) data = std::move(plain);
  if (std::string marked = with_artifacts(data); !marked.empty()) data = std::move(marked);
  pdf.set_data(content, std::move(data));
}

/// What pages use of a kind, each once.
std::set<int> used(DrawnPdf& pdf, std::string_view kind) {
  std::set<int> out;
  for (const int page : pdf.pages()) {
    const PdfDict& resources = pdf.at(referred_to(pdf.at(page)["/Resources"]));
    if (!resources.has(kind)) continue;
    const PdfDict those(resources[kind]);
    for (const auto& [name, object] : those.entries()) out.insert(referred_to(object));
  }
  return out;
}

/// Puts a form in the place of each mask that holds one. Both fill a square of one unit, in the ink
/// at hand (ISO 32000-1, 8.9.5 and 8.10).
void draw_codes(DrawnPdf& pdf, std::span<const Squares> codes) {
  if (codes.empty()) return;
  for (const int object : used(pdf, "/XObject")) {
    PdfDict& mask = pdf.at(object);
    if (mask["/ImageMask"] != "true") continue;
    const Squares& code = codes[std::stoul(std::string(mask["/Width"])) - 1];
    mask = PdfDict("<</Type/XObject/Subtype/Form>>");
    mask.set("/BBox", fmt::format("[0 0 {} {}]", code.columns, code.rows));
    mask.set("/Matrix",
             fmt::format("[{:.9f} 0 0 {:.9f} 0 0]", 1.0 / static_cast<double>(code.columns),
                         1.0 / static_cast<double>(code.rows)));
    pdf.set_data(object, filled(code));
  }
}

/// Ligatures are read as their letters, any space as a space.
void state_plain_characters(DrawnPdf& pdf, const PdfDict& font) {
  const int to_unicode = referred_to(font["/ToUnicode"]);
  if (to_unicode == 0) return;
  const std::string data = pdf.data(to_unicode);
  const std::string meant = without_stand_ins(data);
  const std::string plain = with_plain_characters(meant.empty() ? data : meant);
  if (!plain.empty() || !meant.empty()) pdf.set_data(to_unicode, plain.empty() ? meant : plain);
}

/// TrueType fonts with two-byte codes say how a code becomes a glyph: cairo's are the same number.
void state_glyph_numbers(DrawnPdf& pdf, const PdfDict& font) {
  if (!font.has("/DescendantFonts")) return;
  PdfDict& below = pdf.at(referred_to(items_of(font["/DescendantFonts"]).at(0)));
  if (below["/Subtype"] == "/CIDFontType2") below.set("/CIDToGIDMap", "/Identity");
}

/// Whether a name is written as UTF-16, and then as that, else the name.
std::pair<bool, std::string> key_of(const std::string& name) {
  std::string written = pdf_text(name);
  if (written.starts_with('<')) return {true, std::move(written)};
  return {false, name};
}

void attach(DrawnPdf& pdf, std::span<const Attachment> files, const DocumentInfo& info) {
  if (files.empty()) return;
  // Sorted by the bytes that are written, as a tree of names is (ISO 32000-1, 7.9.6): a name of
  // ASCII as it is, before any that is written as UTF-16 behind its mark (FE FF).
  std::map<std::pair<bool, std::string>, std::string> by_name;
  std::string associated;
  for (const Attachment& file : files) {
    const std::string content = reference(pdf.add_stream(embedded_file(file, info), file.bytes));
    PdfDict spec("<</Type/Filespec/AFRelationship/Source>>");
    for (const char* key : {"/F", "/UF"}) spec.set(key, pdf_text(file.name));
    spec.set("/EF", fmt::format("<</F {0}/UF {0}>>", content));
    spec.set("/Desc", pdf_text(says_of(file)));
    const std::string& one = by_name[key_of(file.name)] = reference(pdf.add(std::move(spec)));
    associated += one + " ";
  }
  std::string names;
  for (const auto& [key, one] : by_name)
    names += (key.first ? key.second : pdf_text(key.second)) + one;
  pdf.root().set("/AF", "[" + associated + "]");
  if (!pdf.root().has("/Names")) pdf.root().set("/Names", reference(pdf.add({})));
  pdf.at(referred_to(pdf.root()["/Names"])).set("/EmbeddedFiles", "<</Names[" + names + "]>>");
}
}  // namespace

const std::string& says_of(const Attachment& file) {
  return file.says.empty() ? file.name : file.says;
}

PdfDict embedded_file(const Attachment& file, const DocumentInfo& info) {
  const std::unique_ptr<char, decltype(&g_free)> sum(
      g_compute_checksum_for_string(G_CHECKSUM_MD5, file.bytes.data(),
                                    static_cast<gssize>(file.bytes.size())),
      g_free);
  PdfDict out("<</Type/EmbeddedFile>>");
  out.set("/Subtype", pdf_name_of(file.media_type));
  out.set("/Params", fmt::format("<</CheckSum<{}>/Size {}/CreationDate{}/ModDate{}>>", sum.get(),
                                 file.bytes.size(), pdf_date(info), pdf_date(info)));
  return out;
}

std::optional<std::string> finish_pdf(const std::string& drawn, std::span<const Frame> pages,
                                      const DocumentInfo& info, const PdfExtras& extras,
                                      DiagnosticSink& sink, std::span<const Squares> codes) {
  try {
    const StructureTexts texts = structure_texts(pages);
    DrawnPdf pdf(drawn);
    correct_creation_date(pdf, info);
    set_language(pdf, info);
    show_title(pdf);
    add_metadata(pdf, info, {extras.standard, !extras.attachments.empty()});
    add_output_intent(pdf);
    const KnownElements known = complete_structure(pdf, texts);
    std::size_t number = 0;
    for (const int object : pdf.pages()) {
      PdfDict& page = pdf.at(object);
      order_tabs(page);
      describe_links(pdf, page, texts.links.at(number++));
      complete_content(pdf, page);
    }
    draw_codes(pdf, codes);
    for (const int font : used(pdf, "/Font")) {
      state_glyph_numbers(pdf, pdf.at(font));
      state_plain_characters(pdf, pdf.at(font));
    }
    attach(pdf, extras.attachments, info);
    // PDF/A-4 has no information dictionary (ISO 19005-4, 6.1.3).
    const bool two = extras.standard == PdfStandard::ua2;
    if (two) make_two(pdf, known);
    return pdf.written(version_of(extras.standard), !two);
  } catch (const std::exception& fault) {
    sink.error("pdf-failed", {}, fmt::format("the PDF could not be finished: {}", fault.what()));
    return std::nullopt;
  }
}
}  // namespace furnish
