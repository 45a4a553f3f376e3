// SPDX-License-Identifier: MIT
// What the program tells the shell.
#pragma once

namespace plugward {

enum class ExitStatus {
  Fine = 0,        ///< MATE, or the asked-for work is done
  NotFine = 1,     ///< any other verdict, or errors in the descriptions
  NoJudgement = 2  ///< bad command line, a file cannot be read or written
};

}  // namespace plugward
