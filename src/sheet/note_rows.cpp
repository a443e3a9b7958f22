#include "sheet/note_rows.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "sheet/trim_lines.h"

namespace furnish {
namespace {
class RowMaker {
 public:
  explicit RowMaker(const NoteDesk& desk) : desk_(desk), visit_(desk.note.visit) {}

  std::vector<SheetRow> all() {
    came_in();
    behaviour();
    done();
    left();
    findings();
    products();
    told();
    agreed();
    next();
    return std::move(rows_);
  }

 private:
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return desk_.voice.words.say(phrase, arguments);
  }
  /// What a person wrote.
  std::string own(std::string_view text) const { return desk_.voice.words.written(text); }
  std::string places(const std::vector<Place>& all) const { return places_text(all, desk_.voice); }

  void row(Phrase label, std::vector<std::vector<TextSpan>> lines, SourceSpan span) {
    SheetRow made{say(label), {}, span};
    for (auto& line : lines) {
      if (!line.empty()) made.points.push_back({std::move(line)});
    }
    if (!made.points.empty()) rows_.push_back(std::move(made));
  }
  void row(Phrase label, std::vector<TextSpan> line, SourceSpan span) {
    row(label, std::vector<std::vector<TextSpan>>{std::move(line)}, span);
  }

  void came_in() {
    const CameIn& in = visit_.came_in;
    Sentences general, regions;
    general.add_headed(say(Phrase::note_soil), own(in.soil));
    general.add_headed(say(Phrase::note_shedding), own(in.shedding));
    general.add_headed(say(Phrase::note_skin), own(in.skin));
    general.add_headed(capitalised(say(Phrase::finish_ears)), own(in.ears));
    general.add_headed(say(Phrase::note_eyes), own(in.eyes));
    general.add_headed(capitalised(say(Phrase::finish_nails)), own(in.nails));
    general.add_headed(say(Phrase::note_parasites), own(in.parasites));
    for (const RegionState& state : in.regions) {
      std::vector<std::string> parts = state_words(state);
      if (!parts.empty())
        regions.add_headed(capitalised(places({state.place})),
                           joined(parts, comma(desk_.voice.words)));
    }
    row(Phrase::note_came_in, {general.take(), mats(), regions.take()}, visit_.date.span);
  }

  /// Mats by grade, each with what the grade means: the worst first.
  std::vector<TextSpan> mats() const {
    std::map<int, std::vector<Place>, std::greater<>> by_grade;
    for (const RegionState& state : visit_.came_in.regions) {
      if (state.mats.value_or(0) > 0) by_grade[*state.mats].push_back(state.place);
    }
    Sentences out;
    for (const auto& [grade, where] : by_grade) {
      const std::string meaning = mat_grade_text(grade, desk_.voice.words);
      const std::string head =
          desk_.staff() ? say(Phrase::note_mats_grade, {grade}) : say(Phrase::note_mats);
      out.add_headed(head, say(Phrase::note_mats_at, {capitalised(places(where)), meaning}));
    }
    return out.take();
  }

  /// What was noted of a region besides its mats.
  std::vector<std::string> state_words(const RegionState& state) const {
    std::vector<std::string> parts;
    if (state.length) parts.push_back(shown(*state.length, desk_.voice));
    if (state.encircling) parts.push_back(say(Phrase::note_encircling));
    for (const std::string& words : {state.soil, state.shedding, state.skin, state.note}) {
      if (!words.empty()) parts.push_back(own(words));
    }
    return parts;
  }

  void behaviour() {
    Sentences out;
    out.add_headed("", own(visit_.came_in.behaviour));
    out.add_headed(say(Phrase::note_helped), own(visit_.came_in.helped));
    row(Phrase::note_behaviour, out.take(), visit_.date.span);
  }

  /// A plan that was followed everywhere is one line; else what differed, and why.
  void done() {
    const Pet& pet = desk_.input.pet;
    std::vector<std::vector<TextSpan>> lines;
    const std::string style = pet.style ? own(pet.style->name) : std::string();
    const bool all = visit_.done.empty();
    const Phrase how = !all            ? Phrase::note_else_as_planned
                       : style.empty() ? Phrase::note_all_as_planned
                                       : Phrase::note_as_planned;
    for (std::size_t i = 0; i < visit_.done.size();) {
      const TrimEntry& entry = visit_.done[i].entry;
      std::vector<Place> where;
      for (; i < visit_.done.size() && visit_.done[i].entry.span == entry.span; ++i) {
        where.push_back(visit_.done[i].place);
      }
      lines.push_back(difference(entry, where));
    }
    lines.push_back({{sentence(how == Phrase::note_as_planned ? say(how, {style}) : say(how)),
                      all ? std::optional(Face::semibold) : std::nullopt}});
    row(Phrase::note_done, std::move(lines),
        all ? visit_.date.span : visit_.done.front().entry.span);
  }

  std::vector<TextSpan> difference(const TrimEntry& entry, const std::vector<Place>& where) const {
    const std::vector<TrimPart> planned = planned_at(where);
    std::vector<TextSpan> out{{capitalised(name_of(entry, where)), Face::semibold}};
    if (desk_.staff()) {
      out.push_back({": " + work_text(entry, desk_.voice)});
      if (!planned.empty() && !same_work(planned.front().entry, entry)) {
        out.push_back(
            {" " + say(Phrase::note_instead, {work_text(planned.front().entry, desk_.voice)})});
      }
      out.push_back({"."});
      if (!entry.note.empty()) out.push_back({" " + sentence(own(entry.note))});
      if (!entry.why.empty()) out.push_back({" " + sentence(own(entry.why))});
    } else {
      out.push_back({": " + say(Phrase::note_otherwise) + "."});
      if (!entry.why.empty()) out.push_back({" " + sentence(own(entry.why))});
    }
    return out;
  }

