#include "plan/work_order.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <map>
#include <queue>
#include <tuple>
#include <unordered_map>

namespace furnish {
namespace {
using Mask = std::uint64_t;
constexpr int none = -1;
constexpr Mask bit(std::size_t i) {
  return Mask{1} << i;
}
constexpr unsigned stance_bit(Stance s) {
  return 1U << static_cast<unsigned>(s);
}
constexpr unsigned standing = stance_bit(Stance::standing);

/// The nodes of one layer that use one tool.
struct ToolInLayer {
  int tool;
  Mask nodes = 0;
  unsigned stances = 0;
  bool before = false, after = false;  ///< the layers next to it use it too
  /// Never put down half done in a best order; see the first cut.
  bool whole() const { return !(before && after); }
};

struct Layer {
  Mask nodes = 0;
  unsigned stances = 0;
  std::vector<ToolInLayer> tools;
};

std::vector<Layer> layers_of(std::span<const WorkNode> nodes) {
  std::map<int, Layer> by_number;
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    Layer& layer = by_number[nodes[i].layer];
    layer.nodes |= bit(i);
    layer.stances |= stance_bit(nodes[i].stance);
    auto tool = std::ranges::find(layer.tools, nodes[i].tool, &ToolInLayer::tool);
    if (tool == layer.tools.end()) {
      layer.tools.push_back({nodes[i].tool});
      tool = layer.tools.end() - 1;
    }
    tool->nodes |= bit(i);
    tool->stances |= stance_bit(nodes[i].stance);
  }
  std::vector<Layer> out;
  for (auto& [number, layer] : by_number) out.push_back(std::move(layer));
  for (std::size_t i = 0; i + 1 < out.size(); ++i) {
    for (ToolInLayer& a : out[i].tools) {
      for (ToolInLayer& b : out[i + 1].tools) {
        if (a.tool == b.tool) a.after = b.before = true;
      }
    }
  }
  return out;
}

/// Tool changes weigh more than all changes of position together (at most one a node, and two
/// ends).
constexpr int tool_weight = 100;

class Search {
 public:
  explicit Search(std::span<const WorkNode> nodes) : nodes_(nodes), layers_(layers_of(nodes)) {
    // What the layers after each one cost at least: each position once, and within a tool that is
    // taken up once, a change between each two of its positions.
    after_.assign(layers_.size() + 1, 0);
    for (std::size_t i = layers_.size(); i-- > 1;) {
      const Layer& layer = layers_[i];
      const bool joins = std::ranges::any_of(layer.tools, &ToolInLayer::before);
      const bool stays = (layer.stances & layers_[i - 1].stances) != 0;
      int within = 0;
      for (const ToolInLayer& tool : layer.tools) {
        if (tool.whole()) within += std::popcount(tool.stances) - 1;
      }
      after_[i - 1] = after_[i] +
                      tool_weight * (static_cast<int>(layer.tools.size()) - (joins ? 1 : 0)) +
                      std::max(std::popcount(layer.stances) - (stays ? 1 : 0), within);
    }
  }

  std::vector<std::size_t> run() {
    const Mask all = nodes_.size() == 64 ? ~Mask{0} : bit(nodes_.size()) - 1;
    push({0, 0, none, none});
    while (!open_.empty()) {
      const std::size_t at = std::get<2>(open_.top());
      open_.pop();
      const Entry entry = entries_[at];
      if (entry.done == all) return path(at);
      if (best_.at({entry.done, entry.last}) < entry.cost) continue;
      expand(entry, static_cast<int>(at));
    }
    return {};
  }

 private:
  struct Entry {
    Mask done;
    int cost, last, parent;  ///< last: node just done; parent: entry it came from
  };

  void expand(const Entry& entry, int self) {
    const Layer& layer = layers_[layer_at(entry.done)];
    const int held = entry.last == none ? none : nodes_[index(entry.last)].tool;
    for (const ToolInLayer& tool : layer.tools) {
      const Mask left = tool.nodes & ~entry.done;
      if (left == 0 || !may_begin(layer, tool, held, entry.done)) continue;
      for (Mask rest = left; rest != 0; rest &= rest - 1) {
        const auto i = static_cast<std::size_t>(std::countr_zero(rest));
        push({entry.done | bit(i), entry.cost + step(entry.last, i), static_cast<int>(i), self});
      }
    }
  }

