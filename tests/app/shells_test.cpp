#include <catch2/catch.hpp>

#include <string>
#include <vector>

#include "app/program.h"
#include "sheet/desk.h"

// What is installed beside the program for a person at a shell, tried in those shells: a person
// presses Tab behind what stands there.

namespace furnish::test {
namespace {
const std::string made = std::string(FURNISH_BUILD_DIR) + "/src/app/shell/";

bool has(const std::vector<std::string>& all, const std::string& one) {
  return std::find(all.begin(), all.end(), one) != all.end();
}

/// The words that a shell offers; the last of the line is the one at hand, and may be empty.
using Offer = std::vector<std::string> (*)(const std::vector<std::string>&);

std::vector<std::string> lines(const std::string& text) {
  return matches(text, "([^\n]+)\n");
}

std::string in_sample() {
  return "cd " + quoted(sample("lantern-street")) + " && ";
}

std::vector<std::string> in_bash(const std::vector<std::string>& line) {
  std::string words, text;
  for (const std::string& word : line) {
    words += quoted(word) + " ";
    text += (text.empty() ? "" : " ") + word;
  }
  const std::string script =
      ". /usr/share/bash-completion/bash_completion; . " + made + "furnish; COMP_WORDS=(" + words +
      "); COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); COMP_LINE=" + quoted(text) +
      "; COMP_POINT=${#COMP_LINE}; COMPREPLY=(); compopt() { :; }; _furnish; "
      "[[ ${#COMPREPLY[@]} -eq 0 ]] || printf '%s\\n' \"${COMPREPLY[@]}\"";
  const auto ran = run(in_sample() + "bash --norc -c " + quoted(script));
  CHECK(ran.err == "");
  return lines(ran.out);
}

std::vector<std::string> in_fish(const std::vector<std::string>& line) {
  std::string text;
  for (const std::string& word : line) text += (text.empty() ? "" : " ") + word;
  // Its own settings go to a folder that is nobody's.
  const TemporaryFolder home;
  const auto ran =
      run(in_sample() + "env HOME=" + home.path("") + " TERM=dumb fish --no-config -c " +
          quoted("source " + made + "furnish.fish; complete -C " + quoted(text)));
  CHECK(ran.err == "");
  return matches(ran.out, "(?:^|\n)([^\t\n]+)");
}

/// zsh completes in its line editor only, so that it gets a terminal of its own (zsh/zpty). What is
/// offered is caught where it would be shown.
std::vector<std::string> in_zsh(const std::vector<std::string>& line) {
  std::string text;
  for (const std::string& word : line) text += (text.empty() ? "" : " ") + word;
  const TemporaryFolder folder;
  const std::string setup = folder.file("setup", R"(
PS1= ; unsetopt zle_bracketed_paste
fpath=()" + made + R"( $fpath)
autoload -Uz compinit && compinit -D -u
# Offered words, one a line, instead of a list on the terminal.
compadd() {
    local -a found
    builtin compadd -O found "$@"
    (( $#found )) && print -rl -- "${found[@]}" >> $OFFERED
    builtin compadd "$@"
}
zle -C offer complete-word _main_complete
bindkey '^I' offer
finish() { print -r done >> $OFFERED }
zle -N finish; bindkey '^X' finish
print ready >> $OFFERED
)");
  const std::string offered = folder.file("offered", "");
  const std::string script = folder.file("script", R"(
zmodload zsh/zpty
zpty -b shell env OFFERED=)" + offered + R"( TERM=dumb HOME=/nonexistent zsh -f -i
zpty -w shell "source )" + setup + R"("
wait_for() {
    local i
    for ((i = 0; i < 500; ++i)); do
        [[ $(<)" + offered + R"() == *$1* ]] && return
        zpty -r -t shell ignored; sleep 0.01
    done
}
wait_for ready
zpty -w -n shell )" + quoted(text) + R"($'\t\x18'
wait_for done
zpty -d shell
)");
  const auto ran = run(in_sample() + "zsh -f " + script);
  INFO(ran.out << ran.err);
  return lines(bytes_of(offered));
}
}  // namespace

TEST_CASE("shells complete commands, options, their words, and the salon's pets and days",
          "[shells]") {
  struct Shell {
    const char* name;
    Offer offer;
    const char* spaced;  ///< as it writes "half letter"
  };
  for (const auto& [name, offer, spaced] :
       {Shell{"bash", in_bash, "half\\ letter"}, Shell{"zsh", in_zsh, "half letter"},
        Shell{"fish", in_fish, "half letter"}}) {
    INFO(name);
    const auto commands = offer({"furnish", "c"});
    CHECK(has(commands, "card"));
    CHECK(has(commands, "care"));
    CHECK(has(commands, "check"));
    const auto fresh = offer({"furnish", "new", ""});
    CHECK(has(fresh, "visit"));
    CHECK(has(fresh, "salon"));
    CHECK(has(offer({"furnish", "card", "marl"}), "marlow"));
    CHECK(has(offer({"furnish", "new", "visit", "marl"}), "marlow"));
    CHECK(has(offer({"furnish", "card", "--format", ""}), "svg"));
    CHECK(has(offer({"furnish", "card", "--paper", ""}), spaced));
    CHECK(has(offer({"furnish", "note", "--for", ""}), "owner"));
    CHECK(has(offer({"furnish", "card", "--booked", "2026-11"}), "2026-11-24"));
    CHECK(has(offer({"furnish", "day", "2026-11"}), "2026-11-24"));
    // Of the pet that the line names.
    CHECK(has(offer({"furnish", "note", "gao", "--visit", "2026-0"}), "2026-07-21"));
    CHECK(has(offer({"furnish", "schema", "p"}), "products"));
    CHECK(has(offer({"furnish", "help", "ca"}), "card"));
  }
}

TEST_CASE("a pet whose name a shell would run is only a name", "[shells]") {
  const TemporaryFolder folder;
  put(folder, "pets/a$(touch ran).toml", "");
  put(folder, "pets/a b.toml", "");
  const std::string line = "cd " + folder.path("") + " && ";
  const auto bash =
      run(line + "bash --norc -c " +
          quoted(". /usr/share/bash-completion/bash_completion; . " + made +
                 "furnish; COMP_WORDS=(furnish card a); COMP_CWORD=2; COMP_LINE='furnish card a'; "
                 "COMP_POINT=14; _furnish; printf '%s\\n' \"${COMPREPLY[@]}\""));
  CHECK(bash.out == "a\\ b\na\\$\\(touch\\ ran\\)\n");
  const auto fish = run(line + "env HOME=" + folder.path("home") + " fish --no-config -c " +
                        quoted("source " + made + "furnish.fish; complete -C 'furnish card a'"));
  CHECK(fish.out.find("touch ran") != std::string::npos);
  CHECK(files_below(folder.path("pets")).size() == 2);
  CHECK(run("test ! -e " + folder.path("ran")).status == 0);
}

TEST_CASE("the manual page has a section for each command and every option, and no slips",
          "[shells]") {
  const auto lint = run("mandoc -T lint -W warning " + made + "furnish.1");
  CHECK(lint.out + lint.err == "");
  const std::string page = run("mandoc -T utf8 " + made + "furnish.1 | col -b").out;
  for (const std::string command :
       {"card",      "style",   "note",      "care",     "rules",  "day",    "book",
        "check",     "plan",    "due",       "expiring", "find",   "rename", "new visit",
        "new salon", "new pet", "new style", "new day",  "schema", "unpack"}) {
    INFO(command);
    CHECK(page.find("\n   furnish " + command + "\n") != std::string::npos);
    for (const std::string& option : matches(furnish("help " + command).out, "(--[a-z-]+)")) {
      INFO(option);
      CHECK((option == "--help" || page.find(option) != std::string::npos));
    }
  }
  CHECK(page.find("EXIT STATUS") != std::string::npos);
}
}  // namespace furnish::test
