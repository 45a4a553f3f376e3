// SPDX-License-Identifier: MIT
// A whole machine from a loom of text or of the shipped files, and a new board to move it to.
//
//   const Machine wren("harnesses/wren-a4.xml");
//   const Fitting fitting = wren.fitting();
//   const auto plan = plan_by_hand(fitting, board, placements, {});
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/file.h"
#include "plan/loom_bench.h"
#include "plan/swap.h"
#include "reader/descriptions.h"

namespace plugward::test {

/// Reads the loom at `path`, from `texts` where they have the path and else from the shipped files.
struct Machine {
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  Description description;
  LoomBench bench;

  explicit Machine(const std::string& path, const std::map<std::string, std::string>& texts = {}) {
    add_builtin_families(catalogue);
    const auto text_at = [&](const std::string& at) {
      const auto found = texts.find(at);
      return found == texts.end() ? read_file(std::string(PLUGWARD_SOURCE_DIR) + "/" + at) : found->second;
    };
    description = read_description(sources, sources.add(path, text_at(path)), catalogue, diagnostics, {},
                                   [&](const std::string& at, std::size_t) {
                                     return OpenedFile{sources.add(at, text_at(at)), ""};
                                   });
    REQUIRE_MESSAGE(description.loom_files, faults());
    bench = loom_bench(loom(), files());
  }
  Machine(const Machine&) = delete;
  Machine& operator=(const Machine&) = delete;

  const Loom& loom() const { return *description.loom; }
  const LoomFiles& files() const { return *description.loom_files; }
  Fitting fitting() const { return loom_fitting(files(), bench, catalogue); }
  Assessment assessment() const { return assess_loom(loom(), bench, fitting()); }
  std::string faults() const {
    std::string all;
    for (const Diagnostic& d : diagnostics.all())
      all += place_name(sources, d.span) + ": " + d.message + "\n";
    return all;
  }
};

struct NewBoard {
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  Description description;

