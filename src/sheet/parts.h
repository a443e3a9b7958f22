#pragma once

#include <string>
#include <vector>

#include "page/paragraph.h"
#include "page/rows.h"
#include "sheet/sheet.h"

namespace furnish {

// What every sheet is put together from.

/// Between a label and the text that runs on after it: a figure space, half an em wide. The family
/// has no en or em space, for which a font of the machine would be searched.
inline constexpr const char* after_label = "\u2007";

/// One row of a sheet before it is decided how it is set: a label, a text, points under each other
/// of which some differ from the style, and lines that wait for a hand.
struct SheetRow {
  struct Point {
    std::vector<TextSpan> text;
    bool differs = false;
    ApartText apart{};  ///< under it, in another language
  };
  std::string label{};
  std::vector<TextSpan> text{};
  SourceSpan span{};
  std::vector<Point> points{};
  std::vector<std::string> hand_lines{};  ///< label of each
  Role role = Role::body;
  ApartText apart{};         ///< under the text, in another language
  bool at_the_door = false;  ///< needed to open the kennel and to hand the dog back
  Origin origin() const { return {label, span}; }
};
/// With its text and points as paragraphs under each other, beside its label.
LabelRow label_row(const SheetRow&);
/// As one text that begins with its label.
std::vector<TextSpan> run_in(const SheetRow&, TextSpan label);

/// First letter in upper case, a full stop at the end unless there is one or another mark.
std::string sentence(const std::string&);
/// Its first sentence; one that is in another language stays marked as that.
std::string first_sentence(const std::string&);
/// Collects sentences and strong words into one text, a space between them.
class Sentences {
 public:
  explicit Sentences(const Words&);
  void add(const std::string& text) { put(sentence(text), std::nullopt); }
  void add_strong(const std::string& text) { put(text, Face::semibold); }
  /// "Hold: under the jaw." Nothing without a text.
  void add_headed(const std::string& head, const std::string& text);
  std::vector<TextSpan> take() { return std::move(spans_); }
  bool empty() const { return spans_.empty(); }

 private:
  void put(const std::string& text, std::optional<Face>);
  std::string colon_;
  std::vector<TextSpan> spans_;
};

/// Blocks under each other.
BlockPtr column(std::vector<BlockPtr>);
/// Room between them, in parts of the rhythm, that may shrink to half and takes of what is left.
BlockPtr gap(double wanted);
/// A title of a part of the page.
BlockPtr heading(std::string, Role, Face);
/// The pet's name and, at the other end of the line, what is said beside it, a line each.
BlockPtr sheet_head(const Pet&, std::vector<std::vector<TextSpan>> facts, Length between);
/// The last line of a sheet: a text at each end.
BlockPtr sheet_foot(std::string left, std::string right);

/// A page of the input's kind on its paper; the layouts and the foot are the sheet's to add.
PageRequest page_request(const SheetInput&);
/// A page with what its document says of itself.
Sheet finished(ComposedPage, const SheetDesk&, std::string title, Phrase subject);
}  // namespace furnish
