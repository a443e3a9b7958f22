#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "output/pdf_objects.h"
#include "output/pdf_tree.h"

namespace furnish {

/// Pages of a long PDF that stand one behind another, and what is said of them.
class PdfPages {
 public:
  explicit PdfPages(PdfObjects& out) : out_(out) {}
  /// The page that comes next, which is to be written under its number. `height`: in points.
  PageObject add(double height);
  const std::vector<PageObject>& all() const { return pages_; }
  /// The node of the tree of pages that holds a page.
  int node_of(std::size_t page) const;

  /// Here ends what stands by itself, on sides of paper of its own.
  void end_sheet(std::size_t pages) { ends_.push_back(pages); }
  /// Finds where another page is wanted, so that all have a multiple of so many. False if nowhere.
  bool fill_up(std::size_t multiple, bool last_too);
  /// Writes the nodes, and pages with the entries of `filler` where they are wanted. Gives how many
  /// pages there are.
  std::size_t put_nodes(int parent, const std::string& filler);
  const std::vector<int>& nodes() const { return nodes_; }

  std::vector<int> parts;  ///< elements that hold what is said

 private:
  std::vector<int> kids_of(std::size_t node, const std::string& filler);

  PdfObjects& out_;
  std::vector<PageObject> pages_;
  std::vector<int> nodes_;  ///< each with so many pages
  std::vector<std::size_t> ends_;
  std::map<std::size_t, std::size_t> gaps_;  ///< behind which pages, and how many
};

/// "3 0 R 4 0 R "
std::string references(const std::vector<int>& numbers);
}  // namespace furnish
