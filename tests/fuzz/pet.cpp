#include <functional>
#include <optional>
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
/// What many pets are read with: a salon and its styles, read once, as a program does.
struct House {
  House() {
    auto read = read_salon_text(reading.context, "salon.toml",
                                "[salon]\nname = \"S\"\n[products]\noat = { name = \"oat\", "
                                "dilution = \"10:1\" }\n[vaccinations]\nrabies = { valid = "
                                "\"3 years\", required = true }\n");
    hold(read.has_value(), "the salon is good");
    salon = *std::move(read);
    for (const std::string& style : styles.keys()) styles.find(style, {});
    hold(!reading.sink.has_errors(), "its styles are");
  }
  Reading reading;
  StyleLibrary styles{reading.context, "shipped", "styles"};
  Salon salon;
};

/// Made anew now and then, since the set of its files grows with every pet.
House& house() {
  constexpr std::size_t most_files = 10'000;
  static std::optional<House> one;
  if (!one || one->reading.sources.size() > most_files) one.emplace();
  return *one;
}
}  // namespace

void pet(std::string_view bytes) {
  // What is done with few, since it costs as much as all before.
  const std::size_t lot = std::hash<std::string_view>()(bytes);
  const bool in_salon = lot % 2 == 0, told = lot / 2 % 8 == 0, written = lot / 16 % 8 == 0;
  House& at = house();
  SourceSet& sources = at.reading.sources;
  const auto first = static_cast<std::uint32_t>(sources.size());
  const Salon* const salon = in_salon ? &at.salon : nullptr;
  DiagnosticSink sink;
  const ReadContext context{at.reading.files, sources, sink, true};
  const auto one = read_pet_text(context, "pets/rex.toml", std::string(bytes), salon, at.styles);
  hold(one.has_value() != sink.has_errors(), "a pet, or a fault");
  if (one) {
    static const Date today = make_date(2026, 11, 24).value();
    static const Salon none = default_salon();
    make_plan(in_salon ? at.salon : none, *one, {}, {}, today, sink);
  }
  if (told) tell(sink, sources);
  if (one && written) {
    const std::string text = pet_toml(*one);
    const auto back = read_pet_text(context, "pets/rex.toml", text, salon, at.styles);
    hold(back.has_value(), "what was written of a pet is read again");
    hold(pet_toml(*back) == text, "and means the same");
  }
  sources.forget_passing(first);
}
}  // namespace furnish::fuzz
