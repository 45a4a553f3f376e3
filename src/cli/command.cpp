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

/// All forms of one verdict.
constexpr Takes in_every_form(Takes takes) {
  takes.csv = takes.sarif = takes.papers = true;
  return takes;
}

constexpr Takes measuring(Takes takes) {
  takes.measured = true;
  return takes;
}

constexpr Takes watched(Takes takes) {
  takes.watch = true;
  return takes;
}

constexpr auto commands = std::to_array<Command>({
    {"check",
     "may this cable go on this board? verdict and findings",
     in_every_form(watched(or_loom(measuring(mating(true, false))))),
     run_check,
     {{{"A probe with two plugs, each on a header: REPIN",
        "plugward check boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --at trigger=J10 "
        "--jumper "
        "JP2=5V",
        ExitStatus::NotFine},
       {"A whole machine as it stands", "plugward check harnesses/wren-a4.xml", ExitStatus::Fine},
       {"The same for a program", "plugward check harnesses/wren-a4.xml --format json", ExitStatus::Fine}}}},
    {"start",
     "a new description from a few words, or by question and answer",
     {.words = "KIND",
      .words_say = "fan, leds, motor ...; or 'board' and its headers, J5:xh-2.50:3; nothing: asks",
      .fewest = 0,
      .most = 201,
      .start = true},
     run_start,
     {{{"A lead of three colours, of which nothing else is known",
        "plugward start leds --seen RD,GN,WH --pitch 2.54 -o my-leds.xml"},
       {"A fan of which the label and two leads were read",
        "plugward start fan --seen BK=minus,RD=plus,YE --known needs=24V --known draws=0.08A -o my-fan.xml"},
       {"A board with two headers", "plugward start board J5:xh-2.50:3:limit J6:?:2:fan -o my-board.xml"}}}},
    {"repin",
     "which contacts to move, step by step, with cautions and tests",
     with(measuring(mating(true, false)), false, true),
     run_repin,
     {{{"The steps for one plug",
        "plugward repin boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --jumper JP2=5V"},
       {"A lead of 150 mm between, where the cable must stay as it is",
        "plugward repin boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --jumper JP2=5V "
        "--adapter "
        "--length '150 mm'"}}}},
    {"draw",
     "labelled pictures: board, headers, housings now and then, moves",
     watched(mating(false, true)),
     run_draw,
     {{{"One plug, its header and the moves",
        "plugward draw boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --plug control -o "
        "kite.svg"},
       {"The whole board, then each plug, as pages",
        "plugward draw boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --at trigger=J10 -o "
        "kite.pdf"}}}},
    {"place",
     "the best headers of a board for all plugs at once, and the runner-up",
     mating(true, false),
     run_place,
     {{{"Where the plugs of two cables go best; contacts are to be moved",
        "plugward place boards/heron-m7.xml harnesses/kite-probe.xml harnesses/limit-switch.xml --jumper "
        "JP2=5V",
        ExitStatus::NotFine}}}},
    {"parts",
     "what to buy for the plan: housings, contacts, components, tools",
     with(mating(true, false), true, true),
     run_parts,
     {{{"A list for a spreadsheet",
        "plugward parts boards/heron-m7.xml harnesses/kite-probe.xml --at control=J9 --jumper JP2=5V "
        "--format "
        "csv -o parts.csv"}}}},
    {"find",
     "which headers of which boards take this harness, best first",
     {.words = "FILE",
      .words_say = "one or more harness files",
      .fewest = 1,
      .most = 64,
      .jumpers = true,
      .families = true,
      .format = true,
      .folders = true},
     run_find,
     {{{"Every board of a folder and the folders in it",
        "plugward find harnesses/kite-probe.xml --in boards"}}}},
    {"swap",
     "move a whole machine to another board: plan, order of work, record, way back",
     {.words = "LOOM",
      .words_say = "the loom file of the machine as it stands",
      .fewest = 1,
      .most = 1,
      .families = true,
      .format = true,
      .loom = true,
      .swap = true,
      .record = true},
     run_swap,
     {{{"The plan; two plugs do not go over", "plugward swap harnesses/wren-a4.xml --to boards/heron-m7.xml",
        ExitStatus::NotFine},
       {"The same, and the machine as it will be, written into the folder 'refit'",
        "plugward swap harnesses/wren-a4.xml --to boards/heron-m7.xml --record refit",
        ExitStatus::NotFine}}}},
    {"labels",
     "flags to print for every cable of a machine: from, to, pins, key",
     {.words = "LOOM",
      .words_say = "the loom file of the machine",
      .fewest = 1,
      .most = 1,
      .families = true,
      .loom = true,
      .swap = true,
      .flags = true},
     run_labels,
     {{{"Flags that name the old header and the new one",
        "plugward labels harnesses/wren-a4.xml --to boards/heron-m7.xml -o flags.pdf"}}}},
    {"sheet",
     "the paper for the bench: pictures, steps with boxes, test card, settings, parts",
     watched(sheets(or_loom(measuring(mating(false, false))))),
     run_sheet,
     {{{"The move of a machine, to print",
        "plugward sheet harnesses/wren-a4.xml --to boards/heron-m7.xml --date 2026-11-25 -o wren.pdf"},
       {"One probe, for a tablet, written anew whenever a file is saved",
        "plugward sheet boards/heron-m7.xml harnesses/kite-probe.xml --place -o kite.html --watch"}}}},
    {"compare",
     "two states of a machine, or two descriptions of a board: what differs",
     {.words = "LOOM",
      .words_say = "two loom files: the old state and the new one; or two board files",
      .fewest = 2,
      .most = 2,
      .families = true,
      .format = true},
     run_compare,
     {{{"Before and after the move that 'swap --record refit' wrote down",
        "plugward compare harnesses/wren-a4.xml refit/loom.xml"},
       {"Two boards side by side, with what settles each difference",
        "plugward compare boards/heron-a4.xml boards/heron-m7.xml"}}}},
    {"cable",
     "what a cable with two ends is: straight, crossed, null modem, split pairs",
     {.words = "FILE",
      .words_say = "the harness file of a cable; several: joined end to end in this order",
      .fewest = 1,
      .most = 16,
      .families = true,
      .format = true},
     run_cable,
     {{{"A network cable, and which pair goes where", "plugward cable harnesses/standard/t568-crossover.xml"},
       {"A null modem over a null modem is straight",
        "plugward cable harnesses/standard/null-modem.xml harnesses/standard/null-modem.xml"}}}},
    {"causes",
     "from what is seen on a machine back to the wiring errors that make it",
     asking(or_loom(mating(true, false))),
     run_causes,
     {{{"What could be seen at all", "plugward causes harnesses/wren-a4.xml"},
       {"Why a motor judders",
        "plugward causes harnesses/wren-a4.xml --symptom judders --plug motor-x/motor"}}}},
    {"lint",
     "the descriptions themselves: every fault of every file in one run",
     watched({.words = "FILE",
              .words_say = "board, harness, loom and family files",
              .fewest = 1,
              .most = 1000000,
              .families = true,
              .format = true,
              .sarif = true}),
     run_lint,
     {{{"Two files", "plugward lint boards/heron-m7.xml harnesses/kite-probe.xml"},
       {"Again whenever one of them is saved",
        "plugward lint boards/heron-m7.xml harnesses/kite-probe.xml --watch"}}}},
    {"list",
     "what plugward knows: families, functions, colours, gauges, rules or schemas",
     {.words = "WHAT",
      .words_say = "families [FAMILY], functions, colours, gauges, rules or schemas [NAME]",
      .fewest = 1,
      .most = 2,
      .families = true},
     run_list,
     {{{"All connector families", "plugward list families"},
       {"What is known of one", "plugward list families xh-2.50"}}}},
    {"explain",
     "one rule at length: why it matters, an example, the cure",
     {.words = "RULE", .words_say = "the word in [...] behind a message", .fewest = 1, .most = 1},
     run_explain,
     {{{"The rule behind a message that ends in [back-feed]", "plugward explain back-feed"}}}},
});

}  // namespace

std::span<const Command> all_commands() {
  return commands;
}

std::span<const Example> Command::shown_examples() const {
  std::size_t count = 0;
  while (count < examples.size() && !examples[count].line.empty()) ++count;
  return std::span(examples).first(count);
}

}  // namespace plugward
