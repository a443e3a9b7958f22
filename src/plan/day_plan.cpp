#include "plan/day_plan.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <string_view>

#include "plan/unwanted.h"
#include "trade/phrases.h"

namespace furnish {
namespace {
using std::chrono::minutes;

/// The last visit that weighed it said something to the owner.
bool told_weight(std::span<const Visit> visits, Date today) {
  const Visit* last = nullptr;
  for (const Visit& visit : visits) {
    if (visit.weight && visit.date.value <= today) last = &visit;
  }
  return last != nullptr && !last->told.empty();
}

bool earlier(const Booking* one, const Booking* other) {
  return one->at < other->at;
}

class DayPlanner {
 public:
  DayPlanner(const Day& day, const std::map<std::string, DayPet>& pets,
             std::span<const DayWarning> warnings)
      : pets_(pets), warnings_(warnings) {
    out_.unread = day.unread;
    for (const Booking& one : day.bookings) bookings_.push_back(&one);
    std::ranges::stable_sort(bookings_, earlier);
  }

  DayPlan all() {
    std::vector<BathPlan> baths;
    std::vector<const DayPet*> seen;
    for (const Booking* const booking : bookings_) {
      const DayPet* const pet = this->pet(*booking);
      block(*booking).rows.push_back(row(*booking, pet));
      if (pet == nullptr || pet->faulty) {
        leave_out(pet == nullptr ? booking->pet.value : pet->pet.name.value);
        continue;
      }
      if (std::ranges::find(seen, pet) != seen.end()) continue;
      seen.push_back(pet);
      baths.push_back(pet->plan.bath);
      for (const std::string& one : pet->plan.salon_unread) {
        auto& all = out_.salon_unread;
        if (std::ranges::find(all, one) == all.end()) all.push_back(one);
      }
      call(*pet);
    }
    out_.closed = std::ranges::any_of(
        warnings_, [](const DayWarning& one) { return one.fault == DayFault::closed_day; });
    out_.mixes = bath_totals(baths);
    hold_back(seen);
    std::ranges::stable_partition(out_.blocks,
                                  [](const DayBlock& block) { return !block.groomer.empty(); });
    for (DayBlock& block : out_.blocks) add_up(block);
    return std::move(out_);
  }

 private:
  const DayPet* pet(const Booking& booking) const {
    const auto found = pets_.find(booking.pet.value);
    return found == pets_.end() ? nullptr : &found->second;
  }

  void leave_out(const std::string& name) {
    std::vector<std::string>& all = out_.not_counted;
    if (std::ranges::find(all, name) == all.end()) all.push_back(name);
  }

  DayBlock& block(const Booking& booking) {
    for (DayBlock& block : out_.blocks) {
      const Booking& first = *block.rows.front().booking;
      if (same_groomer(first, booking) || (first.groomer.empty() && booking.groomer.empty())) {
        return block;
      }
    }
    out_.blocks.push_back({booking.groomer, {}});
    return out_.blocks.back();
  }

  DayRow row(const Booking& booking, const DayPet* pet) const {
    DayRow out{&booking, pet, {}, {}, {}, nullptr};
    if (pet != nullptr && !pet->faulty && pet->plan.duration)
      out.expected = pet->plan.duration->expected;
    if (booking.collect) out.booked = *booking.collect - booking.at;
    for (const DayWarning& one : warnings_) {
      if (one.fault != DayFault::groomer_twice && one.fault != DayFault::pet_twice) continue;
      if (one.span != booking.span && one.other != booking.span) continue;
      const SourceSpan other = one.span == booking.span ? one.other : one.span;
      const auto found =
          std::ranges::find_if(bookings_, [&](const Booking* b) { return b->span == other; });
      if (found != bookings_.end()) out.clashes.push_back(*found);
    }
    std::ranges::stable_sort(out.clashes, earlier);
    const auto next = std::ranges::find_if(bookings_, [&](const Booking* other) {
      return other->at > booking.at && same_groomer(*other, booking);
    });
    if (next != bookings_.end() && booking.collect && (*next)->at < *booking.collect &&
        std::ranges::find(out.clashes, *next) == out.clashes.end()) {
      out.before_collected = *next;
    }
    return out;
  }

