#include "output/pdf_book.h"

#include <fmt/format.h>

#include <qpdf/QPDF.hh>
#include <qpdf/QPDFEmbeddedFileDocumentHelper.hh>
#include <qpdf/QPDFFileSpecObjectHelper.hh>
#include <qpdf/QPDFNameTreeObjectHelper.hh>
#include <qpdf/QPDFNumberTreeObjectHelper.hh>

#include <algorithm>
#include <exception>
#include <map>
#include <optional>
#include <stdexcept>
#include <utility>
#include <vector>

#include "output/compact_content.h"
#include "output/pdf_leads.h"
#include "output/pdf_objects.h"
#include "output/pdf_part.h"
#include "output/pdf_tree.h"
#include "output/pdf_two.h"
#include "output/shared_type.h"

namespace furnish {
namespace {
using Handle = QPDFObjectHandle;
/// Pages under one node of the tree of pages.
constexpr std::size_t pages_a_node = 64;
/// A PDF of ours, read again.
void read(QPDF& pdf, const std::string& bytes) {
  pdf.setSuppressWarnings(true);
  pdf.processMemoryFile("part", bytes.data(), bytes.size());
}

Handle first_of(Handle kids) {
  return kids.isArray() && kids.getArrayNItems() > 0 ? kids.getArrayItem(0) : kids;
}

std::string references(const std::vector<int>& numbers) {
  std::string out;
  for (const int number : numbers) out += fmt::format("{} 0 R ", number);
  return out;
}
}  // namespace

class PdfBook::Writer {
 public:
  Writer(Take take, PdfStandard standard)
      : standard_(standard),
        out_(std::move(take), version_of(standard)),
        catalog_(out_.reserve()),
        info_(standard == PdfStandard::ua1 ? out_.reserve() : 0),
        nodes_(out_.reserve()),
        structure_(out_.reserve()),
        document_(out_.reserve()) {}

  void add(std::span<const Frame> pages, const DocumentInfo& part,
           std::span<const Attachment> files, Where where, DiagnosticSink& sink) {
    for (const Frame& page : pages) type_.meet(page);
    std::vector<Frame> all{type_.page()};
    all.insert(all.end(), pages.begin(), pages.end());
    std::vector<Leads> leads;
    for (Frame& page : all) leads.push_back(tied(page));
    const auto bytes = to_pdf(all, part, {{}, {files.begin(), files.end()}, standard_}, sink);
    if (!bytes) return;
    QPDF pdf;
    read(pdf, *bytes);
    Section& section = where == Where::body ? body_ : front_;
    PdfPart copy(out_, {ids_of(++parts_), parents_});
    share_fonts(pdf, copy);
    share_structure(pdf, copy, part.language);
    take_pages(pdf, copy, leads, section);
    take_structure(pdf, copy, section);
    take_files(pdf, copy);
    copy.copy_waiting();
  }

  /// pre: there are pages
  void finish(const DocumentInfo& whole, std::span<const OutlineEntry> outline,
              DiagnosticSink& sink) {
    const std::vector<Frame> last{type_.page()};
    // With any file in it, as the whole claims what only those may that carry some.
    PdfExtras extras{{}, {}, standard_};
    if (!files_.empty()) extras.attachments.push_back({"any", "", "application/toml", "any"});
    const auto bytes = to_pdf(last, whole, extras, sink);
    if (!bytes) return;
    QPDF pdf;
    read(pdf, *bytes);
    PdfPart copy(out_, {});
    put_fonts(pdf, copy);
    put_pages();
    put_structure();
    const int first = put_outline(out_, outline, body_.pages);
    put_catalog(pdf, copy, first);
    if (info_ != 0) out_.add(info_, "<<" + copy.entries(pdf.getTrailer().getKey("/Info")) + ">>");
    copy.copy_waiting();
    if (!out_.finish(catalog_, info_)) throw std::runtime_error("not all of it was written");
  }

  std::size_t pages() const { return body_.pages.size(); }

 private:
  /// The body, or what stands before it.
  struct Section {
    std::vector<PageObject> pages;
    std::vector<int> nodes;  ///< of the tree of pages, each with so many of them
    std::vector<int> parts;  ///< elements that hold what a part says
  };

  static std::string ids_of(int part) { return fmt::format("{:06}-", part); }

  void share_fonts(QPDF& pdf, PdfPart& copy) {
    for (Handle page : pdf.getAllPages()) {
      Handle fonts = page.getKey("/Resources").getKey("/Font");
      if (!fonts.isDictionary()) continue;
      for (auto [name, font] : fonts.ditems()) {
        const auto [found, fresh] = fonts_.try_emplace(name, 0);
        if (fresh) found->second = out_.reserve();
        copy.stands_for(font, found->second);
      }
    }
  }

  void put_fonts(QPDF& pdf, PdfPart& copy) {
    Handle page = pdf.getAllPages().front();
    Handle fonts = page.getKey("/Resources").getKey("/Font");
    for (const auto& [name, number] : fonts_) {
      Handle font = fonts.isDictionary() ? fonts.getKey(name) : Handle::newNull();
      if (!font.isDictionary()) throw std::runtime_error("a font is not where it was");
      copy.copy_as(font, number);
    }
  }

