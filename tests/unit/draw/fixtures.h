// SPDX-License-Identifier: MIT
// Fittings and advice made by hand, so that pictures are tested apart from what judges and plans.
#pragma once

#include <memory>
#include <random>
#include <string>
#include <vector>

#include "draw/mating_picture.h"

namespace plugward::test {

/// Owns everything that its fitting points to.
struct Fixture {
  std::string name;
  Catalogue catalogue;
  Board board;
  Harness harness;
  Fitting fitting;
  Advice advice;

  Fixture() = default;
  Fixture(const Fixture&) = delete;
  Fixture& operator=(const Fixture&) = delete;
};
using FixturePtr = std::unique_ptr<Fixture>;

FixturePtr probe_to_repin();    ///< Kite probe, three-way: BN G, RD V, OG P on J9 servo, 5 V, ground
FixturePtr parked_and_spare();  ///< five-way with an empty cavity: one park, one lead insulated
FixturePtr ribbon_ten();        ///< 2x5 box header, MATE
FixturePtr ribbon_swapped();    ///< 2x5, two leads to be exchanged
FixturePtr motor_mates();       ///< four-way XH, MATE
FixturePtr limit_apart();       ///< three-way, 24 V on a 5.5 V terminal
FixturePtr fan_to_measure();    ///< two-way, jumper not stated
FixturePtr led_to_adapt();      ///< three-way, level too low
FixturePtr foreign_titles();    ///< Cyrillic and Chinese names
FixturePtr twenty_in_a_row();   ///< 1x20 with moves

std::vector<FixturePtr> all_fixtures();

/// A plug, header, plan and findings by chance; valid in form, not in sense.
FixturePtr random_fixture(unsigned seed);

/// Every letter is 0.6 of the type size wide; a code point counts as one letter.
class StubMeasure final : public TextMeasure {
 public:
  Size measure(const std::string& text, double points, bool bold) const override;
};

}  // namespace plugward::test
