// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/words_test.cpp.
#include "sheet/words.h"

#include <algorithm>

#include "base/format.h"

namespace plugward {

std::string_view meaning(Verdict verdict) {
  switch (verdict) {
    case Verdict::Mate:
      return tr("plug it in");
    case Verdict::Repin:
      return tr("move contacts first");
    case Verdict::Adapt:
      return tr("add a part or another housing first");
    case Verdict::Measure:
      return tr("something must be known first");
    case Verdict::Apart:
      return tr("do not join these two");
  }
  return "";
}

std::string_view meaning(Weight weight) {
  switch (weight) {
    case Weight::Harm:
      return tr("can damage or hurt");
    case Weight::Fault:
      return tr("will not work");
    case Weight::Doubt:
      return tr("cannot be decided from what is known");
    case Weight::Note:
      return tr("worth knowing");
  }
  return "";
}

std::string header_title(const Header& header) {
  if (header.label.empty() || header.label == header.id) return header.id;
  return format("{} ({})", header.id, header.label);
}

std::string lead_name(const Lead& lead) {
  if (lead.mark.empty()) return to_code(lead.colour);
  return format("{} marked '{}'", to_code(lead.colour), lead.mark);
}

std::string lead_with_terminal(const Harness& harness, const Lead& lead) {
  if (!lead.to) return format("{}, where it goes is not known", lead_name(lead));
  return format("{} to '{}'", lead_name(lead), harness.terminal_name(*lead.to));
}

std::string pin_words(const Fitting& fitting, const Pin& pin) {
  if (pin.contest) return tr("not known: its evidence disagrees");
  switch (pin.function) {
    case PinFunction::Supply: {
      if (pin.jumper.empty()) return format("supply {}", pin.rail);
      const auto stated = fitting.jumpers.find(pin.jumper);
      if (stated == fitting.jumpers.end()) return format("supply, by jumper {}: not stated", pin.jumper);
      return format("supply {} (by {})", stated->second, pin.jumper);
    }
    case PinFunction::Coil:
      return format("coil {} end {}", pin.coil, pin.coil_end);
    case PinFunction::Unknown:
      return tr("not known");
    default:
      break;
  }
  const std::string_view word = tr(to_word(pin.function));
  return pin.signal.empty() ? std::string(word) : format("{} {}", word, pin.signal);
}

std::vector<int> unplaced_plugs(const Fitting& fitting) {
  std::vector<int> missing;
  for (int plug = 0; plug < static_cast<int>(fitting.harness->plugs.size()); ++plug) {
    const bool placed = std::any_of(fitting.placements.begin(), fitting.placements.end(),
                                    [plug](const Placement& p) { return p.plug == plug; });
    if (!placed) missing.push_back(plug);
  }
  return missing;
}

std::vector<int> home_pins(const Fitting& fitting, const Placement& placement) {
  return home_seating(plug_at(fitting, placement.plug), placement.header, *fitting.board).pin_of_cavity;
}

const Plug& plug_at(const Fitting& fitting, int plug) {
  return fitting.harness->plugs[static_cast<std::size_t>(plug)];
}

const Header& header_at(const Fitting& fitting, int header) {
  return fitting.board->headers[static_cast<std::size_t>(header)];
}

std::string_view limits_sentence() {
  return tr(
      "plugward compares what the files say; it cannot see a bad crimp, a mislabelled board or a dead "
      "part. Mains wiring is for a qualified person.");
}

std::string_view power_sentence() {
  return tr("Power off, USB cable out and all lamps dark before anything is plugged or unplugged.");
}

}  // namespace plugward
