// SPDX-License-Identifier: MIT
// Random boards and harnesses as texts that the reader accepts. Most are nearly right: each plug is derived
// from a header of the board, then contacts are exchanged, voltages swapped, facts left out, evidence
// contested, so that every verdict occurs in fair numbers.
//
//   const RandomWorld world = random_world(42);   // the same on every machine
//   const Bench bench(to_text(world.board), to_text(world.harness));
//   advise(bench.fitting(world.at, world.jumpers));
#pragma once

#include <cstdint>
#include <map>
#include <string>

#include "support/dice.h"
#include "support/xml_node.h"

namespace plugward::test {

struct RandomWorld {
  XmlNode board;
  XmlNode harness;
  std::map<std::string, std::string> at;       ///< plug id -> header id
  std::map<std::string, std::string> jumpers;  ///< stated positions
};

RandomWorld random_world(std::uint64_t seed);

/// Both texts and what else is needed to judge them by hand.
std::string to_text(const RandomWorld&);

/// A random board with one to five headers.
XmlNode random_board(Dice&);
/// Adds plugs and devices that nearly suit headers of world.board, and places them.
void add_random_harness(Dice&, RandomWorld&);

}  // namespace plugward::test
