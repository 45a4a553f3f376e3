// SPDX-License-Identifier: MIT
#include "model/evidence.h"

namespace plugward {

std::string_view to_word(EvidenceKind kind) {
  switch (kind) {
    case EvidenceKind::BoardPrint: return "board-print";
    case EvidenceKind::MakersDrawing: return "makers-drawing";
    case EvidenceKind::Schematic: return "schematic";
    case EvidenceKind::Measurement: return "measurement";
    case EvidenceKind::Photograph: return "photograph";
    case EvidenceKind::DataSheet: return "data-sheet";
    case EvidenceKind::Standard: return "standard";
    case EvidenceKind::Assumption: return "assumption";
    case EvidenceKind::Plan: return "plan";
  }
  return "";
}

}  // namespace plugward
