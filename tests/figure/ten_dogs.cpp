#include "figure/ten_dogs.h"

#include <initializer_list>
#include <span>
#include <utility>

namespace furnish {
namespace {
using enum Region;
using Left = std::pair<Region, double>;  ///< mm

constexpr std::initializer_list<Region> trunk{neck, shoulders, back, sides, loin, rump};

FigureInput dog(Coat coat, double kg, Build build, std::initializer_list<Left> left) {
  FigureInput input;
  input.coat = coat;
  input.weight = Mass::kg(kg);
  input.build = build;
  for (const auto& [region, mm] : left) {
    input.left[static_cast<std::size_t>(region)] = LengthRange{Length::mm(mm), Length::mm(mm)};
  }
  return input;
}

FigureInput with_trunk(FigureInput input, double mm) {
  for (const Region region : trunk) {
    auto& left = input.left[static_cast<std::size_t>(region)];
    if (!left) left = LengthRange{Length::mm(mm), Length::mm(mm)};
  }
  return input;
}

Build build_of(NoseLength nose, Legs legs, BodyLength body, EarType ears, TailType tail) {
  return {nose, legs, body, ears, tail};
}
}  // namespace

std::vector<KnownDog> ten_dogs() {
  using enum NoseLength;
  std::vector<KnownDog> out;

  out.push_back(
      {"wire-terrier",
       "wire-haired terrier, hand-stripped: short flat jacket, full square beard and brows, "
       "legs like columns, folded ears, an upright carrot tail",
       with_trunk(dog(Coat::wire, 8.4,
                      build_of(long_nose, Legs::medium, BodyLength::short_body, EarType::button,
                               TailType::docked),
                      {{muzzle, 60},
                       {cheeks, 6},
                       {crown, 8},
                       {throat, 6},
                       {ears, 5},
                       {eyes, 4},
                       {ruff, 12},
                       {chest, 15},
                       {belly, 30},
                       {tuck_up, 15},
                       {front_legs, 30},
                       {rear_legs, 30},
                       {hocks, 20},
                       {fringe, 35},
                       {breeches, 12},
                       {tail, 12},
                       {feet, 4}}),
                  15)});
  out.back().input.tail_end = TailEnd::carrot;

  out.push_back({"mountain-dog",
                 "giant mountain dog, 70 kg: massive body and bone, broad heavy head with hanging "
                 "ears, thick double coat with a ruff, a bushy hanging tail",
                 with_trunk(dog(Coat::double_coat, 70,
                                build_of(medium, Legs::medium, BodyLength::medium, EarType::drop,
                                         TailType::sabre),
                                {{ears, 25}, {belly, 50}, {fringe, 50}, {breeches, 70}, {feet, 8}}),
                            55)});

  out.push_back({"sighthound",
                 "feathered sighthound: long narrow head, long neck and legs, deep chest and high "
                 "tuck-up, smooth back, long silk on the ears and under a low curved tail",
                 with_trunk(dog(Coat::silky, 23.5,
                                build_of(long_nose, Legs::long_legs, BodyLength::medium,
                                         EarType::drop, TailType::sabre),
                                {{muzzle, 1.5},
                                 {cheeks, 2},
                                 {crown, 6},
                                 {throat, 1.5},
                                 {ears, 70},
                                 {ruff, 8},
                                 {chest, 12},
                                 {belly, 12},
                                 {tuck_up, 8},
                                 {front_legs, 4},
                                 {rear_legs, 4},
                                 {hocks, 4},
                                 {fringe, 40},
                                 {breeches, 50},
                                 {tail, 110},
                                 {feet, 5}}),
                            8)});
  out.back().input.tail_end = TailEnd::flag;

  out.push_back({"flat-nose",
                 "small smooth-coated dog with a flat face: short nose, stocky body, upright ears, "
                 "hardly any tail",
                 dog(Coat::smooth, 11,
                     build_of(short_nose, Legs::medium, BodyLength::short_body, EarType::prick,
                              TailType::docked),
                     {})});

  out.push_back({"lamb",
                 "curly dog in a lamb trim: shaved face and feet, round topknot, short body, full "
                 "round legs, a ball on the tail",
                 with_trunk(dog(Coat::curly, 22,
                                build_of(long_nose, Legs::long_legs, BodyLength::medium,
                                         EarType::drop, TailType::docked),
                                {{muzzle, 1},
                                 {cheeks, 1},
                                 {crown, 60},
                                 {throat, 1.5},
                                 {ears, 60},
                                 {ruff, 13},
                                 {chest, 13},
                                 {belly, 8},
                                 {tuck_up, 10},
                                 {front_legs, 45},
                                 {rear_legs, 45},
                                 {hocks, 45},
                                 {fringe, 45},
                                 {breeches, 45},
                                 {tail, 60},
                                 {feet, 1}}),
                            13)});
  out.back().input.tail_end = TailEnd::ball;
  out.back().input.stepped = {{muzzle, crown}, {cheeks, crown}, {throat, neck},
                              {throat, ruff},  {hocks, feet},   {front_legs, feet}};

  out.push_back(
      {"spitz",
       "spitz: upright pointed ears, fox-like muzzle, big ruff and thick double coat, a "
       "plume of a tail carried over the back",
       dog(Coat::double_coat, 9,
           build_of(medium, Legs::medium, BodyLength::short_body, EarType::prick, TailType::plume),
           {{ears, 10}, {feet, 6}})});

  out.push_back(
      {"long-toy",
       "small drop-coated dog: straight hair to the floor like a curtain, hair tied up in "
       "a topknot, long beard, tail fallen over the back",
       dog(Coat::drop, 5.4,
           build_of(short_nose, Legs::short_legs, BodyLength::medium, EarType::drop,
                    TailType::plume),
           {{ears, 140}, {belly, 180}, {fringe, 170}, {feet, 20}})});

  out.push_back({"spaniel",
                 "spaniel: long low hanging ears with waves of hair, skirts on chest, belly and "
                 "legs, flat back, short tail",
                 with_trunk(dog(Coat::silky, 13,
                                build_of(medium, Legs::medium, BodyLength::medium, EarType::drop,
                                         TailType::docked),
                                {{muzzle, 1.5},
                                 {cheeks, 1.5},
                                 {crown, 8},
                                 {throat, 1.5},
                                 {ears, 60},
                                 {ruff, 20},
                                 {chest, 60},
                                 {belly, 60},
                                 {tuck_up, 30},
                                 {front_legs, 15},
                                 {rear_legs, 15},
                                 {hocks, 8},
                                 {fringe, 60},
                                 {breeches, 70},
                                 {tail, 30},
                                 {feet, 15}}),
                            15)});

  out.push_back(
      {"hound",
       "smooth-coated hound: long nose, big hanging ears, strong legs, no fringes anywhere, "
       "a tail carried up like a sickle",
       dog(Coat::smooth, 27,
           build_of(long_nose, Legs::medium, BodyLength::medium, EarType::drop, TailType::sickle),
           {})});

  out.push_back({"low-wire",
                 "low, long wire-haired dog: very short legs, long back, long nose with a beard, "
                 "hanging ears, long tail",
                 with_trunk(dog(Coat::wire, 9,
                                build_of(long_nose, Legs::short_legs, BodyLength::long_body,
                                         EarType::drop, TailType::sabre),
                                {{muzzle, 45},
                                 {cheeks, 6},
                                 {crown, 8},
                                 {throat, 6},
                                 {ears, 5},
                                 {ruff, 12},
                                 {chest, 20},
                                 {belly, 25},
                                 {tuck_up, 15},
                                 {front_legs, 12},
                                 {rear_legs, 12},
                                 {hocks, 8},
                                 {fringe, 15},
                                 {breeches, 12},
                                 {tail, 12},
                                 {feet, 4}}),
                            15)});
  return out;
}
}  // namespace furnish
