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

#include "output/drawn_pdf.h"
#include "output/pdf_contents.h"
#include "output/pdf_finish.h"
#include "output/pdf_leads.h"
#include "output/pdf_objects.h"
#include "output/pdf_pages.h"
#include "output/pdf_part.h"
#include "output/pdf_tree.h"
#include "output/pdf_two.h"
#include "output/plain_spans.h"

namespace furnish {
namespace {
using Handle = QPDFObjectHandle;
/// A PDF of ours, read again.
void read(QPDF& pdf, const std::string& bytes) {
  pdf.setSuppressWarnings(true);
  pdf.processMemoryFile("part", bytes.data(), bytes.size());
}

Handle first_of(Handle kids) {
  return kids.isArray() && kids.getArrayNItems() > 0 ? kids.getArrayItem(0) : kids;
}

bool is_part(Handle element) {
  return element.isDictionary() && element.getKey("/S").isNameAndEquals("/Part");
}
}  // namespace

class PdfBook::Writer {
 public:
  Writer(Take take, PdfStandard standard)
      : standard_(standard),
        out_(std::move(take), {.version = version_of(standard)}),
        catalog_(out_.reserve()),
        info_(standard == PdfStandard::ua1 ? out_.reserve() : 0),
        nodes_(out_.reserve()),
        structure_(out_.reserve()),
        document_(out_.reserve()),
        drawer_(standard),
        front_(out_),
        body_(out_) {}

  void add(std::span<const Frame> pages, const DocumentInfo& part,
           std::span<const Attachment> files, Where where, DiagnosticSink& sink) {
    if (const auto drawn = drawer_.draw(pages, part, files, sink)) take(*drawn, where);
  }

  void take(const BookPart& part, Where where) {
    QPDF pdf;
    read(pdf, part.bytes);
    fold_plain_spans(pdf);
    PdfPages& section = where == Where::body ? body_ : front_;
    PdfPart copy(out_, {ids_of(++parts_), parents_});
    share_fonts(pdf, copy);
    share_structure(pdf, copy, part);
    const std::size_t before = section.all().size();
    take_pages(pdf, copy, part.leads, section);
    for (const std::size_t end : part.ends) section.end_sheet(before + end);
    if (part.ends.empty()) section.end_sheet(section.all().size());
    take_structure(pdf, copy, part, section);
    take_files(pdf, copy);
    copy.copy_waiting();
  }

  void take_fonts(const BookPart& type) {
    QPDF pdf;
    read(pdf, type.bytes);
    PdfPart copy(out_, {});
    put_fonts(pdf, copy);
    copy.copy_waiting();
  }

  void carry(const Attachment& file, const DocumentInfo& info) {
    const int content = out_.reserve();
    const std::string entries = embedded_file(file, info).text();
    out_.add_packed(content, std::string_view(entries).substr(2, entries.size() - 4), file.bytes);
    carried_.push_back({content, pdf_text(says_of(file))});
  }

  /// pre: there are pages
  void finish(const DocumentInfo& whole, const BookEnd& end, DiagnosticSink& sink) {
    // The whole claims what only a file may that carries others.
    const bool carries = !files_.empty() || !end.names.empty();
    const auto last = drawer_.fonts(whole, sink, carries);
    if (!last) return;
    QPDF pdf;
    read(pdf, last->bytes);
    PdfPart copy(out_, {});
    put_fonts(pdf, copy);
    if (end.filler && !fill_up(*end.filler, whole, sink)) return;
    put_pages();
    put_structure();
    put_carried(end.names);
    const int first = put_outline(out_, end.outline, body_.all());
    put_catalog(pdf, copy, first);
    if (info_ != 0) out_.add(info_, "<<" + copy.entries(pdf.getTrailer().getKey("/Info")) + ">>");
    copy.copy_waiting();
    if (!out_.finish(catalog_, info_)) throw std::runtime_error("not all of it was written");
  }

  std::size_t pages() const { return body_.all().size(); }

 private:
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

