#include "app/visit_form.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/quantity.h"
#include "base/text.h"
#include "spec/toml_text.h"
#include "spec/trim_writer.h"
#include "trade/mats.h"
#include "trade/stock.h"

namespace furnish {
namespace {
using toml_text::quoted;

/// Lines of one section: `key = value`, with the remark that belongs to it in a column of its own.
class FormSection {
 public:
  void fact(std::string_view key, std::string value, std::string remark = {}) {
    lines_.push_back({"", std::string(key), std::move(value), std::move(remark)});
  }
  /// A line that is not read until a person takes the # away.
  void choice(std::string_view key, std::string value, std::string remark = {}) {
    lines_.push_back({"# ", std::string(key), std::move(value), std::move(remark)});
  }
  std::string text() const {
    std::size_t keys = 0, all = 0;
    for (const Line& line : lines_) keys = std::max(keys, line.before.size() + line.key.size());
    for (const Line& line : lines_) all = std::max(all, keys + 3 + line.value.size());
    std::string out;
    for (const Line& line : lines_) {
      const std::string said = fmt::format("{:<{}} = {}", line.before + line.key, keys, line.value);
      // Remarks that would stand far to the right follow at once.
      const std::size_t column = std::min<std::size_t>(all, 46);
      out += line.remark.empty() ? said : fmt::format("{:<{}}  # {}", said, column, line.remark);
      out += '\n';
    }
    return out;
  }

 private:
  struct Line {
    std::string before, key, value, remark;
  };
  std::vector<Line> lines_;
};

/// Plain spaces, which a person's editor shows.
std::string plain(std::string text) {
  for (std::size_t at; (at = text.find(narrow_space)) != std::string::npos;) {
    text.replace(at, narrow_space.size(), " ");
  }
  return text;
}

class FormMaker {
 public:
  explicit FormMaker(const VisitFormInput& input) : input_(input) {}

  std::string text() const {
    return fmt::format(
               "# {}, {}. A line that begins with # is not read: take the # away and change its "
               "words.\n",
               plain(input_.pet.name.value), to_iso(input_.today)) +
           head().text() + "\n[came_in]\n" + came_in().text() + "\n" + grades() +
           regions_before().text() +
           "\n[done]\n# As planned, unless a line here says what instead, and why (for everyone: "
           "the owner reads it).\n" +
           done().text() + "\n[went_out]\n" + regions_after().text() + products() +
           open_findings() + rest() + stock();
  }

 private:
  Units units() const { return input_.salon.units; }

  FormSection head() const {
    const Plan& plan = input_.plan;
    FormSection out;
    out.fact("date", to_iso(input_.today));
    out.fact("unfinished", "true", "take this line out when the visit is done");
    out.choice("not_done", owners_text("came in coughing"),
               "or why it was not groomed, in kind words: the owner reads it");
    if (input_.booking && !input_.booking->groomer.empty()) {
      out.fact("groomer", quoted(input_.booking->groomer));
    } else {
      const bool known = input_.latest != nullptr && !input_.latest->groomer.empty();
      out.choice("groomer", quoted(known ? input_.latest->groomer : "name"));
    }
    if (plan.duration) {
      out.choice("minutes", std::to_string(plan.duration->expected.count()),
                 fmt::format("expected, {} to {}", plan.duration->low.count(),
                             plan.duration->high.count()));
    } else {
      out.choice("minutes", "90");
    }
    if (const auto& last = plan.health.weight) {
      const std::string when = last->on ? " on " + to_iso(*last->on) : "";
      out.choice("weight", toml_text::quantity(last->weight),
                 "last: " + plain(to_text(last->weight, units())) + when);
    } else {
      out.choice("weight", units() == Units::metric ? quoted("10 kg") : quoted("22 lb"));
    }
    if (input_.next) {
      out.choice("next", to_iso(*input_.next), "as planned; what was agreed");
    } else {
      out.choice("next", to_iso(input_.today + std::chrono::weeks(8)));
    }
    out.choice("told", owners_text("what the owner was told"));
    return out;
  }

