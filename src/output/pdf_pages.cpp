#include "output/pdf_pages.h"

#include <fmt/format.h>

#include <algorithm>

namespace furnish {
namespace {
/// Pages under one node of the tree of pages.
constexpr std::size_t pages_a_node = 64;
}  // namespace

PageObject PdfPages::add(double height) {
  if (pages_.size() % pages_a_node == 0) nodes_.push_back(out_.reserve());
  pages_.push_back({out_.reserve(), height});
  return pages_.back();
}

int PdfPages::node_of(std::size_t page) const {
  return nodes_[page / pages_a_node];
}

bool PdfPages::fill_up(std::size_t multiple, bool last_too) {
  std::size_t begin = 0;
  for (const std::size_t end : ends_) {
    const std::size_t over = (end - begin) % multiple;
    if (over > 0 && (last_too || end < pages_.size())) gaps_[end - 1] = multiple - over;
    begin = end;
  }
  return !gaps_.empty();
}

std::vector<int> PdfPages::kids_of(std::size_t node, const std::string& filler) {
  std::vector<int> kids;
  const std::size_t end = std::min((node + 1) * pages_a_node, pages_.size());
  for (std::size_t i = node * pages_a_node; i < end; ++i) {
    kids.push_back(pages_[i].number);
    const auto gap = gaps_.find(i);
    for (std::size_t n = gap == gaps_.end() ? 0 : gap->second; n > 0; --n) {
      kids.push_back(out_.reserve());
      out_.add(kids.back(), fmt::format("<</Parent {} 0 R{}>>", nodes_[node], filler));
    }
  }
  return kids;
}

std::size_t PdfPages::put_nodes(int parent, const std::string& filler) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < nodes_.size(); ++i) {
    const std::vector<int> kids = kids_of(i, filler);
    out_.add(nodes_[i], fmt::format("<</Type/Pages/Parent {} 0 R/Count {}/Kids[{}]>>", parent,
                                    kids.size(), references(kids)));
    count += kids.size();
  }
  return count;
}

std::string references(const std::vector<int>& numbers) {
  std::string out;
  for (const int number : numbers) out += fmt::format("{} 0 R ", number);
  return out;
}
}  // namespace furnish
