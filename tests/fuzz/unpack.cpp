#include <string>

#include "fuzz/targets.h"
#include "output/attachments.h"

namespace furnish::fuzz {
void unpack(std::string_view bytes) {
  DiagnosticSink sink;
  const AttachmentBounds bounds{std::size_t{64} * 1024, 16, std::size_t{1024} * 1024,
                                std::size_t{64} * 1024 * 1024};
  const auto files = attachments_of(std::string(bytes), sink, bounds);
  hold(files.empty() || !sink.has_errors(), "attachments, or a fault");
  hold(files.size() <= bounds.count, "no more attachments than the bound");
  for (const Attachment& one : files) {
    hold(one.bytes.size() <= bounds.file, "no attachment larger than the bound");
    hold(one.name.find('/') == std::string::npos, "a name without a folder");
  }
}
}  // namespace furnish::fuzz
