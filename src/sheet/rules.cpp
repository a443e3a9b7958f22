#include "sheet/rules.h"

#include <utility>

#include "base/text.h"
#include "page/rows.h"
#include "page/stack.h"
#include "sheet/caution_words.h"
#include "sheet/own_words.h"
#include "sheet/pieces.h"
#include "sheet/shown.h"
#include "sheet/terms.h"
#include "trade/health.h"

namespace furnish {
namespace {
/// A rule as it hangs on the wall.
struct WallRule {
  std::string label, rule, why;
  SourceSpan span{};
};

class RulesMaker {
 public:
  explicit RulesMaker(const SheetDesk& desk) : desk_(desk), words_(desk.voice.words) {}

  BlockPtr whole() const {
    std::vector<BlockPtr> out{head(), std::make_shared<Rule>(rule_name), gap(0.75)};
    if (const std::vector<WallRule> rules = own(); !rules.empty()) {
      out.push_back(rows(rules));
      out.push_back(gap(1));
    }
    out.push_back(section(rows(always())));
    out.push_back(gap(0.75));
    out.push_back(defers());
    out.push_back(gap(0.5));
    out.push_back(sources());
    return column(std::move(out));
  }

  /// Without a column of labels, where a language or a salon has much to say.
  BlockPtr run_in() const {
    std::vector<BlockPtr> out;
    for (BlockPtr& piece : pieces()) {
      if (!out.empty()) out.push_back(gap(0.75));
      out.push_back(std::move(piece));
    }
    return column(std::move(out));
  }

  /// A rule a piece.
  std::vector<BlockPtr> pieces() const {
    std::vector<BlockPtr> out{head()};
    for (const WallRule& rule : own()) {
      for (const SheetRow& part : cut({{rule.label, {{rule.rule}}, rule.span}})) {
        out.push_back(as_text(part, Face::semibold));
      }
    }
    bool first = true;
    for (const WallRule& rule : always()) {
      const BlockPtr text = paragraph(
          {{rule.label + after_label, Face::semibold}, {rule.why + " ", Face::bold}, {rule.rule}});
      out.push_back(std::exchange(first, false) ? section(text) : text);
    }
    out.push_back(defers());
    out.push_back(sources());
    return out;
  }

  FootText foot() const {
    const std::string date = desk_.voice.locale.long_date(desk_.input.today);
    const std::string& salon = desk_.input.salon.name;
    return {salon.empty() ? date : words_.written(salon) + "\u00A0· " + date, {}};
  }

 private:
  BlockPtr head() const {
    TextStyle style{Role::title, Face::bold};
    style.structure = Structure::title;
    style.leading = 1.0;
    return paragraph(words_.say(Phrase::rules_title), style);
  }

  BlockPtr section(BlockPtr content) const {
    return column({heading(words_.say(Phrase::rules_always), Role::alert, Face::bold),
                   std::make_shared<Gap>(0.15, 0.1, 0), std::make_shared<Rule>(rule_head),
                   std::make_shared<Gap>(0.3, 0.2, 0), std::move(content)});
  }

  /// Where the numbers are from, once for the page.
  BlockPtr sources() const {
    return paragraph(words_.say(Phrase::rules_heat) + " " + words_.say(Phrase::rules_burns) + " " +
                         words_.say(Phrase::rules_practice),
                     TextStyle{Role::foot});
  }

  /// What it is about, by which it is found, stands before what to do. Their labels have a column
  /// of their own: numbers need less than places.
  BlockPtr rows(const std::vector<WallRule>& rules) const {
    std::vector<LabelRow> out;
    for (const WallRule& rule : rules) {
      std::vector<TextSpan> says{{rule.rule, rule.why.empty() ? Face::semibold : Face::regular}};
      if (!rule.why.empty()) says.insert(says.begin(), {rule.why + " ", Face::bold});
      out.push_back({rule.label, paragraph(std::move(says)), {rule.label, rule.span}});
    }
    return std::make_shared<Rows>(std::move(out), std::make_shared<LabelColumn>());
  }

