#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/calendar_span.h"
#include "base/date.h"
#include "base/measures.h"
#include "base/source.h"
#include "model/audience.h"
#include "model/birth.h"
#include "model/finish.h"
#include "model/free_text.h"
#include "model/product.h"
#include "model/style.h"
#include "model/trim.h"
#include "trade/coat.h"
#include "trade/health.h"
#include "trade/safety.h"

namespace furnish {

struct Alert {
  Signal level = Signal::notice;
  FreeText text, action;                        ///< what it is; what to do (`do` in files)
  std::vector<Located<Place>> avoid;            ///< no tool may touch
  std::vector<Located<std::string>> allergens;  ///< what no product may contain
  Audience audience = Audience::staff;
  SourceSpan span;
};

struct Handling {  // staff
  std::string hold, lift, dryer, stop;
  std::optional<std::chrono::minutes> rest_every;
  std::vector<std::string> comes_with;  ///< collar, lead, towel: leaves with the pet again
  SourceSpan hold_span, lift_span, dryer_span, stop_span;
};

/// When the dog is bathed, seen from the clipper.
enum class BathWhen : std::uint8_t { first, after_clipping };

struct Bath {
  std::optional<Located<std::string>> before;  ///< brush-out before any water
  std::optional<ProductUse> shampoo, conditioner;
  std::vector<ProductUse> others;
  std::optional<Located<std::string>> dry;
  std::optional<Located<BathWhen>> when;  ///< empty: first, unless the salon clips felt first
  bool none = false;                      ///< `none = true`: comes bathed, or must not be
  SourceSpan span;
};

/// What the salon recommends to the owner until the next visit, beyond brushing.
struct HomeAdvice {
  std::optional<Located<std::chrono::days>> bath_every;
  std::optional<ProductUse> product;  ///< of that bath
  std::optional<Volume> bottle;       ///< that the owner mixes it in
  std::vector<FreeText> notes;        ///< in the salon's own words
};

struct KeepUnder {
  Place place;
  Length length;
  SourceSpan span;
};

struct Preferences {
  std::vector<std::string> likes, dislikes;
  std::vector<KeepUnder> keep_under;
  SourceSpan dislikes_span;  ///< of the list
};

/// The practice that the owner wants asked.
struct Vet {
  std::string name, phone;
};

struct Owner {  // staff, except the name
  std::string name, phone, email, language;
  std::vector<std::string> address;
  std::vector<std::string> collects;  ///< who may collect the pet
  Vet vet{};
};

/// A rule of safety that the salon and the owner go against on purpose.
struct Acceptance {
  Located<RuleId> rule;
  std::string reason;
  Date signed_on;
  SourceSpan span;
};

struct Vaccination {
  std::string name;
  Located<Date> given;
  bool booster = false;  ///< counts at once
};

enum class Legs : std::uint8_t { short_legs, medium, long_legs };
enum class BodyLength : std::uint8_t { short_body, medium, long_body };
enum class EarType : std::uint8_t { prick, semi_prick, drop, button, rose };
enum class TailType : std::uint8_t { plume, sickle, sabre, otter, docked };
enum class Bone : std::uint8_t { fine, medium, heavy };

/// How the dog is built; for the figure, and for rules that ask about flat faces.
struct Build {
  std::optional<NoseLength> nose;
  std::optional<Legs> legs;
  std::optional<BodyLength> body;
  std::optional<EarType> ears;
  std::optional<TailType> tail;
  std::optional<Bone> bone{};
  friend bool operator==(const Build&, const Build&) = default;
};

/// A pet and its trim, checked; products and style are already looked up.
struct Pet {
  std::string key;  ///< file name without ending
  Located<std::string> name;
  std::string breed, colour, sex, photo;
  SourceSpan photo_span;
  std::optional<Coat> coat;
  std::optional<Birth> born;
  std::optional<Birth> since;  ///< comes to the salon, known as well as a birth may be
  std::optional<Located<Mass>> weight;
  std::optional<Located<Date>> weighed;  ///< day of that weight
  Build build;
  Owner owner;
  std::vector<Alert> alerts;  ///< in the order of the file
  Handling handling;
  std::vector<Located<Condition>> conditions;
  std::string health_notes;  // staff
  std::vector<Vaccination> vaccinations;
  Bath bath;
  std::optional<Style> style;
  std::optional<Located<CalendarSpan>> visit_every;
  TrimRules own_trim;
  ResolvedTrim trim;
  Finish own_finish;
  std::vector<FinishLine> finish;
  HomeAdvice home;
  Preferences preferences;
  std::vector<Acceptance> accepted;
  SourceSpan span;  ///< of `[pet]`
};
}  // namespace furnish
