// SPDX-License-Identifier: MIT
// The state that a move to another board ends in, as files: a new loom, and the harnesses into which parts
// were built.
//
//   const Record record = finished_state(plan, old_loom, files, {.loom = "refit/loom.xml", ...});
//   for (const RecordFile& file : record.files) ... file.path, file.text      // the loom comes last
//
// Read back, the loom is judged as SwapPlan::result. All that it says of the machine rests on one evidence of
// the kind `plan`: nobody has seen it yet. Who has done the work and looked edits that one line.
#pragma once

#include <string>
#include <vector>

#include "model/loom.h"
#include "plan/swap.h"

namespace plugward {

/// Paths as texts; all relative to the working folder, or absolute.
struct RecordPlace {
  std::string loom;      ///< where the new loom will be; changed harnesses lie beside it
  std::string old_loom;  ///< the file of the machine as it stands
  std::string board;     ///< the file of the new board
};

struct RecordFile {
  std::string path;
  std::string text;
};

struct Record {
  Loom loom;
  /// Into which parts, leads or other housings were built: named after the loom's harness, as in its file.
  std::vector<Harness> harnesses;
  std::vector<RecordFile> files;  ///< what to write, the loom last
};

/// The evidence that everything in such a loom rests on.
inline constexpr std::string_view record_evidence = "built";

/// Harnesses of which no more than contacts moved keep the files that they have. A file that cannot be named
/// from where the new loom lies is named by its absolute path. Headers of the new board with the use of one
/// that something undescribed sat on are left open: it goes over too, and only the person knows where.
/// REQUIRES: plan.result.clean(); `old` and `files` are what plan.machine was made of (plan/loom_bench.h).
Record finished_state(const SwapPlan& plan, const Loom& old, const LoomFiles& files, const RecordPlace&);

}  // namespace plugward
