#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>
#include <catch2/catch.hpp>

#include <csignal>
#include <cstdlib>

#include "app/program.h"
#include "app/progress.h"
#include "sheet/desk.h"

// What a person at a terminal sees: the program runs on a pseudo-terminal of its own. The codes are
// those of ECMA-48; NO_COLOR is as no-color.org asks, and TERM=dumb a terminal that knows no codes.

namespace furnish::test {
namespace {
const std::string in_lantern =
    " --salon " + sample("lantern-street") + " --on " + std::string(demo_date) + " ";

struct Seen {
  int status = -1;
  std::string text;
};

/// Runs the program with both outputs on a terminal of 80 columns. `waits`: it is held for so many
/// milliseconds when it has said something, as if the work took as long.
Seen at_terminal(const std::string& arguments, const std::string& before = "TERM=xterm",
                 int waits = 0) {
  int terminal = -1;
  ::winsize size{};
  size.ws_col = 80;
  size.ws_row = 24;
  const ::pid_t child = ::forkpty(&terminal, nullptr, nullptr, &size);
  REQUIRE(child >= 0);
  if (child == 0) {
    const std::string command = before + " exec " + quoted(FURNISH_PROGRAM) + " " + arguments;
    ::execl("/bin/sh", "sh", "-c", command.c_str(), nullptr);
    ::_exit(127);
  }
  Seen out;
  char bytes[4096];
  for (::ssize_t n = 0; (n = ::read(terminal, bytes, sizeof bytes)) > 0;) {
    out.text.append(bytes, static_cast<std::size_t>(n));
    if (waits == 0) continue;
    ::kill(child, SIGSTOP);
    ::usleep(static_cast<::useconds_t>(waits) * 1000);
    ::kill(child, SIGCONT);
    waits = 0;
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  ::close(terminal);
  out.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return out;
}

/// A salon whose first pet has a fault to tell, and whose others are many.
void put_many(const TemporaryFolder& folder, int pets) {
  put(folder, "salon.toml", "[salon]\nname = \"S\"\n");
  put(folder, "pets/a.toml", "[pet]\nname = \"A\"\nbred = \"spitz\"\n");
  for (int i = 0; i < pets; ++i) {
    put(folder, "pets/pet-" + std::to_string(i) + ".toml", "[pet]\nname = \"Pet\"\n");
  }
}
}  // namespace

TEST_CASE("on a terminal the level's word and the marked place stand out, and nothing else",
          "[terminal]") {
  const TemporaryFolder folder;
  put(folder, "salon.toml", "[salon]\nname = \"S\"\n");
  put(folder, "pets/b.toml", "[pet]\nname = \"B\"\nbred = \"spitz\"\nborn = 2010-04-09\n");
  const std::string check = "check " + folder.path("") + " --on 2026-11-24";
  const auto seen = at_terminal(check);
  INFO(seen.text);
  CHECK(seen.status == 1);
  CHECK(has(seen.text, "pets/b.toml:3:1: \x1b[1;31merror\x1b[0m: "));
  CHECK(has(seen.text, "  \x1b[1;31m^^^^\x1b[0m\r\n"));
  CHECK(matches(seen.text, "(\x1b)").size() == 4);
  const auto slip = at_terminal("card --paper A44");
  CHECK(slip.status == 2);
  CHECK(slip.text.starts_with("furnish: \x1b[1;31merror\x1b[0m: --paper"));

  // Without colours it is byte for byte what a pipe gets, but for the terminal's line ends.
  const auto piped = furnish(check);
  std::string plain;
  for (const char c : piped.err + piped.out) plain += c == '\n' ? "\r\n" : std::string(1, c);
  CHECK(piped.err.find('\x1b') == std::string::npos);
  for (const char* const wish :
       {"TERM=xterm NO_COLOR=1", "TERM=dumb", "TERM=xterm NO_COLOR=no", "unset TERM;"}) {
    INFO(wish);
    CHECK(at_terminal(check, wish).text == plain);
  }
  // An empty one asks for nothing.
  CHECK(at_terminal(check, "TERM=xterm NO_COLOR=").text == seen.text);
}

TEST_CASE("a run that takes longer than a second says how far it is, and leaves one closing line",
          "[terminal]") {
  const TemporaryFolder folder;
  put_many(folder, 24);
  const std::string card = "card --format text -o " + folder.path("out") + "/ --salon " +
                           folder.path("") + " --on 2026-11-24";
  const auto slow = at_terminal(card, "TERM=xterm", 1300);
  INFO(slow.text);
  CHECK(slow.status == 1);
  CHECK_FALSE(matches(slow.text, "\r\x1b\\[K([0-9]+ of 25, [0-9]+ s left: pet-[0-9]+)").empty());
  // The line is gone when all is done; names of many files would only scroll by.
  CHECK(slow.text.ends_with("\r\x1b[K24 of 25; 1 with faults\r\n"));
  CHECK_FALSE(has(slow.text, "-card.txt"));
  CHECK_FALSE(has(at_terminal(card, "TERM=dumb", 1300).text, "\x1b"));

  const auto quick =
      at_terminal("card pip dot --format text -o " + folder.path("out") + "/" + in_lantern);
  CHECK(quick.text == folder.path("out/pip-card.txt") + "\r\n" + folder.path("out/dot-card.txt") +
                          "\r\n2 of 2\r\n");
  // In a pipe there are the names, as they are written, and no codes.
  const auto piped = furnish(card);
  CHECK(matches(piped.out, "(-card.txt\n)").size() == 24);
  CHECK_FALSE(has(piped.out + piped.err, "\x1b"));
}

TEST_CASE("a progress line stays on one line of its terminal", "[terminal]") {
  using std::chrono::milliseconds;
  CHECK(progress_line(0, 500, milliseconds(1000), "marlow", 80) == "0 of 500: marlow");
  CHECK(progress_line(20, 500, milliseconds(1000), "marlow", 80) == "20 of 500, 24 s left: marlow");
  CHECK(progress_line(1, 500, milliseconds(1000), "marlow", 80) == "1 of 500, 8 min left: marlow");
  CHECK(progress_line(20, 500, milliseconds(1000), "Æþelflæd", 25) == "20 of 500, 24 s left: Æþ");
  CHECK_FALSE(has(progress_line(1, 2, milliseconds(10), "a\x1b[2Jb\n", 80), "\x1b"));
}
}  // namespace furnish::test