  /// Beside the salon's language the owner's, where that is another.
  std::string owners_text(const std::string& text) const {
    const std::string& owners = input_.pet.owner.language;
    const auto language = [](const std::string& tag) { return tag.substr(0, tag.find('-')); };
    if (owners.empty() || language(owners) == language(input_.salon.language)) return quoted(text);
    return toml_text::table({{"text", quoted(text)}, {language(owners), quoted("…")}});
  }

  /// The stock phrases of each kind, in lines that are not read.
  std::string stock() const {
    std::string out =
        "\n# Known in the language of every owner; anything else is written in two, as\n"
        "# { text = \"…\", es = \"…\" }.\n";
    constexpr std::array<std::pair<StockKind, std::string_view>, 8> kinds{
        {{StockKind::finding, "what"},
         {StockKind::advice, "advised"},
         {StockKind::behaviour, "behaviour"},
         {StockKind::helped, "helped"},
         {StockKind::reason, "why"},
         {StockKind::not_done, "not done"},
         {StockKind::left, "went out"},
         {StockKind::consent, "consent"}}};
    constexpr std::size_t widest = 100;
    for (const auto& [kind, name] : kinds) {
      std::string line = fmt::format("# {}:", name);
      for (const StockPhrase& row : stock_phrases()) {
        if (row.kind != kind) continue;
        std::string words(row.words);
        if (input_.words != nullptr) words = input_.words->term("stock", stock_key(row.words));
        if (line.size() + words.size() + 2 > widest) {
          out += line + "\n";
          line = "#  ";
        }
        line += fmt::format(" {};", words);
      }
      line.back() = '.';
      out += line + "\n";
    }
    return out;
  }

  FormSection came_in() const {
    FormSection out;
    const LastVisit before = input_.plan.last_visit.value_or(LastVisit{});
    out.choice("behaviour", quoted("calm"),
               before.behaviour.empty()
                   ? "for staff; calm, worried, pulls away, snaps"
                   : "for staff; last time: " + quoted(before.behaviour.value));
    if (before.helped.empty()) {
      out.choice("helped", quoted("towel over the ears"), "for staff");
    } else {
      out.choice("helped", quoted(before.helped.value), "for staff; it did last time");
    }
    if (!grows(Region::ears)) out.choice("ears", quoted("clean"), "clean, waxy, red, smelling");
    if (!grows(Region::eyes)) out.choice("eyes", quoted("clear"), "clear, weeping, red");
    out.choice("nails", quoted("long"), "short, long, curled, split");
    out.choice("parasites", quoted("none seen"));
    out.choice("soil", quoted("clean"), "clean, dust, mud, greasy");
    out.choice("shedding", quoted("little"), "none, little, heavy, blowing in tufts");
    out.choice("skin", quoted("sound"), "sound, dry, red, sore");
    return out;
  }

  static std::string place_key(Place place) { return toml_text::key(toml_text::place(place)); }

  /// True if the region has a line of its own, which would have the same key as its state.
  bool grows(Region region) const {
    return std::ranges::any_of(input_.plan.growth, [&](const RegionGrowth& row) {
      return row.place == Place{region, Side::both};
    });
  }

  FormSection regions_before() const {
    FormSection out;
    for (const RegionGrowth& row : input_.plan.growth) {
      // Before this visit nothing is known to have been left, so nothing is expected.
      const bool known = input_.latest != nullptr;
      const Length expected = known ? middle(row.today) : middle(row.left);
      std::string remark = known ? "expected " + plain(to_text(row.today, units())) : std::string();
      out.choice(place_key(row.place),
                 fmt::format("{{ mats = 0, length = {}{} }}", toml_text::quantity(whole(expected)),
                             row.place.region == Region::ears ? ", note = \"clean\"" : ""),
                 std::move(remark));
    }
    return out;
  }

  /// A ruler in the coat is read to whole millimetres, or eighths of an inch.
  Length whole(Length length) const {
    const std::int64_t step = units() == Units::metric ? 1000 : 3175;
    return Length::micrometres(std::max(step, (length.um() + step / 2) / step * step));
  }

  static std::string grades() {
    std::string out = "# Mats:";
    for (int grade = 0; grade <= worst_mats; ++grade) {
      out += fmt::format("{} {} {}", grade == 0 ? "" : ";", grade, mat_grade(grade));
    }
    return out + ".\n";
  }

