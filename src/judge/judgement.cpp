// SPDX-License-Identifier: MIT
#include "judge/judgement.h"

#include <algorithm>

#include "base/words.h"

namespace plugward {

bool Assessment::has(Weight weight) const {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.weight == weight; });
}

std::string_view to_word(Weight weight) {
  switch (weight) {
    case Weight::Harm:
      return later("harm");
    case Weight::Fault:
      return later("fault");
    case Weight::Doubt:
      return later("doubt");
    case Weight::Note:
      return later("note");
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
