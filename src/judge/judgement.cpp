// SPDX-License-Identifier: MIT
#include "judge/judgement.h"

#include <algorithm>

namespace plugward {

bool Assessment::has(Weight weight) const {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.weight == weight; });
}

std::string_view to_word(Weight weight) {
  switch (weight) {
    case Weight::Harm:
      return "harm";
    case Weight::Fault:
      return "fault";
    case Weight::Doubt:
      return "doubt";
    case Weight::Note:
      return "note";
  }
  return "";
}

std::string_view to_word(Verdict verdict) {
  switch (verdict) {
    case Verdict::Mate:
      return "MATE";
    case Verdict::Repin:
      return "REPIN";
    case Verdict::Adapt:
      return "ADAPT";
    case Verdict::Measure:
      return "MEASURE";
    case Verdict::Apart:
      return "APART";
  }
  return "";
}

}  // namespace plugward
