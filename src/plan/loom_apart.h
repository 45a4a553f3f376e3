// SPDX-License-Identifier: MIT
// The harnesses that loom_bench (plan/loom_bench.h) joined, apart again, and what has changed in them since
// their files were written.
//
//   for (const Harness& one : harnesses_apart(plan.harness, files)) ... one.id is that of the loom
#pragma once

#include <vector>

#include "model/loom.h"

namespace plugward {

/// By lead of the plug as the bench has it: the cavity in the file. `seat` may be nullptr.
std::vector<int> file_cavities(const Plug& in_file, const Seat* seat);

/// REQUIRES: `joined` came from loom_bench with these files; since then contacts were moved, parts added, and
/// leads added behind those that were there.
std::vector<Harness> harnesses_apart(const Harness& joined, const LoomFiles&);

/// More than contacts has changed: parts, leads or housings. `now` is of harnesses_apart, `in_file` its file.
bool is_rebuilt(const Harness& now, const Harness& in_file, const Loom&);

/// Seat::leads of a plug that has the leads of its file; empty when all are where the file says.
std::vector<int> leads_now(const Plug& now, const Plug& in_file, const Seat* old_seat);

}  // namespace plugward
