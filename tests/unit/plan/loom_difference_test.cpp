// SPDX-License-Identifier: MIT
#include "plan/loom_difference.h"

#include <doctest/doctest.h>

#include "base/format.h"
#include "plan/record.h"
#include "support/refit.h"

using namespace plugward;
using namespace plugward::test;

namespace {

/// One line a jumper and a plug.
std::string told(const LoomDifference& d) {
  std::string text = format("{} {} -> {} {}\n", d.loom_a, d.board_a, d.loom_b, d.board_b);
  for (const JumperDifference& j : d.jumpers) {
    text += format("{}: {}{} -> {}{}\n", j.jumper, j.in_a ? "" : "(none)", j.rail_a, j.in_b ? "" : "(none)",
                   j.rail_b);
  }
  for (const PlugDifference& p : d.plugs) {
    text += format("{} {} '{}' '{}'", p.name, to_word(p.change), p.header_a, p.header_b);
    for (const LeadMove& m : p.moves) text += format("; {} {}>{}", m.lead, m.from, m.to);
    for (const std::string& lead : p.leads_in) text += format("; + {}", lead);
    for (const std::string& lead : p.leads_out) text += format("; - {}", lead);
    if (p.housing_a != p.housing_b) text += format("; {} > {}", p.housing_a, p.housing_b);
    for (const std::string& part : p.parts_in) text += format("; built in {}", part);
    for (const std::string& part : p.parts_out) text += format("; taken out {}", part);
    text += '\n';
  }
  return text;
}

std::string told(const std::map<std::string, std::string>& texts, const std::string& second) {
  const Machine a("old.xml", texts), b(second, texts);
  return told(difference(a.loom(), a.files(), b.loom(), b.files()));
}

}  // namespace

TEST_CASE("a machine does not differ from itself") {
  CHECK(told(small_machine(), "old.xml") ==
        "m old -> m old\n"
        "limit/p same 'J1' 'J1'\n"
        "fan/fan same 'J2' 'J2'\n"
        "filament/p same 'J3' 'J3'\n");
}

TEST_CASE("on the same board: moved, loose, unknown, added, removed; contacts; jumpers") {
  auto texts = small_machine();
  texts["new.xml"] =
      "<loom id='n' title='N' board='a.xml' evidence='photo'><evidence id='photo' kind='photograph'/>"
      "<harness id='limit' file='sensor.xml'/><harness id='fan' file='fan.xml'/>"
      "<harness id='door' file='switch.xml'/><fitted jumper='JP' rail='5V'/>"
      "<loose plug='limit/p' leads='2 1 -'/><seat plug='fan/fan'/><seat plug='door/p' header='J3'/></loom>";
  CHECK(told(texts, "new.xml") ==
        "m old -> n old\n"
        "JP: 24V -> 5V\n"
        "limit/p unplugged 'J1' ''; BN to 'V' 1>2; BU to 'G' 2>1; BK to 'Q' 3>0\n"
        "fan/fan unclear 'J2' ''; BK to 'G' 2>1; RD to 'V' 1>2\n"
        "filament/p removed 'J3' ''\n"
        "door/p added '' 'J3'\n");
}

TEST_CASE("what the record of a move says") {
  auto texts = small_machine();
  const Machine machine("old.xml", texts);
  const NewBoard to(texts.at("b.xml"));
  const Fitting fitting = machine.fitting();
  const auto plan = plan_by_hand(fitting, to.board(), {{0, 0}, {1, 1}}, {{"JP", "24V"}});
  const Record record = finished_state(*plan, machine.loom(), machine.files(),
                                       {.loom = "refit/loom.xml", .old_loom = "old.xml", .board = "b.xml"});
  for (const RecordFile& file : record.files) texts[file.path] = file.text;
  CHECK(told(texts, "refit/loom.xml") ==
        "m old -> m-new new\n"
        "JP: 24V -> (none)\n"
        "JP: (none) -> 24V\n"
        "limit/p moved 'J1' 'J5'; built in a resistor of 47 kohm, 0.125 W; built in a resistor of 6.2 kohm, "
        "0.125 W\n"
        "fan/fan moved 'J2' 'J6'; BK to 'G' 2>1; RD to 'V' 1>2\n"
        "filament/p unplugged 'J3' ''\n");
}

