// SPDX-License-Identifier: MIT
// The steps condense de-pinning guides, connector makers' handling notes and vehicle repair manuals; that a
// lance is re-formed once and then the contact replaced is a rule of thumb (from memory). Tested in
// tests/unit/plan/technique_test.cpp.
#include "plan/technique.h"

#include <algorithm>
#include <array>

#include "base/format.h"

namespace plugward {
namespace {

const std::array<std::string_view, 5> contact_lance{
    later("push the lead gently into the housing: that takes the load off the lance"),
    later("press the metal lance flush through its window with a fine flat blade; do not lever"),
    later("keep it pressed and draw the lead back with two fingers; if it does not follow, push it in and "
          "begin "
          "again"),
    later(
        "bend the lance back to its old height, without a crease; the next time, take a new contact (rule of "
        "thumb)"),
    later("push the contact straight in, lance towards the windows, until it clicks and the lance shows")};

const std::array<std::string_view, 5> housing_lance{
    later("push the lead gently into the housing: that takes the load off the flap"),
    later(
        "lift the plastic flap with a needle, only as far as needed; a flap that turns white or stays up is "
        "finished: "
        "replace the housing"),
    later("draw the lead back with two fingers, without force"),
    later("the contact needs no bending; check that its box is not squeezed"),
    later("push the contact in, shoulder to the flap side, until the flap snaps level with its neighbours")};

template <std::size_t n>
void append(std::vector<std::string>& to, const std::array<std::string_view, n>& lines) {
  for (const std::string_view line : lines) to.emplace_back(tr(line));
}

/// Largest seat tug in newtons for a gauge: 80 % of 8.9, 13.4, 22.3, 35.6 N, rounded down.
int largest_tug(const Gauge& gauge) {
  const double area = gauge.area.value;
  if (area >= awg_area(22).value * 0.99) return 28;
  if (area >= awg_area(24).value * 0.99) return 17;
  if (area >= awg_area(26).value * 0.99) return 10;
  return 7;
}

const std::array<std::string_view, 3> screw_clamp{
    later("loosen the screw and draw the lead out"),
    later("look at the end of the conductor: cut off crushed or tinned strands and strip it anew (common "
          "practice)"),
    later("push it home and tighten the screw; no bare strand may stand out")};

}  // namespace

bool movable(const Family& family) {
  return family.profile == Profile::Screw || !family.lance || family.lance->value != Lance::None;
}

std::vector<std::string> technique(const Family& family) {
  std::vector<std::string> lines;
  if (family.profile == Profile::Screw) {
    append(lines, screw_clamp);
    return lines;
  }
  if (family.release) lines.push_back(format("this family: {}", tr(std::string_view(family.release->value))));
  if (!family.lance) {
    lines.emplace_back(
        tr("where this family's lance sits is not known: look for a metal tang in a window of the housing "
           "(first way) or a plastic flap over the contact (second way)"));
    lines.emplace_back(tr("first way, tang on the contact:"));
    append(lines, contact_lance);
    lines.emplace_back(tr("second way, flap on the housing:"));
    append(lines, housing_lance);
  } else if (family.lance->value == Lance::Contact) {
    append(lines, contact_lance);
  } else if (family.lance->value == Lance::Housing) {
    append(lines, housing_lance);
  } else {
    lines.emplace_back(tr("the conductors of this family cannot be moved one by one: replace the housing"));
  }
  if (family.reuse) lines.emplace_back(tr(std::string_view(family.reuse->value)));
  return lines;
}

std::vector<std::string> tools(const Family& family) {
  std::vector<std::string> list;
  if (family.profile == Profile::Screw)
    return {tr("screwdriver that fits the slot"), tr("tape flags and a pen"),
            tr("meter with continuity beeper")};
  const bool housing = family.lance && family.lance->value == Lance::Housing;
  const bool contact = family.lance && family.lance->value == Lance::Contact;
  if (!housing) list.emplace_back(tr("fine flat blade or extraction tool"));
  if (!contact) list.emplace_back(tr("needle"));
  list.emplace_back(tr("tape flags and a pen"));
  list.emplace_back(tr("meter with continuity beeper"));
  return list;
}

std::vector<std::string> cautions_before() {
  return {tr("power off, mains plug out, USB out; wait until all lamps are out and some minutes for stored "
             "charge"),
          tr("touch earthed metal before the board; hold boards by their edges"),
          tr("let heaters cool and motion stop; unplug by the housing, never by the leads"),
          tr("photograph both faces of the plug and flag each lead with its cavity before the first one is "
             "moved")};
}

std::string tug_advice(const std::vector<Gauge>& gauges) {
  int most = 28;
  for (const Gauge& gauge : gauges) most = std::min(most, largest_tug(gauge));
  return format("tug each moved lead lightly, about 5 N (a half-litre bottle){}: it must not slide",
                gauges.empty() ? "" : format(", never more than {} N", most));
}

std::vector<std::string> checks_after(const std::vector<Gauge>& gauges) {
  return {tug_advice(gauges), tr("compare the depth of each contact with its neighbours"),
          tr("power still off: continuity of every lead from its cavity to the device, wiggling it; no beep "
             "between "
             "neighbouring cavities"),
          tr("keep the lead that was taken out, if any, insulated singly and flagged")};
}

}  // namespace plugward
