#include "sheet/note.h"

#include <algorithm>
#include <utility>

#include "base/text.h"
#include "page/forms.h"
#include "page/picture.h"
#include "page/rows.h"
#include "page/run_in_alerts.h"
#include "page/stack.h"
#include "sheet/note_rows.h"
#include "sheet/note_trends.h"
#include "sheet/note_words.h"
#include "sheet/pieces.h"
#include "sheet/shown.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
/// `open`: pictures large, charts under the rows. `close`: smaller pictures. `dense`: rows run on
/// after their labels.
enum class Arrangement : std::uint8_t { open, close, dense };

constexpr Length between = 5_mm;
/// A photo wider than this against its height loses too much of the dog.
constexpr double widest_picture = 1.5;
constexpr std::size_t most_pictures = 4;

class NoteMaker {
 public:
  explicit NoteMaker(const NoteDesk& desk)
      : desk_(desk),
        words_(desk.voice.words),
        locale_(desk.voice.locale),
        left_(note_figure(desk, Side::left)),
        right_(note_figure(desk, Side::right)),
        left_dog_(draw_dog(left_)),
        // One dog from two sides, unless something was measured on one of them.
        right_dog_(left_.left == right_.left && left_.came_in == right_.came_in
                       ? left_dog_
                       : draw_dog(right_)) {}

  BlockPtr make(Arrangement arrangement) const {
    std::vector<BlockPtr> blocks = front(arrangement);
    blocks.push_back(gap(arrangement == Arrangement::dense ? 0.5 : 1));
    if (auto trend = note_trends(desk_, arrangement == Arrangement::dense)) {
      blocks.push_back(std::move(trend));
      blocks.push_back(gap(0.75));
    }
    std::ranges::move(signatures(), std::back_inserter(blocks));
    return column(std::move(blocks));
  }

  /// The visit itself: head, alerts, pictures and rows.
  std::vector<BlockPtr> front(Arrangement arrangement) const {
    std::vector<BlockPtr> blocks{head()};
    const bool dense = arrangement == Arrangement::dense;
    auto alerts = note_alerts(desk_);
    if (alerts.empty()) {
      blocks.push_back(std::make_shared<Rule>(rule_name));
    } else {
      blocks.push_back(std::make_shared<RunInAlerts>(std::move(alerts), rule_name));
    }
    blocks.push_back(gap(dense ? 0.5 : 1));
    blocks.push_back(pictures(arrangement));
    blocks.push_back(gap(dense ? 0.5 : 1));
    const auto labels = std::make_shared<LabelColumn>();
    blocks.push_back(dense ? rows_run_in(note_rows(desk_)) : rows(labels));
    return blocks;
  }

  /// What the other side has: how it went over the visits, who signs, and photos.
  std::vector<BlockPtr> rest() const {
    std::vector<BlockPtr> out;
    if (auto trend = note_trends(desk_, false)) out.push_back(std::move(trend));
    if (auto sign = signatures(); !sign.empty()) out.push_back(column(std::move(sign)));
    std::ranges::move(more_photos(), std::back_inserter(out));
    return out;
  }

  /// All of the note in pieces.
  std::vector<BlockPtr> all() const {
    std::vector<BlockPtr> out = plain_head(desk_.input.pet, facts());
    for (AlertEntry& entry : note_alerts(desk_)) {
      out.push_back(std::make_shared<RunInAlerts>(std::vector{std::move(entry)}));
    }
    if (!desk_.note.visit.photos.empty()) {
      out.push_back(
          photographs(shown_photos(desk_.note.visit.photos), Arrangement::dense, width()));
    }
    out.push_back(drawn(Arrangement::dense, true));
    for (const SheetRow& row : cut(note_rows(desk_))) {
      out.push_back(rows_run_in({row}));
    }
    std::ranges::move(rest(), std::back_inserter(out));
    return out;
  }

