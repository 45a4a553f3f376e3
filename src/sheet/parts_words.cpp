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
  const std::string spares = count_of(item.spares, "{} spare", "{} spares", item.spares);
  return item.needed == 0 ? format(" ({})", spares) : format(" ({} needed, {})", item.needed, spares);
}

}  // namespace

std::string_view to_word(PartKind kind) {
  switch (kind) {
    case PartKind::Housing:
      return later("housing");
    case PartKind::Counterpart:
      return later("counterpart");
    case PartKind::Contact:
      return later("contact");
    case PartKind::Wire:
      return later("wire");
    case PartKind::Component:
      return later("component");
    case PartKind::HeatShrink:
      return later("heat-shrink");
    case PartKind::Other:
      return later("other");
    case PartKind::Tool:
      return later("tool");
  }
  return "";
}

std::string part_words(const PartItem& item) {
  const std::string purpose = item.purpose.empty() ? "" : ": " + item.purpose;
  return description(item) + spares_words(item) + purpose;
}

std::string_view spares_sentence() {
  return tr("Of contacts a fifth more than needed is listed, and at least two (common practice).");
}

}  // namespace plugward
