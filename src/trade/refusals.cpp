#include "trade/refusals.h"

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <string>

#include "trade/phrases.h"

namespace furnish {
namespace {
struct Row {
  std::string_view first, second;  ///< words one after another; second may be empty
  Tool tool;
  bool any_shears = false, any_strip = false;
};

/// The longer name first: "thinning shears" is no word about all shears. Singular and plural are
/// both here where an owner's dislike may mean a mark of the tool and not the tool ("clipper
/// lines", "scissor marks").
const std::array<Row, 17>& table() {
  static const std::array<Row, 17> rows{{
      {"thinning", "", Scissor{Shears::thinning}},
      {"thinner", "", Scissor{Shears::thinning}},
      {"thinners", "", Scissor{Shears::thinning}},
      {"blending", "shears", Scissor{Shears::blending}},
      {"blending", "scissors", Scissor{Shears::blending}},
      {"chunkers", "", Scissor{Shears::blending}},
      {"chunking", "", Scissor{Shears::blending}},
      {"curved", "", Scissor{Shears::curved}},
      {"straight", "shears", Scissor{Shears::straight}},
      {"straight", "scissors", Scissor{Shears::straight}},
      {"scissors", "", Scissor{}, true},
      {"shears", "", Scissor{}, true},
      {"clippers", "", Clip{}},
      {"guard", "combs", CombOver{}},
      {"guard", "comb", CombOver{}},
      {"stripping", "knife", HandStrip{Strip::knife}},
      {"stripping", "", HandStrip{}, false, true},
  }};
  return rows;
}

/// What the clause names at `at`, and how many of its words that takes.
std::optional<std::pair<const Row*, std::size_t>> tool_at(const Clause& clause, std::size_t at) {
  for (const Row& row : table()) {
    if (clause[at].text != row.first) continue;
    if (row.second.empty()) {
      const bool shears = at + 1 < clause.size() && std::holds_alternative<Scissor>(row.tool) &&
                          (clause[at + 1].text == "shears" || clause[at + 1].text == "scissors");
      return std::pair(&row, std::size_t{shears ? 2U : 1U});
    }
    if (at + 1 < clause.size() && clause[at + 1].text == row.second) {
      return std::pair(&row, std::size_t{2});
    }
  }
  return std::nullopt;
}

void add_regions(std::string_view words, std::vector<Region>& out) {
  if (const auto place = parse_place(words)) {
    out.push_back(place->region);
  } else if (const auto group = parse_group(words)) {
    const auto members = info(*group).members;
    out.insert(out.end(), members.begin(), members.end());
  }
}

/// "No nail clippers" says nothing of the coat's.
bool of_nails(const Clause& clause, std::size_t at) {
  return at > 0 && (clause[at - 1].text.starts_with("nail") || clause[at - 1].text == "claw");
}

/// "No clipper": of a mark of it ("no clipper lines") that says nothing.
bool one_clipper(const Clause& clause, std::size_t at) {
  constexpr std::array<std::string_view, 6> marks{"line",  "lines", "mark",
                                                  "marks", "track", "tracks"};
  if (clause[at].text != "clipper" || !clause[at].denied || of_nails(clause, at)) return false;
  return at + 1 == clause.size() || std::ranges::find(marks, clause[at + 1].text) == marks.end();
}

std::vector<Region> regions_of(const Clause& clause) {
  std::vector<Region> out;
  for (std::size_t i = 0; i < clause.size(); ++i) {
    add_regions(clause[i].text, out);
    if (i + 1 < clause.size()) add_regions(clause[i].text + " " + clause[i + 1].text, out);
  }
  return out;
}
}  // namespace

std::vector<Refusal> read_refusals(std::string_view words, Refusing how) {
  std::vector<Refusal> out;
  for (const Clause& clause : read_clauses(words)) {
    // Most clauses refuse nothing, and to find their regions costs more than all the rest.
    std::optional<std::vector<Region>> found_regions;
    const auto regions = [&] {
      if (!found_regions) found_regions = regions_of(clause);
      return *found_regions;
    };
    for (std::size_t i = 0; i < clause.size();) {
      const auto found = tool_at(clause, i);
      if (found && !of_nails(clause, i) && (how == Refusing::dislikes || clause[i].denied)) {
        out.push_back(
            {found->first->tool, found->first->any_shears, found->first->any_strip, regions()});
      }
      if (how == Refusing::rules && one_clipper(clause, i)) {
        out.push_back({Clip{}, false, false, regions()});
      }
      i += found ? found->second : 1;
    }
  }
  return out;
}

bool refuses_grinder(std::string_view words, Refusing how) {
  constexpr std::array<std::string_view, 4> grinders{"grinder", "grinders", "grinding", "grind"};
  constexpr std::array<std::string_view, 12> frightened{
      "panics",     "panic",  "hates",   "fears",  "fear",      "afraid",
      "frightened", "scared", "screams", "terror", "terrified", "terrifies"};
  constexpr std::array<std::string_view, 4> noises{"noise", "noises", "sound", "sounds"};
  const auto said = [](std::span<const std::string_view> list, const FreeWord& word) {
    return std::ranges::find(list, word.text) != list.end();
  };
  return std::ranges::any_of(read_clauses(words), [&](const Clause& clause) {
    const bool fears =
        how == Refusing::dislikes || std::ranges::any_of(clause, [&](const FreeWord& word) {
          return !word.denied && said(frightened, word);
        });
    // What is disliked may be no more than its noise.
    const auto only_noise = [&](std::size_t i) {
      return how == Refusing::dislikes && i + 1 < clause.size() && said(noises, clause[i + 1]);
    };
    for (std::size_t i = 0; i < clause.size(); ++i) {
      const bool named = said(grinders, clause[i]) && !only_noise(i);
      if (named && (fears || clause[i].denied)) return true;
    }
    return false;
  });
}

bool refuses(const Refusal& refusal, const Tool& tool, Place place) {
  const bool here = refusal.regions.empty() ||
                    std::ranges::find(refusal.regions, place.region) != refusal.regions.end();
  if (!here) return false;
  if (const auto* const shears = std::get_if<Scissor>(&tool)) {
    const auto* const refused = std::get_if<Scissor>(&refusal.tool);
    return refused != nullptr && (refusal.any_shears || refused->shears == shears->shears);
  }
  if (const auto* const strip = std::get_if<HandStrip>(&tool)) {
    const auto* const refused = std::get_if<HandStrip>(&refusal.tool);
    return refused != nullptr && (refusal.any_strip || refused->with == strip->with);
  }
  // "No clippers" means the machine, also under a guard comb.
  const bool machine = std::holds_alternative<Clip>(refusal.tool);
  if (std::holds_alternative<CombOver>(tool)) {
    return machine || std::holds_alternative<CombOver>(refusal.tool);
  }
  return std::holds_alternative<Clip>(tool) && machine;
}
}  // namespace furnish
