// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/work_text_test.cpp.
#include "report/reading_notes.h"

#include <algorithm>

#include "base/format.h"

namespace plugward {
namespace {

/// a..z, aa, ab, ...
std::string letters(std::size_t index) {
  std::string text(1, static_cast<char>('a' + index % 26));
  return index < 26 ? text : letters(index / 26 - 1) + text;
}

}  // namespace

std::string ReadingNotes::letter(const std::string& note) {
  if (note.empty()) return "";
  const auto found = std::find(notes_.begin(), notes_.end(), note);
  const auto index = static_cast<std::size_t>(found - notes_.begin());
  if (found == notes_.end()) notes_.push_back(note);
  return letters(index);
}

std::string ReadingNotes::pointers(const std::string& too_low, const std::string& too_high, bool either) {
  const std::string low = letter(too_low), high = letter(too_high);
  if (either) return high.empty() ? "" : format("else {}", high);
  if (low.empty()) return high.empty() ? "" : format("high {}", high);
  return high.empty() ? format("low {}", low) : format("low {}, high {}", low, high);
}

void ReadingNotes::write(Paper& paper) {
  if (notes_.empty()) return;
  paper.line(tr("  Readings that are not as expected point to:"));
  for (std::size_t i = 0; i < notes_.size(); ++i)
    paper.paragraph(notes_[i], {format("  {:>4}  ", letters(i)), "        "});
  notes_.clear();
}

}  // namespace plugward
