#pragma once

#include <vector>

#include "figure/figure.h"
#include "sheet/parts.h"
#include "sheet/style_rows.h"

namespace furnish {

/// How a front is set, most generous first. `open`: signal words and labels in columns of their
/// own. `dense`: they run into their texts. `tight`: as dense, the dog just half of the page wide.
/// `in_two`: as tight, the table in two columns. `signed_rows`: as tight, and of a caution that
/// stands above rows say the signal word alone. `lean`: as tight, without what
/// StyleFront::left_out() says.
enum class FrontStyle : std::uint8_t { open, dense, tight, in_two, signed_rows, lean };

/// What is needed at the dog: who it is, what can hurt, the finished dog, how to hold it, what is
/// cut. References must outlive it.
class StyleFront {
 public:
  StyleFront(const std::vector<StyleRow>& rows, const SheetDesk& desk);

  /// All of it, under each other. `portrait`: height of the photo in the corner; zero is none.
  std::vector<BlockPtr> whole(FrontStyle, Length portrait) const;
  /// What a lean one leaves to the other side: what is to be looked at again, and wishes. What
  /// changes how the dog is handled stays.
  std::vector<SheetRow> left_out() const;
  /// All but the table, for paper that is too small for both.
  std::vector<BlockPtr> without_table(Length portrait) const;
  /// All of it in pieces that any paper holds.
  std::vector<BlockPtr> pieces() const;
  /// What without_table() leaves to the next side: in two columns, or in such pieces.
  std::vector<BlockPtr> table_in_two() const;
  std::vector<BlockPtr> table_in_pieces() const;

 private:
  std::vector<BlockPtr> who(bool roomy, const std::shared_ptr<LabelColumn>&, bool split) const;
  BlockPtr with_portrait(std::vector<BlockPtr>, Length height) const;
  BlockPtr band(FrontStyle) const;
  BlockPtr band(FrontStyle, const std::vector<SheetRow>& beside,
                const std::vector<SheetRow>& below) const;
  bool stays(const SheetRow&) const;
  BlockPtr figure(FrontStyle) const;
  BlockPtr looks(FrontStyle) const;
  bool has_bars() const;
  BlockPtr bars() const;
  Length text_width() const;
  Length figure_width(FrontStyle) const;

  const std::vector<StyleRow>& rows_;
  const SheetDesk& desk_;
  const SheetInput& input_;
  const SheetVoice& voice_;
  FigureInput figure_;
  DrawnDogPtr dog_;
};
}  // namespace furnish
