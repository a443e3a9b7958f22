#include "output/compact_content.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <map>
#include <tuple>

#include "output/content_path.h"
#include "output/content_rows.h"
#include "output/fitted_curves.h"
#include "output/page_hatching.h"
#include "output/repeated_shapes.h"

namespace furnish {
namespace {
constexpr double thousandths = 1000;

/// What is said of text and colours, with decimals as short as can be where cairo writes six; what
/// moves a whole page or gives a line's width decides where a viewer's pixels begin, and stays.
std::string with_short_numbers(const ContentItem& item) {
  constexpr std::array<std::string_view, 4> words{"Tm", "Td", "rg", "RG"};
  std::string out(item.all);
  if (item.word == "BDC" && out.find("/MCID") != out.npos && out.find_first_of("([") == out.npos) {
    std::string close;
    for (std::size_t i = 0; i < out.size(); ++i) {
      const char next = i + 1 < out.size() ? out[i + 1] : ' ';
      const bool apart = out[i] == ' ' && (next == '<' || next == '/' || next == '>' ||
                                           (i > 0 && out[i - 1] == '>'));
      if (!apart) close += out[i];
    }
    return close;
  }
  if (std::ranges::find(words, item.word) == words.end()) return out;
  std::string shorter;
  for (std::size_t i = 0; i < out.size();) {
    const std::size_t end = std::min(out.find_first_of(" []\n", i), out.size());
    const std::string_view word = std::string_view(out).substr(i, end - i);
    double value = 0;
    const auto [after, fault] = std::from_chars(word.data(), word.data() + word.size(), value);
    const bool known = fault == std::errc() && after == word.data() + word.size() && !word.empty();
    if (known) {
      append(shorter, value, item.word == "Td" ? 10 * thousandths : thousandths);
    } else {
      shorter += word;
    }
    if (end < out.size()) shorter += out[end];
    i = end + 1;
  }
  return shorter;
}

/// Writes items one after another.
class ItemWriter {
 public:
  void write(const ContentItem& item) {
    const std::string rows = in_rows(item);
    out_ += rows;
    if (rows.empty()) write_path(item);
    if (!rows.empty() || item.all.empty()) {
      if (!rows.empty()) ended_ = out_.npos;
      return;
    }
    const bool artifact = item.word == "BMC" && item.all.starts_with("/Artifact");
    if (artifact && ended_ != out_.npos) {
      // One artifact goes on as the next.
      out_.erase(ended_ - end_of_marked.size(), end_of_marked.size());
      ended_ = out_.npos;
      in_artifact_ = true;
      return;
    }
    if (!item.changes()) ended_ = out_.npos;
    out_ += with_short_numbers(item);
    if (!item.word.empty()) out_ += '\n';
    if (item.word == "EMC" && in_artifact_) ended_ = out_.size();
    in_artifact_ = artifact || (in_artifact_ && item.word != "EMC");
  }
  void write(std::string_view text) {
    out_ += text;
    ended_ = out_.npos;
  }
  std::string text() && { return std::move(out_); }

 private:
  static constexpr std::string_view end_of_marked = "EMC\n";

  void write_path(const ContentItem& item) { append(out_, fitted(plainer(item.path))); }

  std::string out_;
  std::size_t ended_ = std::string::npos;  ///< where an artifact did, if no more came since
  bool in_artifact_ = false;
};

Path moved(Path path, double x, double y) {
  for (Step& step : path) {
    const std::size_t places = step.op == 'r' ? 2 : operands_of(step.op);
    for (std::size_t k = 0; k < places; k += 2) {
      step.at[k] += x;
      step.at[k + 1] += y;
    }
  }
  return path;
}

class PagesContents {
 public:
  explicit PagesContents(std::span<const PageContent> contents) : contents_(contents) {
    for (const PageContent& one : contents) pages_.push_back(content_items(one.content));
    repeated_ = repeated_shapes(pages_);
    for (const RepeatedShape& shape : repeated_) put(shape);
  }

  CompactContents compact() {
    for (std::size_t page = 0; page < pages_.size(); ++page) {
      out_.pages.push_back(page_of(page));
    }
    return std::move(out_);
  }