  /// The two cuts.
  static bool may_begin(const Layer& layer, const ToolInLayer& tool, int held, Mask done) {
    if (tool.tool == held) return true;
    for (const ToolInLayer& other : layer.tools) {
      const bool half_done = (other.nodes & done) != 0 && (other.nodes & ~done) != 0;
      if (half_done && other.tool == held && other.whole()) return false;
    }
    if (tool.before || tool.after) return true;
    for (const ToolInLayer& other : layer.tools) {
      if (&other == &tool) break;
      const bool twin = !other.before && !other.after && other.stances == tool.stances;
      if (twin && (other.nodes & done) == 0) return false;
    }
    return true;
  }

  int step(int last, std::size_t next) const {
    const bool tool = last == none || nodes_[index(last)].tool != nodes_[next].tool;
    const Stance from = last == none ? Stance::standing : nodes_[index(last)].stance;
    return (tool ? tool_weight : 0) + (from != nodes_[next].stance ? 1 : 0);
  }

  /// Never more than what is still to be paid.
  int bound(Mask done, int last) const {
    const std::size_t at = layer_at(done);
    if (at == layers_.size()) return 0;
    const Layer& layer = layers_[at];
    const int held = last == none ? none : nodes_[index(last)].tool;
    unsigned stances = 0;
    int tools = 0, within = 0;
    for (const ToolInLayer& tool : layer.tools) {
      const Mask left = tool.nodes & ~done;
      if (left == 0) continue;
      for (Mask rest = left; rest != 0; rest &= rest - 1) {
        stances |= stance_bit(nodes_[static_cast<std::size_t>(std::countr_zero(rest))].stance);
      }
      const bool in_hand = tool.tool == held;
      if (!in_hand) ++tools;
      const bool begun = in_hand && left != tool.nodes;
      if (tool.whole()) within += std::popcount(left) - (begun ? 0 : 1);
    }
    const unsigned now = last == none ? standing : stance_bit(nodes_[index(last)].stance);
    return after_[at] + tool_weight * tools + std::max(std::popcount(stances & ~now), within);
  }

  std::size_t layer_at(Mask done) const {
    std::size_t at = 0;
    while (at < layers_.size() && (layers_[at].nodes & ~done) == 0) ++at;
    return at;
  }

  void push(Entry entry) {
    if (layer_at(entry.done) == layers_.size() && entry.last != none) {
      entry.cost += nodes_[index(entry.last)].stance != Stance::standing ? 1 : 0;
    }
    const auto [known, fresh] = best_.try_emplace({entry.done, entry.last}, entry.cost);
    if (!fresh && known->second <= entry.cost) return;
    known->second = entry.cost;
    entries_.push_back(entry);
    // Of equal bounds the one with most done first, then the oldest: same input, same order.
    open_.emplace(entry.cost + bound(entry.done, entry.last), -std::popcount(entry.done),
                  entries_.size() - 1);
  }

  std::vector<std::size_t> path(std::size_t at) const {
    std::vector<std::size_t> out;
    for (int i = static_cast<int>(at); entries_[index(i)].parent != none;
         i = entries_[index(i)].parent) {
      out.push_back(index(entries_[index(i)].last));
    }
    std::ranges::reverse(out);
    return out;
  }

  static std::size_t index(int i) { return static_cast<std::size_t>(i); }

  struct Key {
    Mask done;
    int last;
    friend bool operator==(const Key&, const Key&) = default;
  };
  struct Hash {
    std::size_t operator()(const Key& key) const {
      // Spreads sets that differ in a few nodes (the odd constant of Fibonacci hashing).
      return static_cast<std::size_t>((key.done ^ (static_cast<Mask>(key.last + 1) << 57U)) *
                                      0x9E3779B97F4A7C15U);
    }
  };

  using Ranked = std::tuple<int, int, std::size_t>;
  std::span<const WorkNode> nodes_;
  std::vector<Layer> layers_;
  std::vector<int> after_;
  std::vector<Entry> entries_;
  std::unordered_map<Key, int, Hash> best_;
  std::priority_queue<Ranked, std::vector<Ranked>, std::greater<>> open_;
};
}  // namespace

std::vector<std::size_t> best_order(std::span<const WorkNode> nodes) {
  if (nodes.empty()) return {};
  return Search(nodes).run();
}
}  // namespace furnish
