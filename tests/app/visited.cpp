#include "app/visited.h"

#include <fmt/format.h>

#include "trade/health.h"

namespace furnish::test {
namespace {
constexpr const char* coats[] = {"double", "curly", "drop", "silky", "wire", "smooth"};
constexpr const char* styles[] = {"natural-tidy", "curly-mid",   "drop-short",
                                  "silky-short",  "wire-jacket", "smooth-tidy"};
constexpr const char* measured[] = {"back", "belly", "ears", "tail", "hocks", "neck"};
constexpr const char* found_at[] = {"muzzle", "crown", "chest", "feet", "rump", "loin",
                                    "throat", "sides", "pads",  "eyes", "ruff", "cheeks"};
constexpr const char* gentle_words[] = {"quiet air only", "towel only"};
constexpr const char* dried[] = {"towel, then force dryer, not on the head", "force dryer, warm",
                                 "stand dryer, cool", "towel"};
constexpr const char* holds[] = {"no scissors near the face", "under the jaw", "no thinning shears",
                                 "no clippers on the feet"};

class Maker {
 public:
  Maker(Dice& dice, Date last) : dice_(dice), last_(last) {}

  VisitedPet make() {
    salon();
    pet();
    const std::size_t visits = dice_.below(5);
    Date day = last_ - std::chrono::days(dice_.below(20));
    for (std::size_t i = 0; i < visits; ++i) {
      made_.visits.insert(made_.visits.begin(), day);
      day -= std::chrono::days(28 + dice_.below(42));
    }
    for (const Date date : made_.visits) visit(date);
    if (dice_.one_in(2)) booking();
    return std::move(made_);
  }

 private:
  bool often() { return !dice_.one_in(4); }
  /// A word that nothing else has.
  std::string word() { return fmt::format("wort{}x", next_++); }

  void salon() {
    std::string out =
        "[salon]\nname = \"Demo\"\nphone = \"555 0170\"\nlanguage = \"en-GB\"\n"
        "closed = [\"sunday\"]\n";
    if (dice_.one_in(2)) out += "shorten_visits = true\n";
    if (dice_.one_in(2)) {
      out += "[kit]\nblades = [\"40\", \"30\", \"10\"]\ncombs = [\"1/2 in\"]\n";
      if (dice_.one_in(2)) out += "shears = [\"straight\"]\n";
    }
    made_.files["salon.toml"] = out;
  }

  void pet() {
    const std::size_t kind = dice_.below(std::size(coats));
    std::string out =
        fmt::format("[pet]\nname = \"Rex\"\ncoat = \"{}\"\nweight = \"9 kg\"\nborn = 2020-01-01\n",
                    coats[kind]);
    made_.reads_spanish = dice_.one_in(3);
    out += fmt::format("[owner]\nname = \"Sam\"\nlanguage = \"{}\"\n",
                       made_.reads_spanish ? "es" : "en-GB");
    out += "[handling]\n";
    made_.gentle = dice_.one_in(3);
    if (made_.gentle) {
      out += fmt::format("dryer = \"{}\"\n", dice_.of(gentle_words));
    } else if (dice_.one_in(3)) {
      out += fmt::format("dryer = \"{}\"\n", dice_.of(dried));
    }
    if (dice_.one_in(2)) out += fmt::format("hold = \"{}\"\n", dice_.of(holds));
    if (dice_.one_in(3)) {
      out += fmt::format("[health]\nconditions = [\"{}\"]\n", dice_.of(condition_words()));
    }
    out += "[bath]\nshampoo = { name = \"oat shampoo\", dilution = \"1:10\" }\n";
    if (often()) out += fmt::format("dry = \"{}\"\n", dice_.of(dried));
    out += "[trim]\n";
    if (often()) out += fmt::format("visit_every = \"{} weeks\"\n", 3 + dice_.below(9));
    made_.uncut = dice_.one_in(4);
    if (made_.uncut) {
      out += "body = { brush = true }\nlegs = { brush = true }\nhead = { brush = true }\n";
    } else {
      out += fmt::format("style = \"{}\"\n", styles[kind]);
      if (dice_.one_in(2)) out += "body = { blade = \"7F\" }\n";
    }
    if (dice_.one_in(2)) {
      out +=
          fmt::format("[preferences]\nkeep_under = {{ ears = \"{} mm\" }}\n", 40 + dice_.below(60));
    }
    made_.files["pets/rex.toml"] = out;
  }

