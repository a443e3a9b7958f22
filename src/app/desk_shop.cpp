#include "app/desk_shop.h"

#include <utility>

namespace furnish {
namespace {
/// Each look keeps the texts that it read, so that its messages have their lines. After so many of
/// them a shop has cost more memory than a new one costs time.
constexpr std::size_t most_sources = 4000;
}  // namespace

FileContent OverlaidFiles::read_up_to(const std::string& path, std::size_t most) const {
  const auto found = over_.find(path);
  if (found == over_.end()) return below_.read_up_to(path, most);
  if (found->second.size() > most) return {std::nullopt, "is too large"};
  return {found->second, {}};
}

bool OverlaidFiles::exists(const std::string& path) const {
  return over_.contains(path) || below_.exists(path);
}

DeskShop::DeskShop(const Options& options, const Files& files, const Disk& disk)
    : files_(files),
      disk_(disk),
      given_(options),
      options_(options),
      root_(options.root()),
      over_(files) {}

Workshop& DeskShop::shop() {
  over_.clear();
  options_ = given_;
  if (shop_ && (shop_->sources().size() > most_sources || shop_->today() != local_today(given_))) {
    shop_.reset();
  }
  if (!shop_) shop_ = std::make_unique<Workshop>(options_, over_, disk_);
  return *shop_;
}
}  // namespace furnish
