#include "sheet/note_rows.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "plan/home_care.h"
#include "plan/restraints.h"
#include "sheet/care_words.h"
#include "sheet/not_done.h"
#include "sheet/note_pieces.h"
#include "sheet/note_words.h"
#include "sheet/own_words.h"
#include "sheet/owner_work.h"
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

  void row(Phrase label, std::vector<NoteLine> lines, SourceSpan span) {
    SheetRow made{say(label), {}, span};
    for (NoteLine& line : lines) {
      if (line.spans.empty()) continue;
      made.points.push_back({std::move(line.spans), false, std::move(line.apart)});
    }
    if (!made.points.empty()) rows_.push_back(std::move(made));
  }
  void row(Phrase label, NoteLine line, SourceSpan span) {
    row(label, std::vector<NoteLine>{std::move(line)}, span);
  }

  void came_in() {
    const CameIn& in = visit_.came_in;
    Pieces general(desk_.voice), regions(desk_.voice);
    general.add(say(Phrase::note_soil), in.soil);
    general.add(say(Phrase::note_shedding), in.shedding);
    general.add(say(Phrase::note_skin), in.skin);
    general.add(capitalised(say(Phrase::finish_ears)), in.ears);
    general.add(say(Phrase::note_eyes), in.eyes);
    general.add(capitalised(say(Phrase::finish_nails)), in.nails);
    general.add(say(Phrase::note_parasites), in.parasites);
    for (const RegionState& state : in.regions) {
      add_state(regions, capitalised(places({state.place})), state);
    }
    std::vector<NoteLine> lines = general.take();
    std::ranges::move(mats(), std::back_inserter(lines));
    std::ranges::move(regions.take(), std::back_inserter(lines));
    row(Phrase::note_came_in, std::move(lines), visit_.date.span);
  }

  /// Mats by grade, each with what the grade means: the worst first.
  std::vector<NoteLine> mats() const {
    std::map<int, std::vector<Place>, std::greater<>> by_grade;
    for (const RegionState& state : visit_.came_in.regions) {
      if (state.mats.value_or(0) > 0) by_grade[*state.mats].push_back(state.place);
    }
    Pieces out(desk_.voice);
    for (const auto& [grade, where] : by_grade) {
      const std::string meaning = mat_grade_text(grade, desk_.voice.words);
      const std::string head =
          desk_.staff() ? say(Phrase::note_mats_grade, {grade}) : say(Phrase::note_mats);
      out.add_readable(head, say(Phrase::note_mats_at, {places(where), meaning}));
    }
    return out.take();
  }

  /// What was noted of a region besides its mats, in the page's language; what is in another one
  /// goes into `apart`, language by language.
  std::vector<std::string> state_words(const RegionState& state,
                                       std::map<std::string, std::string>& apart) const {
    std::vector<std::string> parts;
    if (state.length) parts.push_back(shown(*state.length, desk_.voice));
    if (state.encircling) parts.push_back(say(Phrase::note_encircling));
    for (const FreeText* const text : {&state.soil, &state.shedding, &state.skin, &state.note}) {
      const OwnWords own = own_words(*text, desk_.voice);
      if (own.text.empty()) continue;
      if (own.language.empty()) {
        parts.push_back(own.text);
      } else {
        std::string& other = apart[own.language];
        other += (other.empty() ? "" : ", ") + own.text;
      }
    }
    return parts;
  }

  void add_state(Pieces& to, const std::string& where, const RegionState& state) const {
    std::map<std::string, std::string> apart;
    to.add_readable(where, joined(state_words(state, apart), comma(desk_.voice.words)));
    for (const auto& [language, text] : apart) to.add(where, OwnWords{text, language});
  }

  void behaviour() {
    Pieces out(desk_.voice);
    out.add("", visit_.came_in.behaviour);
    out.add(say(Phrase::note_helped), visit_.came_in.helped);
    row(Phrase::note_behaviour, out.take(), visit_.date.span);
  }

  /// Of a visit that was not done, why, and what was done all the same.
  void not_done() {
    std::vector<NoteLine> lines = not_done_lines(desk_);
    row(Phrase::note_not_done, std::move(lines), visit_.not_done.span);
    lines.clear();
    if (const auto parts = done_parts(visit_, desk_.input.pet, desk_.voice.words); !parts.empty()) {
      lines.push_back({{{joined(parts, " ")}}});
    }
    differences(lines);
    row(Phrase::note_done, std::move(lines), visit_.date.span);
  }

  /// A plan that was followed everywhere is one line; else what differed, and why. A visit that
  /// nobody finished followed none.
  void done() {
    if (visit_.work == Work::not_done) return not_done();
    const Pet& pet = desk_.input.pet;
    std::vector<NoteLine> lines;
    const std::string style =
        pet.style ? salons_words(pet.style->name, desk_.voice) : std::string();
    const bool all = visit_.done.empty(), open = is_open(visit_);
    const Phrase how = visit_.work == Work::unwritten ? Phrase::note_unwritten_says
                       : open                         ? Phrase::note_open_says
                       : !all                         ? Phrase::note_else_as_planned
                       : style.empty()                ? Phrase::note_all_as_planned
                                                      : Phrase::note_as_planned;
    // What is begun with another tool has left no length that an owner could be told.
    if (desk_.staff() || !open) differences(lines);
    NoteLine last{{{sentence(how == Phrase::note_as_planned ? say(how, {style}) : say(how)),
                    all || open ? std::optional(Face::semibold) : std::nullopt}}};
    // That nothing is done yet is read before what is begun.
    lines.insert(open ? lines.begin() : lines.end(), std::move(last));
    row(open ? Phrase::note_unfinished : Phrase::note_done, std::move(lines),
        all ? visit_.date.span : visit_.done.front().entry.span);
  }

  /// What was done otherwise than planned, a line for what a file wrote for a group.
  void differences(std::vector<NoteLine>& lines) const {
    for (std::size_t i = 0; i < visit_.done.size();) {
      const TrimEntry& entry = visit_.done[i].entry;
      std::vector<Place> where;
      for (; i < visit_.done.size() && visit_.done[i].entry.span == entry.span; ++i) {
        where.push_back(visit_.done[i].place);
      }
      lines.push_back(difference(entry, where));
    }
  }

  NoteLine difference(const TrimEntry& entry, const std::vector<Place>& where) const {
    const std::vector<TrimPart> planned = planned_at(where);
    std::vector<TextSpan> out{{capitalised(name_of(entry, where)), Face::semibold}};
    if (desk_.staff()) {
      out.push_back({colon(desk_.voice.words) + work_text(entry, desk_.voice)});
      if (!planned.empty() && !same_work(planned.front().entry, entry)) {
        out.push_back(
            {" " + say(Phrase::note_instead, {work_text(planned.front().entry, desk_.voice)})});
      }
      out.push_back({"."});
      if (!entry.note.empty())
        out.push_back({" " + sentence(salons_words(entry.note, desk_.voice))});
    } else {
      const PlacedEntry done{where.front(), entry};
      const std::string work = owner_work(entry.tool, left_there(done, desk_.input), desk_.voice);
      out.push_back({colon(desk_.voice.words) + work + "."});
    }
    if (entry.why.empty()) return {std::move(out)};
    OwnLine why = own_line({}, entry.why, desk_.voice);
    out.push_back({" " + why.text});
    return {std::move(out), std::move(why.apart)};
  }

  std::string name_of(const TrimEntry& entry, const std::vector<Place>& where) const {
    const auto group = parse_group(entry.written);
    return group && where.size() > 1 ? group_name(*group, desk_.voice.words, desk_.voice.reader)
                                     : places(where);
  }

  std::vector<TrimPart> planned_at(const std::vector<Place>& where) const {
    const ResolvedTrim trim = taken(desk_.input.pet.trim, desk_.input.plan.cautions);
    std::vector<TrimPart> out;
    for (const Place place : where) {
      if (const TrimPart* part = find_part(trim, place)) out.push_back(*part);
    }
    return out;
  }

  /// Lengths that were measured when it left.
  void left() {
    std::vector<std::string> measured;
    Pieces ends(desk_.voice), apart(desk_.voice);
    for (const RegionState& state : visit_.went_out) {
      const std::string where = places({state.place});
      std::map<std::string, std::string> other;
      std::vector<std::string> parts = state_words(state, other);
      if (state.mats.value_or(0) > 0) {
        parts.push_back(mat_grade_text(*state.mats, desk_.voice.words));
      }
      if (!parts.empty()) measured.push_back(where + " " + joined(parts, comma(desk_.voice.words)));
      for (const auto& [language, text] : other) {
        apart.add(capitalised(where), OwnWords{text, language});
      }
    }
    ends.add_readable("", joined(measured, " · "));
    ends.add(say(Phrase::label_styling), visit_.finish);
    ends.add(capitalised(say(Phrase::finish_nails)), visit_.nails);
    ends.add(capitalised(say(Phrase::finish_extras)), visit_.extras);
    std::vector<NoteLine> lines = ends.take();
    std::ranges::move(apart.take(), std::back_inserter(lines));
    row(Phrase::note_left, std::move(lines),
        visit_.went_out.empty() ? visit_.date.span : visit_.went_out.front().span);
  }

  void findings() {
    std::vector<NoteLine> lines;
    int number = 0;
    for (const Finding* finding : note_findings(desk_)) lines.push_back(found(*finding, ++number));
    if (desk_.staff() && !visit_.came_in.well.empty()) {
      lines.push_back(
          {{{capitalised(places(visit_.came_in.well)) + colon(desk_.voice.words), Face::semibold},
            {sentence(say(Phrase::note_well))}}});
    }
    if (lines.empty()) return;
    row(Phrase::note_found, std::move(lines),
        visit_.findings.empty() ? visit_.date.span : visit_.findings.front().span);
  }

  NoteLine found(const Finding& finding, int number) const {
    const OwnWords what = own_words(finding.what, desk_.voice),
                   advised = own_words(finding.advised, desk_.voice);
    const std::string where = capitalised(places({finding.place.value}));
    const std::string advice = say(Phrase::note_advised);
    NoteLine line{{{finding_letter(number) + "  ", Face::bold}}};
    std::vector<std::string> apart;
    const auto add = [&](const std::string& head, const OwnWords& own, bool first) {
      if (own.text.empty()) return;
      const std::string before = first ? "" : " ";
      if (own.language.empty()) {
        line.spans.push_back({before + head + colon(desk_.voice.words), Face::semibold});
        line.spans.push_back({sentence(own.text)});
      } else {
        line.spans.push_back({before + lead_in(head, own.language, desk_.voice), Face::semibold});
        apart.push_back(sentence(own.text));
        line.apart.language = own.language;
      }
    };
    add(where, what, true);
    if (finding.closed) {
      if (what.text.empty())
        line.spans.push_back({where + colon(desk_.voice.words), Face::semibold});
      line.spans.push_back({(what.text.empty() ? "" : " ") + sentence(say(Phrase::note_well))});
    }
    add(advice, advised, false);
    if (!apart.empty()) line.apart = stand_apart(apart, line.apart.language, desk_.voice);
    if (desk_.staff() && finding.audience == Audience::staff) {
      line.spans.push_back({" (" + say(Phrase::note_staff_only) + ")"});
    }
    return line;
  }

  /// What a visit was begun with is planned: used it is when the visit is done.
  void products() {
    const bool used = visit_.work == Work::done || (!is_open(visit_) && was_bathed(visit_));
    if (!used) return;
    std::vector<std::string> names, apart;
    std::string language;
    for (const ProductUse& use : visit_.products) {
      const OwnWords name = own_name(use.product.name, desk_.voice);
      std::string text = capitalised(name.text);
      if (!name.language.empty()) {
        language = name.language;
        apart.push_back(std::move(text));
        continue;
      }
      if (desk_.staff() && use.product.mixed) {
        const bool same_day = *use.product.mixed == visit_.date.value;
        text = same_day ? say(Phrase::note_mixed_today, {text})
                        : say(Phrase::note_mixed,
                              {text, desk_.voice.locale.long_date(*use.product.mixed)});
      }
      // A record says how long it was left on if the visit does; a label only says how long to.
      const auto dwell = use.product.key.empty() ? use.planned_dwell() : use.dwell;
      if (desk_.staff() && dwell) {
        text += comma(desk_.voice.words) + say(Phrase::dwell, {shown(*dwell, desk_.voice)});
      }
      if (desk_.staff() && !use.comb_through.empty()) {
        text += comma(desk_.voice.words) + salons_words(use.comb_through, desk_.voice);
      }
      names.push_back(text);
    }
    std::vector<NoteLine> lines;
    if (!names.empty()) lines.push_back({{{sentence(joined(names, "\u00A0· "))}}});
    if (!apart.empty()) {
      lines.push_back({{{lead_in({}, language, desk_.voice)}},
                       stand_apart({sentence(joined(apart, "\u00A0· "))}, language, desk_.voice)});
    }
    if (!lines.empty()) row(Phrase::note_products, std::move(lines), visit_.products.front().span);
  }

  void told() {
    if (visit_.told.empty()) return;
    OwnLine line = own_line({}, visit_.told, desk_.voice);
    row(desk_.staff() ? Phrase::note_told : Phrase::note_for_you,
        NoteLine{{{std::move(line.text)}}, std::move(line.apart)}, visit_.date.span);
  }

  void agreed() {
    std::vector<NoteLine> lines;
    for (const Consent& consent : visit_.consents) {
      if (consent.by.empty() || !consent.on) continue;  // waits for a signature below
      const OwnWords to = own_words(consent.to, desk_.voice);
      const std::string day = desk_.voice.locale.long_date(*consent.on);
      if (to.language.empty()) {
        lines.push_back(
            {{{sentence(say(Phrase::note_agreed_by, {capitalised(to.text), consent.by, day}))}}});
      } else {
        lines.push_back(
            {{{lead_in(consent.by + comma(desk_.voice.words) + day, to.language, desk_.voice)}},
             stand_apart({sentence(to.text)}, to.language, desk_.voice)});
      }
    }
    if (!lines.empty()) {
      row(Phrase::note_agreed, std::move(lines), visit_.consents.front().span);
    }
  }

  /// On the day that all pages say on the day of print; what has passed by then is not to come.
  void next() {
    const auto& next = desk_.note.next;
    if (!next || next->date <= visit_.date.value) return;
    std::vector<NoteLine> lines{{{{next_day(*next), Face::bold}}}};
    const Salon& salon = desk_.input.salon;
    std::vector<std::string> contact{own(salon.phone), own(salon.email)};
    std::erase(contact, std::string());
    if (!desk_.staff() && !contact.empty()) {
      lines.front().spans.push_back({"\u00A0· " + joined(contact, "\u00A0· ")});
    }
    if (const std::string vet = vet_text(desk_.note.vet, desk_.voice.words); !vet.empty()) {
      lines.push_back({{{vet}}});
    }
    row(Phrase::note_next, std::move(lines), visit_.next ? visit_.next->span : visit_.date.span);
  }

  std::string next_day(const NextVisit& next) const {
    const std::string day = desk_.voice.locale.day_and_month(next.date, visit_.date.value);
    if (next.overdue_days == 0) {
      // Worked out from an interval, nobody has agreed to it.
      const bool settled = next.reason == DueReason::booked || next.reason == DueReason::agreed;
      return capitalised(settled ? day : say(Phrase::due_about, {day}));
    }
    return desk_.staff() ? capitalised(say(Phrase::due_overdue, {day, next.overdue_days}))
                         : say(Phrase::care_was_due, {day});
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
