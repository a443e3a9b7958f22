#include "output/structure.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "output/text_stretches.h"

namespace furnish {
namespace {
bool is_text(const Part& part) {
  return part.mark != nullptr && std::holds_alternative<TextMark>(*part.mark);
}

bool holds_element(const std::vector<Part>& parts) {
  return std::ranges::any_of(parts, [](const Part& part) { return part.element != nullptr; });
}

/// Elements that have no content of their own, whatever the marks say.
bool only_groups(Tag tag) {
  switch (tag) {
    case Tag::document:
    case Tag::section:
    case Tag::table:
    case Tag::row:
    case Tag::list:
    case Tag::item:
      return true;
    default:
      return false;
  }
}

/// Elements that stand in a line of text.
bool holds_inline(Tag tag) {
  switch (tag) {
    case Tag::heading1:
    case Tag::heading2:
    case Tag::paragraph:
    case Tag::span:
    case Tag::strong:
    case Tag::emphasis:
    case Tag::item_label:
    case Tag::figure:
    case Tag::form:
    case Tag::link:
      return true;
    default:
      return false;
  }
}

/// Elements whose own words may be in several languages; drawings in others are content too.
bool holds_words(Tag tag) {
  return !only_groups(tag) && tag != Tag::figure && tag != Tag::form && tag != Tag::link;
}

class Reader {
 public:
  explicit Reader(const Frame& frame)
      : next_(frame.marks.data()), end_(next_ + frame.marks.size()) {
    has_title_ = std::ranges::any_of(frame.marks, [](const Mark& mark) {
      const auto* tag = std::get_if<OpenTag>(&mark);
      return tag != nullptr && tag->role == Structure::title;
    });
  }

  /// The marks up to the close of `parent`, or to the end.
  std::vector<Part> parts(Tag parent) {
    std::vector<Part> list;
    while (next_ != end_) {
      const Mark& mark = *next_++;
      if (std::holds_alternative<CloseTag>(mark)) break;
      if (const auto* opened = std::get_if<OpenTag>(&mark)) {
        add_element(*opened, parent, list);
      } else if (const auto* link = std::get_if<LinkMark>(&mark)) {
        list.push_back({nullptr, std::make_unique<Element>(Element{Tag::link, nullptr, link, {}})});
      } else {
        list.push_back({&mark, nullptr});
      }
    }
    return list;
  }

 private:
  Tag tag_for(Structure role, Tag parent) const {
    switch (role) {
      case Structure::document:
        return Tag::document;
      case Structure::section:
        return Tag::section;
      case Structure::title:
        return Tag::heading1;
      case Structure::heading:
        return has_title_ ? Tag::heading2 : Tag::heading1;
      case Structure::paragraph:
        return Tag::paragraph;
      case Structure::label:
        if (parent == Tag::item) return Tag::item_label;
        return holds_inline(parent) ? Tag::span : Tag::paragraph;
      case Structure::table:
        return Tag::table;
      case Structure::row:
        return Tag::row;
      case Structure::header_cell:
        return Tag::header_cell;
      case Structure::cell:
        return Tag::cell;
      case Structure::list:
        return Tag::list;
      case Structure::item:
        return Tag::item;
      case Structure::figure:
        return Tag::figure;
      case Structure::caption:
        return Tag::caption;
      case Structure::form:
      case Structure::tick:
        return Tag::form;
      case Structure::sign:
        return Tag::span;
      case Structure::link:
        return Tag::link;
      case Structure::note:
        return Tag::note;
    }
    return Tag::paragraph;
  }

  void add_element(const OpenTag& opened, Tag parent, std::vector<Part>& list) {
    Element element{tag_for(opened.role, parent), &opened, nullptr, {}, opened.language};
    element.parts = parts(element.tag);
    if (opened.role == Structure::link) take_link(element);
    if (element.tag == Tag::item) gather_body(element.parts);
    wrap_loose_content(element);
    if (holds_words(element.tag)) part_stretches(element);
    if (only_groups(element.tag) && !holds_element(element.parts)) {
      std::ranges::move(element.parts, std::back_inserter(list));
    } else {
      list.push_back({nullptr, std::make_unique<Element>(std::move(element))});
    }
  }

  /// Of the words that a link lies on.
  static void take_link(Element& element) {
    const auto found = std::ranges::find_if(
        element.parts, [](const Part& part) { return part.element && part.element->link; });
    if (found == element.parts.end()) {
      element.tag = Tag::span;
      return;
    }
    element.link = found->element->link;
    element.parts.erase(found);
  }

