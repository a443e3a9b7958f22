#pragma once

#include <optional>
#include <string>

#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "plan/plan.h"
#include "sheet/words.h"

namespace furnish {

/// What a visit's form is filled in from.
struct VisitFormInput {
  const Salon& salon;
  const Pet& pet;
  const Plan& plan;                ///< of the day, before this visit
  std::optional<Date> next;        ///< when the pet is due again after a visit as planned
  std::optional<Booking> booking;  ///< of the day
  const Visit* latest = nullptr;   ///< the one before, if there was one
  Date today;
  const Words* words = nullptr;  ///< of the salon, for its stock phrases; null: in English
};

/// A visit's file for the desk: day, groomer, next date and products are filled in as planned; all
/// else that could be said stands there as a comment, with what the plan expects, so that a person
/// takes a # away and changes a word. Read as it is, it is a visit that is begun and not done;
/// without the line that says so, one that went as planned. With any of its commented lines
/// brought to life it still reads without a fault.
std::string visit_form(const VisitFormInput&);
}  // namespace furnish
