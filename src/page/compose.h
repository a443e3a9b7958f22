#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/diagnostic.h"
#include "page/block.h"

namespace furnish {

/// A way to arrange a sheet; `make` builds its blocks when it is tried.
struct Layout {
  std::string name;
  std::function<BlockPtr()> make;
  std::optional<Length> rhythm{};  ///< the page's, unless the layout has its own
  double leading = 1;              ///< of the distance between lines, see Setting
  bool squeezes = true;  ///< also taken with its gaps at their least, rather than turn over
};

/// How a sheet that does not fit on one side is divided into pieces, which are never cut.
struct Division {
  using Pieces = std::function<std::vector<BlockPtr>()>;
  std::string name;  ///< divisions of one name have the same front, set alike, which is tried once
  Pieces front;  ///< what the front keeps, in one column; null: all of `rest` flows from there on
  /// What goes on, most generous first: taken if it stands on one side, the last on as many as it
  /// takes.
  std::vector<Pieces> rest;
  std::optional<Length> rhythm{};  ///< as a layout's
  double leading = 1;
  bool rest_grows = false;  ///< a rest on one side may be set larger than its front
  /// With a step: taken only where its front can grow to that, with its gaps as designed, and the
  /// rest stands on one side.
  std::optional<int> least_step{};
};

/// What is to be set on one page, or on more.
struct PageRequest {
  Size size;
  std::string paper_name;  ///< "A6", for messages
  std::string noun;        ///< "card", for messages
  SourceSpan span;         ///< the file, for messages
  Insets margins;
  Length free_top{};  ///< kept empty below the top edge, if that is more than the margin
  Length rhythm = Length::mm(4);
  std::vector<TypeRole> roles;
  int steps = 12;               ///< of growth, from 16′ to each role's most
  std::vector<Layout> layouts;  ///< most generous first
  std::string wanted{};         ///< of the layouts the one to take if it fits; empty: any
  BlockPtr footer{};            ///< on the bottom margin; may be null
  /// Tried if no layout fits; the front that keeps most first. Without any, nothing goes on.
  std::vector<Division> divisions{};
  BlockPtr again{};  ///< at the top of every side after the first; may be null
  /// The foot of a side, from 1, where there are several; null: the one of a single page.
  std::function<BlockPtr(int side, int sides)> foot_of{};
};

/// How the fitter decided.
struct Decided {
  std::string layout;  ///< or the division
  int step = 0;        ///< of growth, 0 to PageRequest::steps
  int measures = 0;    ///< how often the whole page was measured with its text set
  int drafts = 0;      ///< how often it was measured by the widths of characters
  bool squeezed = false;
};

/// The page: a sheet's only side, or its front.
struct ComposedPage : Decided {
  Frame frame;
  std::vector<Frame> more;  ///< the sides after it, in order; none if all stands on one
};

/// In which space and with which distance between lines a side is set, and what stands at its foot.
struct SideStyle {
  std::optional<Length> rhythm;  ///< the page's, unless it has its own
  double leading = 1;
  BlockPtr foot;  ///< may be null
};

/// A page that is decided and not set yet.
struct FittedPage : Decided {
  struct Side {
    BlockPtr root;
    int step = 0;
    SideStyle style{};
  };
  std::vector<Side> sides;  ///< its front first
};

/// Sets one page in the shaper's language; for one that runs from right to left the finished page
/// is mirrored, so blocks only know left and right. Takes the first layout that fits
/// with its gaps as designed at the smallest sizes, and sets it at the largest growth step at which
/// it does; if none does, the first that fits at the smallest sizes with its gaps at their least.
/// What room is left goes to the gaps, evenly.
///
/// The step is found by drafts, which know no kerning: log2(steps + 1) of them for each layout, and
/// one before, by which what is a fifth too tall at the smallest sizes is left out. The
/// text is then set to be sure, and the step taken back while that does not fit, so the cost is
/// bounded by steps + 2 measures for each layout and is nearly always one for the layout that fits.
///
/// If nothing fits and there are divisions: the first of them whose front fits, its gaps squeezed
/// if need be (but see Division::least_step), and the rest on the sides after it, set no larger
/// than the front. A rest that is longer than one side flows on, piece by piece. If no front fits,
/// the last division flows as a whole.
///
/// If nothing fits, or one piece is taller than a whole side: the error "page-overflow" ("the card
/// is 14.2 mm too tall for A6") with the three named blocks that take the most room as notes, and
/// an empty result. A piece that may not break and is wider than its place is the error
/// "page-too-wide". Nothing is ever clipped, overlapped, dropped or set under its smallest size.
std::optional<ComposedPage> compose(const PageRequest&, TextShaper&, DiagnosticSink&);
/// What compose() does, in two steps, for who compares several pages and sets one of them: setting
/// a page places all its text and its figures' numbers.
std::optional<FittedPage> fit(const PageRequest&, TextShaper&, DiagnosticSink&);
ComposedPage set(const PageRequest&, const FittedPage&, TextShaper&);
/// All sides of a page, its front first.
std::vector<Frame> sides(const ComposedPage&);
}  // namespace furnish
