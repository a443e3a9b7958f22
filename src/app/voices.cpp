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
  fault.once = "no-language " + language;
  const std::vector<std::string> known = library.languages();
  const std::vector<std::string_view> views(known.begin(), known.end());
  // Between codes of two letters all are near.
  const auto near = language.size() > 3 ? nearest(lower_ascii(language), views, 1) : std::nullopt;
  fault.hint =
      fmt::format("{}there are {}; another is a file styles/words/{}.toml",
                  near ? fmt::format("did you mean '{}'? ", *near) : "", listed(known), language);
  return false;
}

std::optional<std::string> Voices::language_of(SalonFolder& folder, const Pet& pet,
                                               Audience reader) {
  const std::string& asked = options_.language;
  if (!asked.empty()) {
    if (!has_words(folder, asked, Severity::error, {}, {})) return std::nullopt;
    return asked;
  }
  const Salon& salon = folder.salon();
  const std::string& owners = pet.owner.language;
  const bool salon_known = folder.words().has(salon.language);
  const std::string last_resort = salon_known ? salon.language : "en";
  if (reader == Audience::everyone && !owners.empty() &&
      has_words(folder, owners, Severity::warning, pet.span, last_resort)) {
    return owners;
  }
  has_words(folder, salon.language, Severity::warning, salon.span, last_resort);
  return last_resort;
}

std::optional<SheetVoice> Voices::voice(FontSet& fonts, SalonFolder& folder, const Pet& pet,
                                        Audience reader) {
  const auto known = language_of(folder, pet, reader);
  if (!known) return std::nullopt;
  const std::string& language = *known;
  const Salon& salon = folder.salon();
  Units units = salon.units;
  if (language != salon.language) units = usual_units(language).value_or(units);
  if (options_.units) units = *options_.units;

  auto made = std::ranges::find_if(voices_, [&](const auto& one) {
    return one->root == folder.root() && one->language == language && one->units == units;
  });
  if (made == voices_.end()) {
    voices_.push_back(std::unique_ptr<Voice>(
        new Voice{folder.root(), language, units, words(folder, language),
                  ReaderLocale(language, units), TextShaper(fonts, sink_, language)}));
    made = voices_.end() - 1;
  }
  Voice& voice = **made;
  if (!voice.words) return std::nullopt;
  SheetVoice out{*voice.words, voice.locale, voice.shaper, salon.language};
  if (language != salon.language) out.salon_words = salon_words(folder);
  return out;
}

const Words* Voices::salon_words(SalonFolder& folder) {
  const std::string& language = folder.salon().language;
  if (!folder.words().has(language)) return nullptr;
  const auto [made, is_new] = salon_words_.try_emplace(folder.root());
  if (is_new) made->second = words(folder, language);
  return made->second.get();
}
}  // namespace furnish
