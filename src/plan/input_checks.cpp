#include "plan/input_checks.h"

#include <fmt/format.h>

#include "base/diagnostic.h"
#include "base/quantity.h"
#include "plan/unwanted.h"
#include "trade/coat.h"

namespace furnish {
namespace {
void check_days(const Pet& pet, Date today, DiagnosticSink& sink) {
  const auto check = [&](Date day, SourceSpan span, std::string_view what, std::string_view so) {
    if (day <= today) return;
    sink.warning("day-after-today", span,
                 fmt::format("{}, {}, is after today, {}", what, to_iso(day), to_iso(today)))
        .hint = so;
  };
  if (pet.born) check(pet.born->value, pet.born->span, "the day of birth", "no age is worked out");
  if (pet.weighed) {
    check(pet.weighed->value, pet.weighed->span, "the day of weighing",
          "that weight is not counted");
  }
  for (const Vaccination& one : pet.vaccinations) {
    check(one.given.value, one.given.span, fmt::format("the {} vaccination", one.name),
          "it is not counted");
  }
  for (const Acceptance& one : pet.accepted) {
    check(one.signed_on, one.span, "the day it was signed", "it is not in force yet");
  }
}

void check_products(const BathPlan& bath, Date today, DiagnosticSink& sink) {
  for (const Mix& mix : bath.mixes) {
    const Product& product = mix.use.product;
    // Sprays and the like come ready to use.
    const bool mixed = mix.slot != BathSlot::other || product.kind == ProductKind::shampoo ||
                       product.kind == ProductKind::conditioner;
    if (!product.dilution && mixed && !product.unread) {
      sink.warning("no-dilution", product.span,
                   fmt::format("nobody says how '{}' is diluted, so no volumes are worked out",
                               product.name))
          .hint = "add dilution = \"10:1\", or \"neat\"";
    }
    if (product.mixed && *product.mixed > today) {
      sink.warning("day-after-today", product.span,
                   fmt::format("the day '{}' was mixed, {}, is after today, {}", product.name,
                               to_iso(*product.mixed), to_iso(today)))
          .hint = "its age is not counted";
    }
  }
}

void check_drawer(std::span<const DrawerGap> gaps, Units units, DiagnosticSink& sink) {
  for (const DrawerGap& gap : gaps) {
    if (gap.use) continue;
    const bool shears = std::holds_alternative<Scissor>(gap.wanted);
    sink.warning("nothing-in-drawer", gap.span,
                 shears ? fmt::format("the drawer has no {} for the {}, and none that do the same",
                                      to_text(gap.wanted, units), to_text(gap.place))
                        : fmt::format("the drawer has no {} for the {}, and nothing allowed there "
                                      "within {}",
                                      to_text(gap.wanted, units), to_text(gap.place),
                                      to_text(substitute_within, units)));
  }
}

void check_lengths(const Pet& pet, std::span<const PartLength> rows, Units units,
                   DiagnosticSink& sink) {
  if (!pet.coat || info(*pet.coat).keeps_growing) return;
  for (const PartLength& row : rows) {
    const Length natural = natural_length(*pet.coat, row.place.region);
    if (!row.left || row.basis == LengthBasis::natural || row.left->low <= natural) continue;
    sink.warning("longer-than-coat", row.span,
                 fmt::format("leaves {} on the {}, where a {} coat usually stops at {}",
                             to_text(*row.left, units), to_text(row.place), key(*pet.coat),
                             to_text(natural, units)))
        .hint = "there may be nothing to cut";
  }
}

}  // namespace

void check_input(const Salon& salon, const Pet& pet, const BathPlan& bath,
                 std::span<const DrawerGap> gaps, std::span<const PartLength> lengths, Date today,
                 DiagnosticSink& sink) {
  check_days(pet, today, sink);
  check_products(bath, today, sink);
  check_allergens(pet, salon.products, sink);
  check_drawer(gaps, salon.units, sink);
  check_lengths(pet, lengths, salon.units, sink);
}
}  // namespace furnish
