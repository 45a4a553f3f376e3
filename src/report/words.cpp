// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/words_test.cpp.
#include "report/words.h"

namespace plugward {

Tone tone_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::Mate:
      return Tone::Good;
    case Verdict::Repin:
    case Verdict::Adapt:
      return Tone::Caution;
    case Verdict::Measure:
      return Tone::Doubtful;
    case Verdict::Apart:
      return Tone::Bad;
  }
  return Tone::Plain;
}

Tone tone_of(Weight weight) {
  switch (weight) {
    case Weight::Harm:
      return Tone::Bad;
    case Weight::Fault:
      return Tone::Faulty;
    case Weight::Doubt:
      return Tone::Doubtful;
    case Weight::Note:
      return Tone::Strong;
  }
  return Tone::Plain;
}

std::string_view to_word(StepKind kind) {
  switch (kind) {
    case StepKind::Move:
      return "move";
    case StepKind::Park:
      return "park";
    case StepKind::Hold:
      return "hold";
    case StepKind::Insert:
      return "insert";
    case StepKind::Insulate:
      return "insulate";
  }
  return "";
}

std::string_view to_word(SeatingKind kind) {
  switch (kind) {
    case SeatingKind::Home:
      return "home";
    case SeatingKind::Turned:
      return "turned";
    case SeatingKind::Shifted:
      return "shifted";
    case SeatingKind::TurnedAndShifted:
      return "turned-and-shifted";
    case SeatingKind::Neighbour:
      return "neighbour";
  }
  return "";
}

}  // namespace plugward
