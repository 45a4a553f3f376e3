// SPDX-License-Identifier: MIT
// What a contact or a wire may carry, which guideline says so, and the fuse that suits both.
//
//   contact_limit(family, awg(22), 3)   3 A, "contact rating at 22 AWG", "JST eXH.pdf (quoted)"
//   bundle_limit(awg(26), 3)            1.958 A: chassis figure x 0.89 for three wires
#pragma once

#include <optional>
#include <string>

#include "catalogue/family.h"
#include "quantity/gauge.h"

namespace plugward {

/// A published limit; no `amps`: none is known, and `basis` says what is missing.
struct CarryingLimit {
  std::optional<Amps> amps;
  std::string basis;   ///< "contact rating at 22 AWG", "wire, single in free air"
  std::string source;  ///< "JST eXH.pdf (quoted)"; "" when there is none
};

/// The family's rating at the lead's gauge in a housing of so many positions; else one that is published
/// without a gauge. Never one for another gauge.
CarryingLimit contact_limit(const Family&, const std::optional<Gauge>&, int positions);

/// Chassis wiring: a single wire in free air.
CarryingLimit wire_limit(const Gauge&);

/// For each of `wires` in one bundle: the bundled column for TFE wire; where it has no row, the chassis
/// figure times the bundle factor of MIL-W-5088B, which reaches to five wires. REQUIRES: wires >= 2.
CarryingLimit bundle_limit(const Gauge&, int wires);

/// What a fuse for one of `wires` leads of a plug may let through: the general table for wires in a bundle,
/// which asks what the wire stands and not what keeps it cool; where it has no row, bundle_limit. A lead by
/// itself: the chassis figure.
CarryingLimit fused_wire_limit(const Gauge&, int wires);

/// The smallest usual blade fuse of at least 1.25 x load; nothing beyond 40 A. The margin is common practice,
/// no source; the ratings 1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40 A are from memory.
std::optional<Amps> blade_fuse(Amps load);

/// The thinnest even gauge of which a pair stands a fuse of this size; nothing beyond 10 AWG.
std::optional<Gauge> thinnest_for(Amps);

}  // namespace plugward
