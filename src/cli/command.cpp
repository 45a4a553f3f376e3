// SPDX-License-Identifier: MIT
// Tested in tests/cases.
#include "cli/command.h"

#include <array>

namespace plugward {
namespace {

/// One file is too few; which one is missing, or what takes a loom, is said once it has been read.
constexpr Takes mating(bool format, bool picture) {
  return {.words = "FILE",
          .words_say = "a board file and one or more harness files, in any order",
          .fewest = 1,
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
  takes.loom = true;
  return takes;
}

constexpr Takes asking(Takes takes) {
  takes.symptom = true;
  return takes;
}

/// Whole documents, of a mating, a machine or a move.
constexpr Takes sheets(Takes takes) {
  takes.sheet = true;
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
      .jumpers = true,
      .families = true,
      .format = true,
      .folders = true},
     run_find},
    {"swap",
     "move a whole machine to another board: plan, order of work, record, way back",
     "plugward swap harnesses/wren-a4.xml --to boards/heron-m7.xml",
     {.words = "LOOM",
      .words_say = "the loom file of the machine as it stands",
      .fewest = 1,
      .most = 1,
      .families = true,
      .format = true,
      .loom = true,
      .swap = true,
      .record = true},
     run_swap},
    {"labels",
     "flags to print for every cable of a machine: from, to, pins, key",
     "plugward labels harnesses/wren-a4.xml --to boards/heron-m7.xml -o flags.pdf",
     {.words = "LOOM",
      .words_say = "the loom file of the machine",
      .fewest = 1,
      .most = 1,
      .families = true,
      .loom = true,
      .swap = true,
      .flags = true},
     run_labels},
    {"sheet", "the paper for the bench: pictures, steps with boxes, test card, settings, parts",
     "plugward sheet harnesses/wren-a4.xml --to boards/heron-m7.xml --date 2026-11-25 -o wren.pdf",
     sheets(or_loom(mating(false, false))), run_sheet},
    {"compare",
     "two states of a machine: which plugs, contacts, parts and jumpers differ",
     "plugward compare harnesses/wren-a4.xml refit/loom.xml",
     {.words = "LOOM",
      .words_say = "two loom files: the old state and the new one",
      .fewest = 2,
      .most = 2,
      .families = true,
      .format = true},
     run_compare},
    {"causes", "from what is seen on a machine back to the wiring errors that make it",
     "plugward causes harnesses/wren-a4.xml --symptom judders --plug motor-x/motor",
     asking(or_loom(mating(true, false))), run_causes},
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
