// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/causes_test.cpp: every error is carried out on the wires alone there, too.
#include "plan/machine_fault.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <set>

#include "plan/technique.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

const Plug& plug_at_index(const Fitting& fitting, int plug) {
  return fitting.harness->plugs[at(plug)];
}

/// In a housing of more positions only neighbours are mistaken for one another, or touch.
constexpr int few_positions = 4;

bool beside(const Plug& plug, int a, int b) {
  if (plug.positions <= few_positions) return true;
  const Place one = place_of(a, plug.positions, plug.rows, plug.numbering);
  const Place other = place_of(b, plug.positions, plug.rows, plug.numbering);
  return std::abs(one.column - other.column) <= 1 && std::abs(one.row - other.row) <= 1;
}

/// The list as it grows.
struct Enumeration {
  const Fitting& fitting;
  const std::vector<int>& taken;
  std::vector<MachineFault> list{};

  MachineFault& add(FaultKind kind, int plug) {
    MachineFault& fault = list.emplace_back();
    fault.kind = kind;
    fault.plug = plug;
    return fault;
  }

  void errors_of_leads(int index) {
    const Plug& plug = plug_at_index(fitting, index);
    const int count = static_cast<int>(plug.leads.size());
    const Family* family = fitting.catalogue->find(plug.family);
    const bool loose_contacts = family == nullptr || movable(*family);
    for (int a = 0; a < count; ++a) {
      if (plug.leads[at(a)].cavity < 1) continue;
      add(FaultKind::LeadOpen, index).lead = a;
      for (int cavity = 1; loose_contacts && cavity <= plug.positions; ++cavity) {
        if (plug.lead_in(cavity) != nullptr || !beside(plug, plug.leads[at(a)].cavity, cavity)) continue;
        MachineFault& moved = add(FaultKind::LeadMoved, index);
        moved.lead = a;
        moved.cavity = cavity;
      }
      for (int b = a + 1; b < count; ++b) {
        if (plug.leads[at(b)].cavity < 1) continue;
        if (!beside(plug, plug.leads[at(a)].cavity, plug.leads[at(b)].cavity)) continue;
        for (const FaultKind kind : {FaultKind::LeadsExchanged, FaultKind::LeadsTouch}) {
          if (kind == FaultKind::LeadsExchanged && !loose_contacts) continue;
          MachineFault& pair = add(kind, index);
          pair.lead = a;
          pair.other_lead = b;
        }
      }
    }
  }

  bool free(int header) const {
    return std::find(taken.begin(), taken.end(), header) == taken.end() &&
           std::none_of(fitting.placements.begin(), fitting.placements.end(),
                        [&](const Placement& p) { return p.header == header; });
  }

  bool fits(int plug, int header) const {
    return mate(plug_at_index(fitting, plug), fitting.board->headers[at(header)], *fitting.catalogue).kind ==
           MateKind::Fits;
  }

  void errors_of_place(const Placement& placed) {
    const Plug& plug = plug_at_index(fitting, placed.plug);
    add(FaultKind::PlugOff, placed.plug);
    for (const Seating& seating : seatings(plug, placed.header, *fitting.board, *fitting.catalogue)) {
      if (seating.kind != SeatingKind::Home) add(FaultKind::Misseated, placed.plug).seating = seating;
    }
    for (int header = 0; header < static_cast<int>(fitting.board->headers.size()); ++header) {
      if (!free(header) || !fits(placed.plug, header)) continue;
      add(FaultKind::OtherHeader, placed.plug).seating = home_seating(plug, header, *fitting.board);
    }
    for (const Placement& other : fitting.placements) {
      if (other.plug <= placed.plug || !fits(placed.plug, other.header) || !fits(other.plug, placed.header))
        continue;
      add(FaultKind::PlugsExchanged, placed.plug).other_plug = other.plug;
    }
  }

  void errors_behind(const Placement& placed, int number) {
    const Pin& pin = fitting.board->headers[at(placed.header)].pin(number);
    const auto stage = [&](FaultKind kind) { add(kind, placed.plug).pin = {placed.header, number}; };
    if (pin.function == PinFunction::Switched) stage(FaultKind::SwitchOn);
    if (pin.function == PinFunction::Input) stage(FaultKind::InputHeld);
    if (pin.function == PinFunction::Switched || pin.function == PinFunction::Output)
      stage(FaultKind::OutputDead);
    // A motor's driver is one part: which of its ends is dead makes no difference to the hand.
    const bool told = std::any_of(list.begin(), list.end(), [&](const MachineFault& f) {
      return f.kind == FaultKind::OutputDead && f.pin.header == placed.header;
    });
    if (pin.function == PinFunction::Coil && !told) stage(FaultKind::OutputDead);
  }

  void errors_of_the_board(const std::set<std::string>& jumpers, const std::set<std::string>& rails) {
    for (const Jumper& jumper : fitting.board->jumpers) {
      const auto stated = fitting.jumpers.find(jumper.id);
      if (!jumpers.contains(jumper.id) || stated == fitting.jumpers.end()) continue;
      for (const std::string& rail : jumper.rails) {
        if (rail == stated->second) continue;
        MachineFault& fault = add(FaultKind::WrongJumper, -1);
        fault.jumper = jumper.id;
        fault.rail = rail;
      }
    }
    for (const Rail& rail : fitting.board->rails) {
      if (rails.contains(rail.id)) add(FaultKind::RailMissing, -1).rail = rail.id;
    }
  }
};

}  // namespace

