// SPDX-License-Identifier: MIT
// A whole machine, as its loom tells it, as one thing to be judged.
//
//   const LoomBench bench = loom_bench(loom, files);
//   const Fitting fitting = loom_fitting(files, bench, catalogue);
//   advise_loom(loom, bench, fitting).verdict       // MATE: all may stay as it is
#pragma once

#include <map>
#include <string>
#include <vector>

#include "catalogue/family.h"
#include "model/fitting.h"
#include "model/loom.h"
#include "plan/repin.h"

namespace plugward {

/// All harnesses of a loom as one, the contacts where the loom says they are, and where its plugs sit.
struct LoomBench {
  Harness harness;                    ///< plugs and devices are called "HARNESS/PLUG", as in the loom
  std::vector<Placement> placements;  ///< of the plugs that sit on a header, in the order of harness.plugs
  std::map<std::string, std::string> jumpers;  ///< those of which the position is known
  std::vector<int> loose;                      ///< plugs on no header
  std::vector<int> unknown;                    ///< plugs of which nobody says where they are
  std::vector<std::string> names;              ///< of every plug, as the loom writes it
};

/// REQUIRES: the loom was read together with `files`.
LoomBench loom_bench(const Loom&, const LoomFiles&);

/// Points into all that is given.
Fitting loom_fitting(const LoomFiles&, const LoomBench&, const Catalogue&);

/// What the loom itself leaves open: plugs whose place is not known or assumed, jumpers whose position is
/// assumed. Each a doubt whose first place is in the loom.
std::vector<Finding> loom_doubts(const Loom&, const LoomBench&, const Fitting&);

/// The machine as it stands, without any cure: what the circuit says and what the loom leaves open; worst
/// first.
Assessment assess_loom(const Loom&, const LoomBench&, const Fitting&);

/// The verdict on the machine as it stands. Other seatings are not judged, whatever the options say: nothing
/// is being plugged in.
Advice advise_loom(const Loom&, const LoomBench&, const Fitting&, AdviseOptions = {});

/// The plug that a finding is about: index into LoomBench::harness.plugs, -1 when it is about none.
int plug_of_finding(const Fitting&, const Finding&);

}  // namespace plugward
