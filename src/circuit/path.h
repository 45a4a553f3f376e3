// SPDX-License-Identifier: MIT
// Internal. The way that a voltage or a current takes, in words: "24V - J7.1 - BN - V".
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "circuit/probe.h"

namespace plugward::circuit {

struct Path {
  std::string words;  ///< from the source to the victim
  Locus source;
};

/// The way of least resistance to `victim` from a node that can have raised (or lowered) it to its voltage.
Path path_to(const Solved&, Where, Node victim, Side);

/// The way that the current through a contact takes, from where it enters the circuit to where it leaves it,
/// always along the largest current.
Path path_through(const Solved&, Where, int contact);

/// Does any conducting way lead from `node` to ground, a rail or an output in this state?
bool driven(const Solved&, Where, Node node);

/// The volts that a node has at least (Side::Highest) or at most (Side::Lowest) in this state, whatever
/// leaks: its solved voltage when something conducts to it, less when only diodes without a current bound it;
/// nothing when nothing holds it on that side.
std::optional<double> assured(const Solved&, Where, Node, Side);

/// The state in which that is highest (or lowest), with that value.
Extreme extreme_assured(const Solved&, Node, Side, const Filter&);

/// Does a probe mean anything in this state? Its nodes in the island must reach a fixed node by conducting
/// ways, or, when it is a difference within the island, each other: what nothing holds can have any voltage.
/// An output that is loaded by nothing holds the node of a single term on the `side` that it drives to, but
/// no difference: its own drop says nothing about the device.
bool decided(const Solved&, Where, const Probe&, Side);

}  // namespace plugward::circuit