  /// Photos that the front has no room for, two and two.
  std::vector<BlockPtr> more_photos() const {
    const std::vector<std::size_t> front = shown_photos(desk_.note.visit.photos);
    std::vector<std::size_t> more;
    for (std::size_t i = 0; i < desk_.note.visit.photos.size(); ++i) {
      if (std::ranges::find(front, i) == front.end()) more.push_back(i);
    }
    std::vector<BlockPtr> out;
    for (std::size_t i = 0; i < more.size(); i += 2) {
      const std::size_t end = std::min(i + 2, more.size());
      out.push_back(photographs({more.begin() + static_cast<std::ptrdiff_t>(i),
                                 more.begin() + static_cast<std::ptrdiff_t>(end)},
                                Arrangement::open, end - i == 2 ? width() : half_width()));
    }
    return out;
  }

  FootText foot() const {
    const Phrase whose = desk_.staff() ? Phrase::note_file_copy : Phrase::note_owner_copy;
    std::string left = words_.written(desk_.input.salon.name);
    left += (left.empty() ? "" : "\u00A0· ") + words_.say(whose);
    return {left, words_.say(Phrase::note_no_vet)};
  }

 private:
  BlockPtr head() const { return sheet_head(desk_.input.pet, facts(), 6_mm); }

  std::vector<std::vector<TextSpan>> facts() const {
    const Visit& visit = desk_.note.visit;
    std::vector<std::string> said;
    if (!visit.groomer.empty()) said.push_back(words_.written(visit.groomer));
    if (visit.minutes) said.push_back(shown(std::chrono::seconds(*visit.minutes), desk_.voice));
    if (visit.weight) said.push_back(shown(visit.weight->value, desk_.voice));
    std::vector<std::vector<TextSpan>> facts{
        {{words_.say(Phrase::note_visit_of, {locale_.long_date(visit.date.value)}), Face::bold}}};
    if (!said.empty()) facts.push_back({{joined(said, "\u00A0· ")}});
    return facts;
  }

  /// Pictures of the dog: photographs before and after if there are any, and the drawn dog.
  BlockPtr pictures(Arrangement arrangement) const {
    const auto& photos = desk_.note.visit.photos;
    if (photos.size() == 1) {
      std::vector<Beside::Cell> cells{
          {photographs(shown_photos(photos), arrangement, half_width())},
          {drawn(arrangement, false)}};
      return std::make_shared<Beside>(std::move(cells), between, Beside::Line::top);
    }
    if (photos.empty()) return drawn(arrangement, true);
    return column({photographs(shown_photos(photos), arrangement, width()), gap(0.6),
                   drawn(arrangement, true)});
  }

  Length width() const {
    const Insets& margins = desk_.input.kind.margins;
    return desk_.input.paper.size.width - margins.left - margins.right;
  }
  Length half_width() const { return (width() - between) / 2; }

  /// Side by side in the room of `width`, what was before first; captions under them on one line.
  BlockPtr photographs(const std::vector<std::size_t>& order, Arrangement arrangement,
                       Length width) const {
    const auto& photos = desk_.note.visit.photos;
    const int count = static_cast<int>(order.size());
    const Length each = (width - between * (count - 1)) / count;
    const Length wanted = arrangement == Arrangement::open    ? 60_mm
                          : arrangement == Arrangement::close ? 48_mm
                                                              : 38_mm;
    const Length high = std::min(wanted, scaled(each, 0.8));
    const double shape = std::min(widest_picture, each.in_mm() / high.in_mm());
    std::vector<Beside::Cell> images, captions;
    for (const std::size_t i : order) {
      images.push_back({photograph(i, shape, high), scaled(high, shape)});
      std::vector<BlockPtr> said{
          passage(caption(photos[i]).spans, caption(photos[i]).apart, {}, origin(photos[i]))};
      captions.push_back({std::make_shared<Column>(std::move(said), Origin{}, Structure::caption),
                          scaled(high, shape)});
    }
    return captioned(
        column({std::make_shared<Beside>(std::move(images), between, Beside::Line::top),
                std::make_shared<Gap>(0.25, 0.2, 0),
                std::make_shared<Beside>(std::move(captions), between)}));
  }

