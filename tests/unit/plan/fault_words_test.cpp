// SPDX-License-Identifier: MIT
// Every kind of wiring error in words: what is wrong, how it comes about, what to do.
#include "plan/fault_words.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "support/bench.h"
#include "support/findings.h"

using namespace plugward;
using namespace plugward::test;

namespace {

/// A switch on J1, a motor on J2, a fan in no housing; J3 has a label of its own, J4 a jumper.
struct Machine {
  Bench bench{
      board_of(
          "<header id='J1' label='LIMIT X' use='limit' family='xh-2.50' positions='3'>"
          "<pin n='1' function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V' pull='up' "
          "pull-ohms='10 kohm'/><pin n='2' function='ground'/><pin n='3' function='unused'/></header>"
          "<header id='J2' use='motor' family='xh-2.50' positions='4'>"
          "<pin n='1' function='coil' coil='1' end='A'/><pin n='2' function='coil' coil='1' end='B'/>"
          "<pin n='3' function='coil' coil='2' end='A'/><pin n='4' function='coil' coil='2' end='B'/>"
          "</header>"
          "<header id='J3' label='J3' use='fan' family='xh-2.50' positions='2'>"
          "<pin n='1' function='switched' signal='fan'/><pin n='2' function='supply' jumper='JP'/></header>"
          "<header id='J4' use='servo' family='xh-2.50' positions='3'>"
          "<pin n='1' function='output' signal='servo' rail='5V'/></header>"),
      harness_of(
          "<dry-switch id='s' use='limit' rests='closed'/><motor id='m'/><fan id='f'/>"
          "<plug id='limit' family='xh-2.50' positions='3'>"
          "<lead cavity='1' colour='WH' to='s.A'/><lead cavity='2' colour='BK' to='s.B' mark='2'/></plug>"
          "<plug id='motor' family='xh-2.50' positions='4'><lead cavity='1' colour='RD' to='m.A1'/></plug>"
          "<plug id='fan' family='xh-2.50' positions='2'><lead cavity='1' colour='YE' to='f.V'/></plug>")};
  Fitting fitting = bench.fitting({{"limit", "J1"}, {"motor", "J2"}}, {{"JP", "24V"}});
};

MachineFault fault_of(FaultKind kind, int plug = -1, int lead = -1, int other_lead = -1) {
  MachineFault f;
  f.kind = kind;
  f.plug = plug;
  f.lead = lead;
  f.other_lead = other_lead;
  return f;
}

MachineFault at_pin(FaultKind kind, int header, int number) {
  MachineFault f = fault_of(kind);
  f.pin = {header, number};
  return f;
}

}  // namespace

