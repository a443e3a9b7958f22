#include "sheet/roles.h"

#include <array>

namespace furnish {
namespace {
struct Distances {
  Length name, alert, action, body, footer;
};
constexpr std::array<Distances, 3> hanging{{
    {1200_mm, 700_mm, 500_mm, 450_mm, 350_mm},
    {2000_mm, 1000_mm, 700_mm, 600_mm, 400_mm},
    {3000_mm, 1200_mm, 800_mm, 600_mm, 400_mm},
}};
// A name may grow past what running text should: it is one word to be found from across the room.
constexpr Distances in_hand{1500_mm, 700_mm, 600_mm, 500_mm, 400_mm};
constexpr Distances on_wall{3000_mm, 1200_mm, 700_mm, 1000_mm, 500_mm};
constexpr Distances on_day{1500_mm, 1000_mm, 600_mm, 500_mm, 400_mm};
// Its title is a sentence, and no name that is looked for.
constexpr Distances on_desk{1000_mm, 1000_mm, 700_mm, 600_mm, 400_mm};
constexpr double least_body = 12, least_head = 16;  // points, of an owner's page
constexpr double least_at_table = 10.5;             // points
constexpr double most_on_fridge = 24;               // minutes of arc, of body and labels alike
constexpr double most_for_name = 26, most_for_text = 22, most_for_foot = 18;

bool runs_on(Role role) {
  return role == Role::body || role == Role::label || role == Role::subtitle;
}

std::vector<TypeRole> roles(const Distances& usual, const ReadingDistances& own) {
  const Length body = own.body.value_or(usual.body);
  const Length action = own.action.value_or(usual.action);
  return {
      {Role::title, own.name.value_or(usual.name), most_for_name},
      {Role::subtitle, body, most_for_text},
      {Role::heading, action, most_for_text},
      {Role::alert, own.alert.value_or(usual.alert), most_for_text},
      {Role::action, action, most_for_text},
      {Role::body, body, most_for_text},
      {Role::label, body, most_for_foot},
      {Role::foot, own.footer.value_or(usual.footer), most_for_foot},
  };
}
}  // namespace

PaperClass paper_class(const Paper& paper) {
  if (paper.size.width < 115_mm) return PaperClass::small;
  return paper.size.width < 160_mm ? PaperClass::middle : PaperClass::large;
}

std::vector<TypeRole> hanging_roles(const Paper& paper, const ReadingDistances& own) {
  return roles(hanging[static_cast<std::size_t>(paper_class(paper))], own);
}

std::vector<TypeRole> hand_roles(const Paper&, const ReadingDistances& own) {
  return roles(in_hand, own);
}

std::vector<TypeRole> wall_roles(const Paper&, const ReadingDistances& own) {
  std::vector<TypeRole> out = roles(on_wall, own);
  for (TypeRole& role : out) role.most_arc_minutes = 2 * least_arc_minutes;
  return out;
}

std::vector<TypeRole> table_roles(const Paper&, const ReadingDistances& own) {
  std::vector<TypeRole> out = roles(in_hand, own);
  for (TypeRole& role : out) {
    if (runs_on(role.role)) role.least_points = least_at_table;
  }
  return out;
}

std::vector<TypeRole> day_roles(const Paper&, const ReadingDistances& own) {
  std::vector<TypeRole> out = roles(on_day, own);
  for (TypeRole& role : out) role.most_arc_minutes = 2 * least_arc_minutes;
  return out;
}

std::vector<TypeRole> desk_roles(const Paper&, const ReadingDistances& own) {
  return roles(on_desk, own);
}

std::vector<TypeRole> fridge_roles(const Paper&, const ReadingDistances& own) {
  std::vector<TypeRole> out = roles(in_hand, own);
  for (TypeRole& role : out) {
    if (role.role == Role::heading) role.least_points = least_head;
    if (!runs_on(role.role)) continue;
    role.least_points = least_body;
    role.most_arc_minutes = most_on_fridge;
  }
  return out;
}
}  // namespace furnish
