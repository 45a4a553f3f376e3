// SPDX-License-Identifier: MIT
// The wires of an adapter lead: which gauges both of its ends take, and colours that tell the leads apart.
//
//   gauge_choices(awg(26), xh, pin)   26 AWG, then 24 and 22 AWG: each thicker than the one before
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "catalogue/family.h"
#include "model/harness.h"

namespace plugward {

/// How a lead is fastened in a housing of a family.
enum class Joint {
  Crimp,         ///< a crimped contact a lead
  Screw,         ///< under a screw
  Displacement,  ///< pressed through the insulation of a flat cable, all at once and in its order
  Other          ///< circular connectors: as their maker says
};

Joint joint_of(const Family&);

/// Do the family's contacts take this conductor? True when their range is not known.
bool takes(const Family&, const Gauge&);

/// Gauges for one lead, first choice first: the cable's own, then the thicker even AWG sizes that both
/// families take. Where nothing so thick is taken, the thickest that is; empty when no gauge suits both.
/// A cable of unknown gauge counts as 26 AWG (common practice, no source).
std::vector<Gauge> gauge_choices(const std::optional<Gauge>& cable, const Family& a, const Family& b);

/// Is `gauge` thinner than the cable's?
bool thinner(const Gauge& gauge, const std::optional<Gauge>& cable);

/// One colour a lead, all different: the cable's where it is known and still free, else the next free one of
/// IEC 60757, then pairs of them. Never green with yellow, which is kept for the protective conductor.
std::vector<WireColour> distinct_colours(const std::vector<WireColour>& cable);

}  // namespace plugward