  BlockPtr defers() const {
    return paragraph(words_.say(Phrase::rules_pet_first) + " " + words_.say(Phrase::local_rules),
                     TextStyle{Role::body, Face::semibold});
  }

  /// Numbered as they stand in the file.
  std::vector<WallRule> own() const {
    std::vector<WallRule> out;
    for (const FreeText& rule : desk_.input.salon.rules) {
      out.push_back({std::to_string(out.size() + 1),
                     sentence(own_words(rule, desk_.voice).text),
                     {},
                     rule.span});
    }
    return out;
  }

  std::string label(RuleId id) const {
    switch (id) {
      case RuleId::ear_edge:
        return place_name({Region::ears, Side::both}, words_);
      case RuleId::pads:
        return place_name({Region::pads, Side::both}, words_);
      case RuleId::sanitary_shears:
        return place_name({Region::sanitary, Side::both}, words_);
      case RuleId::prebrush:
        return words_.say(Phrase::label_bath);
      default:
        return words_.say(Phrase::tick_clip);
    }
  }

  /// Which coats are brushed before the bath (`trade/safety`); others need not be.
  std::string brushed_coats() const {
    std::vector<std::string> coats;
    for (const Coat coat : {Coat::double_coat, Coat::curly, Coat::drop}) {
      coats.push_back(coat_name(coat, words_));
    }
    return desk_.voice.locale.list(coats) + words_.say(Phrase::colon) + " ";
  }

  /// Of no pet: what a plan would name is said in general.
  std::vector<WallRule> always() const {
    // What kills stands first. Royal Veterinary College, VetCompass, 2023.
    std::vector<WallRule> out{{words_.say(Phrase::label_dry), words_.say(Phrase::if_breath),
                               sentence(words_.say(Phrase::if_breath_head))}};
    for (const SafetyRule& rule : safety_rules()) {
      if (!is_standing(rule)) continue;
      const std::string key(rule.key);
      const bool heat = rule.id == RuleId::blade_heat;
      const std::string why =
          heat ? words_.say(Phrase::rules_blade_heat, {shown(blade_heats_after, desk_.voice)})
               : caution_text({key, {}}, desk_.voice);
      std::string what = caution_text({key + "-do", {}}, desk_.voice);
      if (rule.id == RuleId::prebrush) what = brushed_coats() + what;
      out.push_back({capitalised(label(rule.id)), sentence(what), sentence(why)});
    }
    return out;
  }

  const SheetDesk& desk_;
  const Words& words_;
};
}  // namespace

std::optional<Sheet> make_rules(const Salon& salon, const Paper& paper, Date today,
                                const SheetVoice& voice, DiagnosticSink& sink) {
  const Pet nobody;
  const Plan none;
  const SheetInput input{kinds::rules, salon, nobody, none, std::nullopt, today, paper};
  const SheetDesk desk{input, voice};
  const RulesMaker maker(desk);
  PageRequest request = page_request(input);
  request.span = salon.span;
  request.layouts = {
      {"open", [&] { return maker.whole(); }, Length::mm(6)},
      {"close", [&] { return maker.whole(); }, Length::mm(4), 0.95},
      {"tight", [&] { return maker.whole(); }, Length::mm(2.5), 0.9},
      {"tightest", [&] { return maker.whole(); }, Length::mm(2), 0.85},
      {"run in", [&] { return maker.run_in(); }, Length::mm(2), 0.85},
  };
  request.divisions = {{"flowing", {}, {[&] { return maker.pieces(); }}, Length::mm(4), 0.95}};
  const std::string title = voice.words.say(Phrase::rules_title);
  go_on(request, desk, maker.foot(), maker.foot(), title);
  auto page = compose(request, voice.shaper, sink);
  if (!page) return std::nullopt;
  return finished(*std::move(page), desk, title, Phrase::rules_subject);
}
}  // namespace furnish
