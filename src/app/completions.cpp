#include "app/completions.h"

#include <string_view>

namespace furnish {
namespace {
constexpr const char* made = "made when furnish was built, of the commands that it parses by";

/// In single quotes, as all three shells read them; fish alone knows an escape inside.
std::string quoted(std::string_view text, bool fish = false) {
  std::string out = "'";
  for (const char c : text) {
    if (c == '\'') {
      out += fish ? "\\'" : "'\\''";
    } else if (c == '\\' && fish) {
      out += "\\\\";
    } else {
      out += c;
    }
  }
  return out + "'";
}

/// "salon pet style day visit" behind "new".
std::string inner_words(std::span<const CommandInfo> commands, const std::string& first) {
  std::string out;
  for (const CommandInfo& one : commands) {
    if (!one.name.starts_with(first + " ")) continue;
    out += (out.empty() ? "" : " ") + one.name.substr(first.size() + 1);
  }
  return out;
}

/// The function, of the same name in bash and zsh, that offers something of the salon's own; empty
/// where an option takes nothing of the kind.
std::string_view salon_offer(Takes takes) {
  switch (takes) {
    case Takes::pet:
      return "_furnish_pets";
    case Takes::day:
      return "_furnish_days";
    case Takes::visit:
      return "_furnish_visits";
    default:
      return {};
  }
}

/// The function of a shell that offers what an option takes.
std::string bash_offer(const OptionInfo& option) {
  switch (option.takes) {
    case Takes::words: {
      std::string out = "_furnish_offer";
      for (const std::string& word : option.words()) out += " " + quoted(word);
      return out;
    }
    case Takes::file:
      return "_filedir";
    case Takes::folder:
      return "_filedir -d";
    default:
      break;
  }
  const std::string_view own = salon_offer(option.takes);
  return own.empty() ? ":" : std::string(own);
}

constexpr std::string_view bash_functions = R"sh(
# Those of the words that begin like the one at hand.
_furnish_offer() {
    local word
    for word; do
        [[ $word == "$cur"* ]] && COMPREPLY+=("$(printf %q "$word")")
    done
}
# The names of TOML files in folders, without their ending.
_furnish_names() {
    local folder file
    local -a names=()
    for folder; do
        for file in "$folder"/*.toml; do
            file=${file##*/}
            [[ $file == '*.toml' ]] || names+=("${file%.toml}")
        done
    done
    _furnish_offer ${names[@]+"${names[@]}"}
}
_furnish_salon() {
    local i
    salon=.
    for ((i = 1; i < cword; i++)); do
        case ${words[i]} in
            --salon) salon=${words[i + 1]} ;;
            --salon=*) salon=${words[i]#--salon=} ;;
        esac
    done
    salon=${salon/#\~\//$HOME/}
}
_furnish_pets() {
    _furnish_names "$salon/pets"
    [[ ${#COMPREPLY[@]} -gt 0 ]] || _filedir toml
}
_furnish_days() {
    _furnish_names "$salon/days"
    _furnish_offer "$(date +%Y-%m-%d)"
}
# Of the pets that the line names, else of all.
_furnish_visits() {
    local word
    local -a folders=()
    for word in "${words[@]:2}"; do
        [[ -n $word && -d $salon/visits/$word ]] && folders+=("$salon/visits/$word")
    done
    [[ ${#folders[@]} -gt 0 ]] || folders=("$salon"/visits/*)
    _furnish_names "${folders[@]}"
}
)sh";

/// What an option takes, by each of its names.
std::string bash_values(const CommandInfo& command) {
  std::string out;
  for (const OptionInfo& option : command.options) {
    if (option.takes == Takes::nothing) continue;
    std::string names;
    for (const std::string& name : option.names) names += (names.empty() ? "" : "|") + name;
    out += "                " + names + ") " + bash_offer(option) + "; return ;;\n";
  }
  return out;
}

std::string zsh_text(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == ':' || c == '[' || c == ']' || c == '\\') out += '\\';
    out += c;
  }
  return out;
}

std::string zsh_action(const OptionInfo& option) {
  switch (option.takes) {
    case Takes::words: {
      std::string out;
      for (const std::string& word : option.words()) {
        out += out.empty() ? "(" : " ";
        for (const char c : word) out += c == ' ' ? "\\ " : std::string(1, c);
      }
      return out + ")";
    }
    case Takes::file:
      return "_files";
    case Takes::folder:
      return "_files -/";
    default:
      break;
  }
  const std::string_view own = salon_offer(option.takes);
  return own.empty() ? " " : std::string(own);
}

constexpr std::string_view zsh_functions = R"sh(
_furnish_salon() {
    local i=${words[(I)--salon]} one=${words[(r)--salon=*]}
    salon=.
    (( i )) && salon=${(Q)words[i+1]}
    [[ -n $one ]] && salon=${(Q)one#--salon=}
    salon=${salon/#\~\//$HOME/}
}
_furnish_pets() {
    local salon; _furnish_salon
    local -a names=($salon/pets/*.toml(N:t:r))
    (( $#names )) && compadd -a names || _files -g '*.toml'
}
_furnish_days() {
    local salon; _furnish_salon
    local -a names=($salon/days/*.toml(N:t:r) ${(%):-%D{%Y-%m-%d}})
    compadd -a names
}
# Of the pets that the line names, else of all.
_furnish_visits() {
    local salon word; _furnish_salon
    local -a names
    for word in ${(Q)words}; do
        [[ -n $word ]] && names+=($salon/visits/$word/*.toml(N:t:r))
    done
    (( $#names )) || names=($salon/visits/*/*.toml(N:t:r))
    compadd -a names
}
)sh";

std::string zsh_arguments(const CommandInfo& command) {
  std::string out = "_arguments -s";
  for (const OptionInfo& argument : command.arguments) {
    out += " " + quoted((argument.many ? "*:" : ":") + argument.names.front() + ":" +
                        zsh_action(argument));
  }
  for (const OptionInfo& option : command.options) {
    for (const std::string& name : option.names) {
      std::string spec = name;
      // A long one may have its value behind "=", a short one only behind a space.
      if (option.takes != Takes::nothing && name.starts_with("--")) spec += "=";
      spec += "[" + zsh_text(option.doc) + "]";
      const bool words = option.takes == Takes::words;
      if (option.takes != Takes::nothing) {
        spec += ":" + (words ? name.substr(2) : option.value) + ":" + zsh_action(option);
      }
      out += " \\\n            " + quoted(spec);
    }
  }
  return out;
}

constexpr std::string_view fish_functions = R"sh(
function __furnish_is --description 'The command line begins with these words'
    set -l line (commandline -opc)
    set -l last (math (count $argv) + 1)
    test (count $line) -ge $last; and test "$line[2..$last]" = "$argv"
end
function __furnish_salon
    set -l line (commandline -opc)
    for i in (seq (count $line))
        switch $line[$i]
            case --salon
                set -l next (math $i + 1)
                set -q line[$next]; and echo $line[$next]; and return
            case '--salon=*'
                string replace -- --salon= '' $line[$i]; and return
        end
    end
    echo .
end
function __furnish_names
    string replace -rf '^.*/(.*)\.toml$' '$1' -- $argv
end
function __furnish_pets
    set -l salon (__furnish_salon)
    __furnish_names $salon/pets/*.toml
end
function __furnish_days
    set -l salon (__furnish_salon)
    __furnish_names $salon/days/*.toml
    date +%Y-%m-%d
end
function __furnish_visits --description 'Of the pets that the line names, else of all'
    set -l salon (__furnish_salon)
    set -l found
    for word in (commandline -opc)[3..]
        set -a found $salon/visits/$word/*.toml
    end
    set -q found[1]; or set found $salon/visits/*/*.toml
    __furnish_names $found
end
)sh";

std::string fish_offer(const OptionInfo& option) {
  switch (option.takes) {
    case Takes::nothing:
      return "";
    case Takes::words: {
      std::string out;
      for (const std::string& word : option.words()) {
        const bool spaced = word.find(' ') != std::string::npos;
        out += (out.empty() ? "" : " ") + (spaced ? '"' + word + '"' : word);
      }
      return " -x -a " + quoted(out, true);
    }
    case Takes::file:
      return " -r -F";
    case Takes::folder:
      return " -x -a '(__fish_complete_directories)'";
    case Takes::pet:
      return " -x -a '(__furnish_pets)'";
    case Takes::day:
      return " -x -a '(__furnish_days)'";
    case Takes::visit:
      return " -x -a '(__furnish_visits)'";
    default:
      return " -x";
  }
}
}  // namespace

std::string bash_completion(std::span<const CommandInfo> commands, FirstWords firsts) {
  std::string out = "# bash completion for furnish; " + std::string(made) + "\n";
  out += bash_functions;
  std::string all;
  for (const auto& [name, doc] : firsts) all += " " + name;
  out += R"(
_furnish() {
    local cur prev words cword split salon
    _init_completion -s || return
    _furnish_salon
    if ((cword == 1)); then
        _furnish_offer)" +
         all + R"( --help --version
        return
    fi
    local command=${words[1]}
    case $command in
        help) ((cword == 2)) && _furnish_offer)" +
         all + "; return ;;\n";
  for (const auto& [name, doc] : firsts) {
    const std::string inner = inner_words(commands, name);
    if (inner.empty()) continue;
    out += "        " + name + ")\n            if ((cword == 2)); then _furnish_offer " + inner +
           "; return; fi\n            command+=\" ${words[2]}\"\n            ;;\n";
  }
  out += "    esac\n    case $command in\n";
  for (const CommandInfo& command : commands) {
    out += "        " + quoted(command.name) + ")\n            case $prev in\n" +
           bash_values(command) + "            esac\n";
    out += "            if [[ $cur == -* ]]; then\n                _furnish_offer";
    for (const OptionInfo& option : command.options) out += " " + option.names.back();
    out += " --help\n            else\n                ";
    out += command.arguments.empty() ? ":" : bash_offer(command.arguments.front());
    out += "\n            fi\n            ;;\n";
  }
  return out + "    esac\n} && complete -F _furnish furnish\n";
}

std::string zsh_completion(std::span<const CommandInfo> commands, FirstWords firsts) {
  std::string out = "#compdef furnish\n# " + std::string(made) + "\n";
  out += zsh_functions;
  out += "\n_furnish() {\n    local -a all=(\n";
  for (const auto& [name, doc] : firsts) {
    out += "        " + quoted(zsh_text(name) + ":" + zsh_text(doc)) + "\n";
  }
  out += R"(    )
    if (( CURRENT == 2 )); then
        _describe command all
        return
    fi
    local command=$words[2]
    if [[ $command == help ]]; then
        (( CURRENT == 3 )) && _describe command all
        return
    fi
    shift words; (( CURRENT-- ))
    case $command in
)";
  for (const auto& [name, doc] : firsts) {
    const std::string inner = inner_words(commands, name);
    if (inner.empty()) continue;
    out += "        " + name + ")\n            if (( CURRENT == 2 )); then compadd " + inner +
           "; return; fi\n            command+=\" $words[2]\"\n"
           "            shift words; (( CURRENT-- ))\n            ;;\n";
  }
  out += "    esac\n    case $command in\n";
  for (const CommandInfo& command : commands) {
    out += "        " + quoted(command.name) + ")\n            " + zsh_arguments(command) +
           "\n            ;;\n";
  }
  return out + "    esac\n}\n_furnish \"$@\"\n";
}