  /// Those of all parts since the last time.
  void put_fonts(QPDF& pdf, PdfPart& copy) {
    Handle page = pdf.getAllPages().front();
    Handle fonts = page.getKey("/Resources").getKey("/Font");
    for (const auto& [name, number] : fonts_) {
      Handle font = fonts.isDictionary() ? fonts.getKey(name) : Handle::newNull();
      if (!font.isDictionary()) throw std::runtime_error("a font is not where it was");
      copy.copy_as(font, number);
    }
    fonts_.clear();
  }

  void take_pages(QPDF& pdf, PdfPart& copy, const std::vector<Leads>& leads, PdfPages& section) {
    std::vector<Handle> pages = pdf.getAllPages();
    pages.erase(pages.begin());
    const std::size_t begin = section.all().size();
    for (const Handle& page : pages) {
      Handle box = Handle(page).getKey("/MediaBox");
      copy.stands_for(page, section.add(box.getArrayItem(3).getNumericValue()).number);
    }
    if (standard_ == PdfStandard::ua2) find_elements(pdf, copy, pages, section);
    Handle names = pdf.getRoot().getKey("/Names");
    std::optional<QPDFNameTreeObjectHelper> places;
    if (names.isDictionary() && names.hasKey("/Dests")) places.emplace(names.getKey("/Dests"), pdf);
    const auto place = [&](const std::string& name) {
      if (const auto page = left_for(name)) return top_of(body_.all().at(*page));
      Handle found;
      if (!places || !places->findObject(name, found)) {
        throw std::runtime_error("a link leads nowhere");
      }
      return copy.value(found.isDictionary() ? found.getKey("/D") : found);
    };
    copy.set_places(place, [&](const std::string& name) {
      return element_at_top(body_.all().at(left_for(name).value()));
    });
    contents_.put(pdf, pages, copy);
    for (std::size_t i = 0; i < pages.size(); ++i) {
      Handle page = pages[i];
      lead_out(page, leads[i + 1]);
      page.removeKey("/Parent");
      out_.add(section.all()[begin + i].number,
               fmt::format("<</Parent {} 0 R{}>>", section.node_of(begin + i), copy.entries(page)));
    }
    copy.copy_waiting();
    copy.set_places({});
  }

  /// What the last pages of a section begin with.
  static void find_elements(QPDF& pdf, PdfPart& copy, const std::vector<Handle>& pages,
                            PdfPages& section) {
    Handle structure = pdf.getRoot().getKey("/StructTreeRoot");
    const auto first = first_on_pages(structure);
    const std::size_t begin = section.all().size() - pages.size();
    for (std::size_t i = 0; i < pages.size(); ++i) {
      const auto found = first.find(pages[i].getObjGen());
      section.begin_with(
          begin + i,
          copy.number_of(found != first.end() ? found->second : first_of(structure.getKey("/K"))));
    }
  }

  /// The elements of a part that become Parts of the whole's one document.
  static std::vector<Handle> parts_of(Handle document, const BookPart& part) {
    Handle pages = document.getKey("/K");
    if (!part.ends.empty() && is_part(first_of(pages))) return pages.getArrayAsVector();
    return {document};
  }

  /// In the whole's one namespace.
  void share_structure(QPDF& pdf, PdfPart& copy, const BookPart& part) {
    Handle root = pdf.getRoot().getKey("/StructTreeRoot");
    Handle document = first_of(root.getKey("/K"));
    if (!document.isDictionary() || !root.hasKey("/ParentTree")) return;
    const std::vector<Handle> parts = parts_of(document, part);
    const bool whole = parts.front().getObjGen() == document.getObjGen();
    copy.stands_for(whole ? root : document, document_);
    if (whole) document.replaceKey("/S", Handle::newName("/Part"));
    for (Handle one : parts) {
      if (!one.hasKey("/Lang")) one.replaceKey("/Lang", Handle::newUnicodeString(part.language));
    }
    Handle space = first_of(root.getKey("/Namespaces"));
    if (!space.isDictionary()) return;
    if (namespace_ == 0) {
      namespace_ = out_.reserve();
      out_.add(namespace_, space.unparseResolved());
    }
    copy.stands_for(space, namespace_);
  }

