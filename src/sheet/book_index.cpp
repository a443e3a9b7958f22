#include "sheet/book_index.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/said_in.h"
#include "base/text.h"
#include "page/linked.h"
#include "page/stack.h"
#include "sheet/day_columns.h"
#include "sheet/parts.h"
#include "sheet/register.h"
#include "sheet/terms.h"

namespace furnish {
namespace {
constexpr Length rhythm = Length::mm(2.5), gutter = 7_mm, least_column = 75_mm;
constexpr int filler = 1000;

class IndexMaker {
 public:
  IndexMaker(const SheetInput& input, std::span<const BookPet> pets, const PageLink& link,
             const SheetVoice& voice)
      : pets_(pets), link_(link), desk_{input, voice}, voice_(voice) {
    request_ = page_request(input);
    request_.span = input.salon.span;
    request_.rhythm = rhythm;
    // All pages alike, however full.
    for (TypeRole& role : request_.roles) role.most_arc_minutes = least_arc_minutes;
    const std::string& salon = input.salon.name;
    const std::string date = voice.locale.long_date(input.today);
    request_.footer =
        sheet_foot((salon.empty() ? date : voice.words.written(salon) + "\u00A0· " + date) +
                       "\u00A0· " + voice.words.say(Phrase::list_staff),
                   {});
    width_ = request_.size.width - request_.margins.left - request_.margins.right;
    columns_ = std::max<std::size_t>(
        1, static_cast<std::size_t>((width_ + gutter).in_mm() / (least_column + gutter).in_mm()));
  }

  bool make(DiagnosticSink& sink, const std::function<bool(Sheet)>& take) {
    list_pets();
    list_owners();
    const Setting setting{
        TypeScale(request_.roles, voice_.shaper.fonts().capital_height(), 0, request_.steps),
        rhythm, voice_.shaper};
    const Length column_width =
        (width_ - gutter * static_cast<int>(columns_ - 1)) / static_cast<int>(columns_);
    std::size_t at = 0;
    bool first = true;
    while (at < lines_.size()) {
      const std::size_t end = page_end(at, setting, column_width, first);
      const auto page = one_page(at, end, setting, column_width, first, sink);
      if (!page || !take(finished(*page, desk_, title(), Phrase::book_subject))) return false;
      voice_.shaper.forget();
      at = end;
      first = false;
    }
    return true;
  }

  std::string title() const { return say(Phrase::book_title); }

 private:
  /// A line of the index, or a head of some.
  struct Line {
    std::string head, letter;  ///< above it, where they are not empty
    TextSpan bold, plain, missing;
    std::optional<std::size_t> page;
    std::string says;  ///< where the link leads
  };

  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return voice_.words.say(phrase, arguments);
  }

  std::string missing(const BookPet& pet) const {
    std::string out;
    if (pet.gap == BookGap::unread) out = say(Phrase::book_unread);
    if (pet.gap == BookGap::visit) out = say(Phrase::book_no_note);
    if (pet.gap == BookGap::not_made) out = say(Phrase::book_not_made);
    return out.empty() || pet.where.empty() ? out : out + colon(voice_.words) + pet.where;
  }

  Line line_of(const BookPet& pet, const std::string& bold, const std::string& plain) const {
    Line out;
    out.bold = {bold, Face::semibold};
    out.plain = {plain.empty() ? "" : comma(voice_.words) + plain};
    out.missing = {missing(pet), Face::bold};
    out.page = pet.page;
    if (pet.page) {
      out.says =
          say(Phrase::book_link, {voice_.words.written(pet.name), std::to_string(*pet.page + 1)});
    }
    return out;
  }

  void list_pets() {
    std::string letter;
    for (const BookPet& pet : pets_) {
      Line line = line_of(pet, voice_.words.written(pet.name), voice_.words.written(pet.owner));
      if (lines_.empty()) line.head = say(Phrase::book_by_pet);
      if (pet.letter != letter) line.letter = letter = pet.letter;
      lines_.push_back(std::move(line));
    }
  }

  void list_owners() {
    const NameRegister names(voice_.locale.language());
    std::vector<std::pair<std::string, const BookPet*>> owned;
    for (const BookPet& pet : pets_) {
      if (!pet.owner.empty()) owned.emplace_back(names.sort_key(by_last_word(pet.owner)), &pet);
    }
    std::ranges::stable_sort(owned, {}, &std::pair<std::string, const BookPet*>::first);
    std::string letter;
    bool opens = true;
    for (const auto& [key, pet] : owned) {
      Line line = line_of(*pet, voice_.words.written(pet->owner), voice_.words.written(pet->name));
      if (std::exchange(opens, false)) line.head = say(Phrase::book_by_owner);
      const std::string own = names.letter(by_last_word(pet->owner));
      if (own != letter) line.letter = letter = own;
      lines_.push_back(std::move(line));
    }
  }

  BlockPtr head(bool first) const {
    TextStyle style{first ? Role::title : Role::heading, Face::bold};
    style.structure = Structure::title;
    style.leading = 1.0;
    TextStyle beside{Role::subtitle};
    beside.align = Align::end;
    const auto lost = std::ranges::count_if(pets_, [](const BookPet& pet) { return !pet.page; });
    std::string sums = say(Phrase::day_pets, {static_cast<int>(pets_.size())});
    if (lost > 0) sums += comma(voice_.words) + say(Phrase::book_missing, {static_cast<int>(lost)});
    BlockPtr line = paragraph(title(), style);
    if (first) line = std::make_shared<Ends>(line, paragraph(std::move(sums), beside), 4_mm);
    return column(
        {std::move(line), std::make_shared<Rule>(rule_name), std::make_shared<Gap>(0.8, 0.8, 0)});
  }