  /// Of each time two at least, then as many as there is room for; in order of time.
  static std::vector<std::size_t> shown_photos(const std::vector<Photo>& photos) {
    std::vector<std::size_t> of[2], out;
    for (std::size_t i = 0; i < photos.size(); ++i) {
      of[photos[i].when == PhotoTime::after].push_back(i);
    }
    const std::size_t after = std::min(of[1].size(), most_pictures / 2);
    const std::size_t before = std::min(of[0].size(), most_pictures - after);
    for (std::size_t i = 0; i < before; ++i) out.push_back(of[0][i]);
    for (std::size_t i = 0; i < std::min(of[1].size(), most_pictures - before); ++i) {
      out.push_back(of[1][i]);
    }
    return out;
  }

  static Origin origin(const Photo& photo) { return {"photo", photo.file.span}; }

  NoteLine caption(const Photo& photo) const {
    const std::string when =
        words_.say(photo.when == PhotoTime::before ? Phrase::note_before : Phrase::note_after);
    const OwnWords own = own_words(photo.caption, desk_.voice);
    if (!own.language.empty()) {
      return {{{lead_in(when, own.language, desk_.voice), Face::semibold}},
              stand_apart({own.text}, own.language, desk_.voice)};
    }
    NoteLine line{{{when, Face::semibold}}};
    if (!own.text.empty()) line.spans.push_back({colon(words_) + own.text});
    return line;
  }

  BlockPtr photograph(std::size_t i, double shape, Length high) const {
    const Photo& said = desk_.note.visit.photos[i];
    const PhotographPtr picture =
        i < desk_.note.photos.size() ? desk_.note.photos[i] : PhotographPtr();
    if (!picture) {
      return missing_picture(words_.say(Phrase::note_photo_missing), shape, high, high, 0,
                             origin(said));
    }
    std::string alt;
    const NoteLine line = caption(said);
    for (const TextSpan& span : line.spans) alt += span.text;
    for (const TextSpan& span : line.apart.spans) alt += ' ' + span.text;
    return std::make_shared<Picture>(picture, alt, said.focus, shape, high, high, 0, origin(said));
  }

  /// The dog, dashed as it came and solid as it left; from both sides where there is room or a
  /// finding asks for it.
  BlockPtr drawn(Arrangement arrangement, bool wide) const {
    const bool photos = !desk_.note.visit.photos.empty();
    const Length least = arrangement == Arrangement::open    ? (photos ? 44_mm : 58_mm)
                         : arrangement == Arrangement::close ? 40_mm
                                                             : 33_mm;
    const auto figure = [&](Side side) -> BlockPtr {
      const Phrase title = side == Side::left ? Phrase::note_left_side : Phrase::note_right_side;
      return column({paragraph(words_.say(title), TextStyle{Role::label, Face::semibold}),
                     std::make_shared<Gap>(0.1, 0.05, 0),
                     dog_figure(side == Side::left ? left_ : right_,
                                side == Side::left ? left_dog_ : right_dog_, least, 95_mm, 4,
                                {"figure", {}})});
    };
    const bool right = note_needs_both_sides(desk_);
    std::vector<Beside::Cell> cells{{figure(Side::left)}};
    if (right || (wide && arrangement != Arrangement::dense))
      cells.push_back({figure(Side::right)});
    std::vector<BlockPtr> parts{
        std::make_shared<Beside>(std::move(cells), between, Beside::Line::top)};
    const Visit& visit = desk_.note.visit;
    if (visit.work != Work::done || any_dashes()) {
      const Phrase said = is_open(visit)             ? Phrase::note_drawn_open
                          : visit.work == Work::done ? Phrase::note_dashes
                                                     : Phrase::note_drawn_as_came;
      parts.push_back(std::make_shared<Gap>(0.2, 0.1, 0));
      parts.push_back(paragraph(words_.say(said), TextStyle{Role::foot}));
    }
    return column(std::move(parts));
  }

  /// True if some region came with enough more coat, or less, for the dashes to be seen.
  bool any_dashes() const {
    constexpr Length seen = 4_mm;
    for (std::size_t i = 0; i < region_count; ++i) {
      if (!left_.came_in[i] || !left_.left[i]) continue;
      const Length by = middle(*left_.came_in[i]) - middle(*left_.left[i]);
      if (by > seen || -by > seen) return true;
    }
    return false;
  }

