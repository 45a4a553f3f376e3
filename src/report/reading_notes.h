// SPDX-License-Identifier: MIT
// What wrong readings point to, told once under letters: many readings point to the same.
//
//   ReadingNotes notes;
//   notes.pointers("no power", "a short", false)     // "low a, high b"
//   notes.write(paper)                               // the letters and what they mean; then none are left
#pragma once

#include <string>
#include <vector>

#include "report/layout.h"

namespace plugward {

class ReadingNotes {
 public:
  /// Under which letters a reading that is too low, or too high, is told. `either`: there is no low and high,
  /// only other than expected.
  std::string pointers(const std::string& too_low, const std::string& too_high, bool either);
  void write(Paper&);

 private:
  std::string letter(const std::string& note);

  std::vector<std::string> notes_;
};

}  // namespace plugward
