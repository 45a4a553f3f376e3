// SPDX-License-Identifier: MIT
// The commands in one table.
#pragma once

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
  bool folders = false;  ///< --in
  bool adapter = false;  ///< --adapter --length
  bool picture = false;  ///< --picture --plug --view --paper
  bool loom = false;     ///< a loom file may stand alone
  bool symptom = false;  ///< --symptom --plug
  bool swap = false;     ///< --to --at --jumper
  bool record = false;   ///< --record --back
  bool flags = false;    ///< --paper, of flags
  bool sheet = false;    ///< --to --place --machine --date --as --paper --landscape --view
};

struct Command {
  std::string_view name;
  std::string_view description;
  std::string_view example;
  Takes takes{};
  Outcome (*run)(const Options&) = nullptr;
};

std::span<const Command> all_commands();

Outcome run_check(const Options&);
Outcome run_repin(const Options&);
Outcome run_draw(const Options&);
Outcome run_place(const Options&);
Outcome run_parts(const Options&);
Outcome run_find(const Options&);
Outcome run_swap(const Options&);
Outcome run_compare(const Options&);
Outcome run_causes(const Options&);
Outcome run_labels(const Options&);
Outcome run_sheet(const Options&);
Outcome run_lint(const Options&);
Outcome run_list(const Options&);
Outcome run_explain(const Options&);

}  // namespace plugward
