// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/parts_text_test.cpp.
#include "sheet/parts_words.h"

#include "base/format.h"

namespace plugward {
namespace {

/// "stranded wire, 26 AWG, BN (brown), 100 mm"
std::string description(const PartItem& item) {
  std::string text = item.what;
  if (item.kind == PartKind::Wire) {
    if (item.gauge) text += ", " + to_text(*item.gauge);
    if (item.colour.known()) text += format(", {} ({})", to_code(item.colour), to_words(item.colour));
    if (item.length) text += ", " + to_text(*item.length);
  }
  if (!item.value.empty()) text += " " + item.value;
  if (!item.demands.empty()) text += ", " + item.demands;
  return text;
}

std::string spares_words(const PartItem& item) {
  if (item.spares == 0) return "";
  const std::string spares = format("{} spare{}", item.spares, item.spares == 1 ? "" : "s");
  return item.needed == 0 ? format(" ({})", spares) : format(" ({} needed, {})", item.needed, spares);
}

}  // namespace

std::string_view to_word(PartKind kind) {
  switch (kind) {
    case PartKind::Housing:
      return "housing";
    case PartKind::Counterpart:
      return "counterpart";
    case PartKind::Contact:
      return "contact";
    case PartKind::Wire:
      return "wire";
    case PartKind::Component:
      return "component";
    case PartKind::HeatShrink:
      return "heat-shrink";
    case PartKind::Other:
      return "other";
    case PartKind::Tool:
      return "tool";
  }
  return "";
}

std::string part_words(const PartItem& item) {
  const std::string purpose = item.purpose.empty() ? "" : ": " + item.purpose;
  return description(item) + spares_words(item) + purpose;
}

std::string_view spares_sentence() {
  return "Of contacts a fifth more than needed is listed, and at least two (common practice).";
}

}  // namespace plugward
