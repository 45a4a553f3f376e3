// SPDX-License-Identifier: MIT
#include "draw/flags.h"

#include <doctest/doctest.h>

#include "base/format.h"
#include "draw/canvas.h"
#include "support/machine.h"
#include "unit/draw/page_faults.h"

namespace plugward {
namespace {

using test::faults;
using test::Machine;

std::string words_of(const Flag& f) {
  return format("{} {}: {} '{}' > {} '{}', {}, {}, {}", f.number, f.name, f.from, f.from_label, f.to,
                f.to_label, f.pins, f.family, f.key);
}

std::vector<Flag> demo_flags() {
  const auto machine = Machine::shipped("wren-a4", "heron-m7");
  const Fitting before = machine->fitting();
  return flags_of(*plan_swap(before, *machine->to, {}));
}

}  // namespace

TEST_CASE("a flag tells where a plug came from and where it goes") {
  const std::vector<Flag> flags = demo_flags();
  REQUIRE(flags.size() == 20);
  CHECK(words_of(flags[0]) == "1 motor-x/motor: J2 'MOTOR X' > J2 'MOTOR X', 4 pins, xh-2.50, key intact");
  CHECK(words_of(flags[7]) ==
        "8 nozzle-thermistor/thermistor: J17 'THERM 1' > J18 'THERM 0', 2 pins, xh-2.50, key intact");
  CHECK(words_of(flags[13]) == "14 chamber-heater/heater:  '' >  'stays off', 2 pins, vh-3.96, key intact");
  CHECK(words_of(flags[17]) ==
        "18 filament/filament: J20 'FILAMENT' > J8 'FILAMENT', 3 pins, xh-2.50, key intact");
}

TEST_CASE("a machine as it stands has flags too") {
  const auto machine = Machine::shipped("wren-a4", "heron-m7");
  const std::vector<Flag> flags = flags_of(machine->fitting());
  REQUIRE(flags.size() == 20);
  CHECK(words_of(flags[0]) == "1 motor-x/motor: J2 'MOTOR X' >  '', 4 pins, xh-2.50, key intact");
}

TEST_CASE("no text lies on text or beyond the paper, whatever the names") {
  const auto measure = make_text_measure();
  std::vector<Flag> flags = demo_flags();
  for (int i = 0; i < 40; ++i) {
    Flag flag = flags[static_cast<std::size_t>(i) % 20];
    flag.number = 21 + i;
    flag.name = format("a-very-long-harness-name-{}/and-a-plug-of-long-name", i);
    flag.from_label = "ОГРАНИЧИТЕЛЬ ОСИ X";
    flag.to_label = "限位开关 X 轴";
    flags.push_back(flag);
  }
  for (const FlagPaper paper : {FlagPaper::A4, FlagPaper::Letter, FlagPaper::Tape}) {
    const std::vector<Scene> pages = flag_pages(flags, paper, *measure);
    CHECK(pages.size() == (paper == FlagPaper::Tape ? 60U : paper == FlagPaper::A4 ? 3U : 4U));
    for (const Scene& page : pages) CHECK(faults(page, *measure) == "");
  }
}

TEST_CASE("tape is as high as the tape and as long as its text") {
  const auto measure = make_text_measure();
  const std::vector<Scene> pages = flag_pages(demo_flags(), FlagPaper::Tape, *measure);
  CHECK(pages[0].height == 12);
  CHECK(pages[0].description == "1: motor-x/motor J2 → J2, 4 pins, key intact");
  CHECK(pages[0].width < pages[7].width);
}

}  // namespace plugward
