// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/cure_test.cpp.
#include "plan/cure_build.h"

#include "base/format.h"
#include "judge/words.h"

namespace plugward {

Offer remedies(const Complaint& complaint) {
  const Finding& f = complaint.finding;
  if (f.weight == Weight::Note) return {};
  if (f.part == "lead") return lead_remedies(complaint);
  if (f.part == "far-end-feed") return {};
  switch (f.rule) {
    case Rule::Overvoltage:
    case Rule::ClampCurrent:
    case Rule::LevelHigh:
    case Rule::LevelLow:
    case Rule::FloatingInput:
      return f.at.pin > 0 ? input_remedies(complaint) : output_remedies(complaint);
    case Rule::SupplyTooHigh:
    case Rule::SupplyTooLow:
      return supply_remedies(complaint);
    default:
      return {};
  }
}

void add_buffer(Device& device, TerminalIndex from, TerminalIndex to, TerminalIndex plus, TerminalIndex minus,
                std::optional<bool> rests_high) {
  Receiver in;
  in.terminal = from;
  in.plus = plus;
  in.minus = minus;
  in.low_below = Volts(0.8);
  in.high_above = Volts(2.0);
  in.above_supply = Volts(0.5);
  device.parts.push_back(in);
  Driver out;
  out.terminal = to;
  out.plus = plus;
  out.minus = minus;
  out.kind = OutputKind::PushPull;
  out.drop = Volts(0.1);
  out.limit = Amps(0.004);
  out.rests_on = rests_high;
  device.parts.push_back(out);
}

void say_buffer(Remedy& r, const Fitting& fitting, const MetLead& lead, TerminalIndex plus,
                TerminalIndex minus) {
  const int device = lead.terminal.device;
  const std::string supply = terminal_name(fitting, {device, plus}),
                    ground = terminal_name(fitting, {device, minus});
  const auto volts = volts_at(fitting, {device, plus});
  r.cure.what = format("A level buffer of the 74HCT family in {}, fed from {}{}.", lead_words(fitting, lead),
                       supply, volts ? format(" ({})", to_text(*volts)) : "");
  r.cure.components.push_back({tr("level buffer"), tr("74HCT125 or another gate of the 74HCT family"),
                               tr("supply 4.5..5.5 V"),
                               format("in {}, near the receiving side", lead_words(fitting, lead))});
  r.cure.components.push_back({tr("capacitor"), "100 nF", tr("ceramic"),
                               format("across the buffer's supply pins, {} and {}", supply, ground)});
  r.cure.steps.push_back(
      format("cut {} near the receiving side; lead the giving end to the buffer's input and the "
             "receiving end to its output",
             lead_words(fitting, lead)));
  r.cure.steps.push_back(
      format("feed the buffer from {} and {}, with the capacitor across its supply pins; tie its "
             "enable and its unused inputs as its data sheet says",
             supply, ground));
}

std::string power_off_step() {
  return tr(
      "power off, mains plug pulled, every LED of the board dark; the plug stays off the board until all "
      "is built and measured");
}

std::string sleeve_step() {
  return tr(
      "solder, then insulate every joint by itself with heat-shrink sleeve; nothing may touch a neighbour "
      "or the frame");
}

std::string rating_words(Watts rating) {
  return format("{} or more", to_text(rating));
}

void add_resistor(Remedy& remedy, int device, TerminalIndex a, TerminalIndex b, Ohms ohms, Watts rating,
                  double tolerance) {
  auto& parts = remedy.harness.devices[static_cast<std::size_t>(device)].parts;
  parts.push_back(Resistor{a, b, ohms, rating, {}});
  remedy.resistors.push_back({device, static_cast<int>(parts.size()) - 1, tolerance});
}

void say_new_lead(Remedy& r, const Fitting& fitting, const EmptySeat& seat, std::string_view colour) {
  const Plug& plug = plug_of(fitting, seat.plug);
  const std::string pin = pin_name(fitting, seat.header, seat.pin);
  r.cure.components.push_back({tr("lead"), "",
                               format("{}, with a contact of family '{}'", colour, plug.family),
                               format("cavity {} of '{}', which meets {}", seat.cavity, plug.id, pin)});
  r.cure.steps.push_back(format("crimp a {} lead and seat it in cavity {} of '{}'{}: it meets {}", colour,
                                seat.cavity, plug.id, seat.later ? tr(", once the contacts have moved") : "",
                                pin));
}

}  // namespace plugward
