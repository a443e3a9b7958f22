#include "app/rename.h"

#include <fmt/format.h>

#include <cerrno>
#include <filesystem>
#include <system_error>

#include "app/new_files.h"
#include "base/text.h"
#include "output/disk.h"

namespace furnish {
namespace {
namespace fs = std::filesystem;

/// What cannot be looked for is told: it may well be there.
bool there(const std::string& path, DiagnosticSink& sink) {
  std::error_code fault;
  const fs::file_status found = fs::symlink_status(path, fault);
  if (found.type() == fs::file_type::none) {
    sink.error("unreadable", {}, fmt::format("{}: cannot be read: {}", path, fault.message()));
  }
  return fs::exists(found);
}

/// Moves what is there to where nothing is; what is not there is no fault.
bool moved(const std::string& from, const std::string& to, DiagnosticSink& sink, const Disk& disk) {
  if (!there(from, sink) || disk.rename_to_new(from.c_str(), to.c_str()) == 0) return true;
  const int fault = errno;
  sink.error(
      "write", {},
      fmt::format("cannot move {} to {}: {}", from, to, std::system_category().message(fault)));
  return false;
}

/// Bookings are a person's to change: each is told with its place.
void tell_bookings(SalonFolder& folder, const std::string& from, const std::string& to,
                   DiagnosticSink& sink) {
  const auto* const names = folder.day_files();
  if (names == nullptr) return;
  for (const std::string& name : *names) {
    const Day* const day = folder.day(name);
    if (day == nullptr) continue;
    for (const Booking& booking : day->bookings) {
      if (booking.pet.value != from) continue;
      sink.warning("old-name", booking.pet.span, fmt::format("this booking names '{}'", from))
          .hint = fmt::format("write \"{}\"", to);
    }
  }
}

/// Whether what was put away lies in the salon itself: through a link nothing is moved.
bool put_away_is_ours(const std::string& root) {
  std::error_code ignored;
  return !fs::is_symlink(path_in(root, "put-away"), ignored) &&
         !fs::is_symlink(path_in(root, "put-away/visits"), ignored);
}

/// The name of a file, and no path.
bool named(const std::string& name) {
  return !name.empty() && name.find_first_of("/\\") == std::string::npos && name.front() != '.';
}

/// Moreover, nothing in it that steers a terminal or a page, or that nobody sees.
bool good_name(const std::string& name) {
  return named(name) && !first_bad_utf8(name) && visible(name) == name && !file_name(name).empty();
}
}  // namespace

Exit rename_pet(const Options& options, Workshop& shop, Console& console) {
  // As files they have the ending; it is no part of their names.
  const std::string from = without_ending(options.pets.front());
  const std::string to = without_ending(options.pets.back());
  const std::string root = options.root();
  DiagnosticSink& sink = shop.sink();
  const Disk& disk = shop.disk();
  const auto in = [&](const char* folder, const std::string& name) {
    return path_in(path_in(root, folder), name);
  };
  const std::string file = in("pets", from + ".toml"), new_file = in("pets", to + ".toml");
  const std::string visits = in("visits", from), new_visits = in("visits", to);
  const bool from_there = there(file, sink), to_there = there(new_file, sink);
  const bool visits_there = there(visits, sink), new_visits_there = there(new_visits, sink);
  if (sink.has_errors()) {
    console.show_reports();
    return Exit::faults;
  }
  if (!named(from) || !good_name(to)) {
    sink.error(
            "no-name", {},
            "a pet is named in letters that are seen and without folders, as its file in pets/ is")
        .hint = "furnish rename OLD NEW";
  } else if (!from_there && !(visits_there && to_there)) {
    find_pet(shop.context().files, from, root, sink);  // says which is near
  } else if (from_there && to_there) {
    sink.error("exists", {}, fmt::format("{} is there already", new_file));
  } else if (visits_there && new_visits_there) {
    sink.error("exists", {}, fmt::format("{} is there already", new_visits));
  } else if (moved(visits, new_visits, sink, disk)) {
    if (!moved(file, new_file, sink, disk)) {
      moved(new_visits, visits, sink, disk);
    } else {
      // Visits that were put away at the desk go along; where some are there, these stay.
      const std::string away = in("put-away/visits", from), new_away = in("put-away/visits", to);
      if (put_away_is_ours(root) && there(away, sink) && !there(new_away, sink)) {
        moved(away, new_away, sink, disk);
      }
      tell_bookings(shop.folder(root), from, to, sink);
    }
  }
  const bool done = !sink.has_errors();
  console.show_reports();
  if (done) console.say(new_file);
  return done ? Exit::ok : Exit::faults;
}
}  // namespace furnish
