// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/causes_test.cpp.
#include "plan/fault_words.h"

#include "base/format.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

const Plug& plug_at(const Fitting& whole, int plug) {
  return whole.harness->plugs[at(plug)];
}

const Lead& lead_at(const Fitting& whole, int plug, int lead) {
  return plug_at(whole, plug).leads[at(lead)];
}

int header_at(const Fitting& whole, int plug) {
  const int placed = placement_of_plug(whole, plug);
  return placed < 0 ? -1 : whole.placements[at(placed)].header;
}

/// "WH lead in cavity 1".
std::string lead_words(const Fitting& whole, int plug, int lead) {
  const Lead& l = lead_at(whole, plug, lead);
  return format("{} lead in cavity {}", colour_words(l), l.cavity);
}

/// The pin that the lead should meet: "J5.1".
std::string home_pin(const Fitting& whole, int plug, int lead) {
  const int header = header_at(whole, plug);
  if (header < 0) return "no pin";
  const Seating home = home_seating(plug_at(whole, plug), header, *whole.board);
  return pin_words(whole, PinRef{header, home.pin_of_cavity[at(lead_at(whole, plug, lead).cavity) - 1]});
}

/// "switched output J11.2", "driver behind J2".
std::string stage_words(const Fitting& whole, PinRef ref) {
  const Pin& pin = whole.board->headers[at(ref.header)].pin(ref.number);
  if (pin.function == PinFunction::Coil)
    return format("the motor driver behind {}", header_words(whole, ref.header));
  const std::string_view kind = pin.function == PinFunction::Switched ? "switched output" : "output";
  return format("the {} {} on {}", kind, pin_words(whole, ref), header_words(whole, ref.header));
}

}  // namespace

std::string header_words(const Fitting& fitting, int header) {
  const Header& h = fitting.board->headers[at(header)];
  return h.label.empty() || h.label == h.id ? h.id : format("{} ({})", h.id, h.label);
}

std::string pin_words(const Fitting& fitting, PinRef pin) {
  return pin.header < 0 ? "ground" : format("{}.{}", fitting.board->headers[at(pin.header)].id, pin.number);
}

std::string colour_words(const Lead& lead) {
  return lead.mark.empty() ? to_code(lead.colour) : format("{} '{}'", to_code(lead.colour), lead.mark);
}

std::string seat_words(const Fitting& whole, int plug, const MachineFault& fault) {
  const int home = header_at(whole, plug);
  const bool mine = fault.plug == plug;
  if (mine && fault.kind == FaultKind::PlugOff)
    return format("not pushed home on {}", header_words(whole, home));
  if (mine && fault.kind == FaultKind::Misseated)
    return format("{} on {}", fault.seating->words, header_words(whole, home));
  if (mine && fault.kind == FaultKind::OtherHeader)
    return format("on {}", header_words(whole, fault.seating->header));
  if (fault.kind == FaultKind::PlugsExchanged && (mine || fault.other_plug == plug))
    return format("on {}", header_words(whole, header_at(whole, mine ? fault.other_plug : fault.plug)));
  return format("home on {}", header_words(whole, home));
}

