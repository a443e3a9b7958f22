#include "plan/staff_only.h"

#include <algorithm>
#include <set>

namespace furnish {
std::vector<StaffOnly> staff_only(const Pet& pet, std::span<const OpenFinding> findings) {
  std::vector<StaffOnly> out;
  std::set<HomeMatter> told;
  const auto look = [&](StaffOnly::What what, const FreeText& text, Audience audience,
                        SourceSpan span) {
    const auto matter = home_matter(text.value);
    if (!matter) return;
    if (audience == Audience::everyone) {
      told.insert(*matter);
    } else {
      out.push_back({what, *matter, span});
    }
  };
  for (const Alert& one : pet.alerts) {
    look(StaffOnly::What::alert, one.text, one.audience, one.span);
  }
  for (const OpenFinding& one : findings) {
    look(StaffOnly::What::finding, one.what, one.audience, one.span);
  }
  std::erase_if(out, [&](const StaffOnly& one) { return told.contains(one.matter); });
  return out;
}
}  // namespace furnish