TEST_CASE("another housing and other leads in a file of the same name") {
  auto texts = small_machine();
  texts["other.xml"] = texts["fan.xml"];
  const auto swap = [&](const std::string& from, const std::string& to) {
    std::string& text = texts["other.xml"];
    text.replace(text.find(from), from.size(), to);
  };
  swap("positions='2'", "positions='3' key='removed'");
  swap("colour='RD'", "colour='YE'");
  swap("draws='0.1 A'", "draws='0.2 A'");
  texts["new.xml"] =
      "<loom id='n' title='N' board='a.xml' evidence='photo'><evidence id='photo' kind='photograph'/>"
      "<harness id='fan' file='other.xml'/><harness id='limit' file='sensor.xml'/>"
      "<harness id='filament' file='switch.xml'/>"
      "<seat plug='fan/fan' header='J2' leads='2 1 -'/><seat plug='limit/p' header='J1'/>"
      "<seat plug='filament/p' header='J3'/></loom>";
  CHECK(
      told(texts, "new.xml") ==
      "m old -> n old\n"
      "JP: 24V -> (none)\n"
      "limit/p same 'J1' 'J1'\n"
      "fan/fan same 'J2' 'J2'; + YE to 'V' in cavity 1; - RD to 'V' in cavity 1; xh-2.50, 2 positions > "
      "xh-2.50, 3 positions, key removed; built in a load of 20..28 V, 0.2 A; taken out a load of 20..28 V, "
      "0.1 A\n"
      "filament/p same 'J3' 'J3'\n");
}

TEST_CASE("a part in words, by what is stated of it") {
  const Range<Volts> needs{Volts(20), Volts(28)};
  const std::pair<Part, std::string> rows[] = {
      {Load{0, 1, needs, {}, Amps(0.1), Reversal::Unknown, {}, true}, "a load of 20..28 V, 0.1 A"},
      {Load{0, 1, needs, {}, Amps(0), Reversal::Unknown, {}, false}, "a load of 20..28 V"},
      {Load{0, 0, needs, {}, Amps(0), Reversal::Unknown, {}, true}, "a feed of 20..28 V"},
      {Heater{0, 1, Volts(24), Watts(40), {}}, "a heating element of 24 V, 40 W"},
      {Heater{0, 1, Volts(24), Watts(0), {}}, "a heating element of 24 V"},
      {Heater{0, 1, Volts(0), Watts(40), {}}, "a heating element of 40 W"},
      {Heater{0, 1, Volts(0), Watts(0), {}}, "a heating element"},
      {Resistor{0, 1, Ohms(6800), Watts(0.25), {}}, "a resistor of 6.8 kohm, 0.25 W"},
      {Resistor{0, 1, Ohms(6800), {}, {}}, "a resistor of 6.8 kohm"},
      {Switch{0, 1, true, {}, true}, "a contact, closed at rest"},
      {Switch{0, 1, false, {}, true}, "a contact, open at rest"},
      {Switch{0, 1, false, {}, false}, "a contact"},
      {Coil{0, 1, Ohms(2.2), {}, {}}, "a winding of 2.2 ohm"},
      {Coil{0, 1, Ohms(0), {}, {}}, "a winding"},
      {TemperatureSensor{0, 1, Ohms(100000), Kelvins(3950), {}}, "a temperature sensor of 100 kohm"},
      {TemperatureSensor{0, 1, Ohms(0), {}, {}}, "a temperature sensor"},
      {Driver{2, 0, 1, OutputKind::PushPull, {}, {}, {}, false, {}, {}, {}}, "a push-pull output"},
      {Driver{2, 0, 1, OutputKind::Sinking, {}, {}, {}, false, {}, {}, {}}, "a sinking output"},
      {Driver{2, 0, 1, OutputKind::Sourcing, {}, {}, {}, false, {}, {}, {}}, "a sourcing output"},
      {Receiver{}, "an input"},
      {Diode{0, 1, Volts(0.3), {}}, "a diode, 0.3 V forward"},
      {Join{0, 1, {}}, "two terminals joined"},
      {Source{0, 1, {Volts(4.75), Volts(5.25)}, {}}, "a supply of its own, 4.75..5.25 V"},
      {Regulator{0, 1, 2, {Volts(11.4), Volts(12.6)}, Amps(1), needs, {}}, "a regulator to 11.4..12.6 V"},
  };
  for (const auto& [part, words] : rows) CHECK(part_in_words(part) == words);
}

TEST_CASE("changes of a plug as words for programs") {
  using enum PlugChange;
  const std::pair<PlugChange, std::string_view> rows[] = {
      {Same, "same"},       {Moved, "moved"}, {Unplugged, "unplugged"}, {PluggedIn, "plugged-in"},
      {Unclear, "unclear"}, {Added, "added"}, {Removed, "removed"}};
  for (const auto& [change, word] : rows) CHECK(to_word(change) == word);
}
