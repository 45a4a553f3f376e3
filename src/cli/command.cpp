// SPDX-License-Identifier: MIT
// Tested in tests/cases.
#include "cli/command.h"

#include <array>

namespace plugward {
namespace {

constexpr Takes mating(bool format, bool picture) {
  return {.words = "FILE",
          .words_say = "a board file and one or more harness files, in any order",
          .fewest = 2,
          .most = 65,
          .fitting = true,
          .families = true,
          .format = format,
          .picture = picture};
}

constexpr Takes with(Takes takes, bool csv, bool adapter) {
  takes.csv = csv;
  takes.adapter = adapter;
  return takes;
}

/// A whole machine in one file will do as well.
constexpr Takes or_loom(Takes takes) {
  takes.words_say = "a board file and one or more harness files, in any order; or one loom file alone";
  takes.fewest = 1;
  takes.loom = true;
  return takes;
}

constexpr auto commands = std::to_array<Command>({
    {"check", "may this cable go on this board? verdict and findings",
     "plugward check boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --jumper JP2=5V",
     or_loom(mating(true, false)), run_check},
    {"repin", "which contacts to move, step by step, with cautions and tests",
     "plugward repin boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --jumper JP2=5V",
     with(mating(true, false), false, true), run_repin},
    {"draw", "labelled pictures: board, headers, housings now and then, moves",
     "plugward draw boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --plug control -o kite.svg",
     mating(false, true), run_draw},
    {"place", "the best headers of a board for all plugs at once, and the runner-up",
     "plugward place boards/heron-m7.xml harnesses/kite-probe.xml --jumper JP2=5V", mating(true, false),
     run_place},
    {"parts", "what to buy for the plan: housings, contacts, components, tools",
     "plugward parts boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --jumper JP2=5V --format "
     "csv",
     with(mating(true, false), true, true), run_parts},
    {"find",
     "which headers of which boards take this harness, best first",
     "plugward find harnesses/kite-probe.xml --in boards",
     {.words = "FILE",
      .words_say = "one or more harness files",
      .fewest = 1,
      .most = 64,
      .families = true,
      .format = true,
      .folders = true},
     run_find},
    {"lint",
     "the descriptions themselves: every fault of every file in one run",
     "plugward lint boards/heron-m7.xml harnesses/kite-probe.xml",
     {.words = "FILE",
      .words_say = "board, harness, loom and family files",
      .fewest = 1,
      .most = 1000,
      .families = true,
      .format = true},
     run_lint},
    {"list",
     "what plugward knows: families, functions, colours, gauges or rules",
     "plugward list families",
     {.words = "WHAT",
      .words_say = "families [FAMILY], functions, colours, gauges or rules",
      .fewest = 1,
      .most = 2,
      .families = true},
     run_list},
    {"explain",
     "one rule at length: why it matters, an example, the cure",
     "plugward explain back-feed",
     {.words = "RULE", .words_say = "the word in [...] behind a message", .fewest = 1, .most = 1},
     run_explain},
});

}  // namespace

std::span<const Command> all_commands() {
  return commands;
}

}  // namespace plugward