  void take_pages(QPDF& pdf, PdfPart& copy, const std::vector<Leads>& leads, Section& section) {
    std::vector<Handle> pages = pdf.getAllPages();
    pages.erase(pages.begin());
    const std::size_t begin = section.pages.size();
    for (const Handle& page : pages) {
      if (section.pages.size() % pages_a_node == 0) section.nodes.push_back(out_.reserve());
      Handle box = Handle(page).getKey("/MediaBox");
      section.pages.push_back({out_.reserve(), box.getArrayItem(3).getNumericValue(), 0});
      copy.stands_for(page, section.pages.back().number);
    }
    if (standard_ == PdfStandard::ua2) find_elements(pdf, copy, pages, section);
    Handle names = pdf.getRoot().getKey("/Names");
    std::optional<QPDFNameTreeObjectHelper> places;
    if (names.isDictionary() && names.hasKey("/Dests")) places.emplace(names.getKey("/Dests"), pdf);
    const auto place = [&](const std::string& name) {
      if (const auto page = left_for(name)) return top_of(body_.pages.at(*page));
      Handle found;
      if (!places || !places->findObject(name, found)) {
        throw std::runtime_error("a link leads nowhere");
      }
      return copy.value(found.isDictionary() ? found.getKey("/D") : found);
    };
    copy.set_places(place, [&](const std::string& name) {
      return element_at_top(body_.pages.at(left_for(name).value()));
    });
    for (std::size_t i = 0; i < pages.size(); ++i) {
      Handle page = pages[i];
      lead_out(page, leads[i + 1]);
      put_content(page, copy);
      page.removeKey("/Parent");
      out_.add(section.pages[begin + i].number,
               fmt::format("<</Parent {} 0 R{}>>", section.nodes[(begin + i) / pages_a_node],
                           copy.entries(page)));
    }
    copy.copy_waiting();
    copy.set_places({});
  }

  /// What the last pages of a section begin with.
  static void find_elements(QPDF& pdf, PdfPart& copy, const std::vector<Handle>& pages,
                            Section& section) {
    Handle structure = pdf.getRoot().getKey("/StructTreeRoot");
    const auto first = first_on_pages(structure);
    const std::size_t begin = section.pages.size() - pages.size();
    for (std::size_t i = 0; i < pages.size(); ++i) {
      const auto found = first.find(pages[i].getObjGen());
      section.pages[begin + i].element =
          copy.number_of(found != first.end() ? found->second : first_of(structure.getKey("/K")));
    }
  }

  void put_content(Handle page, PdfPart& copy) {
    Handle content = page.getKey("/Contents");
    if (!content.isStream()) return;
    const auto data = content.getStreamData(qpdf_dl_generalized);
    const int number = out_.reserve();
    out_.add_packed(
        number, {},
        compact_content({reinterpret_cast<const char*>(data->getBuffer()), data->getSize()}));
    copy.stands_for(content, number);
  }

  /// A part of the whole's one document, in the whole's one namespace.
  void share_structure(QPDF& pdf, PdfPart& copy, const std::string& language) {
    Handle root = pdf.getRoot().getKey("/StructTreeRoot");
    Handle document = first_of(root.getKey("/K"));
    if (!document.isDictionary()) return;
    copy.stands_for(root, document_);
    document.replaceKey("/S", Handle::newName("/Part"));
    document.replaceKey("/Lang", Handle::newUnicodeString(language));
    Handle space = first_of(root.getKey("/Namespaces"));
    if (!space.isDictionary()) return;
    if (namespace_ == 0) {
      namespace_ = out_.reserve();
      out_.add(namespace_, space.unparseResolved());
    }
    copy.stands_for(space, namespace_);
  }

  void take_structure(QPDF& pdf, PdfPart& copy, Section& section) {
    Handle root = pdf.getRoot().getKey("/StructTreeRoot");
    Handle document = first_of(root.getKey("/K"));
    if (!document.isDictionary() || !root.hasKey("/ParentTree")) return;
    if (roles_.empty() && root.hasKey("/RoleMap")) {
      roles_ = "/RoleMap" + copy.value(root.getKey("/RoleMap"));
    }
    section.parts.push_back(copy.number_of(document));
    int next = parents_;
    QPDFNumberTreeObjectHelper parents(root.getKey("/ParentTree"), pdf);
    for (auto [key, value] : parents) {
      const int at = parents_ + static_cast<int>(key);
      if (value.isIndirect()) {
        holders_[at] = copy.number_of(value);
      } else {
        holders_[at] = out_.reserve();
        out_.add(holders_[at], copy.value(value));
      }
      next = std::max(next, at + 1);
    }
    parents_ = next;
    if (!root.hasKey("/IDTree")) return;
    QPDFNameTreeObjectHelper ids(root.getKey("/IDTree"), pdf);
    for (auto [id, element] : ids) {
      ids_.emplace_back(ids_of(parts_) + id, copy.number_of(element));
    }
  }

