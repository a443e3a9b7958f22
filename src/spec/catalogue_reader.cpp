#include "spec/catalogue_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <vector>

#include "spec/document.h"
#include "spec/language.h"
#include "spec/offer.h"
#include "spec/values.h"

namespace furnish {
namespace {
/// Sections of English, or the keys in one of them.
class Known {
 public:
  /// Its keys are what people wrote, which English need not have.
  static constexpr std::string_view open_section = "written";

  explicit Known(const Catalogue* english) : english_(english) {}

  bool section(std::string_view word, SourceSpan at, DiagnosticSink& sink) const {
    if (word == open_section) return true;
    std::vector<std::string_view> sections;
    for_each([&](std::string_view section, std::string_view) {
      if (sections.empty() || sections.back() != section) sections.push_back(section);
    });
    return one_of(sections, word, "section", at, sink);
  }

  bool key(std::string_view section, std::string_view word, SourceSpan at,
           DiagnosticSink& sink) const {
    if (section == open_section || has(section, word)) return true;
    std::vector<std::string_view> keys;
    for_each([&](std::string_view of, std::string_view key) {
      if (of == section) keys.push_back(key);
    });
    return one_of(keys, word, "key", at, sink);
  }

 private:
  bool has(std::string_view section, std::string_view word) const {
    return english_ == nullptr || english_->texts.contains(fmt::format("{}.{}", section, word));
  }

  template <typename F>
  void for_each(F each) const {
    if (english_ == nullptr) return;
    for (const auto& [name, text] : english_->texts) {
      const std::size_t point = name.find('.');
      each(std::string_view(name).substr(0, point), std::string_view(name).substr(point + 1));
    }
  }

  bool one_of(const std::vector<std::string_view>& words, std::string_view word,
              std::string_view noun, SourceSpan at, DiagnosticSink& sink) const {
    if (english_ == nullptr || std::ranges::find(words, word) != words.end()) return true;
    Diagnostic& fault = report_unknown("unknown-key", at, noun, word, words, sink);
    fault.message += " in a catalogue";
    // All of some hundred keys would be no help.
    if (!fault.hint.starts_with("did you")) only_tell(fault, "the English catalogue has them all");
    return false;
  }

  const Catalogue* english_;
};

}  // namespace

std::optional<Catalogue> read_catalogue(const ReadContext& context, const std::string& path,
                                        const Catalogue* english) {
  Catalogue out;
  out.language = stem(path);
  const auto [file, document] =
      read_file(context, path, "a catalogue needs [sheet] and texts under it", largest_catalogue);
  if (!document) return std::nullopt;
  out.span = document->span();
  if (!plain_language(out.language)) {
    context.sink
        .error("bad-language", out.span, fmt::format("'{}' is not a language tag", out.language))
        .hint = "name the file after its language, such as es.toml or pt-BR.toml";
  }
  const Known known(english);
  for (const TomlEntry& section : document->root) {
    if (!known.section(section.key, section.key_span, context.sink)) continue;
    const auto* const table = std::get_if<TomlTable>(&section.node.value);
    if (table == nullptr) {
      report_type(section.node, section.key, fmt::format("a table [{}]", section.key),
                  context.sink);
      continue;
    }
    for (const TomlEntry& entry : *table) {
      if (!known.key(section.key, entry.key, entry.key_span, context.sink)) continue;
      auto text = as_text(entry.node, entry.key, context.sink);
      if (!text) continue;
      out.texts[fmt::format("{}.{}", section.key, entry.key)] = {*std::move(text), entry.node.span};
    }
  }
  if (!no_errors_in(file, context.sink)) return std::nullopt;
  return out;
}
}  // namespace furnish
