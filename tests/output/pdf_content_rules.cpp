#include <qpdf/QPDFObjectHandle.hh>

#include <array>
#include <regex>
#include <set>

#include "output/pdf_rule_groups.h"

namespace furnish::test {
namespace {
using Handle = QPDFObjectHandle;
using Faults = std::vector<std::string>;

/// Follows marked content through a page, by libqpdf's own parser, and counts what is shown in
/// none.
class MarkedContent final : public Handle::ParserCallbacks {
 public:
  void handleObject(Handle object, std::size_t, std::size_t) override {
    if (!object.isOperator()) {
      operands_.push_back(object);
      return;
    }
    handle(object.getOperatorValue());
    operands_.clear();
  }
  void handleEOF() override {
    if (depth_ != 0) faults.emplace_back("marked content is not closed");
  }
  Faults faults;

 private:
  void handle(const std::string& op) {
    static const std::set<std::string> shows{"S",  "s",  "f",  "F", "f*", "B",  "B*", "b",
                                             "b*", "Tj", "TJ", "'", "\"", "Do", "sh", "EI"};
    static const std::set<std::string> path{"m", "l", "c", "v", "y", "h", "re"};
    if (op == "BDC" || op == "BMC") {
      if (in_path_) faults.push_back(op + " inside a path");
      const bool named = op == "BDC" && operands_.size() == 2 && operands_[1].isDictionary() &&
                         operands_[1].hasKey("/MCID");
      const bool artifact = !operands_.empty() && operands_[0].isNameAndEquals("/Artifact");
      // What stands inside an element or an artifact may say more of it, as its text (14.9.4).
      if (depth_ == 0 && !named && !artifact) faults.push_back("content of no element");
      if (depth_ > 0 && (named || artifact)) faults.push_back("an element inside content");
      ++depth_;
    } else if (op == "EMC") {
      if (in_path_) faults.emplace_back("EMC inside a path");
      if (--depth_ < 0) faults.emplace_back("EMC without a beginning");
    } else if (shows.contains(op) && depth_ == 0) {
      faults.push_back("'" + op + "' shows something that is neither tagged nor artifact");
    }
    if (path.contains(op)) in_path_ = true;
    if (op == "n" || (shows.contains(op) && op != "Tj" && op != "TJ")) in_path_ = false;
  }

  std::vector<Handle> operands_;
  int depth_ = 0;
  bool in_path_ = false;
};

/// Notes in which numbered content something is shown, by libqpdf's own parser.
class ShownContent final : public Handle::ParserCallbacks {
 public:
  void handleObject(Handle object, std::size_t, std::size_t) override {
    if (!object.isOperator()) {
      operands_.push_back(object);
      return;
    }
    static const std::set<std::string> shows{"S", "s",  "f",  "F",  "f*", "B",  "B*",
                                             "b", "b*", "Tj", "TJ", "'",  "\"", "Do"};
    const std::string op = object.getOperatorValue();
    if (op == "BDC" || op == "BMC") {
      const bool named = operands_.size() == 2 && operands_[1].isDictionary() &&
                         operands_[1].getKey("/MCID").isInteger();
      open_.push_back(named           ? operands_[1].getKey("/MCID").getIntValueAsInt()
                      : open_.empty() ? -1
                                      : open_.back());
    } else if (op == "EMC" && !open_.empty()) {
      open_.pop_back();
    } else if (shows.contains(op) && !open_.empty()) {
      shown.insert(open_.back());
    }
    operands_.clear();
  }
  void handleEOF() override {}
  std::set<int> shown;

