#include "output/pdf_contents.h"

#include <fmt/format.h>

#include <string_view>

#include "output/compact_content.h"

namespace furnish {
namespace {
using Handle = QPDFObjectHandle;

/// A dictionary that may be changed though others have it too.
Handle own_copy(Handle dictionary) {
  return dictionary.isDictionary() ? dictionary.shallowCopy() : Handle::newDictionary();
}
}  // namespace

/// A part's objects that stand for shapes, which are in the whole already.
std::vector<Handle> PdfContents::put_shapes(QPDF& pdf, const std::vector<SharedShape>& shapes,
                                            PdfPart& copy) {
  std::vector<Handle> handles;
  for (const SharedShape& shape : shapes) {
    const int number = number_of(shape);
    handles.push_back(pdf.makeIndirectObject(Handle::newDictionary()));
    copy.stands_for(handles.back(), number);
  }
  return handles;
}

int PdfContents::number_of(const SharedShape& shape) {
  int& known = of_many_[shape.of_many ? shape.content : std::string()];
  if (shape.of_many && known != 0) return known;
  known = out_.reserve();
  constexpr int margin = SharedShape::margin;
  out_.add_packed(known,
                  fmt::format("/Type/XObject/Subtype/Form/Resources<<>>/BBox[-{0} -{0} {1} {2}]",
                              margin, shape.width + margin, shape.height + margin),
                  shape.content);
  return known;
}

void PdfContents::put(QPDF& pdf, const std::vector<Handle>& pages, PdfPart& copy) {
  std::vector<std::shared_ptr<Buffer>> kept;
  std::vector<PageContent> contents;
  std::vector<Handle> streams;
  for (Handle page : pages) {
    Handle content = page.getKey("/Contents");
    streams.push_back(content);
    if (!content.isStream()) {
      contents.emplace_back();
      continue;
    }
    kept.push_back(content.getStreamData(qpdf_dl_generalized));
    Handle box = page.getKey("/MediaBox");
    contents.push_back(
        {{reinterpret_cast<const char*>(kept.back()->getBuffer()), kept.back()->getSize()},
         box.getArrayItem(2).getNumericValue(),
         box.getArrayItem(3).getNumericValue()});
  }
  const CompactContents compact = compact_contents(contents);
  const std::vector<Handle> shapes = put_shapes(pdf, compact.shapes, copy);
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (!streams[i].isStream()) continue;
    const int number = out_.reserve();
    out_.add_packed(number, {}, compact.pages[i].content);
    copy.stands_for(streams[i], number);
    Handle page = pages[i];
    Handle resources = own_copy(page.getKey("/Resources"));
    Handle objects = own_copy(resources.getKey("/XObject"));
    for (const std::size_t shape : compact.pages[i].shapes) {
      objects.replaceKey(name_of_shape(shape), shapes[shape]);
    }
    if (!compact.pages[i].shapes.empty()) resources.replaceKey("/XObject", objects);
    page.replaceKey("/Resources", resources);
  }
}
}  // namespace furnish