std::string fish_completion(std::span<const CommandInfo> commands, FirstWords firsts) {
  std::string out = "# fish completion for furnish; " + std::string(made) + "\n";
  out += fish_functions;
  out += "\ncomplete -c furnish -f\n";
  const std::string first = "complete -c furnish -n 'test (count (commandline -opc)) -eq 1'";
  out += first + " -l help -d 'says this'\n" + first + " -l version -d 'says which version'\n";
  for (const auto& [name, doc] : firsts) {
    out += first + " -a " + name + " -d " + quoted(doc, true) + "\n";
    const std::string inner = inner_words(commands, name);
    if (!inner.empty()) {
      out += "complete -c furnish -n '__furnish_is " + name +
             "; and test (count (commandline -opc)) -eq 2' -a " + quoted(inner, true) + "\n";
    }
    if (name != "help") out += "complete -c furnish -n '__furnish_is help' -a " + name + "\n";
  }
  for (const CommandInfo& command : commands) {
    const std::string when = "complete -c furnish -n '__furnish_is " + command.name + "'";
    for (const OptionInfo& argument : command.arguments) {
      const std::string offer = fish_offer(argument);
      if (!offer.empty()) out += when + (offer == " -r -F" ? " -F" : offer.substr(3)) + "\n";
    }
    for (const OptionInfo& option : command.options) {
      out += when;
      for (const std::string& name : option.names) {
        out += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
      }
      out += fish_offer(option) + " -d " + quoted(option.doc, true) + "\n";
    }
  }
  return out;
}
}  // namespace furnish
