#include "app/voices.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "sheet/caution_words.h"

namespace furnish {

Voices::Voices(const Options& options, DiagnosticSink& sink) : options_(options), sink_(sink) {}

std::unique_ptr<Words> Voices::words(SalonFolder& folder, const std::string& language) {
  const auto chain = folder.words().chain(language);
  return chain ? Words::open(*chain, sink_) : nullptr;
}

std::optional<PlanWords> Voices::plain(SalonFolder& folder) {
  if (!plain_) {
    const auto english = folder.words().shipped_english();
    if (english) plain_ = Words::open(*english, sink_);
  }
  if (!plain_) return std::nullopt;
  return plan_words(*plain_, folder.salon().units);
}

bool Voices::has_words(SalonFolder& folder, const std::string& language, Severity severity,
                       SourceSpan asked_at, const std::string& instead) {
  CatalogueLibrary& library = folder.words();
  if (library.has(language)) return true;
  if (!unknown_.insert(language).second) return false;
  std::string message = fmt::format("there are no words for the language '{}'", language);
  if (!instead.empty()) message += fmt::format("; the sheet is in '{}'", instead);
  auto& fault = severity == Severity::error
                    ? sink_.error("no-language", asked_at, std::move(message))
                    : sink_.warning("no-language", asked_at, std::move(message));
  const std::vector<std::string> known = library.languages();
  const std::vector<std::string_view> views(known.begin(), known.end());
  // Between codes of two letters all are near.
  const auto near = language.size() > 3 ? nearest(lower_ascii(language), views, 1) : std::nullopt;
  fault.hint =
      fmt::format("{}there are {}; another is a file styles/words/{}.toml",
                  near ? fmt::format("did you mean '{}'? ", *near) : "", listed(known), language);
  return false;
}

std::optional<std::string> Voices::language_of(SalonFolder& folder, const Pet& pet, Reader reader) {
  const std::string& asked = options_.language;
  if (!asked.empty()) {
    if (!has_words(folder, asked, Severity::error, {}, {})) return std::nullopt;
    return asked;
  }
  const Salon& salon = folder.salon();
  const std::string& owners = pet.owner.language;
  const bool salon_known = folder.words().has(salon.language);
  const std::string last_resort = salon_known ? salon.language : "en";
  if (reader == Reader::owner && !owners.empty() &&
      has_words(folder, owners, Severity::warning, pet.span, last_resort)) {
    return owners;
  }
  has_words(folder, salon.language, Severity::warning, salon.span, last_resort);
  return last_resort;
}

const Voices::Voice* Voices::voice(SalonFolder& folder, const Pet& pet, Reader reader) {
  const auto known = language_of(folder, pet, reader);
  if (!known) return nullptr;
  const std::string& language = *known;
  const Salon& salon = folder.salon();
  Units units = salon.units;
  if (language != salon.language) units = usual_units(language).value_or(units);
  if (options_.units) units = *options_.units;

  const auto made = std::ranges::find_if(voices_, [&](const auto& one) {
    return one->root == folder.root() && one->language == language && one->units == units;
  });
  if (made != voices_.end()) return (*made)->words ? made->get() : nullptr;
  voices_.push_back(std::unique_ptr<Voice>(new Voice{
      folder.root(), language, units, words(folder, language), ReaderLocale(language, units)}));
  return voices_.back()->words ? voices_.back().get() : nullptr;
}
}  // namespace furnish
