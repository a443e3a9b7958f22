#include <string>

#include "base/date.h"
#include "fuzz/salon_files.h"
#include "fuzz/targets.h"
#include "plan/plan.h"
#include "plan/plan_json.h"
#include "spec/reader.h"
#include "spec/style_library.h"
#include "spec/writer.h"

namespace furnish::fuzz {
namespace {
const Salon& salon() {
  static const Salon read = [] {
    Reading reading;
    const auto out = read_salon_text(reading.context, "salon.toml",
                                     "[salon]\nname = \"S\"\n[products]\noat = { name = \"oat\", "
                                     "dilution = \"10:1\" }\n[vaccinations]\nrabies = { valid = "
                                     "\"3 years\", required = true }\n");
    return out.value_or(default_salon());
  }();
  return read;
}
}  // namespace

void pet(std::string_view bytes) {
  const bool in_salon = bytes.size() % 2 == 0;
  Reading reading;
  StyleLibrary styles(reading.context, "shipped", "styles");
  const auto one = read_pet_text(reading.context, "pets/rex.toml", std::string(bytes),
                                 in_salon ? &salon() : nullptr, styles);
  hold(one.has_value() != reading.sink.has_errors(), "a pet, or a fault");
  if (one) {
    const Date today = make_date(2026, 11, 24).value();
    make_plan(in_salon ? salon() : default_salon(), *one, {}, {}, today, reading.sink);
    // That costs as much as all before.
    if (bytes.size() % 8 < 2) return reading.tell();
    const std::string written = pet_toml(*one);
    Reading again;
    StyleLibrary same(again.context, "shipped", "styles");
    const auto back =
        read_pet_text(again.context, "pets/rex.toml", written, in_salon ? &salon() : nullptr, same);
    hold(back.has_value(), "what was written of a pet is read again");
    hold(pet_toml(*back) == written, "and means the same");
  }
  reading.tell();
}
}  // namespace furnish::fuzz