TEST_CASE("wiring errors in words") {
  const Machine machine;
  const Fitting& fitting = machine.fitting;
  constexpr int limit = 0, motor = 1, fan = 2;
  const std::string exchanged_comes =
      "the housing was read from its other face, or its order is that of another board";
  const std::string back = "move the contacts back, one at a time, and tug each";
  const std::string looks_alike = "the headers look alike: same family, same number of pins";
  const std::string own_header = "power off, then put the plug on its own header, and mark both";
  const std::string seat_it = "power off, then seat the plug home, cavity 1 on pin 1";
  const std::string other_stage =
      "use another header of the same kind, or have the board repaired; find what destroyed it first";
  const std::string open_comes =
      "a contact not pushed in until it clicks, a crimp on the insulation, strands broken where the lead "
      "bends, or a device that is broken inside";
  const std::string open_cure =
      "push the contact in until it clicks, or crimp a new one; then beep the lead while wiggling it; where "
      "it "
      "beeps through, measure the device by itself and fit another";

  MachineFault moved = fault_of(FaultKind::LeadMoved, limit, 1);
  moved.cavity = 3;
  MachineFault shifted = fault_of(FaultKind::Misseated, limit);
  shifted.seating = Seating{};
  shifted.seating->header = 0;
  shifted.seating->words = "turned by 180 degrees";
  MachineFault elsewhere = fault_of(FaultKind::OtherHeader, limit);
  elsewhere.seating = Seating{};
  elsewhere.seating->header = 3;
  MachineFault plugs = fault_of(FaultKind::PlugsExchanged, limit);
  plugs.other_plug = motor;
  MachineFault jumper = fault_of(FaultKind::WrongJumper);
  jumper.jumper = "JP";
  jumper.rail = "5V";
  MachineFault rail = fault_of(FaultKind::RailMissing);
  rail.rail = "24V";

  struct Row {
    MachineFault fault;
    std::string word, wrong, comes, cure;
  };
  const std::vector<Row> rows = {
      {fault_of(FaultKind::LeadsExchanged, limit, 0, 1), "leads-exchanged",
       "two leads of 'limit' are exchanged: WH sits in cavity 2 instead of 1, and BK '2' in 1",
       exchanged_comes, back},
      {moved, "lead-moved", "the BK '2' lead of 'limit' sits in cavity 3 instead of 2",
       "the cavities were counted from the other end, or the order is that of another board", back},
      {shifted, "misseated", "'limit' sits turned by 180 degrees on J1 (LIMIT X)",
       "nothing on header and housing keeps the plug from going on like that, or the key was cut off",
       seat_it},
      {fault_of(FaultKind::LeadOpen, limit, 0), "lead-open",
       "the WH lead in cavity 1 of 'limit', for J1.1, carries nothing: broken, or its contact is not seated",
       open_comes, open_cure},
      {fault_of(FaultKind::LeadOpen, fan, 0), "lead-open",
       "the YE lead in cavity 1 of 'fan', for no pin, carries nothing: broken, or its contact is not seated",
       open_comes, open_cure},
      {fault_of(FaultKind::PlugOff, limit), "plug-off", "'limit' is not pushed home on J1 (LIMIT X)",
       "a plug that stands on its latch or was pulled by a tight cable", seat_it},
      {at_pin(FaultKind::SwitchOn, 2, 1), "switch-on", "the switched output J3.1 on J3 conducts all the time",
       "its transistor was destroyed, mostly by a short at the plug or by too large a load", other_stage},
      {fault_of(FaultKind::Setting, limit), "setting",
       "the wiring of 'limit' on J1 (LIMIT X) is right; the firmware is set the other way round",
       "the setting was taken from another board, or from a switch that rests the other way",
       "turn the setting round; no lead is to be moved"},
      {elsewhere, "other-header", "'limit' sits on J4 instead of J1 (LIMIT X)", looks_alike, own_header},
      {plugs, "plugs-exchanged", "two plugs are exchanged: 'limit' sits on J2 and 'motor' on J1 (LIMIT X)",
       looks_alike, own_header},
      {jumper, "wrong-jumper", "jumper JP sits at 5V instead of 24V",
       "the jumper was left as it was delivered, or moved for another part",
       "power off, then move the jumper"},
      {fault_of(FaultKind::LeadsTouch, limit, 0, 1), "leads-touch",
       "two leads of 'limit' touch: WH lead in cavity 1 (J1.1) and BK '2' lead in cavity 2 (J1.2)",
       "a strand outside its crimp, or insulation crushed or chafed through",
       "crimp the contact anew or insulate the leads singly; look for what the short has damaged"},
      {at_pin(FaultKind::InputHeld, 0, 1), "input-held",
       "the input J1.1 on J1 (LIMIT X) is damaged and holds its pin at ground",
       "too high a voltage once reached it", other_stage},
      {at_pin(FaultKind::OutputDead, 1, 1), "output-dead", "the motor driver behind J2 no longer conducts",
       "the motor was plugged or unplugged under power, or the driver got too hot", other_stage},
      {at_pin(FaultKind::OutputDead, 3, 1), "output-dead", "the output J4.1 on J4 no longer conducts",
       "it was shorted or loaded beyond its limit once", other_stage},
      {rail, "rail-missing", "the board's 24V rail has no volts",
       "a fuse, a regulator that has switched itself off, or a supply lead that came loose",
       "look for the fuse and the supply leads; unplug what may short the rail first"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.wrong);
    CHECK(to_word(row.fault.kind) == row.word);
    CHECK(what_is_wrong(fitting, row.fault) == row.wrong);
    CHECK(how_it_comes(fitting, row.fault) == row.comes);
    CHECK(how_to_cure(fitting, row.fault) == row.cure);
  }
}

TEST_CASE("where a plug sits under an error") {
  const Machine machine;
  const Fitting& fitting = machine.fitting;
  MachineFault plugs = fault_of(FaultKind::PlugsExchanged, 0);
  plugs.other_plug = 1;
  CHECK(seat_words(fitting, 0, plugs) == "on J2");
  CHECK(seat_words(fitting, 1, plugs) == "on J1 (LIMIT X)");
  CHECK(seat_words(fitting, 0, fault_of(FaultKind::PlugOff, 0)) == "not pushed home on J1 (LIMIT X)");
  CHECK(seat_words(fitting, 1, fault_of(FaultKind::PlugOff, 0)) == "home on J2");
  CHECK(pin_words(fitting, PinRef{-1, 0}) == "ground");
  CHECK(pin_words(fitting, PinRef{0, 2}) == "J1.2");
}
