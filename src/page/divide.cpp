#include "page/divide.h"

#include <algorithm>
#include <map>
#include <string_view>

#include "page/fitter.h"
#include "page/goes_on.h"
#include "page/stack.h"

namespace furnish {
namespace {
/// Between two pieces, in parts of the rhythm; and after the last, what takes all that is left, so
/// that a side which is not full begins at its top.
constexpr double between = 0.6, between_least = 0.2;
constexpr int filler = 1000;

using Pieces = std::vector<BlockPtr>;

class Divider {
 public:
  Divider(const PageRequest& request, TextShaper& shaper, DiagnosticSink& sink)
      : request_(request), shaper_(shaper), sink_(sink) {}

  std::optional<FittedPage> divide() {
    for (const Division& division : request_.divisions) {
      if (division.front && !take_front(division)) continue;
      const bool done = division.front ? take_rest(division) : flow(division, Start::front);
      if (done) return decided();
      sides_.clear();
      page_.squeezed = false;
    }
    report();
    return std::nullopt;
  }

 private:
  /// Whether what flows begins a sheet, or goes on after its front.
  enum class Start : std::uint8_t { front, after };
  using Side = FittedPage::Side;

  BlockPtr foot(int side, int sides) const {
    return request_.foot_of ? request_.foot_of(side, sides) : request_.footer;
  }
  SideStyle style(const Division& division, int side, int sides) const {
    return {division.rhythm, division.leading, foot(side, sides)};
  }
  Fitter fitter(const Division& division, int side, int sides) const {
    return {request_, style(division, side, sides), shaper_};
  }

  /// A front, and the largest step at which it fits with its gaps as designed; below 0 if none.
  struct Tried {
    BlockPtr root;
    bool hopeless = false;
    int step = -1;
  };

  /// Divisions of one name have one front.
  const Tried& front_of(const Division& division) {
    const auto [at, is_new] = fronts_.try_emplace(division.name);
    Tried& front = at->second;
    if (!is_new) return front;
    front.root = std::make_shared<Column>(division.front());
    Fitter fit = fitter(division, 1, 2);
    front.hopeless = fit.hopeless(*front.root);
    if (!front.hopeless) front.step = fit.largest_step(*front.root, request_.steps).value_or(-1);
    count(fit);
    return front;
  }

  bool squeezes(const Division& division, const Tried& front) {
    if (front.hopeless) return false;
    Fitter fit = fitter(division, 1, 2);
    const bool fits = fit.measure(*front.root, 0, Precision::exact).fits_squeezed();
    count(fit);
    return fits;
  }

  bool take_front(const Division& division) {
    const Tried& front = front_of(division);
    if (front.step < division.least_step.value_or(-1)) return false;
    const bool squeezed = front.step < 0 && squeezes(division, front);
    if (front.step < 0 && !squeezed) {
      division_ = &division;
      too_large_ = front.root;
      return false;
    }
    page_.squeezed = squeezed;
    division_ = &division;
    sides_ = {{front.root, std::max(front.step, 0)}};
    return true;
  }

  bool take_rest(const Division& division) {
    for (const Division::Pieces& rest : division.rest) {
      const Pieces pieces = rest();
      // With nothing left over it is no division, and the front was tried as a whole page.
      if (pieces.empty() && &rest == division.rest.data()) return false;
      Side side{arranged(pieces, Start::after)};
      Fitter fit = fitter(division, 2, 2);
      const auto step =
          fit.largest_step(*side.root, division.rest_grows ? request_.steps : sides_.front().step);
      count(fit);
      if (!step) continue;
      side.step = *step;
      sides_.push_back(side);
      return true;
    }
    return !division.least_step && flow(division, Start::after);
  }

  /// Fills side after side at the smallest sizes. False if a piece is larger than a whole side.
  bool flow(const Division& division, Start start) {
    division_ = &division;
    Pieces waiting;
    for (const BlockPtr& piece : division.rest.back()()) {
      waiting.push_back(piece);
      if (fits(division, waiting, start)) continue;
      waiting.pop_back();
      if (!waiting.empty()) {
        sides_.push_back({arranged(waiting, start)});
        start = Start::after;
      }
      waiting = {piece};
      if (!fits(division, waiting, start)) {
        too_large_ = arranged(waiting, start);
        return false;
      }
    }
    if (!waiting.empty()) sides_.push_back({arranged(waiting, start)});
    return true;
  }

  bool fits(const Division& division, const Pieces& pieces, Start start) {
    // As if another side came after it: then its foot is the taller one.
    const int side = static_cast<int>(sides_.size()) + 1;
    Fitter fit = fitter(division, side, side + 1);
    const bool fitting = fit.measure(*arranged(pieces, start), 0, Precision::exact).fits_squeezed();
    count(fit);
    return fitting;
  }

  BlockPtr arranged(const Pieces& pieces, Start start) const {
    Pieces blocks;
    if (start == Start::after && request_.again) blocks.push_back(request_.again);
    const GoesOn* before = nullptr;
    for (const BlockPtr& piece : pieces) {
      const auto* const next = dynamic_cast<const GoesOn*>(piece.get());
      const bool goes_on = before != nullptr && next != nullptr;
      if (!blocks.empty() && !goes_on) {
        blocks.push_back(std::make_shared<Gap>(between, between_least, 0));
      }
      blocks.push_back(goes_on ? next->after() : piece);
      before = next;
    }
    blocks.push_back(std::make_shared<Gap>(0, 0, filler));
    return std::make_shared<Column>(std::move(blocks));
  }

  FittedPage decided() {
    page_.layout = division_->name;
    page_.step = sides_.front().step;
    page_.sides = std::move(sides_);
    const int count = static_cast<int>(page_.sides.size());
    for (int i = 0; i < count; ++i) {
      page_.sides[static_cast<std::size_t>(i)].style = style(*division_, i + 1, count);
    }
    return std::move(page_);
  }

  void report() {
    if (!too_large_) return;
    Fitter fit = fitter(*division_, 2, 3);
    fit.report(*too_large_, fit.measure(*too_large_, 0, Precision::exact), sink_);
  }

  void count(const Fitter& fit) {
    page_.measures += fit.measures();
    page_.drafts += fit.drafts();
  }

  const PageRequest& request_;
  TextShaper& shaper_;
  DiagnosticSink& sink_;
  FittedPage page_;
  const Division* division_ = nullptr;
  std::vector<Side> sides_;
  std::map<std::string_view, Tried> fronts_;
  BlockPtr too_large_;
};
}  // namespace

std::optional<FittedPage> divide(const PageRequest& request, TextShaper& shaper,
                                 DiagnosticSink& sink) {
  return Divider(request, shaper, sink).divide();
}
}  // namespace furnish
