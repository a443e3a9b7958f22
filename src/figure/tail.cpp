#include "figure/tail.h"

#include <algorithm>

namespace furnish {
namespace {

// Each: the line from root to tip, the bare tail's radius at every knot of it, and whether it is
// carried over the back; in units of the figure on the medium dog. By eye.
Tail carried(TailType type) {
  switch (type) {
    case TailType::plume:
      return {{{{78, 93}},
               {{84, 99}},
               {{84.4, 106.4}},
               {{78.4, 112.4}},
               {{68.4, 113.6}},
               {{59, 110}},
               {{53.4, 103.4}}},
              {4.6, 4, 3.6, 3.2, 2.8, 2.2, 1},
              true};
    case TailType::sickle:
      return {{{{70, 93.4}},
               {{79, 93}},
               {{88, 95.6}},
               {{95, 102}},
               {{99.6, 111}},
               {{99.4, 121}},
               {{94, 128.6}}},
              {6, 5.2, 4.4, 3.8, 3.2, 2.4, 0.8},
              false};
    case TailType::otter:
      return {{{{70, 92.6}}, {{79, 91.8}}, {{89, 90.6}}, {{101, 88}}, {{114, 85.6}}, {{126, 86.4}}},
              {6.4, 6.2, 5.6, 4.6, 3.4, 1},
              false};
    case TailType::docked:
      return {{{{72, 90}}, {{79, 94}}, {{84.4, 99.6}}, {{87, 106}}}, {6, 5, 4.2, 2.8}, false};
    case TailType::sabre:
      break;
  }
  return {{{{70, 93}},
           {{79, 92.4}},
           {{88.6, 88.2}},
           {{97, 79.4}},
           {{103, 67}},
           {{109, 56}},
           {{117, 48.4}}},
          {6.2, 5.4, 4.4, 3.6, 2.9, 2.2, 0.8},
          false};
}

/// Straight up from the root, thick there and ending in a point; a docked one is shorter.
Tail carrot(TailType type) {
  const double length = type == TailType::docked ? 0.72 : 1;
  Tail out{{{{71, 91}}}, {7.4, 6.2, 4.8, 3.4, 0.9}, false};
  for (const Vec to : {Vec{8, 6}, Vec{14.4, 16}, Vec{18.6, 29}, Vec{20.6, 43}}) {
    out.spine.push_back({Vec{71, 91} + to * length});
  }
  return out;
}

/// Long enough that a stem shows under the ball, and as thin as a shaved tail is.
Tail stem_of_ball(Tail tail, TailType type) {
  constexpr double docked_longer = 1.5, thin = 0.62;
  const Vec root = tail.spine.front().at;
  if (type == TailType::docked) {
    for (Knot& knot : tail.spine) knot.at = root + (knot.at - root) * docked_longer;
  }
  for (double& radius : tail.radius) radius *= thin;
  return tail;
}
}  // namespace

Tail tail_of(TailType type, TailEnd end) {
  if (type == TailType::plume) return carried(type);
  switch (end) {
    case TailEnd::carrot:
      return carrot(type);
    case TailEnd::ball:
      return stem_of_ball(carried(type), type);
    case TailEnd::flag:
    case TailEnd::natural:
      break;
  }
  return carried(type);
}
}  // namespace furnish