  BlockPtr rows(const std::shared_ptr<LabelColumn>& labels) const {
    std::vector<LabelRow> out;
    for (const SheetRow& row : note_rows(desk_)) out.push_back(label_row(row));
    return std::make_shared<Rows>(std::move(out), labels);
  }

  std::vector<BlockPtr> signatures() const {
    std::vector<BlockPtr> out;
    for (const OwnLine& line : note_signatures(desk_)) {
      out.push_back(passage({{line.text}}, line.apart, TextStyle{Role::body, Face::semibold}));
      out.push_back(std::make_shared<BlankLine>(words_.say(Phrase::note_sign)));
    }
    return out;
  }

  static BlockPtr rows_run_in(const std::vector<SheetRow>& rows) {
    std::vector<BlockPtr> out;
    const auto put = [&](std::vector<TextSpan> text, ApartText apart, const SheetRow& row) {
      if (text.empty()) return;
      out.push_back(std::make_shared<Gap>(0.15, 0.05, 1));
      out.push_back(passage(std::move(text), std::move(apart), TextStyle{}, row.origin()));
    };
    for (const SheetRow& row : rows) {
      std::vector<TextSpan> text;
      if (!row.label.empty()) text.push_back({row.label + after_label, Face::bold});
      for (std::size_t i = 0; i < row.points.size(); ++i) {
        if (i > 0 && !text.empty()) text.push_back({" "});
        std::ranges::copy(row.points[i].text, std::back_inserter(text));
        if (row.points[i].apart.empty()) continue;
        // What stands apart ends the paragraph.
        put(std::exchange(text, {}), row.points[i].apart, row);
      }
      put(std::move(text), {}, row);
    }
    return column(std::move(out));
  }

  const NoteDesk& desk_;
  const Words& words_;
  const ReaderLocale& locale_;
  FigureInput left_, right_;
  DrawnDogPtr left_dog_, right_dog_;
};
}  // namespace

std::optional<Sheet> make_note(const SheetDesk& sheet_desk, const NoteInput& note,
                               DiagnosticSink& sink) {
  OtherLanguages others;
  SheetVoice voice = sheet_desk.voice;
  voice.reader = sheet_desk.input.kind.reader;
  if (voice.reader == Audience::everyone) voice.others = &others;
  const NoteDesk desk{{sheet_desk.input, voice}, note};
  const NoteMaker maker(desk);
  PageRequest request = page_request(desk.input);
  request.span = note.visit.date.span;
  request.layouts = {
      {"open", [&] { return maker.make(Arrangement::open); }},
      {"close", [&] { return maker.make(Arrangement::close); }, Length::mm(3)},
      {"dense", [&] { return maker.make(Arrangement::dense); }, Length::mm(2.5)},
  };
  const std::vector<Division::Pieces> rest{[&] { return maker.rest(); }};
  if (!maker.more_photos().empty()) {
    // One side does not hold them all, however much room it has.
    request.layouts.clear();
    const std::vector<Division::Pieces> photos{[&] { return maker.more_photos(); }};
    const auto front = [&] { return std::vector<BlockPtr>{maker.make(Arrangement::close)}; };
    request.divisions = {{"all but photos", front, photos, Length::mm(3)}};
  }
  const std::vector<Division> usual{
      {"close front", [&] { return maker.front(Arrangement::close); }, rest, Length::mm(3)},
      {"dense front", [&] { return maker.front(Arrangement::dense); }, rest, Length::mm(2.5)},
      {"flowing", {}, {[&] { return maker.all(); }}, Length::mm(3)},
  };
  std::ranges::copy(usual, std::back_inserter(request.divisions));
  const std::string title = voice.words.say(
      Phrase::note_title, {desk.input.pet.name.value, voice.locale.long_date(desk.input.today)});
  go_on(request, desk, maker.foot(), maker.foot(), title);
  auto page = compose(request, voice.shaper, sink);
  if (!page) return std::nullopt;
  others.report(voice.words.language(), voice.reader, sink);
  return finished(*std::move(page), desk, title, Phrase::note_subject);
}
}  // namespace furnish