  BlockPtr line_block(const Line& line) const {
    TextStyle style{Role::body}, end{Role::body};
    end.align = Align::end;
    if (line.page) style.structure = end.structure = std::nullopt;  // the words of the link
    std::vector<TextSpan> text{line.bold};
    if (!line.plain.text.empty()) text.push_back(line.plain);
    BlockPtr out = paragraph(std::move(text), style);
    if (!line.missing.text.empty()) out = column({out, paragraph({line.missing}, style)});
    if (line.page) {
      out = std::make_shared<Beside>(
          std::vector<Beside::Cell>{{out}, {paragraph(std::to_string(*line.page + 1), end), 12_mm}},
          2_mm);
      out = std::make_shared<Linked>(out, link_(*line.page), line.says);
    }
    return std::make_shared<Column>(
        std::vector<BlockPtr>{out, std::make_shared<Gap>(0.25, 0.25, 0)},
        Origin{line.bold.text, {}}, Structure::item);
  }

  BlockPtr heads(const Line& line) const {
    std::vector<BlockPtr> out;
    if (!line.head.empty()) {
      out.push_back(std::make_shared<Gap>(0.4, 0.4, 0));
      out.push_back(heading(line.head, Role::alert, Face::bold));
    }
    if (!line.letter.empty()) {
      out.push_back(std::make_shared<Gap>(0.3, 0.3, 0));
      out.push_back(heading(line.letter, Role::action, Face::bold));
      out.push_back(std::make_shared<Rule>(rule_head));
      out.push_back(std::make_shared<Gap>(0.25, 0.25, 0));
    }
    return out.empty() ? nullptr : column(std::move(out));
  }

  Length height(const Line& line, const Setting& setting, Length width) const {
    Length out = line_block(line)->measure(width, setting).wanted;
    if (const BlockPtr above = heads(line)) out += above->measure(width, setting).wanted;
    return out;
  }

  /// How far the lines from `at` on fill a page, column after column.
  std::size_t page_end(std::size_t at, const Setting& setting, Length width, bool first) {
    const Length room = request_.size.height - request_.margins.top - request_.margins.bottom -
                        head(first)->measure(width_, setting).wanted -
                        request_.footer->measure(width_, setting).wanted - rhythm * 2;
    heights_.clear();
    std::size_t columns = 1;
    Length used;
    for (std::size_t i = at; i < lines_.size(); ++i) {
      const Length one = height(lines_[i], setting, width);
      if (used + one > room && used > Length{}) {
        if (columns++ == columns_) return i;
        used = {};
      }
      used += one;
      heights_.push_back({one, true, {}});
    }
    return lines_.size();
  }

  std::optional<ComposedPage> one_page(std::size_t at, std::size_t end, const Setting&,
                                       Length width, bool first, DiagnosticSink& sink) {
    const std::vector<std::size_t> starts = column_starts(heights_, columns_, ColumnCuts::anywhere);
    PageRequest request = request_;
    request.layouts = {
        {"index", [&] {
           std::vector<Beside::Cell> cells;
           for (std::size_t i = 0; i < columns_; ++i) {
             const std::size_t from = at + starts[i];
             const std::size_t to = i + 1 < columns_ ? at + starts[i + 1] : end;
             cells.push_back({one_column(from, to), width});
           }
           return column({head(first),
                          std::make_shared<Beside>(std::move(cells), gutter, Beside::Line::top),
                          std::make_shared<Gap>(0, 0, filler)});
         }}};
    return compose(request, voice_.shaper, sink);
  }

  BlockPtr one_column(std::size_t from, std::size_t to) const {
    std::vector<BlockPtr> out;
    std::vector<BlockPtr> some;
    const auto close = [&] {
      if (some.empty()) return;
      out.push_back(std::make_shared<Column>(std::exchange(some, {}), Origin{}, Structure::list));
    };
    for (std::size_t i = from; i < to; ++i) {
      if (const BlockPtr above = heads(lines_[i])) {
        close();
        out.push_back(above);
      }
      some.push_back(line_block(lines_[i]));
    }
    close();
    return column(std::move(out));
  }

  std::span<const BookPet> pets_;
  const PageLink& link_;
  SheetDesk desk_;
  const SheetVoice& voice_;
  PageRequest request_;
  Length width_;
  std::size_t columns_ = 1;
  std::vector<Line> lines_;
  std::vector<ColumnItem> heights_;  ///< of the page at hand
};
}  // namespace

bool make_book_index(const SheetInput& input, std::span<const BookPet> pets, const PageLink& link,
                     const SheetVoice& voice, DiagnosticSink& sink,
                     const std::function<bool(Sheet)>& take) {
  return IndexMaker(input, pets, link, voice).make(sink, take);
}

DocumentInfo book_info(const Salon& salon, Date today, const SheetVoice& voice) {
  const std::string title = without_languages(voice.words.say(Phrase::book_title));
  return {salon.name.empty() ? title : salon.name + ": " + title,
          without_languages(voice.words.say(Phrase::book_subject)), voice.locale.language(),
          to_iso(today)};
}
}  // namespace furnish