  /// Words for the owner: in both languages, or in the salon's alone.
  std::string told() {
    const std::string english = word();
    if (dice_.one_in(2)) return fmt::format("{{ en = \"{}\", es = \"{}\" }}", english, word());
    made_.only_english.push_back(english);
    return fmt::format("\"{}\"", english);
  }

  void visit(Date date) {
    std::string out = fmt::format("date = {}\nminutes = {}\nweight = \"{}.5 kg\"\n", to_iso(date),
                                  60 + dice_.below(60), 8 + dice_.below(2));
    // What is not the last visit's is on no page for the owner; it is read all the same.
    const std::vector<std::string> before = made_.only_english;
    if (often()) out += "told = " + told() + "\n";
    if (date == made_.visits.back() && dice_.one_in(3)) {
      out += fmt::format("next = {}\n", to_iso(date + std::chrono::days(20 + dice_.below(40))));
    }
    out += "[came_in]\n";
    if (often()) out += "behaviour = \"calm\"\nhelped = \"slow hands\"\n";
    for (const char* place : measured) {
      if (!dice_.one_in(3)) continue;
      out += fmt::format("{} = {{ mats = {}, length = \"{} mm\" }}\n", place, dice_.below(4),
                         20 + dice_.below(60));
    }
    if (dice_.one_in(2)) {
      out += "[done]\nchest = { brush = true, why = " + told() + " }\n";
    }
    out += "[went_out]\n";
    for (const char* place : measured) {
      if (!dice_.one_in(3)) continue;
      out += fmt::format("{} = {{ length = \"{} mm\" }}\n", place, 5 + dice_.below(40));
    }
    findings(out);
    if (date != made_.visits.back()) made_.only_english = before;
    made_.files[fmt::format("visits/rex/{}.toml", to_iso(date))] = out;
  }

  void findings(std::string& out) {
    for (std::size_t i = 0; i < made_.findings.size(); ++i) {
      MadeFinding& one = made_.findings[i];
      if (!one.open || !dice_.one_in(2)) continue;
      const bool closes = dice_.one_in(2);
      out += fmt::format("[[finding]]\nregion = \"{}\"\nwhat = \"{}{}, {}\"\n", found_at[i],
                         closes ? "" : "still ", one.word, closes ? "gone" : "no larger");
      if (closes) out += "closed = true\n";
      one.open = !closes;
    }
    if (made_.findings.size() == std::size(found_at) || !often()) return;
    const std::string what = word();
    out += fmt::format("[[finding]]\nregion = \"{}\"\nwhat = \"{}, small\"\n",
                       found_at[made_.findings.size()], what);
    if (dice_.one_in(2)) out += "for = \"everyone\"\n";
    made_.findings.push_back({what});
  }

  void booking() {
    const Date from = made_.visits.empty() ? last_ : made_.visits.back();
    const Date day = from + std::chrono::days(21 + dice_.below(30));
    made_.booked = day;
    made_.files["pets/juno.toml"] = "[pet]\nname = \"Juno\"\n";
    made_.files[fmt::format("days/{}.toml", to_iso(day))] = fmt::format(
        "date = {}\n[[booking]]\nat = 09:00:00\npet = \"juno\"\ngroomer = \"Bo\"\n"
        "[[booking]]\nat = 09:00:00\npet = \"rex\"\ngroomer = \"Ines\"\n",
        to_iso(day));
  }

  Dice& dice_;
  Date last_;
  VisitedPet made_;
  int next_ = 100;
};
}  // namespace

VisitedPet visited_pet(Dice& dice, Date last) {
  return Maker(dice, last).make();
}
}  // namespace furnish::test
