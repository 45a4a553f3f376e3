// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/softer_test.cpp.
#include "plan/softer.h"

#include <algorithm>

#include "base/format.h"
#include "judge/judgement.h"
#include "judge/words.h"
#include "plan/repin.h"

namespace plugward {
namespace {

/// Nothing about the housings of any plug stands against mating: turning one plug does not mend another's.
bool housings_suit(const Fitting& fitting) {
  return std::all_of(fitting.placements.begin(), fitting.placements.end(), [&](const Placement& p) {
    return mate(plug_of(fitting, p.plug), header_of(fitting, p.header), *fitting.catalogue).goes_on();
  });
}

/// Another position of one stated jumper.
void try_jumpers(const Fitting& fitting, std::vector<std::string>& out) {
  for (const auto& [id, stated] : fitting.jumpers) {
    const Jumper* jumper = fitting.board->jumper(id);
    if (jumper == nullptr) continue;
    for (const std::string& rail : jumper->rails) {
      if (rail == stated) continue;
      Fitting other = fitting;
      other.jumpers[id] = rail;
      const Advice advice = advise(other, {.wrong_seatings = false, .softer = false, .cures = false});
      if (advice.verdict != Verdict::Mate && advice.verdict != Verdict::Repin) continue;
      const std::string then =
          advice.verdict == Verdict::Mate
              ? tr("it may be plugged in as it is")
              : count_of(advice.moved, "moving {} contact is enough (ask again with --jumper {}={})",
                         "moving {} contacts is enough (ask again with --jumper {}={})", advice.moved, id,
                         rail);
      out.push_back(format("with jumper {} at {} instead of {} {}; mind what else that jumper feeds",
                           jumper_name(*jumper), rail, stated, then));
    }
  }
}

/// One plug turned by 180 degrees, where the header lets it.
void try_turning(const Fitting& fitting, std::vector<std::string>& out) {
  if (!housings_suit(fitting)) return;
  for (std::size_t i = 0; i < fitting.placements.size(); ++i) {
    const Plug& plug = plug_of(fitting, fitting.placements[i].plug);
    const Header& header = header_of(fitting, fitting.placements[i].header);
    for (const Seating& seating :
         seatings(plug, fitting.placements[i].header, *fitting.board, *fitting.catalogue)) {
      if (seating.kind != SeatingKind::Turned) continue;
      std::vector<Seating> all;
      for (const Placement& p : fitting.placements) {
        all.push_back(home_seating(plug_of(fitting, p.plug), p.header, *fitting.board));
      }
      all[i] = seating;
      if (!assess(fitting, all).clean()) continue;
      out.push_back(
          format("turned by 180 degrees, cavity 1 of '{}' on {}, it is right as it is; mark that end of the "
                 "housing, since nothing keeps it from going on the other way",
                 plug.id, pin_name(fitting, fitting.placements[i].header, header.positions)));
    }
  }
}

/// A header close by that takes the plug as it is: perhaps the one that was meant.
void try_neighbours(const Fitting& fitting, std::vector<std::string>& out) {
  for (std::size_t i = 0; i < fitting.placements.size(); ++i) {
    const Placement& placement = fitting.placements[i];
    const Plug& plug = plug_of(fitting, placement.plug);
    for (const Seating& seating :
         neighbour_seatings(plug, placement.header, *fitting.board, *fitting.catalogue)) {
      const bool taken = std::any_of(fitting.placements.begin(), fitting.placements.end(),
                                     [&](const Placement& p) { return p.header == seating.header; });
      if (taken) continue;
      Fitting other = fitting;
      other.placements[i].header = seating.header;
      if (!assess(other).clean()) continue;
      const Header& header = header_of(fitting, seating.header);
      out.push_back(format("'{}' may go on '{}'{} beside it as it is: perhaps that one was meant", plug.id,
                           header.id, header.label.empty() ? "" : format(" ({})", header.label)));
    }
  }
}

/// Devices with a string of LEDs on a plug that is placed.
std::vector<int> fed_strings(const Fitting& fitting) {
  std::vector<int> strings;
  for (int d = 0; d < static_cast<int>(fitting.harness->devices.size()); ++d) {
    if (!fitting.harness->devices[static_cast<std::size_t>(d)].leds) continue;
    const bool placed =
        std::any_of(fitting.placements.begin(), fitting.placements.end(), [&](const Placement& p) {
          const auto& leads = plug_of(fitting, p.plug).leads;
          return std::any_of(leads.begin(), leads.end(),
                             [&](const Lead& lead) { return lead.to && lead.to->device == d; });
        });
    if (placed) strings.push_back(d);
  }
  return strings;
}

/// The strings no brighter than this share of full white.
Harness dimmed(const Harness& harness, const std::vector<int>& strings, double share) {
  Harness darker = harness;
  for (const int index : strings) {
    Device& device = darker.devices[static_cast<std::size_t>(index)];
    LedString& leds = *device.leds;
    leds.brightness = std::min(share, leds.brightness.value_or(1.0));
    for (Part& part : device.parts) {
      if (auto* load = std::get_if<Load>(&part))
        load->draws = leds.each * (static_cast<double>(leds.count) * *leds.brightness);
    }
  }
  return darker;
}

/// What a smaller current can cure.
bool is_overload(const Finding& finding) {
  return finding.rule == Rule::PinOvercurrent || finding.rule == Rule::ContactOvercurrent ||
         finding.rule == Rule::WireOvercurrent || finding.rule == Rule::RailOverload ||
         finding.rule == Rule::SupplyTooLow || finding.rule == Rule::UnknownRating;
}

/// The largest brightness, in whole percent, at which all is clean. A darker string takes less of everything,
/// so it is found by halving.
void try_brightness(const Fitting& fitting, std::vector<std::string>& out) {
  const std::vector<int> strings = fed_strings(fitting);
  if (strings.empty()) return;
  const std::vector<Finding> findings = assess(fitting).findings;
  if (std::none_of(findings.begin(), findings.end(), is_overload)) return;
  const auto clean_at = [&](int percent) {
    const Harness darker = dimmed(*fitting.harness, strings, percent / 100.0);
    Fitting other = fitting;
    other.harness = &darker;
    return assess(other).clean();
  };
  int clean = 1, unclean = 100;
  if (!clean_at(clean)) return;
  while (unclean - clean > 1) {
    const int middle = (clean + unclean) / 2;
    (clean_at(middle) ? clean : unclean) = middle;
  }
  std::vector<std::string> names;
  for (const int index : strings)
    names.push_back(format("'{}'", fitting.harness->devices[static_cast<std::size_t>(index)].id));
  out.push_back(
      format("with the brightness of {0} at {1} % or less it may be plugged in as it is: write "
             "brightness=\"{1} %\" there, and keep the firmware to it from the first moment on",
             join(names, tr(" and ")), clean));
}

}  // namespace

std::vector<std::string> softer_cures(const Fitting& fitting, bool elsewhere) {
  std::vector<std::string> out;
  try_jumpers(fitting, out);
  try_turning(fitting, out);
  try_brightness(fitting, out);
  if (elsewhere) try_neighbours(fitting, out);
  return out;
}

}  // namespace plugward
