#pragma once

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/calendar_span.h"
#include "base/measures.h"
#include "base/paper.h"
#include "base/source.h"
#include "model/free_text.h"
#include "model/product.h"
#include "trade/coat.h"
#include "trade/tools.h"

namespace furnish {

/// What is in the drawer. Lists keep the order of the file.
struct Kit {
  std::vector<const Blade*> blades;
  std::vector<Length> combs;
  std::vector<Shears> shears;
  std::optional<Volume> bottle;
  std::map<const Blade*, Length> measured;  ///< what a blade really leaves, against the lay
  /// What the blade leaves against the lay: measured here, else the table's.
  Length length(const Blade& blade) const {
    const auto found = measured.find(&blade);
    return found == measured.end() ? blade.length() : found->second;
  }
};

/// When a vaccination counts. Rules are local, so each is a setting.
struct VaccinationRule {
  std::string name;
  CalendarSpan wait{};  ///< after a first dose, until it counts
  CalendarSpan valid{std::chrono::months(12)};
  bool required = false;
  SourceSpan span;
};

/// Where two neighbouring regions are blended: a jump of more than `step`, and more than `ratio`
/// times. Common practice, no source.
struct BlendSettings {
  Length step = 6_mm;
  double ratio = 1.5;
};

/// Minutes of a visit before a pet has a history: base, and a share for its surface, and for each
/// part of the work. Common practice, no source; a salon sets its own.
struct TimeSettings {
  double base = 15;          ///< check-in, nails, check-out
  double bath_per_m2 = 30;   ///< bath and rinse
  double dry_per_m2 = 50;    ///< double, curly and drop coats; others half of it
  double brush_per_m2 = 25;  ///< coats that are brushed out before the bath
  double clip_per_part = 3, scissor_per_part = 5;  ///< each row of the trim
  double spread = 0.25;                            ///< either way, as a share
};

/// Reading distances of one class of paper, in millimetres (LOOKS); empty means the sheet's own.
struct ReadingDistances {
  std::optional<Length> name, alert, action, body, footer;
};

/// What comes first on a felted coat. Both are taught (common practice, no source): water tightens
/// mats; a bath first with the coat worked open spares blades and skin.
enum class FeltedWay : std::uint8_t { clip_first, bath_first };

struct PaperSettings {
  Paper card = *parse_paper("A5"), sheet = *parse_paper("A4");
  ReadingDistances distances;
};

/// Parts of a salon's file on which more hangs than how a page looks.
enum class SalonPart : std::uint8_t {
  closed,
  rules,
  kit,
  products,
  vaccinations,
  blends,
  time,
  mixing
};

/// A salon's own ways; everything has a default.
struct Salon {
  std::string name;  ///< empty if there is none
  std::string phone, email;
  std::vector<std::string> address;
  std::string language = "en-GB";  ///< BCP 47
  Units units = Units::metric;
  std::vector<std::chrono::weekday> closed;
  std::vector<FreeText> rules;  ///< the house's own, for the wall
  bool contact_on_card = false;
  bool tools_for_owners = false;    ///< care sheets name blades and combs
  std::optional<FeltedWay> felted;  ///< empty: it is proposed, pet by pet
  bool shorten_visits = false;      ///< a coat's limits move the next visit; else they advise
  bool photos_anywhere = false;     ///< photo paths may leave the salon's folder
  PaperSettings paper;
  std::optional<Kit> kit;  ///< empty: nobody said, so every tool is taken to be there
  std::vector<Product> products;
  std::vector<VaccinationRule> vaccinations;
  BlendSettings blends;
  TimeSettings time;
  std::chrono::days mix_keeps{0};  ///< 0: used on the day it was mixed; common practice, no source
  std::array<double, coat_count> mix_per_m2{};  ///< litres; filled from the coats' table
  SourceSpan span;
  bool whole = true;  ///< false: its file has faults, and what has them is left out
  /// Parts that have them, so that nobody knows what they say; in their order, each once. Of
  /// products, that any may be missing; one that is there and has a fault says so itself.
  std::vector<SalonPart> unread;
  bool unknown(SalonPart part) const { return std::ranges::binary_search(unread, part); }
};
}  // namespace furnish
