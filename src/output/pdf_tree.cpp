#include "output/pdf_tree.h"

#include <fmt/format.h>

#include <qpdf/QPDFObjectHandle.hh>

#include <algorithm>
#include <limits>

namespace furnish {
namespace {
/// Entries of one leaf.
constexpr std::size_t leaf = 64;

std::string text(const std::string& utf8) {
  return QPDFObjectHandle::newUnicodeString(utf8).unparse();
}

/// Leaves of some entries, each given as its key and itself.
std::string tree(PdfObjects& out, const char* what,
                 const std::vector<std::pair<std::string, int>>& entries) {
  std::string kids;
  for (std::size_t from = 0; from < entries.size(); from += leaf) {
    const std::size_t end = std::min(from + leaf, entries.size());
    std::string some;
    for (std::size_t i = from; i < end; ++i) {
      some += fmt::format("{} {} 0 R ", entries[i].first, entries[i].second);
    }
    const int number = out.reserve();
    out.add(number, fmt::format("<</Limits[{} {}]/{}[{}]>>", entries[from].first,
                                entries[end - 1].first, what, some));
    kids += fmt::format("{} 0 R ", number);
  }
  return fmt::format("<</Kids[{}]>>", kids);
}

std::string leads_to(const PageObject& page) {
  if (page.element == 0) return "/Dest" + top_of(page);
  return fmt::format("/A<</Type/Action/S/GoTo/D{}/SD{}>>", top_of(page), element_at_top(page));
}

class Outline {
 public:
  Outline(PdfObjects& out, std::span<const OutlineEntry> entries, std::span<const PageObject> pages)
      : out_(out), entries_(entries), pages_(pages) {}

  /// The entries of one depth from `at` on, up to one above them: how many there are.
  struct Level {
    int first = 0, last = 0;
    std::size_t count = 0;
  };
  Level level(std::size_t& at, std::size_t depth, int parent) {
    Level out;
    int number = at < entries_.size() ? out_.reserve() : 0, before = 0;
    while (at < entries_.size() && entries_[at].depth == depth) {
      const OutlineEntry& entry = entries_[at++];
      const bool has_below = at < entries_.size() && entries_[at].depth > depth;
      const Level below = has_below ? level(at, depth + 1, number) : Level{};
      const bool more = at < entries_.size() && entries_[at].depth == depth;
      const int after = more ? out_.reserve() : 0;
      std::string says = fmt::format("<</Title {}/Parent {} 0 R{}", text(entry.title), parent,
                                     leads_to(pages_[entry.page]));
      const auto link = [&](const char* key, int to) {
        if (to != 0) says += fmt::format("/{} {} 0 R", key, to);
      };
      link("Prev", before);
      link("Next", after);
      link("First", below.first);
      link("Last", below.last);
      if (below.count > 0) says += fmt::format("/Count -{}", below.count);
      out_.add(number, says + ">>");
      if (out.first == 0) out.first = number;
      out.last = before = number;
      ++out.count;
      number = after;
    }
    return out;
  }

 private:
  PdfObjects& out_;
  std::span<const OutlineEntry> entries_;
  std::span<const PageObject> pages_;
};
}  // namespace

std::string top_of(const PageObject& page) {
  return fmt::format("[{} 0 R/XYZ 0 {:.2f} 0]", page.number, page.height);
}

std::string element_at_top(const PageObject& page) {
  return fmt::format("[{} 0 R/XYZ 0 {:.2f} 0]", page.element, page.height);
}

int put_outline(PdfObjects& out, std::span<const OutlineEntry> entries,
                std::span<const PageObject> pages) {
  if (entries.empty()) return 0;
  const int root = out.reserve();
  std::size_t at = 0;
  const auto all = Outline(out, entries, pages).level(at, 0, root);
  out.add(root, fmt::format("<</Type/Outlines/First {} 0 R/Last {} 0 R/Count {}>>", all.first,
                            all.last, all.count));
  return root;
}

std::string name_tree(PdfObjects& out, std::vector<std::pair<std::string, int>> names) {
  std::ranges::sort(names);
  for (auto& [name, number] : names) name = QPDFObjectHandle::newString(name).unparse();
  return tree(out, "Names", names);
}

std::string number_tree(PdfObjects& out, const std::map<int, int>& numbers) {
  std::vector<std::pair<std::string, int>> entries;
  for (const auto& [key, number] : numbers) entries.emplace_back(std::to_string(key), number);
  return tree(out, "Nums", entries);
}
}  // namespace furnish
