#include "output/pdf_finish.h"

#include <fmt/format.h>

#include <qpdf/QPDF.hh>
#include <qpdf/QPDFEFStreamObjectHelper.hh>
#include <qpdf/QPDFEmbeddedFileDocumentHelper.hh>
#include <qpdf/QPDFFileSpecObjectHelper.hh>
#include <qpdf/QPDFWriter.hh>

#include <algorithm>
#include <exception>
#include <memory>
#include <set>
#include <string_view>
#include <vector>

#include "output/pdf_artifacts.h"
#include "output/pdf_metadata.h"
#include "output/pdf_structure.h"
#include "output/pdf_text.h"
#include "output/srgb_profile.h"
#include "output/stand_ins.h"
#include "output/unpack_budget.h"

namespace furnish {
namespace {
using Handle = QPDFObjectHandle;

/// Midnight UTC of the document's day, as PDF writes it.
std::string pdf_date(const DocumentInfo& info) {
  std::string digits = info.date;
  std::erase(digits, '-');
  return "D:" + digits + "000000Z";
}

/// Cairo leaves the "D:" out of a date it was given.
void correct_creation_date(QPDF& pdf, const DocumentInfo& info) {
  pdf.getTrailer().getKey("/Info").replaceKey("/CreationDate", Handle::newString(pdf_date(info)));
}

void set_language(QPDF& pdf, const DocumentInfo& info) {
  pdf.getRoot().replaceKey("/Lang", Handle::newUnicodeString(info.language));
}

/// The window bears the title, not the name of the file.
void show_title(QPDF& pdf) {
  pdf.getRoot().replaceKey("/ViewerPreferences", Handle::parse("<</DisplayDocTitle true>>"));
}

void add_metadata(QPDF& pdf, const DocumentInfo& info) {
  const std::string producer = pdf.getTrailer().getKey("/Info").getKey("/Producer").getUTF8Value();
  Handle metadata = Handle::newStream(&pdf, xmp_packet(info, producer));
  metadata.getDict().replaceKey("/Type", Handle::newName("/Metadata"));
  metadata.getDict().replaceKey("/Subtype", Handle::newName("/XML"));
  pdf.getRoot().replaceKey("/Metadata", metadata);
}

void add_output_intent(QPDF& pdf) {
  Handle profile = Handle::newStream(&pdf, srgb_profile());
  profile.getDict().replaceKey("/N", Handle::newInteger(3));
  Handle intent = Handle::parse(
      "<</Type/OutputIntent/S/GTS_PDFA1/OutputConditionIdentifier(sRGB)/Info(sRGB IEC61966-2.1)>>");
  intent.replaceKey("/DestOutputProfile", profile);
  pdf.getRoot().replaceKey("/OutputIntents", Handle::newArray({intent}));
}

/// The tab key goes through links in the order of the structure.
void order_tabs(Handle page) {
  page.replaceKey("/Tabs", Handle::newName("/S"));
}

/// What each link says, and that it is printed, which PDF/A asks of every annotation.
void describe_links(Handle page, const std::vector<std::string>& texts) {
  Handle annotations = page.getKey("/Annots");
  if (!annotations.isArray()) return;
  constexpr int print = 4;
  for (int i = 0; i < annotations.getArrayNItems(); ++i) {
    Handle link = annotations.getArrayItem(i);
    link.replaceKey("/Contents", Handle::newUnicodeString(texts.at(static_cast<std::size_t>(i))));
    link.replaceKey("/F", Handle::newInteger(print));
  }
}

std::string_view view(const std::shared_ptr<Buffer>& data) {
  return {reinterpret_cast<const char*>(data->getBuffer()), data->getSize()};
}

void replace_data(Handle stream, const std::string& data) {
  stream.replaceStreamData(data, Handle::newNull(), Handle::newNull());
}

/// Text that says itself what it is; decoration, and whatever else no element names, as artifacts.
void complete_content(Handle page) {
  Handle content = page.getKey("/Contents");
  const auto data = content.getStreamData(qpdf_dl_generalized);
  const std::string plain = without_plain_spans(view(data));
  const std::string marked = with_artifacts(plain.empty() ? view(data) : plain);
  if (!marked.empty() || !plain.empty()) replace_data(content, marked.empty() ? plain : marked);
}

/// The fonts that pages draw on, each once.
std::vector<Handle> fonts_of(const std::vector<Handle>& pages) {
  std::vector<Handle> list;
  std::set<QPDFObjGen> seen;
  for (Handle page : pages) {
    Handle fonts = page.getKey("/Resources").getKey("/Font");
    if (!fonts.isDictionary()) continue;
    for (auto [name, font] : fonts.ditems()) {
      if (seen.insert(font.getObjGen()).second) list.push_back(font);
    }
  }
  return list;
}

/// Ligatures are read as their letters, any space as a space.
void state_plain_characters(Handle font) {
  Handle to_unicode = font.getKey("/ToUnicode");
  if (!to_unicode.isStream()) return;
  const auto data = to_unicode.getStreamData(qpdf_dl_generalized);
  const std::string meant = without_stand_ins(view(data));
  const std::string plain = with_plain_characters(meant.empty() ? view(data) : meant);
  if (!plain.empty() || !meant.empty()) replace_data(to_unicode, plain.empty() ? meant : plain);
}

/// TrueType fonts with two-byte codes say how a code becomes a glyph: cairo's are the same number.
void state_glyph_numbers(Handle font) {
  Handle below = font.getKey("/DescendantFonts");
  if (!below.isArray()) return;
  Handle descendant = below.getArrayItem(0);
  if (descendant.getKey("/Subtype").isNameAndEquals("/CIDFontType2")) {
    descendant.replaceKey("/CIDToGIDMap", Handle::newName("/Identity"));
  }
}

void attach(QPDF& pdf, std::span<const Attachment> files, const DocumentInfo& info) {
  if (files.empty()) return;
  QPDFEmbeddedFileDocumentHelper embedded(pdf);
  Handle associated = Handle::newArray();
  for (const Attachment& file : files) {
    Handle spec = embedded_file(pdf, file, info);
    embedded.replaceEmbeddedFile(file.name, QPDFFileSpecObjectHelper(spec));
    associated.appendItem(spec);
  }
  pdf.getRoot().replaceKey("/AF", associated);
}

/// PDF 1.7 with an ID that follows from the content, and the line ends that PDF/A wants.
std::string written(QPDF& pdf) {
  QPDFWriter writer(pdf);
  writer.setOutputMemory();
  writer.setMinimumPDFVersion("1.7");
  writer.setObjectStreamMode(qpdf_o_generate);
  writer.setDeterministicID(true);
  writer.setNewlineBeforeEndstream(true);
  writer.write();
  const auto buffer = writer.getBufferSharedPointer();
  return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};
}
}  // namespace

