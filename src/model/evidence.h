// SPDX-License-Identifier: MIT
// Where a description's statements come from.
#pragma once

#include <string>

#include "diag/source.h"

namespace plugward {

enum class EvidenceKind {
  BoardPrint,
  MakersDrawing,
  Schematic,
  Measurement,
  Photograph,  ///< of the thing itself
  DataSheet,
  Standard,
  Assumption,
  Plan  ///< of a loom only: what is to be built, not seen yet; judged as if it were so, and told
};

struct Evidence {
  std::string id;
  EvidenceKind kind = EvidenceKind::Assumption;
  std::string revision;
  std::string date;  ///< ISO 8601, "" when not stated
  std::string note;
  Span span{};
};

/// A second statement about the same thing that does not agree with the first.
struct Contest {
  std::string statement;  ///< "ground, by 'schematic' (schematic)"
  Span span{};
};

std::string_view to_word(EvidenceKind);  ///< "board-print", "makers-drawing", ... as in the XML

}  // namespace plugward