std::string what_is_wrong(const Fitting& whole, const MachineFault& f) {
  const std::string plug = f.plug < 0 ? "" : format("'{}'", plug_at(whole, f.plug).id);
  const auto lead = [&](int index) { return lead_words(whole, f.plug, index); };
  const auto colour = [&](int index) { return colour_words(lead_at(whole, f.plug, index)); };
  const auto cavity = [&](int index) { return lead_at(whole, f.plug, index).cavity; };
  switch (f.kind) {
    case FaultKind::LeadsExchanged:
      return format("two leads of {} are exchanged: {} sits in cavity {} instead of {}, and {} in {}", plug,
                    colour(f.lead), cavity(f.other_lead), cavity(f.lead), colour(f.other_lead),
                    cavity(f.lead));
    case FaultKind::LeadMoved:
      return format("the {} lead of {} sits in cavity {} instead of {}", colour(f.lead), plug, f.cavity,
                    cavity(f.lead));
    case FaultKind::Misseated:
    case FaultKind::OtherHeader:
    case FaultKind::PlugOff: {
      const std::string seat = seat_words(whole, f.plug, f);
      const bool other = f.kind == FaultKind::OtherHeader;
      return format("{} {} {}{}", plug, f.kind == FaultKind::PlugOff ? "is" : "sits", seat,
                    other ? format(" instead of {}", header_words(whole, header_at(whole, f.plug))) : "");
    }
    case FaultKind::LeadOpen:
      return format("the {} of {}, for {}, carries nothing: broken, or its contact is not seated",
                    lead(f.lead), plug, home_pin(whole, f.plug, f.lead));
    case FaultKind::SwitchOn:
      return format("{} conducts all the time", stage_words(whole, f.pin));
    case FaultKind::Setting:
      return format("the wiring of {} on {} is right; the firmware is set the other way round", plug,
                    header_words(whole, header_at(whole, f.plug)));
    case FaultKind::PlugsExchanged:
      return format("two plugs are exchanged: {} sits on {} and '{}' on {}", plug,
                    header_words(whole, header_at(whole, f.other_plug)), plug_at(whole, f.other_plug).id,
                    header_words(whole, header_at(whole, f.plug)));
    case FaultKind::WrongJumper:
      return format("jumper {} sits at {} instead of {}", f.jumper, f.rail, whole.jumpers.at(f.jumper));
    case FaultKind::LeadsTouch:
      return format("two leads of {} touch: {} ({}) and {} ({})", plug, lead(f.lead),
                    home_pin(whole, f.plug, f.lead), lead(f.other_lead),
                    home_pin(whole, f.plug, f.other_lead));
    case FaultKind::InputHeld:
      return format("the input {} on {} is damaged and holds its pin at ground", pin_words(whole, f.pin),
                    header_words(whole, f.pin.header));
    case FaultKind::OutputDead:
      return format("{} no longer conducts", stage_words(whole, f.pin));
    case FaultKind::RailMissing:
      return format("the board's {} rail has no volts", f.rail);
  }
  return "";
}

std::string how_it_comes(const Fitting& whole, const MachineFault& f) {
  switch (f.kind) {
    case FaultKind::LeadsExchanged:
      return "the housing was read from its other face, or its order is that of another board";
    case FaultKind::LeadMoved:
      return "the cavities were counted from the other end, or the order is that of another board";
    case FaultKind::Misseated:
      return "nothing on header and housing keeps the plug from going on like that, or the key was cut off";
    case FaultKind::LeadOpen:
      return "a contact not pushed in until it clicks, a crimp on the insulation, strands broken where the "
             "lead "
             "bends, or a device that is broken inside";
    case FaultKind::PlugOff:
      return "a plug that stands on its latch or was pulled by a tight cable";
    case FaultKind::SwitchOn:
      return "its transistor was destroyed, mostly by a short at the plug or by too large a load";
    case FaultKind::Setting:
      return "the setting was taken from another board, or from a switch that rests the other way";
    case FaultKind::OtherHeader:
    case FaultKind::PlugsExchanged:
      return "the headers look alike: same family, same number of pins";
    case FaultKind::WrongJumper:
      return "the jumper was left as it was delivered, or moved for another part";
    case FaultKind::LeadsTouch:
      return "a strand outside its crimp, or insulation crushed or chafed through";
    case FaultKind::InputHeld:
      return "too high a voltage once reached it";
    case FaultKind::OutputDead:
      return whole.board->headers[at(f.pin.header)].pin(f.pin.number).function == PinFunction::Coil
                 ? "the motor was plugged or unplugged under power, or the driver got too hot"
                 : "it was shorted or loaded beyond its limit once";
    case FaultKind::RailMissing:
      return "a fuse, a regulator that has switched itself off, or a supply lead that came loose";
  }
  return "";
}

std::string how_to_cure(const Fitting&, const MachineFault& f) {
  switch (f.kind) {
    case FaultKind::LeadsExchanged:
    case FaultKind::LeadMoved:
      return "move the contacts back, one at a time, and tug each";
    case FaultKind::Misseated:
    case FaultKind::PlugOff:
      return "power off, then seat the plug home, cavity 1 on pin 1";
    case FaultKind::LeadOpen:
      return "push the contact in until it clicks, or crimp a new one; then beep the lead while wiggling it; "
             "where it beeps through, measure the device by itself and fit another";
    case FaultKind::SwitchOn:
    case FaultKind::OutputDead:
    case FaultKind::InputHeld:
      return "use another header of the same kind, or have the board repaired; find what destroyed it first";
    case FaultKind::Setting:
      return "turn the setting round; no lead is to be moved";
    case FaultKind::OtherHeader:
    case FaultKind::PlugsExchanged:
      return "power off, then put the plug on its own header, and mark both";
    case FaultKind::WrongJumper:
      return "power off, then move the jumper";
    case FaultKind::LeadsTouch:
      return "crimp the contact anew or insulate the leads singly; look for what the short has damaged";
    case FaultKind::RailMissing:
      return "look for the fuse and the supply leads; unplug what may short the rail first";
  }
  return "";
}

}  // namespace plugward
