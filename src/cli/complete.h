// SPDX-License-Identifier: MIT
// What could stand where the cursor is, for shells. The scripts in src/cli/shell ask
//
//   plugward complete check boards/heron-m7.xml harnesses/kite-probe.xml --at cont
//   control=<TAB>300 mm, pin-2.54<NEWLINE>:nospace<NEWLINE>
//
// and show the lines: a word, a tab and what it means. A line that begins with ':' asks the shell itself:
// ":xml" for names of folders and of files that end in .xml, ":files" for any, ":folders" for folders,
// ":nospace" for no space behind the word.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "cli/command.h"
#include "cli/data_folders.h"

namespace plugward {

/// `words` as typed behind the program's name, the last one up to the cursor and perhaps empty. Files among
/// them are read for the names of plugs, headers and jumpers; faults in them are left to the commands.
std::string completions(const std::vector<std::string>& words, std::span<const Command>,
                        const std::vector<DataFolder>&);

}  // namespace plugward
