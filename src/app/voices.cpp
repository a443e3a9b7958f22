#include "app/voices.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"

namespace furnish {

Voices::Voices(const Options& options, DiagnosticSink& sink) : options_(options), sink_(sink) {}

std::unique_ptr<Words> Voices::words(SalonFolder& folder, const std::string& language,
                                     SourceSpan asked_at) {
  CatalogueLibrary& library = folder.words();
  if (!library.has(language)) {
    if (!unknown_.insert(language).second) return nullptr;
    auto& fault = sink_.error("no-language", asked_at,
                              fmt::format("there are no words for the language '{}'", language));
    const std::vector<std::string> known = library.languages();
    const std::vector<std::string_view> views(known.begin(), known.end());
    const auto near = nearest(lower_ascii(language), views, 1);
    fault.hint =
        fmt::format("{}there are {}; another is a file styles/words/{}.toml",
                    near ? fmt::format("did you mean '{}'? ", *near) : "", listed(known), language);
    return nullptr;
  }
  const auto chain = library.chain(language);
  return chain ? Words::open(*chain, sink_) : nullptr;
}

const Voices::Voice* Voices::voice(SalonFolder& folder, const Pet& pet, Reader reader) {
  const Salon& salon = folder.salon();
  std::string language = salon.language;
  SourceSpan asked_at = salon.span;
  if (reader == Reader::owner && !pet.owner.language.empty()) {
    language = pet.owner.language;
    asked_at = pet.span;
  }
  if (!options_.language.empty()) {
    language = options_.language;
    asked_at = {};
  }
  Units units = salon.units;
  if (language != salon.language) units = usual_units(language).value_or(units);
  if (options_.units) units = *options_.units;

  const auto made = std::ranges::find_if(voices_, [&](const auto& one) {
    return one->root == folder.root() && one->language == language && one->units == units;
  });
  if (made != voices_.end()) return (*made)->words ? made->get() : nullptr;
  voices_.push_back(std::unique_ptr<Voice>(new Voice{folder.root(), language, units,
                                                     words(folder, language, asked_at),
                                                     ReaderLocale(language, units)}));
  return voices_.back()->words ? voices_.back().get() : nullptr;
}
}  // namespace furnish
