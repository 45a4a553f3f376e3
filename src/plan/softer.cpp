// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/softer_test.cpp.
#include "plan/softer.h"

#include <algorithm>

#include "base/format.h"
#include "judge/judgement.h"
#include "judge/words.h"

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
      if (!assess(other).clean()) continue;
      out.push_back(format("with jumper {} at {} instead of {} it may be plugged in as it is; mind what else that "
                           "jumper feeds",
                           jumper_name(*jumper), rail, stated));
    }
  }
}

/// One plug turned by 180 degrees, where the header lets it.
void try_turning(const Fitting& fitting, std::vector<std::string>& out) {
  if (!housings_suit(fitting)) return;
  for (std::size_t i = 0; i < fitting.placements.size(); ++i) {
    const Plug& plug = plug_of(fitting, fitting.placements[i].plug);
    const Header& header = header_of(fitting, fitting.placements[i].header);
    for (const Seating& seating : seatings(plug, fitting.placements[i].header, *fitting.board, *fitting.catalogue)) {
      if (seating.kind != SeatingKind::Turned) continue;
      std::vector<Seating> all;
      for (const Placement& p : fitting.placements) {
        all.push_back(home_seating(plug_of(fitting, p.plug), p.header, *fitting.board));
      }
      all[i] = seating;
      if (!assess(fitting, all).clean()) continue;
      out.push_back(format("turned by 180 degrees, cavity 1 of '{}' on {}, it is right as it is; mark that end of the "
                           "housing, since nothing keeps it from going on the other way",
                           plug.id, pin_name(fitting, fitting.placements[i].header, header.positions)));
    }
  }
}

}  // namespace

std::vector<std::string> softer_cures(const Fitting& fitting) {
  std::vector<std::string> out;
  try_jumpers(fitting, out);
  try_turning(fitting, out);
  return out;
}

}  // namespace plugward
