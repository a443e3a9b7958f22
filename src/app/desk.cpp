#include "app/desk.h"

#include <fmt/format.h>
#include <poll.h>
#include <spawn.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <csignal>
#include <nlohmann/json.hpp>

#include "app/desk_salon.h"
#include "app/new_files.h"
#include "app/stop_request.h"
#include "desk/chance.h"
#include "desk/desk.h"
#include "desk/drafts.h"
#include "desk/mark.h"
#include "desk/start_page.h"
#include "desk/watch.h"

namespace furnish {
namespace {
using Clock = std::chrono::steady_clock;

/// A page that was closed shows only when something is written to it.
constexpr std::chrono::seconds heartbeat{2};
/// So long after the last page was closed the desk stays, for one that is loaded again.
constexpr std::chrono::seconds stays{10};

/// Has the person's browser open a file. False if there is no program for it.
bool open_in_browser(const std::string& path) {
  std::string program = "xdg-open", file = path;
  std::array<char*, 3> words{program.data(), file.data(), nullptr};
  posix_spawnattr_t attributes;
  if (::posix_spawnattr_init(&attributes) != 0) return false;
  // Ctrl-C at this desk is not meant for the browser, and what waits here for us must reach it.
  ::sigset_t none;
  ::sigemptyset(&none);
  ::posix_spawnattr_setsigmask(&attributes, &none);
  ::posix_spawnattr_setpgroup(&attributes, 0);
  ::posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETPGROUP);
  ::pid_t child = 0;
  const int fault =
      ::posix_spawnp(&child, program.c_str(), nullptr, &attributes, words.data(), environ);
  ::posix_spawnattr_destroy(&attributes);
  return fault == 0;
}

class DeskRun {
 public:
  DeskRun(const Options& options, Workshop& shop, Console& console)
      : options_(options),
        shop_(shop),
        console_(console),
        root_(options.root()),
        salon_(options, shop.context().files, shop.disk()),
        drafts_(desk::drafts_folder(root_), shop.disk()),
        desk_(salon_, drafts_, {{}, desk::chance(), options.look}),
        watch_(root_) {}

  Exit run() {
    const auto server = desk::Server::open(desk_);
    if (!server) {
      shop_.sink().error("no-port", {}, "no port of this computer can be had for the desk");
      console_.show_reports();
      return Exit::faults;
    }
    desk_.open_at(server->port());
    const auto page = desk::StartPage::write(
        fmt::format("http://{}/{}/", desk_.door().authority, desk_.door().token), shop_.sink(),
        shop_.disk());
    console_.show_reports();
    if (!page) return Exit::faults;
    if (options_.no_browser || !open_in_browser(page->path())) {
      console_.say(page->path());
    } else {
      console_.say(
          "the desk is open in your browser; it ends when its page is closed, or by Ctrl-C");
    }
    for (const auto& [folder, why] : watch_.unwatched()) {
      shop_.sink().warning("no-watch", {},
                           fmt::format("{} cannot be watched: {}; what others save there is not "
                                       "noticed",
                                       folder, why));
    }
    console_.show_reports();
    // Whoever waits for that line waits before the desk ends.
    if (!console_.delivered()) return Exit::faults;
    return serve(*server);
  }

 private:
  Exit serve(desk::Server& server) {
    std::array<pollfd, 3> waiting{{{server.descriptor(), POLLIN, 0},
                                   {watch_.descriptor(), POLLIN, 0},
                                   {stop_.descriptor(), POLLIN, 0}}};
    bool reading = true;
    auto beat = Clock::now() + heartbeat, seen = Clock::now();
    bool was_open = false;
    while (!stop_.taken()) {
      ::poll(waiting.data(), waiting.size(), reading ? 0 : wait(server, beat));
      const auto now = Clock::now();
      if (waiting[1].revents != 0) watch_.take(now);
      for (const std::string& name : watch_.settled(now)) {
        reading = true;
        tell(server, name);
      }
      if (now >= beat) {
        server.tell(":\n\n");
        beat = now + heartbeat;
      }
      server.run();
      if (waiting[0].revents == 0 && reading) {
        reading = salon_.read_on();
        if (!reading)
          server.tell("event: changed\ndata: {\"kind\":\"pets\",\"id\":\"\",\"mark\":null}\n\n");
      }
      if (server.streams() > 0) {
        was_open = true;
        seen = Clock::now();
      }
      if (was_open && Clock::now() - seen > stays) return Exit::ok;
    }
    return Exit::stopped;
  }

  int wait(const desk::Server& server, Clock::time_point beat) const {
    using std::chrono::milliseconds;
    auto until = beat;
    if (const auto due = watch_.due()) until = std::min(until, *due);
    auto out = std::chrono::ceil<milliseconds>(until - Clock::now());
    if (const auto timeout = server.timeout()) out = std::min(out, *timeout);
    return static_cast<int>(std::max(out, milliseconds(0)).count());
  }

  void tell(desk::Server& server, const std::string& name) {
    const auto file = salon_.changed(name);
    if (!file) return;
    nlohmann::json said{{"kind", file->kind}, {"id", file->id}, {"mark", nullptr}};
    if (const auto read = salon_.read(*file); read.text) said["mark"] = desk::mark_of(*read.text);
    server.tell(fmt::format("event: changed\ndata: {}\n\n",
                            said.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace)));
  }

  const Options& options_;
  Workshop& shop_;
  Console& console_;
  std::string root_;
  StopRequest stop_;
  SalonAtDesk salon_;
  desk::Drafts drafts_;
  desk::Desk desk_;
  desk::Watch watch_;
};
}  // namespace

Exit serve_desk(const Options& options, Workshop& shop, Console& console) {
  if (!in_a_salon(options.root(), shop)) {
    console.show_reports();
    return Exit::faults;
  }
  return DeskRun(options, shop, console).run();
}
}  // namespace furnish
