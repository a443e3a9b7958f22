#include "app/generated.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

#include "base/date.h"
#include "trade/coat.h"
#include "trade/health.h"
#include "trade/safety.h"
#include "trade/tools.h"

namespace furnish::test {
namespace {
constexpr const char* latin[] = {"slow",  "hands",  "brush", "never", "towel",    "left", "ear",
                                 "comb",  "rest",   "her",   "sore",  "ask",      "loop", "quiet",
                                 "again", "cheese", "keys",  "door",  "shedding", "mats"};
constexpr const char* words[] = {"chân",
                                 "tai phải",
                                 "đừng",
                                 "ουρά",
                                 "όχι",
                                 "хвост",
                                 "тихо",
                                 "ذيل",
                                 "ببطء",
                                 "זנב",
                                 "לאט",
                                 "犬",
                                 "静かに",
                                 "尻尾",
                                 "œuf",
                                 "Größe",
                                 "ñandú",
                                 "½",
                                 "#10",
                                 "\\\"quoted\\\"",
                                 "100 %",
                                 "a/b",
                                 "—",
                                 "’",
                                 "fjärd",
                                 "İstanbul",
                                 "very-long-word-that-somebody-typed-without-a-single-space-in-it"};
constexpr const char* styles[] = {"natural-tidy", "outdoor-double", "curly-mid",   "drop-short",
                                  "silky-short",  "wire-jacket",    "puppy-first", "smooth-tidy"};
constexpr const char* places[] = {
    "muzzle",     "crown",     "ears", "neck", "back", "chest",         "belly",    "tail", "hocks",
    "front-legs", "rear-legs", "feet", "body", "legs", "\"left hock\"", "breeches", "pads"};
constexpr const char* whole_places[] = {"ears", "back", "belly", "tail", "left hock", "feet"};

/// Mostly a few words, rarely many, of any script.
std::string text(Dice& dice, std::size_t usual = 5) {
  std::size_t count = 1 + dice.below(usual);
  if (dice.one_in(12)) count *= 4;
  if (dice.one_in(60)) count *= 8;
  std::string out;
  for (std::size_t i = 0; i < count; ++i) {
    out += (out.empty() ? "" : " ");
    out += dice.one_in(6) ? dice.of(words) : dice.of(latin);
  }
  return out;
}

std::string list(Dice& dice, std::size_t most) {
  std::string out = "[";
  for (std::size_t i = 0, n = 1 + dice.below(most); i < n; ++i) {
    out += (i ? ", \"" : "\"") + text(dice, 2) + "\"";
  }
  return out + "]";
}

class Writer {
 public:
  explicit Writer(Dice& dice) : dice_(dice) {}

  std::string pet() {
    line("[pet]");
    say("name", name());
    maybe(4, [&] { say("breed", text(dice_, 3)); });
    maybe(4, [&] { say("coat", std::string(dice_.of(coat_words()))); });
    maybe(4, [&] { say("colour", text(dice_, 3)); });
    maybe(4, [&] { say("sex", text(dice_, 2)); });
    maybe(4, [&] { line("born = " + day(2008, 18)); });
    maybe(4, [&] { line("weight = " + weight()); });
    maybe(4, [&] { owner(); });
    for (std::size_t i = 0, n = dice_.below(4); i < n; ++i) alert();
    if (dice_.one_in(20)) {
      for (int i = 0; i < 9; ++i) alert();
    }
    maybe(3, [&] { handling(); });
    maybe(2, [&] { health(); });
    if (dice_.one_in(12)) {
      line("[bath]\nnone = true");
    } else {
      maybe(4, [&] { bath(); });
    }
    maybe(5, [&] { trim(); });
    maybe(3, [&] { finish(); });
    maybe(3, [&] { preferences(); });
    return out_;
  }