  explicit NewBoard(const std::string& text) {
    add_builtin_families(catalogue);
    description = read_description(sources, sources.add("board.xml", text), catalogue, diagnostics);
    REQUIRE(description.board);
  }
  const Board& board() const { return *description.board; }
};

/// The move of these plugs to these headers, with what is advised carried out; the others find no place.
/// `machine` and `board` must outlive it.
inline std::unique_ptr<SwapPlan> plan_by_hand(const Fitting& machine, const Board& board,
                                              const std::vector<Placement>& placements,
                                              const std::map<std::string, std::string>& jumpers) {
  auto plan = std::make_unique<SwapPlan>();
  plan->machine = &machine;
  plan->board = &board;
  plan->housed = *machine.harness;
  plan->before_moves = {&board, &plan->housed, machine.catalogue, placements, jumpers};
  plan->advice = advise(plan->before_moves, {.wrong_seatings = false, .softer = false});
  plan->harness = plan->advice.cured  ? *plan->advice.cured
                  : plan->advice.plan ? plan->advice.plan->harness
                                      : plan->housed;
  plan->after = plan->before_moves;
  plan->after.harness = &plan->harness;
  plan->result = assess(plan->after);
  const auto header_in = [](const std::vector<Placement>& list, int plug) -> std::optional<int> {
    const auto found =
        std::find_if(list.begin(), list.end(), [&](const Placement& p) { return p.plug == plug; });
    return found == list.end() ? std::nullopt : std::optional(found->header);
  };
  bool first = true;
  for (int plug = 0; plug < static_cast<int>(machine.harness->plugs.size()); ++plug) {
    PlugTransfer one;
    one.plug = plug;
    one.from = header_in(machine.placements, plug);
    one.to = header_in(placements, plug);
    one.kind = one.to ? Transfer::Straight : Transfer::NoPlace;
    if (one.to && std::exchange(first, false)) one.cures = plan->advice.cures;
    plan->plugs.push_back(std::move(one));
  }
  for (const Jumper& jumper : board.jumpers) {
    JumperChoice choice;
    choice.jumper = jumper.id;
    const auto chosen = jumpers.find(jumper.id);
    if (chosen != jumpers.end()) choice.rail = chosen->second;
    plan->jumpers.push_back(std::move(choice));
  }
  for (int h = 0; h < static_cast<int>(board.headers.size()); ++h) {
    const bool used =
        std::any_of(placements.begin(), placements.end(), [&](const Placement& p) { return p.header == h; });
    if (!used) plan->free_headers.push_back(h);
  }
  return plan;
}

/// A printer of text: a 24 V sensor whose output takes a divider on the new board, a fan whose contacts are
/// exchanged there, and a switch for which it has no header. Its supply sits on J9.
inline std::map<std::string, std::string> small_machine() {
  const auto board = [](const std::string& id, const std::string& headers) {
    return "<board id='" + id + "' title='Board " + id +
           "' width='100 mm' height='80 mm' evidence='e'><evidence id='e' kind='measurement'/>"
           "<rail id='24V' volts='24 V' limit='10 A'/><rail id='5V' volts='5 V' limit='2 A'/>"
           "<rail id='3V3' volts='3.3 V' limit='0.3 A'/><jumper id='JP' label='V' rails='5V 24V'/>" +
           headers + "</board>";
  };
  const auto header = [](const std::string& id, const std::string& use, const std::string& pins) {
    const auto count = std::count(pins.begin(), pins.end(), '<');
    return "<header id='" + id + "' label='" + use + "' use='" + use + "' family='xh-2.50' positions='" +
           std::to_string(count) + "'>" + pins + "</header>";
  };
  const std::string supply_in =
      header("J9", "supply", "<pin n='1' function='ground'/><pin n='2' function='supply' rail='24V'/>");
  const std::string old_input =
      "<pin n='3' function='input' signal='limit' rail='24V' withstands='-0.3..30 V' low-below='5 V' "
      "high-above='15 V' pull='down' pull-ohms='10 kohm'/>";
  const std::string new_input =
      "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V' low-below='0.8 V' "
      "high-above='2 V'/>";
  const std::string power = "<pin n='1' function='supply' rail='24V'/><pin n='2' function='ground'/>";
  return {
      {"a.xml", board("old", header("J1", "limit", power + old_input) + header("J2", "fan", power) +
                                 header("J3", "filament",
                                        "<pin n='1' function='input' signal='filament' rail='3V3' "
                                        "withstands='-0.3..3.6 V' low-below='0.8 V' high-above='2 V' "
                                        "pull='up' pull-ohms='10 kohm'/><pin n='2' function='ground'/>") +
                                 supply_in)},
      {"b.xml",
       board("new", header("J5", "limit", power + new_input) +
                        header("J6", "fan",
                               "<pin n='1' function='ground'/><pin n='2' function='supply' jumper='JP'/>") +
                        header("J7", "spare", power) + supply_in)},
      {"sensor.xml",
       "<harness id='s' title='Sensor' evidence='e'><evidence id='e' kind='data-sheet'/><proximity id='s' "
       "use='limit' "
       "kind='sourcing' needs='10..30 V' draws='15 mA' drop='2 V' leak='0.1 mA' limit='0.2 A' rests='off'/>"
       "<plug id='p' family='xh-2.50' positions='3'><lead cavity='1' colour='BN' gauge='24 AWG' length='300 "
       "mm' to='V'/>"
       "<lead cavity='2' colour='BU' gauge='24 AWG' length='300 mm' to='G'/><lead cavity='3' colour='BK' "
       "gauge='24 AWG' length='300 mm' to='Q'/></plug></harness>"},
      {"fan.xml",
       "<harness id='f' title='Fan' evidence='e'><evidence id='e' kind='data-sheet'/><fan id='f' "
       "needs='20..28 V' draws='0.1 A' reversed='blocked'/>"
       "<plug id='fan' family='xh-2.50' positions='2'><lead cavity='1' colour='BK' gauge='24 AWG' "
       "length='300 mm' to='G'/>"
       "<lead cavity='2' colour='RD' gauge='24 AWG' length='300 mm' to='V'/></plug></harness>"},
      {"switch.xml",
       "<harness id='w' title='Switch' evidence='e'><evidence id='e' kind='data-sheet'/><dry-switch id='w' "
       "use='filament' rests='open'/>"
       "<plug id='p' family='xh-2.50' positions='2'><lead cavity='1' colour='WH' gauge='24 AWG' length='300 "
       "mm' to='A'/>"
       "<lead cavity='2' colour='BK' gauge='24 AWG' length='300 mm' to='B'/></plug></harness>"},
      {"old.xml",
       "<loom id='m' title='Machine' board='a.xml' evidence='photo' note='no. 3'><evidence id='photo' "
       "kind='photograph'/>"
       "<harness id='limit' file='sensor.xml'/><harness id='fan' file='fan.xml' note='spare at "
       "hand'/><harness id='filament' file='switch.xml'/>"
       "<fitted jumper='JP' rail='24V'/>"
       "<seat plug='limit/p' header='J1'/><seat plug='fan/fan' header='J2' leads='2 1'/><seat "
       "plug='filament/p' header='J3'/>"
       "<taken header='J9' note='leads of the supply'/></loom>"}};
}

}  // namespace plugward::test