  void take_files(QPDF& pdf, PdfPart& copy) {
    QPDFEmbeddedFileDocumentHelper embedded(pdf);
    for (auto& [name, file] : embedded.getEmbeddedFiles()) {
      files_.emplace_back(name, copy.number_of(file->getObjectHandle()));
    }
  }

  void put_pages() {
    std::vector<int> nodes;
    for (const Section* const section : {&front_, &body_}) {
      for (std::size_t i = 0; i < section->nodes.size(); ++i) {
        const auto some =
            std::span(section->pages)
                .subspan(i * pages_a_node)
                .first(std::min(pages_a_node, section->pages.size() - i * pages_a_node));
        std::vector<int> kids;
        for (const PageObject& page : some) kids.push_back(page.number);
        out_.add(section->nodes[i], fmt::format("<</Type/Pages/Parent {} 0 R/Count {}/Kids[{}]>>",
                                                nodes_, kids.size(), references(kids)));
        nodes.push_back(section->nodes[i]);
      }
    }
    out_.add(nodes_, fmt::format("<</Type/Pages/Count {}/Kids[{}]>>",
                                 front_.pages.size() + body_.pages.size(), references(nodes)));
  }

  void put_structure() {
    const bool spaced = namespace_ != 0;
    out_.add(document_, fmt::format("<</Type/StructElem/S/Document/P {} 0 R/K[{}{}]{}>>",
                                    structure_, references(front_.parts), references(body_.parts),
                                    spaced ? fmt::format("/NS {} 0 R", namespace_) : ""));
    const std::string ids = ids_.empty() ? "" : "/IDTree" + name_tree(out_, ids_);
    out_.add(
        structure_,
        fmt::format("<</Type/StructTreeRoot/K[{} 0 R]/ParentTreeNextKey {}/ParentTree{}{}{}{}>>",
                    document_, parents_, number_tree(out_, holders_), ids, roles_,
                    spaced ? fmt::format("/Namespaces[{} 0 R]", namespace_) : ""));
  }

  /// As of a document of its own, but for what the parts made of it.
  void put_catalog(QPDF& pdf, PdfPart& copy, int outline) {
    Handle root = pdf.getRoot();
    for (const char* key : {"/Pages", "/StructTreeRoot", "/Outlines", "/Names", "/AF",
                            "/PageLabels", "/PageMode", "/Type"}) {
      root.removeKey(key);
    }
    std::string says = fmt::format("<</Type/Catalog{}/Pages {} 0 R/StructTreeRoot {} 0 R",
                                   copy.entries(root), nodes_, structure_);
    if (outline != 0) says += fmt::format("/PageMode/UseOutlines/Outlines {} 0 R", outline);
    const std::size_t front = front_.pages.size();
    says += front > 0 ? fmt::format("/PageLabels<</Nums[0<</S/r>>{}<</S/D>>]>>", front)
                      : "/PageLabels<</Nums[0<</S/D>>]>>";
    if (!files_.empty()) {
      std::vector<int> associated;
      for (const auto& [name, number] : files_) associated.push_back(number);
      says += fmt::format("/AF[{}]/Names<</EmbeddedFiles{}>>", references(associated),
                          name_tree(out_, files_));
    }
    out_.add(catalog_, says + ">>");
  }

  PdfStandard standard_;
  PdfObjects out_;
  int catalog_, info_, nodes_, structure_, document_;
  int namespace_ = 0;
  SharedType type_;
  Section front_, body_;
  int parts_ = 0, parents_ = 0;
  std::map<std::string, int> fonts_;  ///< by their names on pages, which all parts share
  std::map<int, int> holders_;        ///< the tree of parents
  std::vector<std::pair<std::string, int>> ids_, files_;
  std::string roles_;
};

PdfBook::PdfBook(Take take, PdfStandard standard)
    : writer_(std::make_unique<Writer>(std::move(take), standard)) {}
PdfBook::~PdfBook() = default;

namespace {
/// libqpdf tells of what it cannot do by exceptions.
template <typename Work>
bool told(DiagnosticSink& sink, Work work) {
  const std::size_t before = sink.error_count();
  try {
    work();
  } catch (const std::exception& fault) {
    sink.error("pdf-failed", {}, fmt::format("the book could not be made: {}", fault.what()));
  }
  return sink.error_count() == before;
}
}  // namespace

bool PdfBook::add(std::span<const Frame> pages, const DocumentInfo& part,
                  std::span<const Attachment> files, Where where, DiagnosticSink& sink) {
  return told(sink, [&] { writer_->add(pages, part, files, where, sink); });
}

std::size_t PdfBook::pages() const {
  return writer_->pages();
}

bool PdfBook::finish(const DocumentInfo& whole, std::span<const OutlineEntry> outline,
                     DiagnosticSink& sink) {
  return told(sink, [&] { writer_->finish(whole, outline, sink); });
}
}  // namespace furnish
