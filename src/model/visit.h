#pragma once

#include <array>
#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/measures.h"
#include "base/source.h"
#include "model/audience.h"
#include "model/free_text.h"
#include "model/product.h"
#include "model/trim.h"

namespace furnish {

/// State of a region when the pet came in, or when it left.
struct RegionState {
  Place place;
  std::optional<int> mats;  ///< 0 none to 4 felted to the skin
  bool encircling = false;  ///< a mat right round a limb or the tail
  std::optional<Length> length;
  FreeText soil, shedding, skin;
  FreeText note;  ///< for staff unless it says otherwise
  SourceSpan span;
};

struct CameIn {
  FreeText behaviour, helped;  // staff
  FreeText ears, eyes, nails, parasites, soil, shedding, skin;
  std::vector<Place> well;  ///< looked at and found well: closes what was found there; staff
  std::vector<RegionState> regions;
};

struct Finding {
  Located<Place> place;    ///< any side may be named
  FreeText what, advised;  ///< what: empty where all that was found there is closed
  bool closed = false;     ///< was found before, and is no more
  Audience audience = Audience::staff;
  SourceSpan span;
};

enum class PhotoTime : std::uint8_t { before, after };
struct Photo {
  Located<std::string> file;
  PhotoTime when = PhotoTime::before;
  FreeText caption;
  std::optional<std::array<double, 2>> focus;  ///< 0..1 from the left and the top
};

struct Consent {
  FreeText to;
  std::string by;
  std::optional<Date> on;
  SourceSpan span;
};

/// What a visit's file says of the work. What was seen, weighed and found counts whatever it is;
/// only what is done counts as a groom.
enum class Work : std::uint8_t {
  done,        ///< as planned, but for what it says otherwise
  unwritten,   ///< it says how the pet came in, and nothing of what was done
  unfinished,  ///< begun, and nobody has said yet that it is done
  not_done     ///< the pet went home without its groom, or with parts of it
};

/// What may be done of a groom that was not done, besides the places of a trim.
enum class DonePart : std::uint8_t { bath, brushing, nails };

struct Visit {
  Located<Date> date;
  int number = 1;  ///< of that day: 2 for DATE-2.toml
  Work work = Work::done;
  FreeText not_done;          ///< why not; empty unless it is Work::not_done
  std::vector<DonePart> did;  ///< of one that was not done, what was done all the same
  std::string groomer;
  std::optional<std::chrono::minutes> minutes;
  std::optional<Located<Mass>> weight;
  std::optional<Located<Date>> next;
  FreeText told;  ///< what the owner was told
  CameIn came_in;
  TrimRules done;  ///< only what was not as planned; where it was not done, what was all the same
  std::vector<RegionState> went_out;
  FreeText finish, nails, extras;  ///< how it left, where not as planned
  std::vector<ProductUse> products;
  std::vector<Finding> findings;
  std::vector<Photo> photos;
  std::vector<Consent> consents;
};

/// Nothing of it counts as done yet.
inline bool is_open(const Visit& visit) {
  return visit.work == Work::unwritten || visit.work == Work::unfinished;
}

struct Booking {
  Date date;  ///< of its day's file
  TimeOfDay at{};
  std::optional<TimeOfDay> collect;
  Located<std::string> pet;  ///< key of a file in pets/
  std::string groomer, note;
  SourceSpan span;
};

/// A booking that has a fault, or what stands beside the bookings and may have been one.
struct UnreadBooking {
  SourceSpan span;  ///< of its first fault
  std::string pet;  ///< key of the pet it is about; empty: it may be anybody's
};

struct Day {
  Date date;
  std::vector<Booking> bookings;
  SourceSpan span;                    ///< of its date
  std::vector<UnreadBooking> unread;  ///< what is not among the bookings, for it has a fault
};

/// A pet's bookings, as far as they can be read.
struct PetBookings {
  std::vector<Booking> known;
  std::vector<Date> unread;  ///< days that may have another, ascending
};
}  // namespace furnish
