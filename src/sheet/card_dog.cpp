#include <algorithm>

#include "base/text.h"
#include "sheet/card_rows.h"
#include "sheet/last_time.h"
#include "sheet/own_words.h"
#include "sheet/terms.h"

// The upper layer of a card: whose hands it is in, how to handle it, what to look at again.

namespace furnish {
namespace {
class DogRows {
 public:
  explicit DogRows(const SheetDesk& desk) : desk_(desk), input_(desk.input), voice_(desk.voice) {}

  std::vector<CardRow> all() {
    today();
    add(handling_row(desk_, DryerLine::with_others), Kept::door);
    health();
    add(look_again_row(desk_, Numbers::no), Kept::history);
    add(last_time_row(desk_), Kept::history);
    return std::move(rows_);
  }

 private:
  const Pet& pet() const { return input_.pet; }
  std::string say(Phrase phrase, const std::vector<WordArgument>& arguments = {}) const {
    return voice_.words.say(phrase, arguments);
  }
  std::string own(std::string_view text) const { return voice_.words.written(text); }

  CardRow& add(SheetRow row, Kept kept) {
    return rows_.emplace_back(CardRow{std::move(row), CardLayer::dog, kept});
  }
  void add(std::optional<SheetRow> row, Kept kept) {
    if (row) add(*std::move(row), kept);
  }

  void today() {
    if (!input_.booking) return;
    const Booking& booking = *input_.booking;
    std::string text = voice_.locale.time(booking.at);
    if (!booking.groomer.empty()) text += " · " + own(booking.groomer);
    std::vector<TextSpan> spans{{text, Face::semibold}};
    if (!booking.note.empty()) spans.push_back({" · " + salons_words(booking.note, voice_)});
    add(SheetRow{say(Phrase::label_today), std::move(spans), booking.span}, Kept::door);
  }

  void health() {
    const std::string conditions = conditions_text(desk_),
                      notes = salons_words(pet().health_notes, voice_);
    Sentences text(voice_.words);
    text.add_strong(sentence(conditions));
    text.add(sentence(notes));
    if (!text.empty()) {
      add(SheetRow{say(Phrase::who_health), text.take(), pet().span}, Kept::door);
    } else if (is_new_client(input_)) {
      add(SheetRow{say(Phrase::who_health), {}, pet().span}, Kept::hand).asks = true;
    }
  }

  const SheetDesk& desk_;
  const SheetInput& input_;
  const SheetVoice& voice_;
  std::vector<CardRow> rows_;
};
}  // namespace

std::vector<CardRow> dog_rows(const SheetDesk& desk) {
  return DogRows(desk).all();
}
}  // namespace furnish
