#include "spec/visit_sections.h"

#include <fmt/format.h>

#include <array>

#include "spec/audience_reader.h"
#include "spec/free_text.h"
#include "spec/photo_path.h"
#include "spec/places.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 3> side_words{"left", "right", "both"};
constexpr std::array<std::string_view, 2> time_words{"before", "after"};
std::optional<PhotoTime> parse_photo_time(std::string_view word) {
  if (word == "before") return PhotoTime::before;
  if (word == "after") return PhotoTime::after;
  return std::nullopt;
}

/// `side` beside a region's name; a name that has a side of its own needs none.
void apply_side(Fields& fields, const TomlEntry& entry, NamedPlaces& where) {
  const auto side = fields.choice("side", "side", parse_side, side_words);
  if (!side || side->value == Side::both) return;
  for (Place& place : where.places) {
    if (place.side != Side::both && place.side != side->value) {
      fields.sink()
          .error("two-sides", side->span,
                 fmt::format("'{}' is on the {}", entry.key, to_text(place.side)))
          .hint = "keep one of the two";
    }
    place.side = side->value;
  }
}

bool same_state(const RegionState& a, const RegionState& b) {
  return a.mats == b.mats && a.encircling == b.encircling && a.length == b.length &&
         a.soil == b.soil && a.shedding == b.shedding && a.skin == b.skin && a.note == b.note;
}

std::optional<Said<RegionState>> read_state(const TomlEntry& entry, const Fields& parent,
                                            std::span<const std::string_view> others) {
  auto where = read_places(entry.key, entry.key_span, AnySide::yes, others, parent.sink());
  if (!std::holds_alternative<TomlTable>(entry.node.value)) {
    // A misspelt key of another kind is one fault, not two.
    if (!where) return std::nullopt;
    report_type(entry.node, entry.key, "a table such as { mats = 2, length = \"38 mm\" }",
                parent.sink());
    return std::nullopt;
  }
  Fields fields(entry.node, fmt::format("'{}'", entry.key), parent);
  RegionState state;
  state.span = entry.key_span;
  state.mats = fields.whole("mats", bounds::mats);
  state.encircling = fields.flag("encircling", false);
  if (const auto length = fields.quantity("length", bounds::coat)) state.length = length->value;
  state.soil = read_free_text(fields, "soil");
  state.shedding = read_free_text(fields, "shedding");
  state.skin = read_free_text(fields, "skin");
  state.note = read_staff_text(fields, "note");
  if (where) {
    apply_side(fields, entry, *where);
  } else {
    fields.find("side");
  }
  fields.finish();
  if (!where) return std::nullopt;
  return Said<RegionState>{*where, std::move(state), entry.key, entry.key_span};
}

std::vector<RegionState> read_states(Fields& table) {
  std::vector<Said<RegionState>> said;
  const std::vector<std::string_view> others(table.known().begin(), table.known().end());
  for (const TomlEntry* const entry : table.rest()) {
    if (auto one = read_state(*entry, table, others)) said.push_back(*std::move(one));
  }
  std::vector<RegionState> out;
  for (auto& [place, state] : spread(said, same_state, table.sink())) {
    state.place = place;
    out.push_back(std::move(state));
  }
  return out;
}
}  // namespace

CameIn read_came_in(Fields& table) {
  CameIn out;
  out.behaviour = read_free_text(table, "behaviour");
  out.helped = read_free_text(table, "helped");
  out.nails = read_free_text(table, "nails");
  out.parasites = read_free_text(table, "parasites");
  out.soil = read_free_text(table, "soil");
  out.shedding = read_free_text(table, "shedding");
  out.skin = read_free_text(table, "skin");
  out.ears = read_free_text_unless_region(table, "ears");
  out.eyes = read_free_text_unless_region(table, "eyes");
  for (const Located<std::string>& word : table.texts("well")) {
    const auto where = read_places(word.value, word.span, AnySide::yes, {}, table.sink());
    if (where) out.well.insert(out.well.end(), where->places.begin(), where->places.end());
  }
  out.regions = read_states(table);
  return out;
}

std::vector<RegionState> read_went_out(Fields& table) {
  return read_states(table);
}

Finding read_finding(Fields& fields) {
  Finding out;
  out.span = fields.span();
  fields.require("region", "region = \"belly\", or the nearest region to it");
  out.closed = fields.flag("closed", false);
  if (!out.closed) fields.require("what", "what = \"…\", what was found");
  if (const auto region = fields.text("region")) {
    const auto where = read_places(region->value, region->span, AnySide::yes, {}, fields.sink());
    if (where && where->group) {
      fields.sink()
          .error("not-a-region", region->span,
                 fmt::format("'{}' is a group of regions", region->value))
          .hint = "name the one region where it was found";
    } else if (where) {
      out.place = {where->places.front(), region->span};
    }
  }
  if (const auto side = fields.choice("side", "side", parse_side, side_words)) {
    Side& named = out.place.value.side;
    if (named != Side::both && named != side->value) {
      fields.sink()
          .error("two-sides", side->span,
                 fmt::format("the region is already on the {}", to_text(named)))
          .hint = "keep one of the two";
    }
    named = side->value;
  }
  out.what = read_free_text(fields, "what");
  out.advised = read_free_text(fields, "advised");
  out.audience = read_audience(fields);
  fields.finish();
  return out;
}

Photo read_photo(Fields& fields, const Salon* salon) {
  Photo out;
  fields.require("file", "file = \"photos/….jpg\"");
  fields.require("when", "when = \"before\" or \"after\"");
  if (auto path = read_photo_path(fields, "file", salon)) out.file = *std::move(path);
  if (const auto when = fields.choice("when", "time of a photo", parse_photo_time, time_words)) {
    out.when = when->value;
  }
  out.caption = read_free_text(fields, "caption");
  if (const TomlEntry* const entry = fields.find("focus")) {
    const auto* const list = std::get_if<TomlList>(&entry->node.value);
    if (list == nullptr || list->size() != 2) {
      report_type(entry->node, "focus", "two numbers such as [0.5, 0.3]", fields.sink());
    } else {
      const auto x = as_number(list->front(), "focus", bounds::focus, fields.sink());
      const auto y = as_number(list->back(), "focus", bounds::focus, fields.sink());
      if (x && y) out.focus = {*x, *y};
    }
  }
  fields.finish();
  return out;
}

Consent read_consent(Fields& fields) {
  Consent out;
  out.span = fields.span();
  fields.require("to", "to = \"…\", what was agreed to");
  out.to = read_free_text(fields, "to");
  out.by = fields.words("by");
  if (const auto on = fields.date("on")) out.on = on->value;
  fields.finish();
  return out;
}
}  // namespace furnish
