#pragma once

#include <chrono>
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
  /// Reads what was not read yet.
  Json find(std::string_view words, std::size_t most);
  /// Reads some pets that are not known yet. False if all are.
  bool read_on();
  /// A pet's file or one of its visits is another, is there now or is gone.
  void changed(const std::string& id) { stale_.insert(id); }
  void all_changed();

 private:
  struct Known {
    std::string name, owner, looks, sorted_by;
    std::vector<SearchText> texts;
    std::optional<Signal> gravest;
    std::optional<Date> due;
    std::optional<Booking> booked;  ///< today
    bool readable = true;
  };
  void list();
  /// pre: there is one that is not known.
  void read_next();
  void read_all();
  Json row(const std::string& id, const Known&, Date today) const;

  DeskShop shop_;
  bool listed_ = false;
  Date as_of_{};  ///< the day that plans were made for
  std::set<std::string> stale_;
  std::map<std::string, Known> known_;
};
}  // namespace furnish
