#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "model/pet.h"
#include "model/salon.h"
#include "model/visit.h"
#include "spec/catalogue_library.h"
#include "spec/reader.h"

namespace furnish {

/// One salon's folder, or none: what its pets are read with.
class SalonFolder {
 public:
  /// `root` is empty for pets outside any salon. salon.toml may be missing; if it cannot be read
  /// at all, good() is false and none of its pets can be read.
  SalonFolder(const ReadContext&, std::string root, const std::string& shipped_styles);

  bool good() const { return good_; }
  /// True if nothing of salon.toml has a fault.
  bool whole() const { return good_ && salon_.whole; }
  const std::string& root() const { return root_; }
  const Salon& salon() const { return salon_; }
  /// From here on no page of its pets says how to reach an owner.
  void leave_out_contact() { salon_.contact_on_card = false; }
  StyleLibrary& styles() { return styles_; }
  CatalogueLibrary& words() { return words_; }

  // What is said of a pet's own files goes to the sink that is given; of the salon's, to the run's.

  std::optional<Pet> pet(const std::string& path, DiagnosticSink&);
  /// The files of a pet's visits, by name. After an error `complete` is false.
  std::vector<std::string> visit_files(const Pet&, bool& complete, DiagnosticSink&) const;
  std::optional<Visit> visit(const std::string& path, const Pet&, DiagnosticSink&);
  /// Every readable visit, oldest first, those of one day by their numbers. A faulty file is
  /// reported and left out, and `complete` is false.
  std::vector<Visit> visits(const Pet&, bool& complete, DiagnosticSink&);
  /// The files of days/, looked up once, by name; null after an error.
  const std::vector<std::string>* day_files();
  /// A file of days/, read once; null after an error. Bookings of it that have a fault were
  /// reported, and the others count.
  const Day* day(const std::string& name);
  /// The pet's booking on the day, if days/DATE.toml has one.
  std::optional<Booking> booking(const Pet&, Date);
  /// A day as it is booked, the same; null if nothing is booked, or after an error.
  const Day* day(Date);
  /// The pet's bookings from that day on, by day and in the order of its file, and the days that
  /// may have another of it: by a booking with a fault that may be this pet's, or by a whole file
  /// or folder that cannot be read. Each fault is reported once; `complete` is false after any,
  /// whosoever it is about.
  PetBookings bookings(const Pet&, Date from, bool& complete);

 private:
  /// Of what is one pet's own.
  ReadContext reporting_to(DiagnosticSink& sink) const {
    return {context_.files, context_.sources, sink, true};
  }
  ReadContext context_;
  std::string root_;
  bool has_salon_ = false, good_ = true;
  Salon salon_;
  StyleLibrary styles_;
  CatalogueLibrary words_;
  bool days_listed_ = false, days_good_ = true;
  std::vector<std::string> day_files_;
  std::map<std::string, std::optional<Day>> days_;  ///< by name of file
};

/// Where a PET argument leads: a file, and the salon's folder it lies in ("" if in none).
struct PetPath {
  std::string file, root;
  /// "marlow" of "pets/marlow.toml".
  std::string key() const;
};

/// "marlow" is pets/marlow.toml of the salon (`salon_root`, or the folder one stands in); anything
/// with a slash or ".toml" is a path, whose salon is `salon_root` or the folder above its pets/.
/// Empty after an error that names the nearest pet.
std::optional<PetPath> find_pet(const Files&, const std::string& argument,
                                const std::string& salon_root, DiagnosticSink&);
/// All of a salon's pets, by name. After an error, none, and `complete` is false.
std::vector<PetPath> all_pets(const ReadContext&, const std::string& salon_root, bool& complete);
/// `folder`/`name`; just `name` in the folder one stands in ("" or ".").
std::string path_in(const std::string& folder, const std::string& name);
}  // namespace furnish