  void take_structure(QPDF& pdf, PdfPart& copy, const BookPart& part, PdfPages& section) {
    Handle root = pdf.getRoot().getKey("/StructTreeRoot");
    Handle document = first_of(root.getKey("/K"));
    if (!document.isDictionary() || !root.hasKey("/ParentTree")) return;
    for (const Handle& one : parts_of(document, part)) {
      section.parts.push_back(copy.number_of(one));
    }
    if (roles_.empty() && root.hasKey("/RoleMap")) {
      roles_ = "/RoleMap" + copy.value(root.getKey("/RoleMap"));
    }
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

  void put_carried(std::span<const std::string> names) {
    for (std::size_t i = 0; i < names.size(); ++i) {
      const auto& [content, says] = carried_.at(i);
      const std::string name = Handle::newUnicodeString(names[i]).unparse();
      files_.emplace_back(names[i], out_.reserve());
      out_.add(files_.back().second,
               fmt::format("<</Type/Filespec/F{0}/UF{0}/Desc{1}/AFRelationship/Source"
                           "/EF<</F {2} 0 R/UF {2} 0 R>>>>",
                           name, says, content));
    }
  }

  /// Draws the page that stands where parts want pages, and counts where it does.
  bool fill_up(const BookFiller& filler, const DocumentInfo& whole, DiagnosticSink& sink) {
    if (!body_.fill_up(filler.multiple, filler.last_too)) return true;
    const auto bytes = to_pdf({&filler.page, 1}, whole, {{}, {}, standard_}, sink);
    if (!bytes) return false;
    QPDF pdf;
    read(pdf, *bytes);
    PdfPart copy(out_, {});
    Handle page = pdf.getAllPages().front();
    contents_.put(pdf, {page}, copy);
    page.removeKey("/Parent");
    page.removeKey("/StructParents");
    filler_ = copy.entries(page);
    copy.copy_waiting();
    return true;
  }

  void put_pages() {
    const std::size_t count = front_.put_nodes(nodes_, {}) + body_.put_nodes(nodes_, filler_);
    out_.add(nodes_, fmt::format("<</Type/Pages/Count {}/Kids[{}{}]>>", count,
                                 references(front_.nodes()), references(body_.nodes())));
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
    const std::size_t front = front_.all().size();
    // Without front matter pages are numbered from 1 anyway.
    if (front > 0) says += fmt::format("/PageLabels<</Nums[0<</S/r>>{}<</S/D>>]>>", front);
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
  PdfContents contents_{out_};
  int catalog_, info_, nodes_, structure_, document_;
  int namespace_ = 0;
  PartDrawer drawer_;
  PdfPages front_, body_;
  int parts_ = 0, parents_ = 0;
  std::map<std::string, int> fonts_;  ///< by their names on pages, which all parts share
  std::map<int, int> holders_;        ///< the tree of parents
  std::vector<std::pair<std::string, int>> ids_, files_;
  std::vector<std::pair<int, std::string>> carried_;  ///< contents, and what they are
  std::string roles_, filler_;
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

bool PdfBook::take(const BookPart& part, Where where, DiagnosticSink& sink) {
  return told(sink, [&] { writer_->take(part, where); });
}

bool PdfBook::take_fonts(const BookPart& type, DiagnosticSink& sink) {
  return told(sink, [&] { writer_->take_fonts(type); });
}

bool PdfBook::carry(const Attachment& file, const DocumentInfo& part, DiagnosticSink& sink) {
  return told(sink, [&] { writer_->carry(file, part); });
}

std::size_t PdfBook::pages() const {
  return writer_->pages();
}

bool PdfBook::finish(const DocumentInfo& whole, const BookEnd& end, DiagnosticSink& sink) {
  return told(sink, [&] { writer_->finish(whole, end, sink); });
}
}  // namespace furnish
