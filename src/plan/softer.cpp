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
      const Advice advice = advise(other, {false, false});
      if (advice.verdict != Verdict::Mate && advice.verdict != Verdict::Repin) continue;
      const std::string then = advice.verdict == Verdict::Mate
                                   ? "it may be plugged in as it is"
                                   : format("moving {} contact{} is enough (ask again with --jumper {}={})",
                                            advice.moved, advice.moved == 1 ? "" : "s", id, rail);
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

}  // namespace

std::vector<std::string> softer_cures(const Fitting& fitting, bool elsewhere) {
  std::vector<std::string> out;
  try_jumpers(fitting, out);
  try_turning(fitting, out);
  if (elsewhere) try_neighbours(fitting, out);
  return out;
}

}  // namespace plugward
