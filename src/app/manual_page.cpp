#include "app/manual_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace furnish {
namespace {
/// Text that no line of it is taken for a request of roff's.
std::string roff(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '-') {
      out += "\\-";
    } else if (c == '\\') {
      out += "\\e";
    } else {
      out += c;
    }
  }
  if (out.starts_with('.') || out.starts_with('\'')) out.insert(0, "\\&");
  return out;
}

std::string sentence(std::string_view text) {
  std::string out(text);
  if (!out.empty() && out.front() >= 'a' && out.front() <= 'z') {
    out.front() = static_cast<char>(out.front() - 'a' + 'A');
  }
  return out.ends_with('.') ? out : out + ".";
}

/// "PET..." in italics; in brackets if it may be left out.
std::string shown(const OptionInfo& argument) {
  const std::string name =
      "\\fI" + roff(argument.names.front()) + "\\fR" + (argument.many ? "..." : "");
  return argument.required ? name : "[" + name + "]";
}

std::string shown_words(const OptionInfo& option) {
  std::string out;
  for (const std::string& word : option.words()) {
    out += (out.empty() ? "" : "|") + ("\\fB" + roff(word) + "\\fR");
  }
  return out.empty() ? "\\fI" + roff(option.value) + "\\fR" : out;
}

std::string entry(const OptionInfo& option) {
  std::string out = ".TP\n";
  for (const std::string& name : option.names) {
    out += (&name == &option.names.front() ? "\\fB" : ", \\fB") + roff(name) + "\\fR";
  }
  if (!option.value.empty()) out += " " + shown_words(option);
  return out + "\n" + roff(sentence(option.doc)) + "\n";
}

/// Those that half of the commands and more have, told the same way.
std::vector<OptionInfo> common_of(std::span<const CommandInfo> commands) {
  std::vector<OptionInfo> out;
  for (const CommandInfo& command : commands) {
    for (const OptionInfo& option : command.options) {
      const auto have = std::ranges::count_if(commands, [&](const CommandInfo& one) {
        return std::ranges::find(one.options, option) != one.options.end();
      });
      const bool known = std::ranges::find(out, option) != out.end();
      if (!known && 2 * static_cast<std::size_t>(have) >= commands.size()) out.push_back(option);
    }
  }
  return out;
}

std::string section(const CommandInfo& command, std::span<const OptionInfo> common) {
  std::string out = ".SS furnish " + roff(command.name) + "\n";
  out += roff(sentence(command.doc)) + "\n";
  for (const OptionInfo& argument : command.arguments) {
    out += ".TP\n" + shown(argument) +
           (argument.value.empty() ? "" : " (" + shown_words(argument) + ")") + "\n" +
           roff(sentence(argument.doc)) + "\n";
  }
  std::string also;
  for (const OptionInfo& option : command.options) {
    if (std::ranges::find(common, option) == common.end()) {
      out += entry(option);
    } else {
      also += (also.empty() ? "" : ", ") + ("\\fB" + roff(option.names.back()) + "\\fR");
    }
  }
  if (!also.empty()) out += ".PP\nAnd " + also + ": see \\fBCommon options\\fR.\n";
  return out;
}

constexpr std::string_view description =
    R"(furnish reads a plain TOML file for each dog of a grooming salon, works out what follows from it,
and sets the sheets that the salon runs on: kennel cards, style sheets, notes of visits, care sheets
for owners, and pages for the wall.
A \fIPET\fR is the path of a file, or the name of one in the salon's \fIpets/\fR.
Options follow the command.
)";

constexpr std::string_view rest = R"(.SH FILES
Relative to the salon's folder.
.TP
.I salon.toml
Name, units, paper, what is in the drawer, products.
.TP
.IR pets/ PET .toml
One pet.
.TP
.IR styles/ STYLE .toml
The salon's own styles, beside those shipped.
.TP
.IR visits/ PET / DAY .toml
One visit.
.TP
.IR days/ DAY .toml
One day's bookings.
.TP
.I sheets/
What furnish renders where no output is named.
.SH ENVIRONMENT
.TP
.B NO_COLOR
Set and not empty: no colours on a terminal.
.TP
.B TERM
Where it is unset or
.BR dumb ,
a terminal gets neither colours nor a line of progress.
.SH EXIT STATUS
.TP
.B 0
All is done.
.TP
.B 1
A file has faults, a page does not fit or a sheet could not be written; all else is done.
With
.BR \-\-strict ,
also if there was a warning.
.TP
.B 2
The command line is wrong.
.TP
.B 130
Stopped on request, after the sheet in hand.
.SH EXAMPLES
.TP
.B furnish new salon corner
Starts a salon's folder.
.TP
.B furnish card marlow \-o \- | lp
Prints the kennel card of
.IR pets/marlow.toml .
.TP
.B furnish style \-\-booked \-\-together
Sets the style sheets of today's bookings as one PDF, in time order.
.TP
.B furnish check \-\-strict && furnish day
Sets the day's sheet if every file is good and nothing is warned of.
.SH SEE ALSO
.BR lp (1)
)";
}  // namespace

std::string manual_page(std::span<const CommandInfo> commands, std::string_view version,
                        std::string_view day) {
  std::string out =
      fmt::format(".TH FURNISH 1 {} \"furnish {}\" \"User Commands\"\n", day, version);
  out += ".SH NAME\nfurnish \\- the sheets a grooming salon runs on, from plain TOML files\n";
  out += ".SH SYNOPSIS\n";
  for (const CommandInfo& command : commands) {
    if (&command != &commands.front()) out += ".br\n";
    out += "\\fBfurnish " + roff(command.name) + "\\fR";
    if (!command.options.empty()) out += " [\\fIoptions\\fR]";
    for (const OptionInfo& argument : command.arguments) out += " " + shown(argument);
    out += "\n";
  }
  out += ".br\n\\fBfurnish help\\fR [\\fIcommand\\fR]\n.SH DESCRIPTION\n";
  out += description;
  const std::vector<OptionInfo> common = common_of(commands);
  out += ".SH COMMANDS\n";
  for (const CommandInfo& command : commands) out += section(command, common);
  out += ".SS Common options\n";
  for (const OptionInfo& option : common) out += entry(option);
  return out + std::string(rest);
}
}  // namespace furnish