  FormSection done() const {
    FormSection out;
    for (const TrimPart& part : input_.pet.trim) {
      auto fields = entry_fields(part.entry);
      std::erase_if(fields, [](const auto& field) { return field.first == "note"; });
      out.choice(place_key(part.place), toml_text::table(fields), "with why = \"…\", for staff");
    }
    return out;
  }

  FormSection regions_after() const {
    FormSection out;
    out.choice("finish", quoted("ears and tail as planned"));
    out.choice("nails", quoted("clipped and ground"));
    out.choice("extras", quoted("bandana"));
    for (const RegionGrowth& row : input_.plan.growth) {
      const PartLength* const planned = find_length(input_.plan.lengths, row.place);
      if (planned == nullptr || !planned->left) continue;
      out.choice(
          place_key(row.place),
          fmt::format("{{ length = {} }}", toml_text::quantity(whole(middle(*planned->left)))),
          "planned " + plain(to_text(*planned->left, units())));
    }
    return out;
  }

  std::string products() const {
    std::string out;
    for (const Mix& mix : input_.plan.bath.mixes) {
      const Product& product = mix.use.product;
      FormSection section;
      std::string remark;
      if (mix.measured) {
        remark = plain(to_text(mix.measured->product, units()) + " + " +
                       to_text(mix.measured->water, units()) + " water");
      }
      section.fact(product.key.empty() ? "name" : "product",
                   quoted(product.key.empty() ? product.name : product.key), remark);
      if (!mix.neat) section.choice("mixed", to_iso(input_.today));
      out += "\n[[product]]\n" + section.text();
    }
    return out;
  }

  /// What earlier visits found and none has closed, each to be closed by its # alone.
  std::string open_findings() const {
    if (input_.plan.findings.empty()) return {};
    std::string out =
        "\n# Open from earlier visits. Take the # away where it is well; found again, it is a "
        "[[finding]] below.\n";
    bool first = true;
    for (const OpenFinding& one : input_.plan.findings) {
      FormSection lines;
      lines.choice("region", quoted(toml_text::place({one.place.region, Side::both})));
      if (one.place.side != Side::both) lines.choice("side", quoted(to_text(one.place.side)));
      std::string remark = "found " + listed(days(one.seen), " and ");
      if (!one.advised.empty()) remark += "; advised: " + quoted(one.advised.value);
      lines.choice("what", quoted(one.what.value), std::move(remark));
      lines.choice("closed", "true");
      if (one.audience == Audience::everyone) lines.choice("for", quoted("everyone"));
      out += (first ? "# [[finding]]\n" : "\n# [[finding]]\n") + lines.text();
      first = false;
    }
    return out;
  }

  static std::vector<std::string> days(const std::vector<Date>& dates) {
    std::vector<std::string> out;
    for (const Date date : dates) out.push_back(to_iso(date));
    return out;
  }

  std::string rest() const {
    const std::string today = to_iso(input_.today), key = photo_name();
    const std::string owner = input_.pet.owner.name.empty() ? "the owner" : input_.pet.owner.name;
    return "\n# [[finding]]\n"
           "# region  = \"belly\"\n"
           "# side    = \"left\"\n"
           "# what    = \"lump, pea-sized\"\n"
           "# advised = \"vet this week\"\n"
           "# closed  = true         # was found before, and is well now\n"
           "# for     = \"everyone\"   # or staff; what matters at home, the owner needs\n"
           "\n# [[photo]]\n"
           "# file    = " +
           quoted(fmt::format("photos/{}-{}-before.jpg", key, today)) +
           "\n# when    = \"before\"     # or after\n"
           "# caption = \"what it shows\"\n"
           "\n# [[consent]]\n"
           "# to = \"cutting out mats\"\n"
           "# by = " +
           quoted(owner) + "\n# on = " + today + "\n";
  }

  /// A file's name need be no text; what stands in TOML must be.
  std::string photo_name() const {
    const std::string& key = input_.pet.key;
    return first_bad_utf8(key) ? "pet" : key;
  }

  const VisitFormInput& input_;
};
}  // namespace

std::string visit_form(const VisitFormInput& input) {
  return FormMaker(input).text();
}
}  // namespace furnish