 private:
  struct Origin {
    double x = 0, y = 0;
  };

  void put(const RepeatedShape& shape) {
    const Instance& from = shape.instances[shape.largest];
    constexpr double far = std::numeric_limits<double>::max();
    double left = far, top = far, right = -far, bottom = -far;
    const auto& items = pages_[from.page];
    for (std::size_t i = from.first; i <= from.last; ++i) {
      for (const Step& step : items[i].path) {
        for (std::size_t k = 0; k < operands_of(step.op); k += 2) {
          left = std::min(left, step.at[k]);
          right = std::max(right, step.at[k]);
          top = std::min(top, step.at[k + 1]);
          bottom = std::max(bottom, step.at[k + 1]);
        }
      }
    }
    origins_.push_back({std::round(left), std::round(top)});
    ItemWriter writer;
    for (std::size_t i = from.first; i <= from.last; ++i) {
      ContentItem item = items[i];
      item.path = moved(std::move(item.path), -origins_.back().x, -origins_.back().y);
      writer.write(item);
    }
    out_.shapes.push_back(
        {std::move(writer).text(), std::ceil(right - left), std::ceil(bottom - top)});
  }

  CompactPage page_of(std::size_t page) {
    struct Here {
      std::size_t shape;
      const Instance* instance;
    };
    std::vector<Here> here;
    for (std::size_t i = 0; i < repeated_.size(); ++i) {
      for (const Instance& one : repeated_[i].instances) {
        if (one.page == page) here.push_back({i, &one});
      }
    }
    std::ranges::sort(here, {}, [](const Here& one) { return one.instance->first; });
    CompactPage out;
    ItemWriter writer;
    auto next = here.begin();
    for (std::size_t i = 0; i < pages_[page].size(); ++i) {
      if (next == here.end() || i < next->instance->first) {
        const ContentItem& item = pages_[page][i];
        if (const auto hatching = page_hatching(item)) {
          const std::size_t shape = shape_of(*hatching, contents_[page]);
          out.shapes.insert(shape);
          writer.write(name_of_shape(shape) + " Do\n");
        } else {
          writer.write(item);
        }
        continue;
      }
      out.shapes.insert(next->shape);
      write(*next->instance, next->shape, writer);
      i = next->instance->last;
      ++next;
    }
    out.content = std::move(writer).text();
    return out;
  }

  std::size_t shape_of(const PageHatching& hatching, const PageContent& page) {
    const auto [found, fresh] =
        hatchings_.try_emplace({hatching, page.width, page.height}, out_.shapes.size());
    if (fresh) {
      out_.shapes.push_back({hatching.content(page.width, page.height), std::ceil(page.width),
                             std::ceil(page.height), true});
    }
    return found->second;
  }

  void write(const Instance& one, std::size_t shape, ItemWriter& writer) const {
    const Placing& at = one.placing;
    const Origin& origin = origins_[shape];
    const double across = at.mirrored ? -at.scale : at.scale;
    const auto& items = pages_[one.page];
    std::string text = "q ";
    append(text, across, 10 * thousandths);
    text += " 0 0 ";
    append(text, at.scale, 10 * thousandths);
    text += ' ';
    append(text, at.x + across * origin.x, thousandths);
    text += ' ';
    append(text, at.y + at.scale * origin.y, thousandths);
    text += " cm\n";
    if (at.scale != 1) text += fmt::format("{:.3f} w\n", items[one.first].width / at.scale);
    writer.write(text + name_of_shape(shape) + " Do Q\n");
    // What it left behind where it stood.
    for (std::size_t i = one.first; i <= one.last; ++i) {
      if (items[i].changes()) writer.write(items[i]);
    }
  }

  std::span<const PageContent> contents_;
  std::vector<std::vector<ContentItem>> pages_;
  std::map<std::tuple<PageHatching, double, double>, std::size_t> hatchings_;
  std::vector<RepeatedShape> repeated_;
  std::vector<Origin> origins_;
  CompactContents out_;
};
}  // namespace

std::string name_of_shape(std::size_t shape) {
  return fmt::format("/r{}", shape);
}

CompactContents compact_contents(std::span<const PageContent> contents) {
  return PagesContents(contents).compact();
}
}  // namespace furnish
