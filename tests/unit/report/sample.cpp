// SPDX-License-Identifier: MIT
#include "unit/report/sample.h"

#include <variant>

namespace plugward {
namespace {

constexpr std::string_view board_text =
    "<board id=\"wren-1\">\n  <pin n=\"1\"/>\n  <pin n=\"2\"/>\n  <pin n=\"3\"/>\n</board>\n";
constexpr std::string_view harness_text =
    "<harness id=\"breeze\">\n  <lead cavity=\"1\"/>\n  <lead cavity=\"2\"/>\n</harness>\n";

Span find(const Sources& sources, FileId file, std::string_view what) {
  const auto at = sources.file(file).text.find(what);
  return {file, static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + what.size())};
}

Lead lead(int cavity, const char* colour, TerminalIndex terminal) {
  Lead l;
  l.cavity = cavity;
  l.colour = std::get<WireColour>(parse_colour(colour));
  l.to = TerminalRef{0, terminal};
  return l;
}

Pin pin(int number, PinFunction function) {
  Pin p;
  p.number = number;
  p.function = function;
  return p;
}

Finding reversed_fan(const Sources& sources, FileId board, FileId harness) {
  Finding f;
  f.rule = Rule::ReversedSupply;
  f.weight = Weight::Harm;
  f.message = "the fan gets its 24 V the wrong way round, which destroys it";
  f.state = "J1.3 on";
  f.path = "24V - J1.1 - BK - G";
  f.first = find(sources, harness, "<lead cavity=\"1\"/>");
  f.second = find(sources, board, "<pin n=\"1\"/>");
  f.second_says = "J1.1 is declared here";
  f.figure = -24.0;
  f.limit = 0.0;
  f.unit = "V";
  return f;
}

Finding rating_note() {
  Finding f;
  f.rule = Rule::UnknownRating;
  f.weight = Weight::Note;
  f.message =
      "no rating is published for a contact of 'pin-2.54' with a wire of unknown size; 0.1 A flows through "
      "it";
  return f;
}

}  // namespace

Sample::Sample() {
  const FileId board_file = sources.add("boards/wren-1.xml", std::string(board_text));
  const FileId harness_file = sources.add("harnesses/breeze.xml", std::string(harness_text));

  Family family;
  family.id = "pin-2.54";
  family.title = "2.54 mm square pins, crimp housing";
  family.pitch = Millimetres(2.54);
  family.first_cavity = {"a small triangle moulded beside the cavity", Certainty::Quoted, "a data sheet"};
  catalogue.add(family);

  board.id = "wren-1";
  board.title = "Wren one";
  board.revision = "B";
  board.span = find(sources, board_file, "<board id=\"wren-1\">");
  Header header;
  header.id = "J1";
  header.label = "FAN0";
  header.use = "fan";
  header.family = "pin-2.54";
  header.positions = 3;
  header.pins = {pin(1, PinFunction::Supply), pin(2, PinFunction::Switched), pin(3, PinFunction::Input)};
  header.pins[0].jumper = "JP1";
  header.pins[2].signal = "tach";
  board.headers = {header};

  harness.id = "breeze";
  harness.title = "Breeze fan";
  harness.span = find(sources, harness_file, "<harness id=\"breeze\">");
  Device fan;
  fan.id = "fan";
  fan.use = "fan";
  fan.terminals.resize(2);
  fan.terminals[0].id = "V";
  fan.terminals[1].id = "G";
  harness.devices = {fan};
  Plug plug;
  plug.id = "fan";
  plug.family = "pin-2.54";
  plug.positions = 3;
  plug.leads = {lead(1, "BK", 1), lead(2, "RD", 0)};
  plug.leads[1].mark = "+";
  Plug spare;
  spare.id = "spare";
  spare.family = "pin-2.54";
  spare.positions = 2;
  harness.plugs = {plug, spare};

  fitting = {&board, &harness, &catalogue, {{0, 0}}, {{"JP1", "24V"}}};

  const Finding harm = reversed_fan(sources, board_file, harness_file);
  SeatingJudgement turned;
  turned.seating.kind = SeatingKind::Turned;
  turned.seating.turned = true;
  turned.seating.pin_of_cavity = {3, 2, 1};
  turned.seating.words = "turned by 180 degrees";
  turned.findings = {harm};
  turned.worst = Weight::Harm;
  SeatingJudgement shifted;
  shifted.seating.kind = SeatingKind::Shifted;
  shifted.seating.shift = 1;
  shifted.seating.overhanging = true;
  shifted.seating.pin_of_cavity = {2, 3, 0};
  shifted.seating.words = "shifted by 1 towards pin 3";

  repin.verdict = Verdict::Repin;
  repin.summary = "Two contacts of plug 'fan' change places; after that it may go on J1.";
  repin.now.findings = {harm, rating_note()};
  RepinPlan plan;
  PlugPlan moves;
  moves.before.cavity = {1, 2};
  moves.after.cavity = {2, 1};
  moves.steps = {{StepKind::Park, 0, 0, 1, 3, ""},
                 {StepKind::Move, 0, 1, 2, 1, "terminal 'V' must meet J1.1 (24V)"},
                 {StepKind::Move, 0, 0, 3, 2, "terminal 'G' must meet J1.2, which joins it to ground"}};
  moves.extractions = 3;
  plan.plugs = {moves};
  plan.cautions = {"power off, mains plug out"};
  plan.technique = {"press the lance flush", "draw the lead back"};
  plan.checks = {"tug each moved lead lightly"};
  plan.tools = {"fine flat blade"};
  repin.plan = plan;
  repin.settings = {{"switch the fan output on at start", "its state at reset is off"}};
  repin.wrong = {turned, shifted};

  measure.verdict = Verdict::Measure;
  measure.summary = "Which rail JP1 chooses decides.";
  Finding doubt;
  doubt.rule = Rule::UnstatedJumper;
  doubt.weight = Weight::Doubt;
  doubt.message = "the position of jumper JP1 is not stated";
  doubt.measurement =
      Measurement{"look where JP1 is fitted", "at 24V: the fan may go on", 0, "the supply of J1.1"};
  measure.now.findings = {doubt};
  measure.measurements = {*doubt.measurement};

  mate.verdict = Verdict::Mate;
  mate.summary = "Plug 'fan' may go on J1.";
}

}  // namespace plugward