std::string_view to_word(FaultKind kind) {
  constexpr std::array<std::string_view, 14> words{
      "leads-exchanged", "lead-moved", "misseated",    "lead-open",       "plug-off",
      "switch-on",       "setting",    "other-header", "plugs-exchanged", "wrong-jumper",
      "leads-touch",     "input-held", "output-dead",  "rail-missing"};
  return words[static_cast<std::size_t>(kind)];
}

int placement_of_plug(const Fitting& fitting, int plug) {
  for (std::size_t i = 0; i < fitting.placements.size(); ++i) {
    if (fitting.placements[i].plug == plug) return static_cast<int>(i);
  }
  return -1;
}

std::vector<MachineFault> possible_faults(const Fitting& fitting, const std::vector<int>& taken) {
  Enumeration all{fitting, taken};
  std::set<std::string> jumpers, rails;
  for (const Placement& placed : fitting.placements) {
    const Plug& plug = plug_at_index(fitting, placed.plug);
    all.errors_of_leads(placed.plug);
    all.errors_of_place(placed);
    const Seating home = home_seating(plug, placed.header, *fitting.board);
    for (const Lead& lead : plug.leads) {
      const int number = lead.cavity < 1 ? 0 : home.pin_of_cavity[at(lead.cavity) - 1];
      if (number == 0) continue;
      all.errors_behind(placed, number);
      const Pin& pin = fitting.board->headers[at(placed.header)].pin(number);
      if (!pin.jumper.empty()) jumpers.insert(pin.jumper);
      const auto stated = fitting.jumpers.find(pin.jumper);
      if (stated != fitting.jumpers.end()) rails.insert(stated->second);
      if (!pin.rail.empty()) rails.insert(pin.rail);
    }
    all.add(FaultKind::Setting, placed.plug);
  }
  all.errors_of_the_board(jumpers, rails);
  return std::move(all.list);
}

FaultyMachine::FaultyMachine(const Fitting& whole)
    : FaultyMachine(whole, [] {
        MachineFault none;
        none.kind = FaultKind::Setting;
        return none;
      }()) {}

FaultyMachine::FaultyMachine(const Fitting& whole, const MachineFault& fault) : fitting(whole) {
  held.resize(whole.harness->plugs.size());
  std::vector<std::optional<Seating>> seating_of(held.size());
  for (const Placement& p : whole.placements) {
    const Plug& plug = plug_at_index(whole, p.plug);
    seating_of[at(p.plug)] = home_seating(plug, p.header, *whole.board);
    for (std::size_t i = 0; i < plug.leads.size(); ++i) {
      if (plug.leads[i].cavity > 0) held[at(p.plug)].push_back({static_cast<int>(i), plug.leads[i].cavity});
    }
  }
  const auto contact_of = [&](int lead) {
    auto& list = held[at(fault.plug)];
    return std::find_if(list.begin(), list.end(), [&](const HeldContact& h) { return h.lead == lead; });
  };
  switch (fault.kind) {
    case FaultKind::LeadsExchanged:
      std::swap(contact_of(fault.lead)->cavity, contact_of(fault.other_lead)->cavity);
      break;
    case FaultKind::LeadMoved:
      contact_of(fault.lead)->cavity = fault.cavity;
      break;
    case FaultKind::LeadOpen:
      held[at(fault.plug)].erase(contact_of(fault.lead));
      break;
    case FaultKind::LeadsTouch:  // the one lead reaches the pin of the other as well
      held[at(fault.plug)].push_back({fault.lead, contact_of(fault.other_lead)->cavity});
      break;
    case FaultKind::PlugOff:
      seating_of[at(fault.plug)].reset();
      break;
    case FaultKind::Misseated:
    case FaultKind::OtherHeader:
      seating_of[at(fault.plug)] = fault.seating;
      break;
    case FaultKind::PlugsExchanged:
      std::swap(seating_of[at(fault.plug)]->header, seating_of[at(fault.other_plug)]->header);
      break;
    case FaultKind::WrongJumper:
      fitting.jumpers[fault.jumper] = fault.rail;
      break;
    case FaultKind::SwitchOn:
    case FaultKind::InputHeld:
    case FaultKind::OutputDead:
    case FaultKind::RailMissing:
      change_board(fault);
      break;
    case FaultKind::Setting:
      break;
  }
  touch_pins(seating_of);
}

void FaultyMachine::change_board(const MachineFault& fault) {
  board_ = std::make_unique<Board>(*fitting.board);
  fitting.board = board_.get();
  if (fault.kind == FaultKind::RailMissing) {
    for (Rail& rail : board_->rails) {
      if (rail.id == fault.rail) rail.volts = {Volts(0), Volts(0)};
    }
    for (Header& header : board_->headers) {
      for (Pin& pin : header.pins) {
        if (pin.function == PinFunction::Output && pin.rail == fault.rail) pin.function = PinFunction::Unused;
      }
    }
    return;
  }
  Pin& pin = board_->headers[at(fault.pin.header)].pins[at(fault.pin.number) - 1];
  if (fault.kind == FaultKind::SwitchOn) {
    pin.function = PinFunction::Ground;
  } else if (fault.kind == FaultKind::OutputDead) {
    pin.function = PinFunction::Unused;
  } else {  // an input stays one, with next to nothing between it and ground
    pin.pull = Pull{false, Ohms(1.0), {}};
  }
}

void FaultyMachine::touch_pins(const std::vector<std::optional<Seating>>& seating_of) {
  for (const Placement& p : fitting.placements) {
    const auto& seating = seating_of[at(p.plug)];
    if (!seating) continue;
    for (const HeldContact& h : held[at(p.plug)]) {
      const int pin = seating->pin_of_cavity[at(h.cavity) - 1];
      if (pin != 0) contacts.push_back({p.plug, h.lead, seating->header, pin});
    }
  }
}

}  // namespace plugward