  /// A product may be mixed in two dilutions, and be written out by two pets: what is in either.
  void hold_back(std::span<const DayPet* const> pets) {
    std::vector<std::string> done;
    for (const ProductTotal& total : out_.mixes) {
      if (std::ranges::find(done, total.product) != done.end()) continue;
      done.push_back(total.product);
      Product product;
      product.name = total.product;
      for (const DayPet* const pet : pets) {
        for (const Mix& mix : pet->plan.bath.mixes) {
          const Product& used = mix.use.product;
          if (used.name == product.name)
            std::ranges::copy(used.contains, std::back_inserter(product.contains));
        }
      }
      for (const DayPet* const pet : pets) {
        std::vector<std::string> what = unwanted_in(product, pet->pet);
        if (!what.empty() && !on_purpose(*pet, product.name)) {
          out_.not_for.push_back({product.name, pet, std::move(what)});
        }
      }
    }
  }

  static bool on_purpose(const DayPet& pet, const std::string& product) {
    return std::ranges::any_of(pet.plan.cautions, [&](const Caution& caution) {
      return caution.rule == RuleId::allergen && caution.accepted &&
             caution.what.facts.front() == CautionFact(product);
    });
  }

  void call(const DayPet& pet) {
    static const PhraseList rings(
        std::array<std::string_view, 4>{"ring", "phone", "call the owner", "call owner"});
    DayCall call;
    call.pet = &pet;
    call.no_contact = pet.pet.owner.phone.empty() && pet.pet.owner.email.empty();
    for (const Alert& alert : pet.pet.alerts) {
      if (rings.first_affirmed(alert.action.value) && !mentions(alert.action.value, "vet"))
        call.asked.push_back(&alert);
    }
    for (const OpenFinding& finding : pet.plan.findings) {
      const bool told = std::ranges::any_of(pet.visits, [&](const Visit& visit) {
        return visit.date.value == finding.seen.back() && !visit.told.empty();
      });
      if (finding.audience == Audience::everyone && !told) call.untold.push_back(&finding);
    }
    for (const Caution& caution : pet.plan.cautions) {
      if (caution.rule == RuleId::vaccination && !caution.accepted) {
        call.vaccinations.push_back(&caution);
      }
      const bool lost = caution.rule == RuleId::weight_loss && !caution.accepted;
      if (lost && !told_weight(pet.visits, pet.plan.today)) call.weight = &caution;
    }
    if (call.no_contact || !call.untold.empty() || !call.vaccinations.empty() ||
        call.weight != nullptr || !call.asked.empty()) {
      out_.calls.push_back(std::move(call));
    }
  }

  static void add_up(DayBlock& block) {
    std::vector<Duration> known;
    for (const DayRow& row : block.rows) {
      if (row.expected) known.push_back(*row.pet->plan.duration);
      block.booked += row.booked.value_or(minutes(0));
    }
    block.expected = total(known).expected;
  }

  const std::map<std::string, DayPet>& pets_;
  std::span<const DayWarning> warnings_;
  std::vector<const Booking*> bookings_;
  DayPlan out_;
};
}  // namespace

void DayBlock::take(const DayBlock& other) {
  rows.insert(rows.end(), other.rows.begin(), other.rows.end());
  expected += other.expected;
  booked += other.booked;
}

minutes DayRow::over() const {
  return expected && booked && *expected > *booked ? *expected - *booked : minutes(0);
}

bool needs_two(const Pet& pet) {
  static const PhraseList two(
      std::array<std::string_view, 3>{"two people", "second person", "two of us"});
  const auto says = [&](std::string_view text) { return two.first_affirmed(text).has_value(); };
  return says(pet.handling.lift) || says(pet.handling.hold) ||
         std::ranges::any_of(pet.alerts, [&](const Alert& alert) {
           return says(alert.action.value) || says(alert.text.value);
         });
}

DayPlan day_plan(const Day& day, const std::map<std::string, DayPet>& pets,
                 std::span<const DayWarning> warnings) {
  return DayPlanner(day, pets, warnings).all();
}
}  // namespace furnish
