// SPDX-License-Identifier: MIT
// The commands in one table.
#pragma once

#include <array>
#include <span>
#include <string>
#include <string_view>

#include "cli/exit_status.h"

namespace plugward {

struct Options;

/// What a command made. Commands print nothing themselves.
struct Outcome {
  ExitStatus status = ExitStatus::Fine;
  std::string product;      ///< to standard output or -o
  std::string diagnostics;  ///< to standard error
};

/// Which options a command takes.
struct Takes {
  std::string_view words;  ///< name of what stands without an option, "" for nothing: "FILE"
  std::string_view words_say;
  int fewest = 0, most = 0;  ///< how many of them
  bool fitting = false;      ///< --at --jumper --seen
  bool jumpers = false;      ///< --jumper alone, for many boards
  bool families = false;
  bool format = false;
  bool csv = false;      ///< --format also takes csv
  bool sarif = false;    ///< ... and sarif
  bool papers = false;   ///< ... and markdown and spice
  bool folders = false;  ///< --in
  bool adapter = false;  ///< --adapter --length
  bool picture = false;  ///< --picture --plug --view --paper
  bool loom = false;     ///< a loom file may stand alone
  bool symptom = false;  ///< --symptom --plug
  bool swap = false;     ///< --to --at --jumper
  bool record = false;   ///< --record --back
  bool flags = false;    ///< --paper, of flags
  bool sheet = false;    ///< --to --place --machine --date --as --language --paper --landscape --view
  bool watch = false;    ///< --watch
  bool start = false;    ///< --seen --view --pitch --known --id --title --date --replace
  bool measured = false; ///< --measured --record-measured --date

  /// The words are files, and not the name of a rule or a list.
  constexpr bool files() const { return words == "FILE" || words == "LOOM"; }
};

/// A command line to try on the shipped files, with what it does. A test runs each.
struct Example {
  std::string_view says;
  std::string_view line;
  ExitStatus status = ExitStatus::Fine;
};

struct Command {
  std::string_view name;
  std::string_view description;
  Takes takes{};
  Outcome (*run)(const Options&) = nullptr;
  std::array<Example, 3> examples{};  ///< without a line: none

  std::span<const Example> shown_examples() const;
};

std::span<const Command> all_commands();

Outcome run_check(const Options&);
Outcome run_start(const Options&);
Outcome run_repin(const Options&);
Outcome run_draw(const Options&);
Outcome run_place(const Options&);
Outcome run_parts(const Options&);
Outcome run_find(const Options&);
Outcome run_swap(const Options&);
Outcome run_compare(const Options&);
Outcome run_cable(const Options&);
Outcome run_causes(const Options&);
Outcome run_labels(const Options&);
Outcome run_sheet(const Options&);
Outcome run_lint(const Options&);
Outcome run_list(const Options&);
Outcome run_explain(const Options&);

}  // namespace plugward