 private:
  std::vector<Handle> operands_;
  std::vector<int> open_;
};

Faults all_marked(const PdfFile& file) {
  Faults faults;
  for (Handle page : file.pages()) {
    MarkedContent content;
    Handle::parseContentStream(page.getKey("/Contents"), &content);
    faults.insert(faults.end(), content.faults.begin(), content.faults.end());
  }
  return faults;
}

Faults tab_order(const PdfFile& file) {
  Faults faults;
  for (Handle page : file.pages()) {
    if (!page.getKey("/Tabs").isNameAndEquals("/S")) faults.emplace_back("a page without Tabs S");
  }
  return faults;
}

Faults link_text(const PdfFile& file) {
  Faults faults;
  for (Handle page : file.pages()) {
    for (Handle annotation : items_of(page.getKey("/Annots"))) {
      Handle text = annotation.getKey("/Contents");
      if (!text.isString() || text.getUTF8Value().empty()) {
        faults.emplace_back("an annotation without Contents");
      }
    }
  }
  return faults;
}

/// ISO 19005-3, 6.3.2: Print set; Hidden, Invisible, ToggleNoView and NoView clear.
Faults links_printed(const PdfFile& file) {
  constexpr int invisible = 1, hidden = 2, print = 4, no_view = 32, toggle = 256;
  Faults faults;
  for (Handle page : file.pages()) {
    for (Handle annotation : items_of(page.getKey("/Annots"))) {
      Handle flags = annotation.getKey("/F");
      const int f = flags.isInteger() ? flags.getIntValueAsInt() : 0;
      if ((f & (print | hidden | invisible | no_view | toggle)) != print) {
        faults.emplace_back("an annotation that is not printed");
      }
    }
  }
  return faults;
}

Faults links_in_structure(const PdfFile& file) {
  Faults faults;
  for (Handle page : file.pages()) {
    for (Handle annotation : items_of(page.getKey("/Annots"))) {
      if (!annotation.getKey("/StructParent").isInteger()) {
        faults.emplace_back("an annotation outside the structure tree");
      }
    }
  }
  return faults;
}

std::vector<Handle> fonts(const PdfFile& file) {
  std::vector<Handle> list;
  for (Handle object : file.pdf().getAllObjects()) {
    if (object.isDictionary() && object.getKey("/Type").isNameAndEquals("/Font"))
      list.push_back(object);
  }
  return list;
}

Faults glyph_numbers(const PdfFile& file) {
  Faults faults;
  for (Handle font : fonts(file)) {
    if (!font.getKey("/Subtype").isNameAndEquals("/CIDFontType2")) continue;
    Handle map = font.getKey("/CIDToGIDMap");
    if (!map.isNameAndEquals("/Identity") && !map.isStream()) {
      faults.emplace_back("a font without CIDToGIDMap");
    }
  }
  return faults;
}

Faults embedded_fonts(const PdfFile& file) {
  Faults faults;
  for (Handle font : fonts(file)) {
    Handle descriptor = font.getKey("/FontDescriptor");
    if (descriptor.isDictionary()) {
      if (!descriptor.getKey("/FontFile2").isStream() &&
          !descriptor.getKey("/FontFile3").isStream()) {
        faults.emplace_back("a font that is not embedded");
      }
    } else if (!font.hasKey("/DescendantFonts")) {
      faults.emplace_back("a font without a descriptor");
    }
  }
  return faults;
}

Faults unicode_fonts(const PdfFile& file) {
  Faults faults;
  for (Handle font : fonts(file)) {
    const bool descendant = font.getKey("/Subtype").isNameAndEquals("/CIDFontType2") ||
                            font.getKey("/Subtype").isNameAndEquals("/CIDFontType0");
    if (!descendant && !font.getKey("/ToUnicode").isStream()) {
      faults.emplace_back("a font without ToUnicode");
    }
  }
  return faults;
}

/// Of U+E000 to U+F8FF, as UTF-8 has them.
bool is_private(QPDFObjectHandle text) {
  if (!text.isString()) return false;
  const std::string utf8 = text.getUTF8Value();
  for (std::size_t i = 0; i + 1 < utf8.size(); ++i) {
    const auto first = static_cast<unsigned char>(utf8[i]),
               second = static_cast<unsigned char>(utf8[i + 1]);
    if (first == 0xEE || (first == 0xEF && second < 0xA4)) return true;
  }
  return false;
}

/// Notes whether a span of a page says what it stands for in characters of private use.
class PrivateSpans final : public Handle::ParserCallbacks {
 public:
  void handleObject(Handle object, std::size_t, std::size_t) override {
    if (object.isDictionary()) any = any || is_private(object.getKey("/ActualText"));
  }
  void handleEOF() override {}
  bool any = false;
};

/// Nobody knows what such characters mean: neither a reader nor who searches.
Faults no_private_use(const PdfFile& file) {
  Faults faults;
  for (Handle page : file.pages()) {
    PrivateSpans spans;
    Handle::parseContentStream(page.getKey("/Contents"), &spans);
    if (spans.any) faults.emplace_back("a span of private characters");
  }
  for (Handle element : file.elements()) {
    if (is_private(element.getKey("/ActualText")) || is_private(element.getKey("/Alt"))) {
      faults.emplace_back("an element that is said in private characters");
    }
  }
  for (Handle font : fonts(file)) {
    Handle map = font.getKey("/ToUnicode");
    if (!map.isStream()) continue;
    const auto data = map.getStreamData();
    const std::string text(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
    static const std::regex private_code("> <(e[0-9a-f]{3}|f[0-8][0-9a-f]{2})>");
    if (std::regex_search(text, private_code)) faults.emplace_back("a font of private characters");
  }
  return faults;
}

Faults no_interpolation(const PdfFile& file) {
  Faults faults;
  for (Handle object : file.pdf().getAllObjects()) {
    if (!object.isStream()) continue;
    Handle flag = object.getDict().getKey("/Interpolate");
    if (flag.isBool() && flag.getBoolValue()) faults.emplace_back("an interpolated image");
  }
  return faults;
}

constexpr std::array rules{
    PdfRule{"all-marked", "ISO 14289-1, 7.1", false, all_marked},
    PdfRule{"tab-order", "ISO 14289-1, 7.18.3", false, tab_order},
    PdfRule{"link-text", "ISO 14289-1, 7.18.5", false, link_text},
    PdfRule{"links-printed", "ISO 19005-3, 6.3.2", false, links_printed},
    PdfRule{"links-in-structure", "ISO 14289-1, 7.18.5", true, links_in_structure},
    PdfRule{"glyph-numbers", "ISO 19005-3, 6.2.11.3.2", false, glyph_numbers},
    PdfRule{"embedded-fonts", "ISO 19005-3, 6.2.11.4", true, embedded_fonts},
    PdfRule{"unicode-fonts", "ISO 19005-3, 6.2.11.7", true, unicode_fonts},
    PdfRule{"no-private-use", "ISO 14289-2, 8.4.3; ISO 19005-3, 6.2.11.7", true, no_private_use},
    PdfRule{"no-interpolation", "ISO 19005-3, 6.2.8", true, no_interpolation}};
}  // namespace

const std::set<int>& PdfFile::shown_on(Handle page) const {
  const auto [at, made] = shown_.try_emplace(page.getObjGen());
  if (made) {
    ShownContent content;
    Handle::parseContentStream(page.getKey("/Contents"), &content);
    at->second = std::move(content.shown);
  }
  return at->second;
}

std::span<const PdfRule> content_rules() {
  return rules;
}
}  // namespace furnish::test
