#pragma once

#include <chrono>
#include <cstdint>
#include <map>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "app/desk_shop.h"
#include "plan/front_desk.h"
#include "trade/safety.h"

namespace furnish {

/// What is known of every pet of a salon, so that one is found at once: each is read and planned
/// once, and again when its files change.
class PetIndex {
 public:
  using Json = nlohmann::ordered_json;

  /// Keeps the references.
  PetIndex(const Options&, const Files&, const Disk&);

  /// Rows, at most so many. With words: pets in one of whose texts all of them are, by name first.
  /// Without: those booked today by their hour, then who is due, longest over first, then by name.
  /// Under "pets"; under "reading" how many pets are not known yet, for nobody waits long: of a
  /// large salon that was just opened only some are.
  Json find(std::string_view words, std::size_t most);
  /// Reads some pets that are not known yet. False if all are.
  bool read_on() { return read_for(std::chrono::milliseconds(10)); }
  /// A pet's file or one of its visits is another, is there now or is gone.
  void changed(const std::string& id) { stale_.insert(id); }
  /// A day's file is: it is the pets that it books, or booked, whose plan is another.
  void day_changed(const std::string& date);
  /// Anything that all pets are read with.
  void all_changed();

 private:
  struct Known {
    std::string name, owner, looks, sorted_by;
    std::vector<SearchText> texts;
    std::optional<Signal> gravest;
    std::optional<Date> due;
    bool no_visit = false;          ///< none on file: nobody knows a day
    std::optional<Booking> booked;  ///< today
    bool readable = true;
  };
  void list();
  // pre: there is one that is not known.
  std::string take_next();
  void read_next();
  enum class Until : std::uint8_t { all_read, first_read };
  /// False if all are known.
  bool read_for(std::chrono::milliseconds, Until = Until::all_read);
  Json row(const std::string& id, const Known&, Date today) const;

  DeskShop shop_;
  bool listed_ = false;
  Date as_of_{};  ///< the day that plans were made for
  std::set<std::string> stale_;
  std::vector<std::string> first_;  ///< of those, to be read before the others, the last of all
  std::map<std::string, std::set<std::string>> booked_;  ///< pets by the day, from today on
  std::map<std::string, Known> known_;
};
}  // namespace furnish
