#pragma once

#include <memory>
#include <string>
#include <vector>

#include "page/paragraph.h"
#include "page/rows.h"

namespace furnish {

/// How strongly a row is shown, without colour, strongest first.
enum class Gravity : std::uint8_t {
  row,      ///< the whole row black, text white
  panel,    ///< a black panel behind the word
  bar,      ///< a thick bar before the word
  hairline  ///< a thin line before the word
};

/// In parts of the rhythm: on both sides together of a signal word that is as large as a label and
/// stands in the labels' column; and from that column to the texts.
inline constexpr double label_word_air = 0.8, label_gutter = 0.6;

/// Word, statement, what to do. The word is set as given (capitals are the caller's); what goes on
/// from another entry has none.
struct AlertEntry {
  Gravity gravity = Gravity::hairline;
  std::string word, statement;
  std::string action;  ///< may be empty
  Origin origin{};
  Role role = Role::alert;  ///< of the statement; the action never stands larger
  ApartText apart{};        ///< the rest of it in another language, under the two
  Role word_role = Role::action;
};

/// Alerts under each other, in the order given, statements and actions at the page's text edge.
class Alerts final : public Block {
 public:
  /// `beside`: the action in its own column at the right of the statement, for wide pages.
  enum class Actions : std::uint8_t { below, beside };
  /// `rule_above`: weight of a rule on top that what is black grows out of; zero for none.
  Alerts(std::vector<AlertEntry>, std::shared_ptr<LabelColumn>, Actions = Actions::below,
         Length rule_above = {}, Origin = {});
  Extent measure(Length width, const Setting&) const override;
  void place(const Rect&, const Setting&, Frame&) const override;
  std::vector<Part> parts(Length width, const Setting&) const override;

 private:
  class Row;
  BlockPtr stack_;  ///< null if there are none
};
}  // namespace furnish
