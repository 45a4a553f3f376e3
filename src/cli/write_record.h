// SPDX-License-Identifier: MIT
// A record onto the disk.
//
//   write_record(finished_state(plan, loom, files, where).files);
#pragma once

#include <vector>

#include "plan/record.h"

namespace plugward {

/// Writes the files in their order, each whole or not at all, the loom last: whoever finds the loom finds all
/// that it names. A folder that is missing is made. A file that is there stays as it is: when it holds other
/// bytes nothing at all is written, and when one cannot be written, what was made before it is taken away
/// again: files and folders. Throws WorldError: "cannot write 'refit/kite.xml': it is there already, with
/// other contents; record into an empty folder".
void write_record(const std::vector<RecordFile>&);

}  // namespace plugward
