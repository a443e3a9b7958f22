#include "spec/style_library.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "spec/document.h"
#include "spec/style_reader.h"
#include "spec/values.h"

namespace furnish {

StyleLibrary::StyleLibrary(const ReadContext& context, const std::string& shipped_folder,
                           const std::string& salon_folder)
    : context_(context) {
  for (const std::string& folder : {shipped_folder, salon_folder}) {
    if (folder.empty()) continue;
    const std::string base = folder.ends_with('/') ? folder : folder + "/";
    for (const std::string& file : list_folder(context, folder)) {
      shelves_[stem(file)].path = base + file;
    }
  }
}

std::vector<std::string> StyleLibrary::keys() const {
  std::vector<std::string> out;
  for (const auto& [key, shelf] : shelves_) out.push_back(key);
  return out;
}

std::string StyleLibrary::path(std::string_view key) const {
  const auto found = shelves_.find(key);
  return found == shelves_.end() ? std::string() : found->second.path;
}

const Style* StyleLibrary::find(std::string_view key, SourceSpan asked_at, DiagnosticSink& asker) {
  const auto found = shelves_.find(key);
  if (found == shelves_.end()) {
    std::vector<std::string_view> words;
    for (const auto& [word, shelf] : shelves_) words.push_back(word);
    report_unknown("unknown-style", asked_at, "style", key, words, asker);
    return nullptr;
  }
  Shelf& shelf = found->second;
  if (shelf.state == State::reading) {
    report_cycle(found->first, asked_at);
    return nullptr;
  }
  if (shelf.state == State::unread && chain_.size() == most_extended) {
    report_long_chain(asked_at);
    return nullptr;
  }
  if (shelf.state == State::unread) {
    shelf.state = State::reading;
    chain_.push_back(found->first);
    read(shelf);
    chain_.pop_back();
  }
  if (shelf.state == State::good) return &shelf.style;
  // A long chain is one fault, and whoever extends a part of it is another part.
  if (shelf.in_long_chain && !chain_.empty()) {
    shelves_.find(chain_.back())->second.in_long_chain = true;
    return nullptr;
  }
  // A cycle is one fault, told once for all the files in it.
  const bool in_same_cycle =
      shelf.in_cycle && !chain_.empty() && shelves_.find(chain_.back())->second.in_cycle;
  if (!in_same_cycle && asked_at.file != SourceSpan::no_file) {
    asker.error("style-has-faults", asked_at, fmt::format("style '{}' has faults of its own", key))
        .notes.emplace_back(shelf.span, "they are in this file, or in what it extends");
  }
  return nullptr;
}

void StyleLibrary::read(Shelf& shelf) {
  StyleFile file = read_style_file(context_, shelf.path);
  shelf.span = {file.file, {}, {}};
  shelf.style = std::move(file.style);
  bool good = file.good;
  if (file.extends) {
    shelf.extends = file.extends->span;
    const Style* const lower = find(file.extends->value, file.extends->span);
    if (lower == nullptr) {
      good = false;
    } else {
      extend(shelf.style, *lower);
    }
  }
  shelf.state = good ? State::good : State::bad;
}

void StyleLibrary::report_long_chain(SourceSpan asked_at) {
  for (const std::string& key : chain_) shelves_.find(key)->second.in_long_chain = true;
  constexpr std::size_t shown = 4;
  const std::vector<std::string> start(chain_.begin(), chain_.begin() + shown);
  context_.sink
      .error("style-chain", asked_at,
             fmt::format("more than {} styles extend each other: {} extends …", most_extended,
                         joined(start, " extends ")))
      .hint = "write out in one file what several of them say";
}

void StyleLibrary::report_cycle(const std::string& key, SourceSpan asked_at) {
  const auto first = std::ranges::find(chain_, key);
  std::string shown = key;
  Diagnostic fault;
  for (auto at = first; at != chain_.end(); ++at) {
    Shelf& shelf = shelves_.find(*at)->second;
    shelf.in_cycle = true;
    const bool last = at + 1 == chain_.end();
    const std::string& next = last ? key : *(at + 1);
    shown += fmt::format(" extends {}", next);
    if (!last) {
      fault.notes.emplace_back(shelf.extends, fmt::format("'{}' extends '{}' here", *at, next));
    }
  }
  Diagnostic& reported =
      context_.sink.error("style-cycle", asked_at, fmt::format("styles in a circle: {}", shown));
  reported.notes = std::move(fault.notes);
  reported.hint = "one of them must stand on its own: take its 'extends' out";
}
}  // namespace furnish
