// SPDX-License-Identifier: MIT
#include "cli/placement.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "base/format.h"

namespace plugward {
namespace {

Header header(std::string id, std::string use, int positions, std::string label = "") {
  Header h;
  h.id = std::move(id);
  h.label = std::move(label);
  h.use = std::move(use);
  h.positions = positions;
  h.pins.resize(static_cast<std::size_t>(positions));
  return h;
}

/// A plug whose leads all go to the given device; -1: nobody knows where they go.
Plug plug(std::string id, int positions, int device) {
  Plug p;
  p.id = std::move(id);
  p.positions = positions;
  for (int cavity = 1; cavity <= positions; ++cavity) {
    Lead lead;
    lead.cavity = cavity;
    if (device >= 0) lead.to = TerminalRef{device, 0};
    p.leads.push_back(lead);
  }
  return p;
}

Device device(std::string id, std::string use) {
  Device d;
  d.id = std::move(id);
  d.use = std::move(use);
  d.terminals.resize(1);
  return d;
}

Board board_of(std::vector<Header> headers) {
  Board board;
  board.id = "b";
  board.headers = std::move(headers);
  return board;
}

Harness harness_of(std::vector<Device> devices, std::vector<Plug> plugs) {
  Harness harness;
  harness.id = "h";
  harness.devices = std::move(devices);
  harness.plugs = std::move(plugs);
  return harness;
}

/// "control=J9 trigger=J10", then "| note", then "! error".
std::string words(const Board& board, const Harness& harness, const std::vector<NamedValue>& at) {
  const PlacementChoice choice = choose_placements(board, harness, at);
  if (!choice.error.empty()) return "! " + choice.error;
  std::string text;
  for (const Placement& p : choice.placements) {
    text += format("{}{}={}", text.empty() ? "" : " ", harness.plugs[static_cast<std::size_t>(p.plug)].id,
                   board.headers[static_cast<std::size_t>(p.header)].id);
  }
  for (const std::string& note : choice.notes) text += " | " + note;
  return text;
}

}  // namespace

TEST_CASE("placement: one choice is taken, several are asked for") {
  const Board board =
      board_of({header("J1", "fan", 2, "FAN0"), header("J2", "fan", 2, "FAN1"), header("J3", "probe", 3),
                header("J4", "probe", 2), header("J5", "heater", 2)});
  const std::vector<Device> devices = {device("probe", "probe"), device("fan", "fan"),
                                       device("lamp", "lamp")};
  struct Row {
    const char* name;
    std::vector<Plug> plugs;
    std::vector<NamedValue> at;
    std::string expected;
  };
  const Row rows[] = {
      {"by use and positions", {plug("control", 3, 0), plug("trigger", 2, 0)}, {}, "control=J3 trigger=J4"},
      {"stated wins",
       {plug("control", 3, 0), plug("trigger", 2, 0)},
       {{"trigger", "J5"}},
       "control=J3 trigger=J5"},
      {"two headers",
       {plug("fan", 2, 1)},
       {},
       "! plug 'fan' may go on J1 (FAN0), J2 (FAN1): say which with --at fan=HEADER; 'plugward place' ranks "
       "them"},
      {"two headers, one taken", {plug("a", 2, 1), plug("b", 2, 1)}, {{"a", "J1"}}, "a=J1 b=J2"},
      {"two plugs for one header",
       {plug("a", 3, 0), plug("b", 3, 0)},
       {},
       "! two plugs, one of them 'b', may go on J3: say which with --at b=HEADER; 'plugward place' ranks "
       "them"},
      {"nothing for one of two",
       {plug("control", 3, 0), plug("lamp", 2, 2)},
       {},
       "control=J3 | plug 'lamp' is on no header: board 'b' has no free header with 2 positions and use "
       "'lamp'; "
       "--at lamp=HEADER places it, for example on J1 (FAN0), J2 (FAN1), J4, J5"},
      {"nothing for the only one",
       {plug("lamp", 7, 2)},
       {},
       "! plug 'lamp' is on no header: board 'b' has no free header with 7 positions and use 'lamp'; --at "
       "lamp=HEADER places it anyway, and there is no other plug to judge"},
      {"unknown leads go by all devices", {plug("mystery", 3, -1)}, {}, "mystery=J3"},
      {"no such plug",
       {plug("control", 3, 0)},
       {{"contrl", "J3"}},
       "! --at: harness 'h' has no plug 'contrl'; did you mean 'control'?"},
      {"no such header",
       {plug("control", 3, 0)},
       {{"control", "X99"}},
       "! --at: board 'b' has no header 'X99'; it has J1, J2, J3, J4, J5"},
      {"plug twice",
       {plug("control", 3, 0)},
       {{"control", "J3"}, {"control", "J4"}},
       "! '--at' names plug 'control' twice"},
      {"header twice",
       {plug("a", 3, 0), plug("b", 3, 0)},
       {{"a", "J3"}, {"b", "J3"}},
       "! '--at' puts two plugs on header 'J3'"},
      {"no plugs", {}, {}, "! harness 'h' has no plug"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(words(board, harness_of(devices, row.plugs), row.at) == row.expected);
  }
}

}  // namespace plugward
