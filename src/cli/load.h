// SPDX-License-Identifier: MIT
// From the command line to a fitting that can be judged.
#pragma once

#include <optional>
#include <string>

#include "cli/options.h"
#include "diag/diagnostic.h"
#include "model/fitting.h"
#include "plan/loom_bench.h"
#include "plan/swap.h"
#include "reader/descriptions.h"

namespace plugward {

/// Everything that was read. A fitting points into it: it is not copied or moved.
struct Workbench {
  Workbench() = default;
  Workbench(const Workbench&) = delete;
  Workbench& operator=(const Workbench&) = delete;

  Sources sources;
  Catalogue catalogue;
  Diagnostics diagnostics;
  std::unique_ptr<Board> board;
  std::unique_ptr<Harness> harness;                 ///< all harnesses as one
  std::vector<std::unique_ptr<Harness>> harnesses;  ///< as read
  std::unique_ptr<Loom> loom;  ///< of a whole machine; then there is neither of the above
  std::unique_ptr<LoomFiles> loom_files;
  LoomBench loom_bench;
  std::vector<std::string> notes;  ///< what the person should know about the choices made
};

/// How the files that a loom names come into `sources`, each once. Only plain files are read: a loom of
/// somebody else's may name anything.
OpenFile file_opener(Sources& sources);

/// Adds the built-in families and those of --families. Throws WorldError, UsageError.
void load_families(Workbench&, const Options&);

/// Which plugs load_fitting places.
enum class Placing {
  StatedOrOnly,  ///< by --at, else where there is only one choice; asks when there are several
  StatedOnly     ///< by --at alone
};

/// Reads the files of the command line, a board and harnesses in any order, and builds the fitting: --seen,
/// --at and --jumper applied. Several harnesses become one whose plugs are called "HARNESS/PLUG". For a
/// command that takes a loom, one loom file alone: it places its plugs itself, --jumper overrules it. Nothing
/// when the files have errors: the diagnostics say which. Throws WorldError, UsageError.
std::optional<Fitting> load_fitting(Workbench&, const Options&, Placing = Placing::StatedOrOnly);

/// What `swap` reads: one loom, and the board of --to into bench.board. The fitting is the machine as its loom
/// tells it. Nothing when the files have errors. Throws WorldError, UsageError.
std::optional<Fitting> load_machine(Workbench&, const Options&);
/// --at and --jumper, which for `swap` speak of the new board. Throws UsageError.
SwapOptions swap_options(const Workbench&, const Options&);

/// Reads harness files only (a command without a board), as one harness, --seen applied; false when they have
/// errors.
bool load_harness(Workbench&, const Options&);

/// What goes to standard error: diagnostics and notes. "" when all is well.
std::string stderr_text(const Workbench&, const Options&);

}  // namespace plugward
