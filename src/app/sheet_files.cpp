#include "app/sheet_files.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <set>

#include "app/distinct_names.h"
#include "output/own_files.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

/// One side, with all its gaps as designed.
bool is_plain(const ComposedPage& page) {
  return page.more.empty() && !page.squeezed;
}

/// "columns" of "asking, columns": what a page looks like, whatever else it has.
std::string look(const ComposedPage& page) {
  const auto comma = page.layout.rfind(", ");
  return comma == std::string::npos ? page.layout : page.layout.substr(comma + 2);
}

/// Has rows for a hand to write what nobody has said yet.
bool asks(const ComposedPage& page) {
  return page.layout.starts_with("asking");
}

}  // namespace

std::string usual_look(std::span<const Done* const> all) {
  std::map<std::string, int> count;
  std::string usual;
  for (const Done* const done : all) {
    const ComposedPage& page = done->made.sheet.page;
    if (is_plain(page)) ++count[look(page)];
  }
  for (const Done* const done : all) {
    const std::string one = look(done->made.sheet.page);
    if (count.contains(one) && (usual.empty() || count[one] > count[usual])) usual = one;
  }
  return usual;
}

void arrange_alike(Done& done, const std::string& usual, Workshop& shop) {
  const ComposedPage& page = done.made.sheet.page;
  if (!is_plain(page) || look(page) == usual) return;
  // All there is to say of the pet was said when it was made the first time.
  const auto from = static_cast<std::uint32_t>(shop.sources().size());
  DiagnosticSink said;
  const auto one = shop.open(done.pet, said);
  auto alike = one ? shop.sheet(*one, said, usual) : std::nullopt;
  shop.sources().forget_passing(from);
  if (!alike) return;
  const ComposedPage& other = alike->sheet.page;
  const bool whole = asks(other) || !asks(page);  // rows to write on are not given for a look
  if (whole && look(other) == usual && is_plain(other) && other.step == page.step) {
    done.made = *std::move(alike);
  }
}

std::size_t most_sides(std::span<const std::vector<Frame>> sheets) {
  return std::ranges::max(sheets, {}, &std::vector<Frame>::size).size();
}

std::vector<Frame> in_order(const std::vector<std::vector<Frame>>& sheets) {
  const bool turned = most_sides(sheets) > 1;
  std::vector<Frame> out;
  for (const std::vector<Frame>& one : sheets) {
    if (turned && out.size() % 2 == 1) out.push_back({one.front().size, {}});
    out.insert(out.end(), one.begin(), one.end());
  }
  return out;
}

std::vector<Attachment> carried_by(const std::vector<Done>& all) {
  std::vector<NameWanted> wanted;
  for (const Done& done : all) {
    for (const Attachment& file : done.made.files) {
      wanted.push_back({file.name, done.pet.file, done.pet.root});
    }
  }
  const std::vector<std::string> names = distinct_names(wanted);
  std::set<std::string> taken;
  std::vector<Attachment> out;
  auto name = names.begin();
  for (const Done& done : all) {
    for (const Attachment& file : done.made.files) {
      if (taken.insert(*name).second) {
        out.push_back(file);
        out.back().name = *name;
      }
      ++name;
    }
  }
  return out;
}

std::string side_path(const std::string& first, std::size_t side) {
  const fs::path path(first);
  const std::string name =
      fmt::format("{}-{}{}", path.stem().string(), side, path.extension().string());
  return (path.parent_path() / name).string();
}

void remove_sides_after(const std::string& first, std::size_t sides, std::string_view of,
                        DiagnosticSink& sink, const Disk& disk) {
  for (std::size_t side = sides + 1; remove_own(side_path(first, side), sink, disk, of); ++side) {
  }
}
}  // namespace furnish
