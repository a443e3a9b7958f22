#include "sheet/own_words.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/said_in.h"
#include "base/text.h"
#include "sheet/parts.h"
#include "sheet/terms.h"
#include "trade/stock.h"

namespace furnish {
namespace {
/// "es" of "es-US".
std::string_view first_subtag(std::string_view tag) {
  return tag.substr(0, tag.find('-'));
}

/// A text in each of its languages, the first one's named.
std::vector<FreeText::In> given(const FreeText& text, std::string_view salon_language) {
  std::vector<FreeText::In> out{
      {text.language.empty() ? std::string(salon_language) : text.language, text.value}};
  std::ranges::copy(text.others, std::back_inserter(out));
  return out;
}

/// The one in a language: in just that, in a parent of it, else in any region's.
const FreeText::In* in_language(const std::vector<FreeText::In>& all, std::string_view language) {
  std::string tag = lower_ascii(language);
  while (!tag.empty()) {
    const auto found = std::ranges::find(
        all, tag, [](const FreeText::In& one) { return lower_ascii(one.language); });
    if (found != all.end()) return &*found;
    const std::size_t hyphen = tag.rfind('-');
    tag.resize(hyphen == std::string::npos ? 0 : hyphen);
  }
  const auto near = std::ranges::find_if(
      all, [&](const FreeText::In& one) { return same_language(one.language, language); });
  return near == all.end() ? nullptr : &*near;
}
}  // namespace

bool same_language(std::string_view a, std::string_view b) {
  return lower_ascii(first_subtag(a)) == lower_ascii(first_subtag(b));
}

namespace {
/// With marks that say which language it is in, if that is not the page's.
std::string read_in(std::string_view language, std::string text, const SheetVoice& voice) {
  if (text.empty() || language.empty() || same_language(language, voice.words.language())) {
    return text;
  }
  return said_in(language, text);
}
}  // namespace

OwnWords own_words(const FreeText& text, const SheetVoice& voice) {
  if (text.empty()) return {};
  const std::string& page = voice.words.language();
  const std::string_view salon = voice.salon_language.empty() ? page : voice.salon_language;
  const std::vector<FreeText::In> all = given(text, salon);
  if (const FreeText::In* const own = in_language(all, page)) {
    return {voice.words.written(own->text)};
  }
  for (const FreeText::In& one : all) {
    if (auto known = voice.words.translated(one.text, voice.salon_words)) {
      return {*std::move(known)};
    }
  }
  const FreeText::In* const salons = in_language(all, salon);
  const FreeText::In& last = salons != nullptr ? *salons : all.front();
  if (voice.others == nullptr)
    return {read_in(last.language, voice.words.written(last.text), voice)};
  voice.others->add(text, last.language);
  return {last.text, last.language};
}

std::string salons_words(const std::string& text, const SheetVoice& voice) {
  return salons_words(FreeText(text), voice);
}

std::string salons_words(const FreeText& text, const SheetVoice& voice) {
  SheetVoice unheard = voice;
  unheard.others = nullptr;
  return own_words(text, unheard).text;
}

OwnWords own_name(const std::string& name, const SheetVoice& voice) {
  SheetVoice unheard = voice;
  OtherLanguages nobody;
  if (voice.others != nullptr) unheard.others = &nobody;
  FreeText text;
  text.value = name;
  return own_words(text, unheard);
}

std::string lead_in(const std::string& head, const std::string& language, const SheetVoice& voice) {
  const std::string name = voice.locale.language_name(language);
  return head.empty() ? voice.words.say(Phrase::in_language, {name})
                      : voice.words.say(Phrase::lead_in_language, {head, name});
}

ApartText stand_apart(const std::vector<std::string>& sentences, const std::string& language,
                      const SheetVoice& voice) {
  return {{{voice.words.written(joined(sentences, " "))}}, language};
}

OwnWords finish_words(const FinishLine& line, const SheetVoice& voice) {
  const FinishInfo* const known = find_finish(line.part, line.words.value);
  if (known != nullptr && known->words == line.words.value) {
    return {finish_text(line.part, line.words.value, voice.words, voice.reader)};
  }
  return own_words(line.words, voice);
}

OwnLine own_line(const std::string& head, const FreeText& text, const SheetVoice& voice) {
  return own_line(head, own_words(text, voice), voice);
}

OwnLine own_line(const std::string& head, const OwnWords& own, const SheetVoice& voice) {
  if (!own.language.empty()) {
    return {lead_in(head, own.language, voice),
            stand_apart({sentence(own.text)}, own.language, voice)};
  }
  return {sentence(head.empty() ? own.text : voice.words.say(Phrase::care_end, {head, own.text}))};
}

void OtherLanguages::add(const FreeText& text, const std::string& language) {
  const bool known = std::ranges::any_of(
      found_, [&](const Found& one) { return one.text.span == text.span && one.text == text; });
  if (!known) found_.push_back({text, language});
}

void OtherLanguages::report(const std::string& page_language, Audience reader,
                            DiagnosticSink& sink) const {
  for (const auto& [text, language] : found_) {
    const std::string tag(first_subtag(page_language));
    auto& fault = sink.warning(
        "other-language", text.span,
        fmt::format("{} is in '{}', this text is in '{}'",
                    reader == Audience::everyone ? "the owner's page" : "the page for staff",
                    page_language, language));
    const std::string_view own = text.language.empty() ? "text" : std::string_view(text.language);
    const std::string write = fmt::format("write {{ {} = \"…\", {} = \"…\" }}", own, tag);
    const auto near = nearest_stock(text.value);
    fault.hint =
        near ? fmt::format("\"{}\" is known in every language; or {}", *near, write) : write;
  }
}
}  // namespace furnish