 private:
  /// Of five times, so many.
  template <typename Write>
  void maybe(std::size_t of_five, Write write) {
    if (dice_.below(5) < of_five) write();
  }
  void line(const std::string& text) { out_ += text + "\n"; }
  void say(const std::string& key, const std::string& value) { line(key + " = \"" + value + "\""); }
  std::string name() {
    if (dice_.one_in(100)) return std::string(500, 'W');
    return text(dice_, 2);
  }
  std::string day(int from, std::size_t years) {
    const auto year = from + static_cast<int>(dice_.below(years));
    const auto month = 1 + static_cast<unsigned>(dice_.below(12)),
               date = 1 + static_cast<unsigned>(dice_.below(28));
    return to_iso(make_date(year, month, date).value());
  }
  std::string weight() {
    if (dice_.one_in(200)) return "\"9000 kg\"";
    if (dice_.one_in(200)) return "nan";
    const std::string number = std::to_string(1 + dice_.below(80));
    return dice_.one_in(2) ? "\"" + number + ".4 kg\"" : "\"" + number + " lb 3 oz\"";
  }

  void owner() {
    line("[owner]");
    say("name", text(dice_, 3));
    say("phone", "555 0199");
    maybe(3, [&] { line("collects = " + list(dice_, 3)); });
  }
  void alert() {
    line("[[alert]]");
    say("level", std::string(dice_.of(signal_words())));
    say("text", text(dice_, 8));
    maybe(4, [&] { say("do", text(dice_, 8)); });
    maybe(1, [&] { line(std::string("avoid = [\"") + dice_.of(whole_places) + "\"]"); });
  }
  void handling() {
    line("[handling]");
    for (const char* key : {"hold", "lift", "dryer", "stop"}) {
      maybe(3, [&] { say(key, text(dice_)); });
    }
    maybe(2, [&] { say("rest_every", std::to_string(5 + dice_.below(40)) + " min"); });
    maybe(3, [&] { line("comes_with = " + list(dice_, 4)); });
  }
  void health() {
    line("[health]");
    line("conditions = [\"" + std::string(dice_.of(condition_words())) + "\"]");
  }
  void bath() {
    line("[bath]");
    maybe(3, [&] { say("before", text(dice_)); });
    maybe(4,
          [&] { line("shampoo = { product = \"" + text(dice_, 2) + "\", dwell = \"4 min\" }"); });
    maybe(3, [&] { say("conditioner", text(dice_, 2)); });
    maybe(1, [&] { line("others = [{ product = \"" + text(dice_, 2) + "\" }]"); });
    maybe(4, [&] { say("dry", text(dice_)); });
  }
  std::string work() {
    const std::string note = dice_.one_in(3) ? ", note = \"" + text(dice_) + "\"" : "";
    const std::string mm = std::to_string(3 + dice_.below(90)) + " mm";
    switch (dice_.below(4)) {
      case 0:
        return "{ blade = \"" + std::string(dice_.of(blades()).name) + "\"" + note + " }";
      case 1:
        return "{ comb = \"1/2 in\", over = \"30\"" + note + " }";
      case 2:
        return "{ shears = \"" + std::string(dice_.of(shears_words())) + "\", leave = \"" + mm +
               "\"" + note + " }";
      default:
        return "{ brush = true" + note + " }";
    }
  }
  void trim() {
    line("[trim]");
    maybe(4, [&] { say("style", dice_.of(styles)); });
    maybe(4, [&] { say("visit_every", std::to_string(2 + dice_.below(12)) + " weeks"); });
    std::vector<std::size_t> chosen;
    for (std::size_t i = 0, n = dice_.below(dice_.one_in(8) ? 15 : 5); i < n; ++i) {
      chosen.push_back(dice_.below(std::size(places)));
    }
    std::ranges::sort(chosen);
    chosen.erase(std::unique(chosen.begin(), chosen.end()), chosen.end());
    for (const std::size_t i : chosen) line(std::string(places[i]) + " = " + work());
  }
  void finish() {
    line("[finish]");
    for (const char* key : {"ears", "tail", "feet", "nails", "extras"}) {
      maybe(2, [&] { say(key, text(dice_, 3)); });
    }
  }
  void preferences() {
    line("[preferences]");
    line("dislikes = " + list(dice_, 3));
    maybe(2, [&] {
      line("keep_under = { ears = \"" + std::to_string(20 + dice_.below(80)) + " mm\" }");
    });
  }

  Dice& dice_;
  std::string out_;
};
}  // namespace

std::string generated_pet(Dice& dice) {
  return Writer(dice).pet();
}
}  // namespace furnish::test
