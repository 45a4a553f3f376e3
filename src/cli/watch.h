// SPDX-License-Identifier: MIT
// --watch: a command again whenever one of its files is saved.
//
//   watch(options, [&] { return run_and_write(options); });      // returns when Ctrl-C or SIGTERM ends it
//
// It sleeps in the kernel between saves. The folders are watched, not the files: an editor that writes a new
// file and renames it over the old one is seen as well. What a half-edited file makes the command say is
// shown, and the watch goes on; a file that -o names stays as it is until the new one is whole.
#pragma once

#include <functional>
#include <set>
#include <string>
#include <vector>

#include "cli/options.h"

namespace plugward {

/// The files that a command line reads, with those that its looms name. What cannot be read names nothing
/// more.
std::vector<std::string> input_files(const Options&);

/// Calls `once` now and after each save until SIGINT or SIGTERM comes. What the first call throws as
/// UsageError is thrown here: no save can cure the command line. Other faults are told and waited out. Throws
/// WorldError when nothing can be watched, or no folder is left to watch.
ExitStatus watch(const Options&, const std::function<void()>& once);

}  // namespace plugward
