#include "spec/visit_sections.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "spec/audience_reader.h"
#include "spec/free_text.h"
#include "spec/photo_path.h"
#include "spec/places.h"
#include "spec/visit_format.h"

namespace furnish {
namespace {
/// `side` beside a region's name; a name that has a side of its own needs none.
void apply_side(Fields& fields, const TomlEntry& entry, NamedPlaces& where) {
  const auto side = fields.choice(keys::state::side);
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
  auto where = read_key_places(entry, AnySide::yes, others, parent);
  if (!std::holds_alternative<TomlTable>(entry.node.value)) {
    // A misspelt key of another kind is one fault, not two.
    if (!where) return std::nullopt;
    report_type(entry.node, entry.key, "a table such as { mats = 2, length = \"38 mm\" }",
                parent.sink());
    return std::nullopt;
  }
  Fields fields(entry.node, fmt::format("'{}'", entry.key), keys::state::table, parent);
  RegionState state;
  state.span = entry.key_span;
  state.mats = fields.whole(keys::state::mats);
  state.encircling = fields.flag(keys::state::encircling, false);
  if (const auto length = fields.quantity(keys::state::length)) state.length = length->value;
  state.soil = read_free_text(fields, keys::state::soil);
  state.shedding = read_free_text(fields, keys::state::shedding);
  state.skin = read_free_text(fields, keys::state::skin);
  state.note = read_staff_text(fields, keys::state::note);
  if (where) {
    apply_side(fields, entry, *where);
  } else {
    fields.find(keys::state::side);
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
  out.behaviour = read_free_text(table, keys::came_in::behaviour);
  out.helped = read_free_text(table, keys::came_in::helped);
  out.nails = read_free_text(table, keys::came_in::nails);
  out.parasites = read_free_text(table, keys::came_in::parasites);
  out.soil = read_free_text(table, keys::came_in::soil);
  out.shedding = read_free_text(table, keys::came_in::shedding);
  out.skin = read_free_text(table, keys::came_in::skin);
  out.ears = read_free_text_unless_region(table, keys::came_in::ears);
  out.eyes = read_free_text_unless_region(table, keys::came_in::eyes);
  for (const Located<std::string>& word : table.texts(keys::came_in::well)) {
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
  out.closed = fields.flag(keys::finding::closed, false);
  if (!out.closed) fields.require(keys::finding::what);
  if (const auto region = fields.text(keys::finding::region)) {
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
  if (const auto side = fields.choice(keys::finding::side)) {
    Side& named = out.place.value.side;
    if (named != Side::both && named != side->value) {
      fields.sink()
          .error("two-sides", side->span,
                 fmt::format("the region is already on the {}", to_text(named)))
          .hint = "keep one of the two";
    }
    named = side->value;
  }
  out.what = read_free_text(fields, keys::finding::what);
  out.advised = read_free_text(fields, keys::finding::advised);
  out.audience = read_audience(fields);
  fields.finish();
  return out;
}

Photo read_photo(Fields& fields, const Salon* salon) {
  Photo out;
  if (auto path = read_photo_path(fields, keys::photo::file, salon)) out.file = *std::move(path);
  if (const auto when = fields.choice(keys::photo::when)) {
    out.when = when->value;
  }
  out.caption = read_free_text(fields, keys::photo::caption);
  if (const TomlEntry* const entry = fields.find(keys::photo::focus)) {
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
  out.to = read_free_text(fields, keys::consent::to);
  out.by = fields.words(keys::consent::by);
  if (const auto on = fields.date(keys::consent::on)) out.on = on->value;
  fields.finish();
  return out;
}

Work work_said(const Visit& visit) {
  const bool worked = !visit.done.empty() || !visit.went_out.empty() || !visit.finish.empty() ||
                      !visit.nails.empty() || !visit.extras.empty() || !visit.products.empty() ||
                      visit.minutes || std::ranges::any_of(visit.photos, [](const Photo& photo) {
                        return photo.when == PhotoTime::after && !photo.file.value.empty();
                      });
  return worked ? Work::done : Work::unwritten;
}
}  // namespace furnish
