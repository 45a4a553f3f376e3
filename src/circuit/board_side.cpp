// SPDX-License-Identifier: MIT
// What stands behind a pin. The table is in assembly.h.
#include <algorithm>

#include "circuit/assembly.h"

namespace plugward::circuit {
namespace {

using What = Change::What;

Knob pin_knob(const TouchedPin& p) {
  Knob knob;
  knob.at.header = p.header;
  knob.at.pin = p.number;
  knob.on_board = true;
  return knob;
}

/// The rail of the pin: stated, or chosen by a jumper whose position is stated.
int rail_of(const Circuit& c, const Pin& pin) {
  if (!pin.jumper.empty()) {
    const auto stated = c.fitting->jumpers.find(pin.jumper);
    return stated == c.fitting->jumpers.end() ? -1 : rail_index(*c.fitting->board, stated->second);
  }
  return rail_index(*c.fitting->board, pin.rail);
}

void add_pull(Circuit& c, const TouchedPin& p) {
  const auto& pull = p.pin->pull;
  if (!pull || (pull->up && p.rail < 0)) return;
  const Node far = pull->up ? c.rails[static_cast<std::size_t>(p.rail)] : 0;
  add_resistor(c, p.node, far, pull->ohms.value > 0.0 ? pull->ohms.value : c.defaults.pull.value);
}

void add_clamp(Circuit& c, TouchedPin& p) {
  const auto& clamp = p.pin->clamp;
  const int rail = clamp ? rail_index(*c.fitting->board, clamp->rail) : -1;
  if (rail < 0) return;
  p.clamp_diode = add_diode(c, p.node, c.rails[static_cast<std::size_t>(rail)], clamp->drop.value,
                            c.defaults.diode.value);
  p.ground_diode = add_diode(c, 0, p.node, clamp->drop.value, c.defaults.diode.value);
}

/// One resistance to a source of its own, one to the rail when the high level is not stated.
void add_output(Circuit& c, TouchedPin& p) {
  const Pin& pin = *p.pin;
  const double ohms = pin.ohms.value_or(c.defaults.output).value;
  const bool open_drain = pin.drive == DriveKind::OpenDrain;
  Knob knob = pin_knob(p);

  Locus own;
  own.header = p.header;
  own.pin = p.number;
  const int level = add_fixed(c, own, 0.0);
  const int to_level =
      add_resistor(c, p.node, c.network.fixed[static_cast<std::size_t>(level)].node, open_circuit);
  int to_rail = -1;
  if (!open_drain && !pin.high && p.rail >= 0) {
    to_rail = add_resistor(c, p.node, c.rails[static_cast<std::size_t>(p.rail)], open_circuit);
  }
  const auto choose = [&](Position position, double level_ohms, double volts, double rail_ohms) {
    Choice choice;
    choice.position = position;
    choice.changes = {{What::ResistorOhms, to_level, level_ohms}, {What::FixedVolts, level, volts}};
    if (to_rail >= 0) choice.changes.push_back({What::ResistorOhms, to_rail, rail_ohms});
    choice.rest = false;
    knob.choices.push_back(choice);
  };
  // An open-drain output that does not pull low is as high as it gets.
  choose(open_drain ? Position::High : Position::Off, open_circuit, 0.0, open_circuit);
  const double low = pin.low.value_or(c.defaults.output_low).value;
  choose(Position::Low, ohms, 0.0, open_circuit);
  if (low != 0.0) choose(Position::Low, ohms, low, open_circuit);
  if (!open_drain && pin.high) {
    choose(Position::High, ohms, pin.high->min.value, open_circuit);
    if (pin.high->max != pin.high->min) choose(Position::High, ohms, pin.high->max.value, open_circuit);
  } else if (to_rail >= 0) {
    choose(Position::High, open_circuit, 0.0, ohms);
  }
  const bool high_at_rest =
      !open_drain && pin.on_at_reset.value_or(false) && knob.choices.back().position == Position::High;
  for (Choice& choice : knob.choices) {
    choice.rest = high_at_rest ? choice.position == Position::High : &choice == &knob.choices.front();
  }
  knob.base = static_cast<int>(std::find_if(knob.choices.begin(), knob.choices.end(),
                                            [](const Choice& choice) { return choice.rest; }) -
                               knob.choices.begin());
  p.knob = add_knob(c, std::move(knob));
}

void add_switched(Circuit& c, TouchedPin& p) {
  const int channel = add_resistor(c, p.node, 0, open_circuit);
  add_diode(c, 0, p.node, c.defaults.body_diode.value, c.defaults.diode.value);
  Knob knob = pin_knob(p);
  const bool on = p.pin->on_at_reset.value_or(false);
  knob.base = on ? 1 : 0;
  const double ohms = p.pin->ohms.value_or(c.defaults.low_side_switch).value;
  knob.choices = {{Position::Off, !on, 0, {{What::ResistorOhms, channel, open_circuit}}},
                  {Position::On, on, 0, {{What::ResistorOhms, channel, ohms}}}};
  p.knob = add_knob(c, std::move(knob));
}

void add_bridge_half(Circuit& c, TouchedPin& p) {
  if (p.rail < 0) return;
  const double ohms = c.rail(p.rail).volts.max.value / p.pin->limit.value_or(c.defaults.coil_limit).value;
  if (!(ohms > 0.0)) return;
  const int down = add_resistor(c, p.node, 0, open_circuit);
  const int up = add_resistor(c, p.node, c.rails[static_cast<std::size_t>(p.rail)], open_circuit);
  Knob knob = pin_knob(p);
  const auto choose = [&](Position position, double down_ohms, double up_ohms) {
    knob.choices.push_back({position,
                            position == Position::Off,
                            0,
                            {{What::ResistorOhms, down, down_ohms}, {What::ResistorOhms, up, up_ohms}}});
  };
  choose(Position::Off, open_circuit, open_circuit);
  choose(Position::Low, ohms, open_circuit);
  choose(Position::High, open_circuit, ohms);
  p.knob = add_knob(c, std::move(knob));
}

}  // namespace

void add_pin(Circuit& c, int header, int number) {
  TouchedPin p;
  p.header = header;
  p.number = number;
  p.pin = &c.fitting->board->headers[static_cast<std::size_t>(header)].pin(number);
  p.rail = rail_of(c, *p.pin);
  if (p.pin->function == PinFunction::Ground) {
    p.node = 0;
  } else if (p.pin->function == PinFunction::Supply && p.rail >= 0) {
    p.node = c.rails[static_cast<std::size_t>(p.rail)];
  } else {
    Locus locus;
    locus.header = header;
    locus.pin = number;
    p.node = add_node(c, locus);
  }
  switch (p.pin->function) {
    case PinFunction::Output:
      add_pull(c, p);
      add_clamp(c, p);
      add_output(c, p);
      break;
    case PinFunction::Input:
      add_pull(c, p);
      add_clamp(c, p);
      break;
    case PinFunction::Switched:
      add_switched(c, p);
      break;
    case PinFunction::Coil:
      add_bridge_half(c, p);
      break;
    case PinFunction::Supply:
    case PinFunction::Ground:
    case PinFunction::Unused:
    case PinFunction::Unknown:
      break;
  }
  c.pins.push_back(p);
}

}  // namespace plugward::circuit