QPDFObjectHandle embedded_file(QPDF& pdf, const Attachment& file, const DocumentInfo& info) {
  auto stream = QPDFEFStreamObjectHelper::createEFStream(pdf, file.bytes);
  stream.setSubtype(file.media_type).setCreationDate(pdf_date(info)).setModDate(pdf_date(info));
  auto spec = QPDFFileSpecObjectHelper::createFileSpec(pdf, file.name, stream);
  spec.setDescription(file.says.empty() ? file.name : file.says);
  spec.getObjectHandle().replaceKey("/AFRelationship", Handle::newName("/Source"));
  return spec.getObjectHandle();
}

std::optional<std::string> finish_pdf(const std::string& drawn, std::span<const Frame> pages,
                                      const DocumentInfo& info,
                                      std::span<const Attachment> attachments,
                                      DiagnosticSink& sink) {
  // libqpdf tells of a file it cannot read, or of no memory, by exceptions.
  try {
    have_counted_filters();
    const StructureTexts texts = structure_texts(pages);
    QPDF pdf;
    pdf.setSuppressWarnings(true);
    pdf.processMemoryFile("drawn", drawn.data(), drawn.size());
    correct_creation_date(pdf, info);
    set_language(pdf, info);
    show_title(pdf);
    add_metadata(pdf, info);
    add_output_intent(pdf);
    complete_structure(pdf, texts);
    std::size_t number = 0;
    for (Handle page : pdf.getAllPages()) {
      order_tabs(page);
      describe_links(page, texts.links.at(number++));
      complete_content(page);
    }
    for (const Handle& font : fonts_of(pdf.getAllPages())) {
      state_glyph_numbers(font);
      state_plain_characters(font);
    }
    attach(pdf, attachments, info);
    return written(pdf);
  } catch (const std::exception& fault) {
    sink.error("pdf-failed", {}, fmt::format("the PDF could not be finished: {}", fault.what()));
    return std::nullopt;
  }
}
}  // namespace furnish
