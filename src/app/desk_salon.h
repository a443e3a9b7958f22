#pragma once

#include <map>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/desk_look.h"
#include "app/desk_shop.h"
#include "app/pet_index.h"
#include "desk/salon.h"

namespace furnish {

/// The salon behind the desk, by the workshop that makes its sheets.
class SalonAtDesk final : public desk::Salon {
 public:
  /// Keeps the references.
  SalonAtDesk(const Options&, const Files&, const Disk&);

  Json facts() override;
  Json find(std::string_view words, std::size_t most) override;
  Json day(Date) override;
  std::optional<std::string> shown_path(const desk::FileId&) override;
  desk::FileText read(const desk::FileId&) override;
  std::vector<std::pair<std::string, std::string>> visits(std::string_view pet) override;
  Json look(const desk::LookOrder&) override;
  std::string put_away(const desk::FileId&) override;
  std::string put_back(const desk::FileId&) override;
  std::vector<std::pair<std::string, std::string>> away(std::string_view pet) override;
  std::string write(const desk::FileId&, std::string_view text) override;
  desk::Made create(std::string_view kind, std::string_view name) override;
  void take_back(const desk::FileId&) override;
  desk::PhotoMade add_photo(std::string_view visit, std::string_view bytes) override;
  desk::Printed print(const std::vector<desk::SheetWanted>&) override;
  desk::Printed print_day(Date, std::string_view sheet) override;
  std::optional<std::string> font(std::string_view name) override;

  /// Reads on where it has not read every pet yet, for a few milliseconds; false: it has.
  bool read_on();
  /// A file of the salon, "pets/marlow.toml", is there, gone or another. What it is at the desk, if
  /// it is one of its files.
  std::optional<desk::FileId> changed(const std::string& name);

 private:
  /// A pet's file where find_pet() has it; empty: there is none.
  std::optional<PetPath> pet_path(std::string_view id);
  std::string move_to_new_name(const std::string& from, const std::string& folder,
                               const std::string& name);
  /// Whether a folder of the salon's, "pets", has a file of that name in its list.
  bool lists(const std::string& folder, const std::string& name);
  std::string away_is_link(const std::string& pet) const;
  std::string in_salon(const std::string& name) const { return path_in(kept_.root(), name); }

  DeskShop kept_;
  LooksBefore looks_;
  PetIndex index_;
  std::map<std::string, std::set<std::string>> lists_;  ///< as they were read last
};

/// The sheets that may be asked for, by name: "card", "note-owner". Null if there is none.
const SheetMaker* desk_sheet(std::string_view name);
/// A file of the salon by its name there, "visits/marlow/2026-11-24.toml"; empty if it is no file
/// of the desk's.
std::optional<desk::FileId> file_at(std::string_view name);
}  // namespace furnish
