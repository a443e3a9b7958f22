#include "figure/tail.h"

namespace furnish {

// Each: the line from root to tip, the bare tail's radius at every knot of it, and whether it is
// carried over the back; in units of the figure on the medium dog. By eye.
Tail tail_of(TailType type) {
  switch (type) {
    case TailType::plume:
      return {{{{78, 93}},
               {{83.5, 100}},
               {{83.6, 109}},
               {{77.6, 116.4}},
               {{67.6, 118.6}},
               {{58.4, 114.6}},
               {{54.4, 107}}},
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
           {{79, 91.8}},
           {{88, 86.6}},
           {{95, 77}},
           {{99, 64}},
           {{103.4, 52}},
           {{110.6, 43}}},
          {6.2, 5.4, 4.4, 3.6, 2.9, 2.2, 0.8},
          false};
}
}  // namespace furnish
