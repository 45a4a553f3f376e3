// SPDX-License-Identifier: MIT
// Tested in tests/shell/manual_test.py.
#include "cli/manual.h"

#include <algorithm>

#include "base/format.h"
#include "cli/options.h"

namespace plugward {
namespace {

/// Text as man takes it: a hyphen that can be copied, no control lines.
std::string plain(std::string_view text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '-':
        out += "\\-";
        break;
      case '\\':
        out += "\\e";
        break;
      case '\'':
        out += "\\(aq";
        break;
      case '^':
        out += "\\(ha";
        break;
      case '~':
        out += "\\(ti";
        break;
      case '`':
        out += "\\(ga";
        break;
      default:
        out += c;
    }
  }
  return out;
}

/// Filled lines, as pages are best kept.
std::string filled(std::string_view text) {
  constexpr std::size_t width = 78;
  std::string out;
  std::size_t used = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (used > 0 && used + 1 + word.size() > width) {
      out += '\n';
      used = 0;
    } else if (used > 0) {
      out += ' ';
      ++used;
    }
    // A line must not begin like a request.
    if (used == 0 && (word.starts_with(".") || word.starts_with("'"))) out += "\\&";
    out += word;
    used += word.size();
  }
  return out + "\n";
}

std::string sentence(std::string_view text) {
  std::string out(text);
  if (!out.empty() && out[0] >= 'a' && out[0] <= 'z') out[0] = static_cast<char>(out[0] - 'a' + 'A');
  return out;
}

std::string bold(std::string_view text) {
  return format("\\fB{}\\fR", plain(text));
}

std::string option_text(const OptionRow& row) {
  std::string names;
  for (const std::string& name : row.names) names += (names.empty() ? "" : ", ") + bold(name);
  if (!row.value.empty()) names += format(" \\fI{}\\fR", plain(row.value));
  return format(
      ".TP\n{}\n{}", names,
      filled(format("{}{}.", sentence(plain(row.says)), row.repeats ? "; may be given again" : "")));
}

std::string command_text(const Command& command) {
  const Takes& takes = command.takes;
  std::string text = format(".SS {}\n", plain(command.name));
  text += format("{} {} [\\fIOPTION\\fR ...] \\fI{}\\fR{}\n.PP\n", bold("plugward"), bold(command.name),
                 plain(takes.words), takes.most > 1 ? " ..." : "");
  text += filled(sentence(plain(command.description)) + ".");
  text += filled(format("\\fI{}\\fR: {}.", plain(takes.words), plain(takes.words_say)));
  for (const OptionRow& row : option_rows(command)) {
    if (row.names.front() != "-h") text += option_text(row);
  }
  for (const Example& example : command.shown_examples())
    text += format(".PP\n{}.PP\n.in +4n\n.EX\n{}\n.EE\n.in\n", filled(plain(example_says(example)) + ":"),
                   plain(example.line));
  return text;
}

/// Of the last change to this page's own words.
constexpr std::string_view page_date = "2026-11-25";

constexpr std::string_view before_commands = R"(.SH DESCRIPTION
plugward reads short XML descriptions of a control board and of cables, works
out the circuit that the two would make in every state it can take, gives a
verdict with reasons, plans which crimp contacts to move, proves the plan, and
draws it.
.PP
The verdict is one of MATE (plug it in), REPIN (move contacts first), ADAPT
(add a part or another housing first), MEASURE (something must be known first)
and APART (do not join these two).
.PP
\fBplugward \-\-help\fR lists the commands; \fBplugward\fR \fICOMMAND\fR
\fB\-\-help\fR shows the options of one with examples; \fBplugward
\-\-version\fR names the version.
.SH COMMANDS
)";

constexpr std::string_view after_commands = R"(.SH FILES
A file that is not there under the name that was given is looked for, in this
order, in
.IP 1. 3
the folders of \fBPLUGWARD_PATH\fR;
.IP 2. 3
\fI$XDG_DATA_HOME/plugward\fR, or \fI\(ti/.local/share/plugward\fR;
.IP 3. 3
\fIplugward\fR in each folder of \fB$XDG_DATA_DIRS\fR, or in
\fI/usr/local/share\fR and \fI/usr/share\fR;
.IP 4. 3
\fIshare/plugward\fR beside the folder of the program.
.PP
In each of them the name is tried with and without \fI.xml\fR, and a name
without a slash also in the folders \fIboards\fR, \fIharnesses\fR,
\fIharnesses/standard\fR, \fIharnesses/standard/boards\fR and \fIfamilies\fR
of it: \fBplugward lint heron\-m7\fR. What is there under the name itself
always wins, and a name that begins with \fI/\fR, \fI./\fR or \fI../\fR means
that file alone.
.PP
The formats are described in \fIboards/README.md\fR and
\fIharnesses/README.md\fR of the data folder; the schemas beside them make an
XML editor complete and explain what is written, and \fIcatalog.xml\fR names
them all to it.
.SH ENVIRONMENT
.TP
\fBPLUGWARD_PATH\fR Folders with description files of your own, with colons
between them.
.TP
\fBXDG_DATA_HOME\fR, \fBXDG_DATA_DIRS\fR See FILES.
.TP
\fBNO_COLOR\fR Set and not empty: no colour, unless \fB\-\-color\fR says
otherwise.
.TP
\fBCLICOLOR_FORCE\fR, \fBFORCE_COLOR\fR Set and not 0: colour, also into a
pipe.
.TP
\fBSOURCE_DATE_EPOCH\fR The day of a sheet, where no \fB\-\-date\fR is given.
.SH EXIT STATUS
.TP
0 Plug it in, or the work is done. A watch that was ended.
.TP
1 Any other verdict, or errors in the files.
.TP
2 No judgement was possible: a bad command line, or a file that cannot be read
or written.
)";

}  // namespace

std::string manual_page(std::span<const Command> commands) {
  std::string text = format(
      ".\\\" Made by 'plugward manual'.\n.TH PLUGWARD 1 {} \"plugward {}\" \"User Commands\"\n"
      ".SH NAME\nplugward \\- judge wiring between cables and boards, plan re\\-pinning, draw it\n"
      ".SH SYNOPSIS\n.B plugward\n\\fICOMMAND\\fR [\\fIOPTION\\fR ...] [\\fIFILE\\fR ...]\n",
      page_date, plain(PLUGWARD_VERSION));
  text += before_commands;
  for (const Command& command : commands) text += command_text(command);
  return text + std::string(after_commands);
}

}  // namespace plugward
