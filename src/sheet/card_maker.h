#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "page/rows.h"
#include "sheet/card_alerts.h"
#include "sheet/card_rows.h"
#include "sheet/pieces.h"

namespace furnish {

/// How the front of a card is arranged.
struct CardWay {
  enum class Signals : std::uint8_t { hanging, run_in };
  Signals signals =
      Signals::hanging;  ///< signal words in the labels' column, or run into their texts
  bool asks = false;     ///< with lines for what the file of a new client lacks
  bool brief = false;    ///< notices in one row, points in one text, of the finish what differs
  /// With the figure of places not to touch, and with the photo.
  enum class Pictures : std::uint8_t { none, figure, all };
  Pictures pictures = Pictures::none;
};

/// Puts a card together: its head, its two layers, what is written by hand. `edge` is that of the
/// labels' column, one for all cards of a salon.
class CardMaker {
 public:
  CardMaker(const SheetDesk&, Length edge);

  /// The blocks of a front that keeps so much.
  std::vector<BlockPtr> front(const CardWay&, Front) const;
  /// What such a front leaves to the other side, in pieces: in columns, or labels run in. `filled`:
  /// where anything is left to it, also what no front has room for.
  enum class Other : std::uint8_t { needed, filled };
  std::vector<BlockPtr> rest(const CardWay&, Front, CardWay::Signals, Other) const;
  /// All of the card in pieces that any paper holds.
  std::vector<BlockPtr> all() const;
  FootText foot() const;
  /// Of what every front keeps, for the other sides; null if nothing can hurt.
  BlockPtr hurts() const;
  bool asks() const { return asks_; }
  /// True if a way with such pictures is another than one with fewer.
  bool has(CardWay::Pictures) const;

 private:
  struct Content {
    std::vector<CardAlert> alerts;
    std::vector<CardRow> rows;
  };
  /// Those of an order of keeping that `keeps` holds for.
  template <typename Keeps>
  std::vector<AlertEntry> entries(const Content&, Keeps) const;
  template <typename Keeps>
  std::vector<const CardRow*> rows(const Content&, CardLayer, bool asks, Keeps) const;

  std::shared_ptr<LabelColumn> labels() const { return std::make_shared<LabelColumn>(edge_); }
  BlockPtr alerts(const Content&, const CardWay&, Front) const;
  BlockPtr in_columns(std::vector<LabelRow>) const;
  BlockPtr layer(const std::vector<const CardRow*>&, bool brief) const;
  BlockPtr hand() const;
  std::vector<BlockPtr> with_portrait(std::vector<BlockPtr>) const;
  template <typename Goes>
  std::vector<BlockPtr> pieces(const Content&, CardWay::Signals, Goes) const;
  const Content& content(const CardWay&) const;

  const SheetDesk& desk_;
  const SheetInput& input_;
  const SheetVoice& voice_;
  Length edge_;
  Content full_;
  mutable std::optional<Content> brief_;  ///< made when it is asked for
  /// Blocks that many fronts share: a row beside its label, briefly or not, made when it is asked
  /// for.
  mutable std::map<std::pair<const CardRow*, bool>, LabelRow> beside_;
  BlockPtr figure_;  ///< null if there is none
  BlockPtr head_, ticks_, hand_;
  bool asks_ = false;
};
}  // namespace furnish
