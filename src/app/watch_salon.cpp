#include "app/watch_salon.h"

#include <fmt/format.h>
#include <poll.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <chrono>
#include <filesystem>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <utility>

#include "app/new_files.h"
#include "app/render.h"
#include "app/sheet_work.h"
#include "app/stop_request.h"
#include "desk/watch.h"
#include "output/photo.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;
using Clock = desk::Watch::Clock;

/// An editor's last step is told as one; more than that is not waited for.
constexpr std::chrono::milliseconds stillness{8};

/// Passes everything on to other files, and notes whether something that is there could not be
/// read. For several threads, as those are.
class NotingFiles final : public Files {
 public:
  explicit NotingFiles(const Files& files) : files_(files) {}
  FileContent read_up_to(const std::string& path, std::size_t most) const override {
    FileContent out = files_.read_up_to(path, most);
    if (!out.bytes && files_.exists(path)) failed_ = true;
    if (most == most_photo_bytes) {
      const std::scoped_lock lock(mutex_);
      photos_.insert(path);
    }
    return out;
  }
  std::string place(const std::string& path) const override { return files_.place(path); }
  bool exists(const std::string& path) const override { return files_.exists(path); }
  FolderContent list(const std::string& folder) const override {
    FolderContent out = files_.list(folder);
    if (!out.fault.empty()) failed_ = true;
    return out;
  }
  /// Since it was asked last.
  bool failed() { return failed_.exchange(false); }
  /// That were asked for since they were asked for last, there or not.
  std::set<std::string> photos() {
    const std::scoped_lock lock(mutex_);
    return std::exchange(photos_, {});
  }

 private:
  const Files& files_;
  mutable std::mutex mutex_;
  mutable std::set<std::string> photos_;
  mutable std::atomic<bool> failed_ = false;
};

/// All that is read once: it is good until something changes that pets share, or the day does.
struct Warm {
  Warm(const Options& options, const Files& files, const Disk& disk)
      : shop(options, files, disk), benches(shop) {}
  Workshop shop;
  Benches benches;
};

class SalonWatch {
 public:
  SalonWatch(const Options& options, Workshop& shop, std::string root)
      : options_(options),
        files_(shop.context().files),
        disk_(shop.disk()),
        root_(std::move(root)),
        watch_(root_, stillness) {}

  bool can_watch() { return watch_.descriptor() >= 0 && stop_.descriptor() >= 0; }

  Exit run() {
    if (const auto end = make_all()) return *end;
    std::array<pollfd, 2> waiting{
        {{watch_.descriptor(), POLLIN, 0}, {stop_.descriptor(), POLLIN, 0}}};
    while (!stop_.taken()) {
      ::poll(waiting.data(), waiting.size(), wait());
      const auto now = Clock::now();
      if (waiting[0].revents != 0) watch_.take(now);
      const std::vector<std::string> changed = watch_.settled(now);
      if (changed.empty()) continue;
      if (const auto end = make(changed)) return *end;
    }
    return Exit::stopped;
  }

 private:
  int wait() const {
    const auto due = watch_.due();
    if (!due) return -1;
    const auto left = std::chrono::ceil<std::chrono::milliseconds>(*due - Clock::now());
    return static_cast<int>(std::max<std::chrono::milliseconds::rep>(left.count(), 0));
  }

  /// How all ends, if it does: it was asked to stop meanwhile, or nobody takes what it says.
  std::optional<Exit> ended(const Console& console, Exit made) const {
    if (!console.delivered()) return Exit::faults;
    return made == Exit::stopped ? std::optional(made) : std::nullopt;
  }

  /// From now on those are watched too that sheets hang on, wherever they lie.
  void follow_photos() {
    for (const std::string& path : files_.photos()) watch_.follow(path);
    for (const std::string& path : std::exchange(warm_->benches.photos, {})) watch_.follow(path);
  }

  /// Once for each folder that cannot be watched.
  void tell_unwatched(Console& console) {
    for (const auto& [folder, why] : watch_.unwatched()) {
      warm_->shop.sink().warning("no-watch", {},
                                 fmt::format("{} cannot be watched: {}; what is saved there is not "
                                             "noticed",
                                             folder, why));
    }
    console.show_reports();
  }

  std::optional<Exit> make_all() {
    warm_ = std::make_unique<Warm>(options_, files_, disk_);
    Console console(warm_->shop.sources(), warm_->shop.sink(), false);
    const Exit exit = render_sheets(options_, warm_->shop, console, warm_->benches);
    follow_photos();
    tell_unwatched(console);
    if (exit != Exit::stopped) {
      console.say(fmt::format("watching {}; Ctrl-C ends it", root_ == "." ? "this folder" : root_));
    }
    return ended(console, exit);
  }

  std::optional<Exit> make(const std::vector<std::string>& changed) {
    std::set<std::string> pets;
    // What could not be read may be what pets share, and may be readable now.
    bool shared = files_.failed() || !warm_ || warm_->shop.today() != local_today(options_);
    for (const std::string& name : changed) {
      const fs::path path(name);
      const bool toml = path.extension() == ".toml";  // else it is a photo
      if (toml && name.starts_with("pets/")) {
        pets.insert(path.stem().string());
      } else if (toml && name.starts_with("visits/")) {
        pets.insert(path.parent_path().filename().string());
      } else {
        shared = true;
      }
    }
    if (shared) warm_ = std::make_unique<Warm>(options_, files_, disk_);
    std::vector<PetPath> paths;
    for (const std::string& pet : pets) {
      const std::string path = path_in(path_in(root_, "pets"), pet + ".toml");
      if (files_.exists(path)) paths.push_back({path, root_});
    }
    Console console(warm_->shop.sources(), warm_->shop.sink(), false);
    const Exit exit = render_changed(options_, warm_->shop, console, warm_->benches, paths,
                                     shared ? Changed::shared : Changed::pets);
    follow_photos();
    tell_unwatched(console);
    return ended(console, exit);
  }

  const Options& options_;
  NotingFiles files_;
  const Disk& disk_;
  std::string root_;
  StopRequest stop_;
  desk::Watch watch_;
  std::unique_ptr<Warm> warm_;
};
}  // namespace

Exit watch_salon(const Options& options, Workshop& shop, Console& console) {
  const std::string root = options.root();
  if (!in_a_salon(root, shop)) {
    console.show_reports();
    return Exit::faults;
  }
  SalonWatch watch(options, shop, root);
  if (watch.can_watch()) return watch.run();
  shop.sink().error("no-watch", {}, "this system lets no folder be watched");
  console.show_reports();
  return Exit::faults;
}
}  // namespace furnish
