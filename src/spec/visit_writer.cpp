#include "spec/visit_writer.h"

#include <fmt/format.h>

#include "spec/product_writer.h"
#include "spec/toml_text.h"
#include "spec/trim_writer.h"
#include "spec/visit_sections.h"
#include "spec/word_tables.h"

namespace furnish {
namespace {
using toml_text::free_text;
using toml_text::quantity;
using toml_text::Section;

void add_states(const std::vector<RegionState>& states, Section& out) {
  for (const RegionState& state : states) {
    std::vector<std::pair<std::string, std::string>> rows;
    const auto words = [&](const char* name, const FreeText& value) {
      if (!value.empty()) rows.emplace_back(name, free_text(value));
    };
    if (state.mats) rows.emplace_back("mats", std::to_string(*state.mats));
    if (state.encircling) rows.emplace_back("encircling", "true");
    if (state.length) rows.emplace_back("length", quantity(*state.length));
    words("soil", state.soil);
    words("shedding", state.shedding);
    words("skin", state.skin);
    if (!state.note.empty()) rows.emplace_back("note", free_text(state.note, Audience::staff));
    out.add(toml_text::place(state.place), toml_text::table(rows));
  }
}

std::string head(const Visit& visit) {
  Section out("");
  out.add("date", to_iso(visit.date.value));
  // Where the rest of the file would be read as something else.
  if (is_open(visit) && (visit.work == Work::unfinished || work_said(visit) != visit.work)) {
    out.add("unfinished", "true");
  } else if (visit.work == Work::done && work_said(visit) != Work::done) {
    out.add("unfinished", "false");
  }
  out.own_words("not_done", visit.not_done);
  std::string did;
  for (const DonePart part : visit.did) {
    did += (did.empty() ? "" : ", ") + toml_text::quoted(words::word(words::done_parts, part));
  }
  if (!did.empty()) out.add("did", "[" + did + "]");
  out.words("groomer", visit.groomer);
  if (visit.minutes) out.add("minutes", std::to_string(visit.minutes->count()));
  if (visit.weight) out.add("weight", quantity(visit.weight->value));
  if (visit.next) out.add("next", to_iso(visit.next->value));
  out.own_words("told", visit.told);
  return out.text();
}

std::string came_in(const CameIn& from) {
  Section out("[came_in]");
  out.own_words("behaviour", from.behaviour);
  out.own_words("helped", from.helped);
  std::string well;
  for (const Place place : from.well) {
    well += (well.empty() ? "" : ", ") + toml_text::quoted(toml_text::place(place));
  }
  if (!well.empty()) out.add("well", "[" + well + "]");
  out.own_words("ears", from.ears);
  out.own_words("eyes", from.eyes);
  out.own_words("nails", from.nails);
  out.own_words("parasites", from.parasites);
  out.own_words("soil", from.soil);
  out.own_words("shedding", from.shedding);
  out.own_words("skin", from.skin);
  add_states(from.regions, out);
  return out.text();
}

std::string done(const TrimRules& rules) {
  Section out("[done]");
  for (const PlacedEntry& rule : rules) {
    auto fields = entry_fields(rule.entry);
    if (!rule.entry.why.empty()) {
      fields.emplace_back("why", free_text(rule.entry.why, Audience::staff));
    }
    out.add(toml_text::place(rule.place), toml_text::table(fields));
  }
  return out.text();
}

std::string product(const ProductUse& use) {
  Section out("[[product]]");
  for (auto& [name, value] : product_fields(use, ProductKind::other)) out.add(name, value);
  if (use.product.mixed) out.add("mixed", to_iso(*use.product.mixed));
  return out.text();
}

std::string finding(const Finding& from) {
  Section out("[[finding]]");
  out.words("region", key(from.place.value.region));
  if (from.place.value.side != Side::both) out.words("side", to_text(from.place.value.side));
  out.own_words("what", from.what);
  out.own_words("advised", from.advised);
  if (from.closed) out.add("closed", "true");
  out.words("for", words::word(words::audience, from.audience));
  return out.text();
}

/// Nothing of a photo of which it is not said where it lies: a file cannot name it.
std::string photo(const Photo& from) {
  if (from.file.value.empty()) return {};
  Section out("[[photo]]");
  out.words("file", from.file.value);
  out.words("when", from.when == PhotoTime::before ? "before" : "after");
  out.own_words("caption", from.caption);
  if (from.focus) {
    out.add("focus", fmt::format("[{}, {}]", (*from.focus)[0], (*from.focus)[1]));
  }
  return out.text();
}

std::string consent(const Consent& from) {
  Section out("[[consent]]");
  out.own_words("to", from.to);
  out.words("by", from.by);
  if (from.on) out.add("on", to_iso(*from.on));
  return out.text();
}
}  // namespace

std::string visit_toml(const Visit& visit) {
  Section went_out("[went_out]");
  went_out.own_words("finish", visit.finish);
  went_out.own_words("nails", visit.nails);
  went_out.own_words("extras", visit.extras);
  add_states(visit.went_out, went_out);
  std::vector<std::string> sections{head(visit), came_in(visit.came_in), done(visit.done),
                                    went_out.text()};
  for (const ProductUse& one : visit.products) sections.push_back(product(one));
  for (const Finding& one : visit.findings) sections.push_back(finding(one));
  for (const Photo& one : visit.photos) sections.push_back(photo(one));
  for (const Consent& one : visit.consents) sections.push_back(consent(one));
  return toml_text::joined_sections(sections);
}
}  // namespace furnish
