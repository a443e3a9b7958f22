#include "figure/generated.h"

namespace furnish {

std::vector<Build> all_builds() {
  std::vector<Build> out;
  for (int nose = 0; nose < 3; ++nose) {
    for (int legs = 0; legs < 3; ++legs) {
      for (int body = 0; body < 3; ++body) {
        for (int ears = 0; ears < 5; ++ears) {
          for (int tail = 0; tail < 5; ++tail) {
            out.push_back({static_cast<NoseLength>(nose), static_cast<Legs>(legs),
                           static_cast<BodyLength>(body), static_cast<EarType>(ears),
                           static_cast<TailType>(tail), static_cast<Bone>(out.size() % 3)});
          }
        }
      }
    }
  }
  return out;
}

std::vector<Build> some_builds() {
  std::vector<Build> out;
  for (int i = 0; i < 5; ++i) {
    out.push_back({static_cast<NoseLength>(i % 3), static_cast<Legs>((i + 1) % 3),
                   static_cast<BodyLength>((i + 2) % 3), static_cast<EarType>(i),
                   static_cast<TailType>(i), static_cast<Bone>((i + 1) % 3)});
  }
  return out;
}

double between(std::mt19937& random, double low, double high) {
  return low + (high - low) * (static_cast<double>(random() >> 8) / 16777216.0);
}

Build any_build(std::mt19937& random) {
  const std::vector<Build> builds = all_builds();
  return builds[random() % builds.size()];
}

FigureInput any_plan(std::mt19937& random) {
  FigureInput input;
  input.build = any_build(random);
  input.coat = static_cast<Coat>(random() % coat_count);
  input.weight = Mass::kg(between(random, 1.5, 80));
  input.side = random() % 2 == 0 ? Side::left : Side::right;
  input.tail_end = static_cast<TailEnd>(random() % 4);
  for (std::size_t i = 0; i < region_count; ++i) {
    const double low = between(random, 0.5, 60), more = between(random, 0, 20);
    input.left[i] = LengthRange{Length::mm(low), Length::mm(low + more)};
    input.tools[i] = static_cast<ToolKind>(random() % tool_kind_count);
    input.callouts.push_back(
        {static_cast<int>(i) + 1, {static_cast<Region>(i)}, random() % 3 == 0, {}});
  }
  for (const Seam& seam : seams()) {
    if (random() % 4 == 0) input.stepped.push_back(seam);
  }
  return input;
}

DrawnCoat even_coat(Coat coat, double length) {
  DrawnCoat out;
  out.coat = coat;
  out.length.fill(length);
  return out;
}
}  // namespace furnish
