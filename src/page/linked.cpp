#include "page/linked.h"

#include <utility>

namespace furnish {

Linked::Linked(BlockPtr content, std::string id, std::string says)
    : content_(std::move(content)), id_(std::move(id)), says_(std::move(says)) {}

Extent Linked::measure(Length width, const Setting& setting) const {
  return content_->measure(width, setting);
}

void Linked::place(const Rect& box, const Setting& setting, Frame& frame) const {
  const TagScope tag(frame, Structure::link);
  frame.marks.emplace_back(LinkMark{box, id_, says_});
  content_->place(box, setting, frame);
}

Length Linked::natural_width(const Setting& setting) const {
  return content_->natural_width(setting);
}

std::vector<Block::Part> Linked::parts(Length width, const Setting& setting) const {
  return content_->parts(width, setting);
}
}  // namespace furnish
