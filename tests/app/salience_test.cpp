#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <memory>
#include <vector>

#include "app/generated.h"
#include "app/workshop.h"
#include "page/shaped_line.h"
#include "plan/matters.h"
#include "share.h"
#include "sheet/alerts.h"
#include "sheet/desk.h"

// Alerts that are always there are not read: in hospitals 49 to 96 % of drug alerts are overridden,
// and low specificity is the first cause (van der Sijs and others, J Am Med Inform Assoc
// 2006;13:138–147). So a page says what is particular to its pet, each matter once; this measures
// how much that is.

namespace furnish::test {
namespace {
/// Of pets whose file gives at most two alerts.
struct Salience {
  std::vector<double> on_card, on_style, of_card;  ///< rows; rows; share of the front's height
  std::size_t with_more = 0;                       ///< pets whose file gives more
  std::size_t not_found = 0;  ///< fronts whose alerts are not where they are looked for
};

double median(std::vector<double> all) {
  REQUIRE_FALSE(all.empty());
  std::ranges::sort(all);
  return all[all.size() / 2];
}
double share_at_most(const std::vector<double>& all, double most) {
  const auto few = std::ranges::count_if(all, [&](double one) { return one <= most; });
  return 100.0 * static_cast<double>(few) / static_cast<double>(all.size());
}

/// From the top of the lists that begin with a signal word to their end, over the page's height: so
/// alerts are tagged, between rules. 0 if the front has none.
double share_of_alerts(const Frame& card) {
  Length top = card.size.height, end;
  std::size_t depth = 0;
  bool first = false, alerts = false;
  const auto is_signal = [](const std::string& line) {
    return line.starts_with("DANGER") || line.starts_with("WARNING") ||
           line.starts_with("CAUTION") || line.starts_with("NOTICE");
  };
  for (const Mark& mark : card.marks) {
    if (const auto* const open = std::get_if<OpenTag>(&mark)) {
      if (depth == 0 && open->role == Structure::list) first = true;
      if (depth > 0 || open->role == Structure::list) ++depth;
    } else if (std::holds_alternative<CloseTag>(mark)) {
      if (depth > 0 && --depth == 0) first = alerts = false;
    } else if (depth > 0) {
      if (const auto* const text = std::get_if<TextMark>(&mark); text != nullptr && first) {
        first = false;
        alerts = is_signal(text->line->text());
      }
      if (!alerts) continue;
      const auto reach = [&](Length y) {
        top = std::min(top, y);
        end = std::max(end, y);
      };
      if (const auto* const text = std::get_if<TextMark>(&mark)) reach(text->baseline.y);
      if (const auto* const line = std::get_if<StrokeMark>(&mark)) {
        reach(line->from.y);
        reach(line->to.y);
      }
      if (const auto* const fill = std::get_if<FillMark>(&mark)) {
        reach(fill->area.top());
        reach(fill->area.origin.y + fill->area.size.height);
      }
    }
  }
  return end > top ? (end - top) / card.size.height : 0;
}

void measure(const Case& one, Workshop& shop, Salience& out) {
  if (one.pet.alerts.size() > 2) {
    ++out.with_more;
    return;
  }
  const auto voice = shop.voice(*one.folder, one.pet, shop.sink());
  REQUIRE(voice);
  const auto rows = [&](const SheetKind& kind, CautionScope scope) {
    const SheetInput input = sheet_input(one, kind, parse_paper("A5").value());
    return static_cast<double>(alert_entries({input, *voice}, scope).size());
  };
  out.on_card.push_back(rows(kinds::card, CautionScope::card));
  out.on_style.push_back(rows(kinds::style, CautionScope::all));
  if (out.on_card.back() == 0) {
    out.of_card.push_back(0);
    return;
  }
  const auto made = shop.sheet(one, shop.sink());
  REQUIRE(made);
  out.of_card.push_back(share_of_alerts(made->sheet.page.frame));
  if (out.of_card.back() == 0 && made->sheet.page.more.empty()) ++out.not_found;
}

void report(const char* of, const Salience& all) {
  WARN(of << ", " << all.on_card.size() << " pets whose file gives at most two alerts ("
          << all.with_more << " have more): rows of alerts on the card " << median(all.on_card)
          << " in the median, three or fewer on " << share_at_most(all.on_card, 3)
          << " %; on the style sheet " << median(all.on_style) << ", three or fewer on "
          << share_at_most(all.on_style, 3) << " %; they take " << 100 * median(all.of_card)
          << " % of an A5 card's height in the median, a third or less on "
          << share_at_most(all.of_card, 1.0 / 3) << " %");
  CHECK(all.not_found * 20 <= all.of_card.size());
  CHECK(median(all.on_card) <= 3);
  CHECK(median(all.on_style) <= 3);
  CHECK(median(all.of_card) <= 1.0 / 3);
}

Options card_options() {
  Options out;
  out.on = demo_day;
  out.paper = "A5";
  out.data = FURNISH_SOURCE_DIR;
  return out;
}
}  // namespace

TEST_CASE("alerts of the samples are few", "[salience]") {
  Salience all;
  const DiskFiles disk;
  for (const char* salon : {"lantern-street", "us-corner"}) {
    const Options options = card_options();
    Workshop shop(options, disk);
    const Desk table(sample(salon));
    for (const std::string& key : table.pets()) {
      const auto one =
          shop.open({sample(salon) + "/pets/" + key + ".toml", sample(salon)}, shop.sink());
      REQUIRE(one);
      measure(*one, shop, all);
    }
  }
  report("samples", all);
}

TEST_CASE("alerts of generated pets are few", "[salience]") {
  const std::size_t pets = share_of(2000);
  Dice dice(20261126);
  std::map<std::string, std::string> files;
  for (std::size_t i = 0; i < pets; ++i) {
    files["pets/pet-" + std::to_string(1000 + i) + ".toml"] = generated_pet(dice);
  }
  const WithShippedStyles disk(files);
  const Options options = card_options();
  Workshop shop(options, disk);
  Salience all;
  for (const auto& [path, text] : files) {
    INFO(path << ":\n" << text);
    if (const auto one = shop.open({path, "."}, shop.sink())) measure(*one, shop, all);
  }
  CHECK(all.on_card.size() > pets / 2);
  report("generated", all);
}

// A caution that a shipped style raises by itself would stand on every pet that wears it.
TEST_CASE("no shipped style raises a caution but a short one on a double coat", "[salience]") {
  const std::string folder = std::string(FURNISH_SOURCE_DIR) + "/styles";
  std::map<std::string, std::string> files;
  std::vector<std::string> styles;
  for (const std::string& name : DiskFiles().toml_files(folder)) {
    styles.push_back(name.substr(0, name.size() - 5));
  }
  REQUIRE(styles.size() > 10);
  for (const std::string& style : styles) {
    for (const std::string_view coat : coat_words()) {
      const std::string key = style + "-on-" + std::string(coat);
      files["pets/" + key + ".toml"] = "[pet]\nname = \"Rex\"\nborn = 2022-01-01\ncoat = \"" +
                                       std::string(coat) +
                                       "\"\nweight = \"9 kg\"\n[trim]\n"
                                       "style = \"" +
                                       style + "\"\n";
    }
  }
  const WithShippedStyles disk(files);
  const Options options = card_options();
  Workshop shop(options, disk);
  std::size_t standing = 0;
  for (const auto& [path, text] : files) {
    const auto one = shop.open({path, "."}, shop.sink());
    INFO(path);
    REQUIRE(one);
    standing += one->plan.standing.size();
    for (const Caution& caution : one->plan.cautions) {
      INFO(rule(caution.rule).key);
      // True: the coat may not come back. Such a style is for other coats.
      CHECK(caution.rule == RuleId::double_coat_short);
      CHECK(one->pet.coat == Coat::double_coat);
    }
  }
  CHECK(standing > files.size());
}
}  // namespace furnish::test