  std::string name_of(const TrimEntry& entry, const std::vector<Place>& where) const {
    const auto group = parse_group(entry.written);
    return group && where.size() > 1 ? group_name(*group, desk_.voice.words) : places(where);
  }

  std::vector<TrimPart> planned_at(const std::vector<Place>& where) const {
    std::vector<TrimPart> out;
    for (const Place place : where) {
      if (const TrimPart* part = find_part(desk_.input.pet.trim, place)) out.push_back(*part);
    }
    return out;
  }

  /// Lengths that were measured when it left.
  void left() {
    std::vector<std::string> measured;
    for (const RegionState& state : visit_.went_out) {
      const std::string where = places({state.place});
      std::vector<std::string> parts = state_words(state);
      if (state.mats.value_or(0) > 0) {
        parts.push_back(mat_grade_text(*state.mats, desk_.voice.words));
      }
      if (!parts.empty()) measured.push_back(where + " " + joined(parts, comma(desk_.voice.words)));
    }
    Sentences ends;
    ends.add_headed("", joined(measured, " · "));
    ends.add_headed(say(Phrase::label_styling), own(visit_.finish));
    ends.add_headed(capitalised(say(Phrase::finish_nails)), own(visit_.nails));
    ends.add_headed(capitalised(say(Phrase::finish_extras)), own(visit_.extras));
    row(Phrase::note_left, ends.take(),
        visit_.went_out.empty() ? visit_.date.span : visit_.went_out.front().span);
  }

  void findings() {
    std::vector<std::vector<TextSpan>> lines;
    int number = 0;
    for (const Finding* finding : note_findings(desk_)) {
      std::vector<TextSpan> line{
          {std::to_string(++number) + "  ", Face::bold},
          {capitalised(places({finding->place.value})) + ": ", Face::semibold},
          {sentence(own(finding->what))}};
      if (finding->closed) {
        line.push_back({(finding->what.empty() ? "" : " ") + sentence(say(Phrase::note_well))});
      }
      if (!finding->advised.empty()) {
        line.push_back({" " + say(Phrase::note_advised) + ": ", Face::semibold});
        line.push_back({sentence(own(finding->advised))});
      }
      if (desk_.staff() && finding->audience == Audience::staff) {
        line.push_back({" (" + say(Phrase::note_staff_only) + ")"});
      }
      lines.push_back(std::move(line));
    }
    if (desk_.staff() && !visit_.came_in.well.empty()) {
      lines.push_back({{capitalised(places(visit_.came_in.well)) + ": ", Face::semibold},
                       {sentence(say(Phrase::note_well))}});
    }
    if (lines.empty()) return;
    row(Phrase::note_found, std::move(lines),
        visit_.findings.empty() ? visit_.date.span : visit_.findings.front().span);
  }

  void products() {
    std::vector<std::string> names;
    for (const ProductUse& use : visit_.products) {
      std::string text = capitalised(own(use.product.name));
      if (desk_.staff() && use.product.mixed) {
        const bool same_day = *use.product.mixed == visit_.date.value;
        text = same_day ? say(Phrase::note_mixed_today, {text})
                        : say(Phrase::note_mixed,
                              {text, desk_.voice.locale.long_date(*use.product.mixed)});
      }
      if (desk_.staff() && use.planned_dwell()) {
        text += comma(desk_.voice.words) +
                say(Phrase::dwell, {shown(*use.planned_dwell(), desk_.voice)});
      }
      if (desk_.staff() && !use.comb_through.empty()) {
        text += comma(desk_.voice.words) + own(use.comb_through);
      }
      names.push_back(text);
    }
    if (names.empty()) return;
    row(Phrase::note_products, {{sentence(joined(names, " · "))}}, visit_.products.front().span);
  }

  void told() {
    if (!visit_.told.empty()) {
      row(desk_.staff() ? Phrase::note_told : Phrase::note_for_you, {{sentence(own(visit_.told))}},
          visit_.date.span);
    }
  }

  void agreed() {
    std::vector<std::vector<TextSpan>> lines;
    for (const Consent& consent : visit_.consents) {
      if (consent.by.empty() || !consent.on) continue;  // waits for a signature below
      lines.push_back(
          {{sentence(say(Phrase::note_agreed_by, {capitalised(own(consent.to)), consent.by,
                                                  desk_.voice.locale.long_date(*consent.on)}))}});
    }
    if (!lines.empty()) {
      row(Phrase::note_agreed, std::move(lines), visit_.consents.front().span);
    }
  }

  void next() {
    const auto& next = desk_.input.plan.next_visit;
    if (!next || next->date <= visit_.date.value) return;
    const std::string day = desk_.voice.locale.day_and_month(next->date, visit_.date.value);
    std::vector<TextSpan> line{{capitalised(day), Face::bold}};
    const Salon& salon = desk_.input.salon;
    std::vector<std::string> contact{own(salon.phone), own(salon.email)};
    std::erase(contact, std::string());
    if (!desk_.staff() && !contact.empty()) line.push_back({" · " + joined(contact, " · ")});
    row(Phrase::note_next, std::move(line), visit_.next ? visit_.next->span : visit_.date.span);
  }

  const NoteDesk& desk_;
  const Visit& visit_;
  std::vector<SheetRow> rows_;
};
}  // namespace

std::vector<SheetRow> note_rows(const NoteDesk& desk) {
  return RowMaker(desk).all();
}

std::vector<const Finding*> note_findings(const NoteDesk& desk) {
  std::vector<const Finding*> out;
  for (const Finding& finding : desk.note.visit.findings) out.push_back(&finding);
  return out;
}
}  // namespace furnish