  static bool is_label(const Part& part) {
    return part.element && part.element->tag == Tag::item_label;
  }

  /// A box to tick and a sign before an item are its label; words of a label that come next are of
  /// the same one.
  static void make_labels(std::vector<Part>& parts) {
    for (std::size_t i = 0; i < parts.size(); ++i) {
      if (!parts[i].element || parts[i].element->opened == nullptr) continue;
      const Structure role = parts[i].element->opened->role;
      if (role != Structure::tick && role != Structure::sign) continue;
      auto label = std::make_unique<Element>(Element{Tag::item_label, nullptr, nullptr, {}});
      label->parts.push_back(std::move(parts[i]));
      if (i + 1 < parts.size() && is_label(parts[i + 1])) {
        parts[i + 1].element->tag = Tag::span;
        label->parts.push_back(std::move(parts[i + 1]));
        parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(i) + 1);
      }
      parts[i] = {nullptr, std::move(label)};
      return;
    }
  }

  /// A list item holds labels and bodies only (ISO 32000-1, table 336).
  static void gather_body(std::vector<Part>& parts) {
    make_labels(parts);
    std::vector<Part> gathered;
    for (Part& part : parts) {
      const bool label = is_label(part);
      if (!label && (gathered.empty() || gathered.back().element->tag == Tag::item_label)) {
        gathered.push_back(
            {nullptr, std::make_unique<Element>(Element{Tag::item_body, nullptr, nullptr, {}})});
      }
      std::vector<Part>& target = label ? gathered : gathered.back().element->parts;
      target.push_back(std::move(part));
    }
    for (Part& part : gathered) {
      if (part.element->tag == Tag::item_body) wrap_loose_content(*part.element);
    }
    parts = std::move(gathered);
  }

  /// Gives runs of text that stand beside elements, or in a group, elements of their own.
  static void wrap_loose_content(Element& holder) {
    if (!only_groups(holder.tag) && !holds_element(holder.parts)) return;
    const Tag wrap = holds_inline(holder.tag) ? Tag::span : Tag::paragraph;
    const bool drawings_too = holder.tag == Tag::figure;
    std::vector<Part> wrapped;
    bool in_run = false;
    for (Part& part : holder.parts) {
      const bool content = is_text(part) || (drawings_too && part.mark != nullptr);
      if (content && !in_run) {
        wrapped.push_back(
            {nullptr, std::make_unique<Element>(Element{wrap, nullptr, nullptr, {}})});
      }
      in_run = content;
      std::vector<Part>& target = content ? wrapped.back().element->parts : wrapped;
      target.push_back(std::move(part));
    }
    for (Part& part : wrapped) {
      const bool made = part.element && part.element->opened == nullptr;
      if (made && holder.tag != Tag::figure && holds_words(part.element->tag)) {
        part_stretches(*part.element);
      }
    }
    holder.parts = std::move(wrapped);
  }

  const Mark* next_;
  const Mark* end_;
  bool has_title_ = false;
};
}  // namespace

const char* cairo_name(Tag tag) {
  return pdf_name(tag == Tag::strong || tag == Tag::emphasis ? Tag::span : tag);
}

const char* pdf_name(Tag tag) {
  switch (tag) {
    case Tag::document:
      return "Document";
    case Tag::section:
      return "Sect";
    case Tag::heading1:
      return "H1";
    case Tag::heading2:
      return "H2";
    case Tag::paragraph:
      return "P";
    case Tag::span:
      return "Span";
    case Tag::strong:
      return "Strong";
    case Tag::emphasis:
      return "Em";
    case Tag::table:
      return "Table";
    case Tag::row:
      return "TR";
    case Tag::header_cell:
      return "TH";
    case Tag::cell:
      return "TD";
    case Tag::list:
      return "L";
    case Tag::item:
      return "LI";
    case Tag::item_label:
      return "Lbl";
    case Tag::item_body:
      return "LBody";
    case Tag::figure:
      return "Figure";
    case Tag::caption:
      return "Caption";
    case Tag::form:
      return "Form";
    case Tag::note:
      return "Note";
    case Tag::link:
      return "Link";
  }
  return "P";
}

std::string place_name(std::size_t page, std::string_view id) {
  return std::to_string(page + 1) + ":" + std::string(id);
}

std::vector<Part> structure_of(const Frame& frame) {
  return Reader(frame).parts(Tag::document);
}
}  // namespace furnish
