// SPDX-License-Identifier: MIT
#include "unit/draw/fixtures.h"

#include <algorithm>
#include <numeric>

#include "base/format.h"
#include "base/utf8.h"

namespace plugward::test {
namespace {

Family family(std::string id, std::string title, double pitch, int rows, Profile profile) {
  Family f;
  f.id = std::move(id);
  f.title = std::move(title);
  f.pitch = Millimetres(pitch);
  f.rows = rows;
  if (rows > 1) f.row_pitch = Millimetres(pitch);
  f.profile = profile;
  return f;
}

Cited<Millimetres> mm(double value) {
  return {Millimetres(value), Certainty::Quoted, "as in families.xml"};
}

Catalogue families() {
  Catalogue all;
  all.add(family("pin-2.54", "2.54 mm square pins, unkeyed crimp housing", 2.54, 2, Profile::Bare));
  Family box = family("box-2.54", "2.54 mm box header with ribbon socket", 2.54, 2, Profile::BoxShroud);
  box.header_extra = mm(10.2);
  box.header_depth = mm(8.75);
  box.first_cavity = {"a triangle on header and socket, on the side of the slot and the bump",
                      Certainty::Secondary, "IDC construction page"};
  all.add(box);
  Family xh = family("xh-2.50", "JST XH, 2.50 mm", 2.5, 1, Profile::BoxShroud);
  xh.plug_extra = mm(4.8);
  xh.plug_depth = mm(5.7);
  xh.header_extra = mm(4.9);
  xh.header_depth = mm(5.75);
  xh.first_cavity = {"a notch at one end of the housing; copies may lack the mark", Certainty::Secondary,
                     "collector's notes"};
  all.add(xh);
  all.add(family("kk-2.54", "Molex KK 254", 2.54, 1, Profile::FrictionRamp));
  all.add(family("gh-1.25", "JST GH", 1.25, 1, Profile::BoxShroud));
  Family vh = family("vh-3.96", "JST VH", 3.96, 1, Profile::OpenWafer);
  vh.latch = {true, Certainty::Quoted, "JST eVH"};
  all.add(vh);
  all.add(family("screw-5.08", "pluggable screw block", 5.08, 1, Profile::Screw));
  all.add(family("m12", "M12 circular", 0, 1, Profile::Circular));
  all.add(family("microfit-3.00", "Micro-Fit 3.0", 3.0, 2, Profile::BoxShroud));
  return all;
}

Board heron_m7() {
  Board b;
  b.id = "heron-m7";
  b.title = "Heron M7 motion board";
  b.revision = "B";
  b.width = Millimetres(110);
  b.height = Millimetres(85);
  b.rails = {{"24V", {Volts(21.6), Volts(26.4)}, Amps(10), {}, {}},
             {"5V", {Volts(4.75), Volts(5.25)}, Amps(1.5), {}, {}},
             {"3V3", {Volts(3.2), Volts(3.4)}, Amps(0.3), {}, {}}};
  b.jumpers = {{"JP2", "PROBE V", {"5V", "24V"}, Millimetres(50), Millimetres(12), {}}};
  for (const double x : {4.0, 106.0}) {
    for (const double y : {4.0, 81.0}) b.holes.push_back({Millimetres(x), Millimetres(y), Millimetres(3.2)});
  }
  return b;
}

Header header(std::string id, std::string label, std::string fam, int positions, int rows, double x, double y,
              int rotation) {
  Header h;
  h.id = std::move(id);
  h.label = std::move(label);
  h.family = std::move(fam);
  h.positions = positions;
  h.rows = rows;
  h.x = Millimetres(x);
  h.y = Millimetres(y);
  h.rotation = rotation;
  for (int n = 1; n <= positions; ++n) {
    Pin p;
    p.number = n;
    h.pins.push_back(p);
  }
  return h;
}

void set(Pin& pin, PinFunction function, std::string signal_or_rail = {}) {
  pin.function = function;
  (function == PinFunction::Supply ? pin.rail : pin.signal) = std::move(signal_or_rail);
}

/// Spans that tell leads and pins apart: harness is file 1, board file 2.
void place_spans(Fixture& f) {
  std::uint32_t at = 10;
  const auto next = [&](FileId file) {
    at += 10;
    return Span{file, at, at + 8};
  };
  for (Device& d : f.harness.devices) {
    for (Terminal& t : d.terminals) t.span = next(1);
  }
  for (Plug& p : f.harness.plugs) {
    for (Lead& l : p.leads) l.span = next(1);
  }
  for (Header& h : f.board.headers) {
    for (Pin& p : h.pins) p.span = next(2);
  }
}

void finish(Fixture& f) {
  f.catalogue = families();
  place_spans(f);
  f.fitting.board = &f.board;
  f.fitting.harness = &f.harness;
  f.fitting.catalogue = &f.catalogue;
  if (f.fitting.placements.empty()) f.fitting.placements = {{0, 0}};
}

Lead lead(int cavity, std::optional<Colour> first, std::optional<Colour> second, int terminal) {
  Lead l;
  l.cavity = cavity;
  l.colour = {first, second};
  if (terminal >= 0) l.to = TerminalRef{0, terminal};
  return l;
}

Plug plug(std::string id, std::string fam, int positions, int rows, std::vector<Lead> leads) {
  Plug p;
  p.id = std::move(id);
  p.family = std::move(fam);
  p.positions = positions;
  p.rows = rows;
  p.leads = std::move(leads);
  return p;
}

Terminal terminal(std::string id, TerminalFunction function, std::string signal = {}) {
  Terminal t;
  t.id = std::move(id);
  t.function = function;
  t.signal = std::move(signal);
  return t;
}

void add_other_headers(Board& b) {
  b.headers.push_back(header("J1", "MOTOR X", "xh-2.50", 4, 1, 20, 70, 0));
  b.headers.push_back(header("J2", "MOTOR Y", "xh-2.50", 4, 1, 40, 70, 0));
  b.headers.push_back(header("J5", "DISPLAY", "box-2.54", 10, 2, 75, 66, 0));
  b.headers.push_back(header("J12", "POWER", "screw-5.08", 2, 1, 102, 30, 90));
}

PlugPlan plan_for(const Fixture& f, std::vector<int> after, std::vector<Step> steps) {
  PlugPlan p;
  for (const Lead& l : f.harness.plugs[0].leads) p.before.cavity.push_back(l.cavity);
  p.after.cavity = std::move(after);
  p.steps = std::move(steps);
  p.extractions = static_cast<int>(p.steps.size());
  return p;
}

void add_plan(Fixture& f, PlugPlan plan) {
  RepinPlan repin;
  repin.plugs.push_back(std::move(plan));
  f.advice.verdict = Verdict::Repin;
  f.advice.plan = std::move(repin);
}

Step step(StepKind kind, int lead_index, int from, int to) {
  return {kind, 0, lead_index, from, to, ""};
}

void kite(Fixture& f) {
  f.board = heron_m7();
  f.board.headers.push_back(header("J9", "PROBE", "pin-2.54", 3, 1, 61, 3, 0));
  set(f.board.headers[0].pins[0], PinFunction::Output, "servo");
  f.board.headers[0].pins[0].high = Range<Volts>{Volts(2.9), Volts(3.4)};
  set(f.board.headers[0].pins[1], PinFunction::Supply, "5V");
  set(f.board.headers[0].pins[2], PinFunction::Ground);
  add_other_headers(f.board);
  f.harness.id = "kite-probe";
  f.harness.title = "Kite bed probe, five leads";
  Device d;
  d.id = "probe";
  d.terminals = {terminal("G", TerminalFunction::Ground), terminal("V", TerminalFunction::Supply),
                 terminal("P", TerminalFunction::Input, "servo")};
  f.harness.devices = {d};
  f.harness.plugs = {
      plug("control", "pin-2.54", 3, 1,
           {lead(1, Colour::Brown, {}, 0), lead(2, Colour::Red, {}, 1), lead(3, Colour::Orange, {}, 2)})};
}

}  // namespace

FixturePtr probe_to_repin() {
  auto f = std::make_unique<Fixture>();
  f->name = "probe_to_repin";
  kite(*f);
  finish(*f);
  add_plan(*f, plan_for(*f, {3, 2, 1},
                        {step(StepKind::Hold, 0, 1, 0), step(StepKind::Move, 2, 3, 1),
                         step(StepKind::Insert, 0, 0, 3)}));
  f->advice.summary = "Exchange the contacts in cavities 1 and 3; then the plug may be mated.";
  return f;
}

FixturePtr parked_and_spare() {
  auto f = std::make_unique<Fixture>();
  f->name = "parked_and_spare";
  kite(*f);
  f->board.headers[0] = header("J9", "PROBE", "pin-2.54", 5, 1, 61, 40, 90);
  set(f->board.headers[0].pins[0], PinFunction::Ground);
  set(f->board.headers[0].pins[1], PinFunction::Supply, "5V");
  set(f->board.headers[0].pins[2], PinFunction::Output, "servo");
  set(f->board.headers[0].pins[3], PinFunction::Input, "probe");
  set(f->board.headers[0].pins[4], PinFunction::Unused);
  f->harness.devices[0].terminals.push_back(terminal("T", TerminalFunction::Output, "probe"));
  f->harness.devices[0].terminals.push_back(terminal("Q", TerminalFunction::Spare));
  f->harness.plugs[0] = plug("control", "pin-2.54", 5, 1,
                             {lead(1, Colour::Red, {}, 1), lead(2, Colour::Brown, {}, 0),
                              lead(3, Colour::Orange, {}, 2), lead(4, Colour::White, Colour::Green, 4)});
  finish(*f);
  add_plan(*f, plan_for(*f, {2, 1, 3, 0},
                        {step(StepKind::Insulate, 3, 4, 0), step(StepKind::Park, 0, 1, 5),
                         step(StepKind::Move, 1, 2, 1), step(StepKind::Move, 0, 5, 2)}));
  f->advice.summary = "Exchange the contacts in cavities 1 and 2 and take out the lead that is of no use.";
  return f;
}

namespace {

void ribbon(Fixture& f) {
  static const char* signals[] = {"beep", "turn", "reset", "turn-a", "turn-b", "data-4", "data-5", "clock"};
  f.board = heron_m7();
  add_other_headers(f.board);
  std::swap(f.board.headers[0], f.board.headers[2]);
  Header& j5 = f.board.headers[0];
  Device d;
  d.id = "panel";
  std::vector<Lead> leads;
  for (int n = 1; n <= 10; ++n) {
    Pin& pin = j5.pins[static_cast<std::size_t>(n) - 1];
    if (n == 9) {
      set(pin, PinFunction::Ground);
      d.terminals.push_back(terminal("G", TerminalFunction::Ground));
    } else if (n == 10) {
      set(pin, PinFunction::Supply, "5V");
      d.terminals.push_back(terminal("V", TerminalFunction::Supply));
    } else {
      set(pin, PinFunction::Output, signals[n - 1]);
      d.terminals.push_back(terminal(format("D{}", n), TerminalFunction::Input, signals[n - 1]));
    }
    leads.push_back(lead(n, n == 1 ? Colour::Red : Colour::Grey, {}, n - 1));
  }
  f.harness.id = "wren-panel";
  f.harness.title = "Wren panel ribbon";
  f.harness.devices = {d};
  f.harness.plugs = {plug("main", "box-2.54", 10, 2, leads)};
}

}  // namespace

FixturePtr ribbon_ten() {
  auto f = std::make_unique<Fixture>();
  f->name = "ribbon_ten";
  ribbon(*f);
  finish(*f);
  f->advice.verdict = Verdict::Mate;
  f->advice.summary = "The plug may be mated as it is.";
  return f;
}

FixturePtr ribbon_swapped() {
  auto f = std::make_unique<Fixture>();
  f->name = "ribbon_swapped";
  ribbon(*f);
  f->harness.plugs[0].leads[1].to = TerminalRef{0, 2};
  f->harness.plugs[0].leads[2].to = TerminalRef{0, 1};
  finish(*f);
  add_plan(*f, plan_for(*f, {1, 3, 2, 4, 5, 6, 7, 8, 9, 10},
                        {step(StepKind::Hold, 1, 2, 0), step(StepKind::Move, 2, 3, 2),
                         step(StepKind::Insert, 1, 0, 3)}));
  f->advice.summary = "Exchange the contacts in cavities 2 and 3.";
  return f;
}

FixturePtr motor_mates() {
  auto f = std::make_unique<Fixture>();
  f->name = "motor_mates";
  f->board = heron_m7();
  add_other_headers(f->board);
  Header& j1 = f->board.headers[0];
  for (int n = 1; n <= 4; ++n) {
    Pin& pin = j1.pins[static_cast<std::size_t>(n) - 1];
    set(pin, PinFunction::Coil);
    pin.coil = (n + 1) / 2;
    pin.coil_end = n % 2 == 1 ? 'A' : 'B';
  }
  Device d;
  d.id = "motor";
  for (const char* id : {"A1", "B1", "A2", "B2"})
    d.terminals.push_back(terminal(id, TerminalFunction::Passive));
  d.parts = {Coil{0, 1, Ohms(2.1), Amps(1.2), {}}, Coil{2, 3, Ohms(2.1), Amps(1.2), {}}};
  f->harness.title = "Wren X motor";
  f->harness.devices = {d};
  f->harness.plugs = {plug("board", "xh-2.50", 4, 1,
                           {lead(1, Colour::Black, {}, 0), lead(2, Colour::Green, {}, 1),
                            lead(3, Colour::Blue, {}, 2), lead(4, Colour::Red, {}, 3)})};
  finish(*f);
  f->advice.verdict = Verdict::Mate;
  f->advice.summary = "The plug may be mated as it is.";
  f->advice.settings = {
      {"turn the direction of the motor on 'J1' round", "its windings meet the driver the other way round"}};
  return f;
}

FixturePtr limit_apart() {
  auto f = std::make_unique<Fixture>();
  f->name = "limit_apart";
  kite(*f);
  set(f->board.headers[0].pins[1], PinFunction::Supply, "24V");
  f->board.headers[0].rotation = 90;
  f->board.headers[0].x = Millimetres(106);
  finish(*f);
  f->advice.verdict = Verdict::Apart;
  f->advice.summary = "Do not join these two: 24 V would reach the probe.";
  Finding high;
  high.rule = Rule::SupplyTooHigh;
  high.weight = Weight::Harm;
  high.message = "26.4 V between 'V' and 'G', which stand 5.5 V";
  high.first = f->harness.plugs[0].leads[1].span;
  high.second = f->board.headers[0].pins[1].span;
  Finding wrong;
  wrong.rule = Rule::WrongFunction;
  wrong.weight = Weight::Fault;
  wrong.message = "terminal 'G' (ground) would meet J9.1 (servo output)";
  wrong.first = f->harness.plugs[0].leads[0].span;
  wrong.second = f->board.headers[0].pins[0].span;
  f->advice.now.findings = {high, wrong};
  return f;
}

FixturePtr fan_to_measure() {
  auto f = std::make_unique<Fixture>();
  f->name = "fan_to_measure";
  f->board = heron_m7();
  f->board.headers.push_back(header("J7", "FAN", "kk-2.54", 2, 1, 30, 20, 180));
  add_other_headers(f->board);
  f->board.headers[0].pins[0].function = PinFunction::Supply;
  f->board.headers[0].pins[0].jumper = "JP2";
  set(f->board.headers[0].pins[1], PinFunction::Switched, "fan");
  Device d;
  d.id = "fan";
  d.terminals = {terminal("V", TerminalFunction::Supply), terminal("G", TerminalFunction::Return)};
  f->harness.title = "Part cooling fan";
  f->harness.devices = {d};
  f->harness.plugs = {plug("lead", "kk-2.54", 2, 1, {lead(1, Colour::Yellow, {}, 0), lead(2, {}, {}, -1)})};
  finish(*f);
  f->advice.verdict = Verdict::Measure;
  f->advice.summary = "Where JP2 is fitted decides: measure first.";
  f->advice.measurements = {{"measure volts between J7.1 and ground, board powered, nothing plugged in",
                             "4.75..5.25 V: JP2 is at 5V; 21.6..26.4 V: JP2 is at 24V", 2,
                             "the rail of J7.1"}};
  Finding doubt;
  doubt.rule = Rule::UnstatedJumper;
  doubt.weight = Weight::Doubt;
  doubt.message = "J7.1 is at 5V or 24V: the position of JP2 is not stated";
  doubt.second = f->board.headers[0].pins[0].span;
  doubt.first = f->harness.plugs[0].leads[0].span;
  Finding unknown = doubt;
  unknown.rule = Rule::UnknownLead;
  unknown.message = "where the lead in cavity 2 goes is not known";
  unknown.first = f->harness.plugs[0].leads[1].span;
  unknown.second = {};
  f->advice.now.findings = {doubt, unknown};
  return f;
}

FixturePtr led_to_adapt() {
  auto f = std::make_unique<Fixture>();
  f->name = "led_to_adapt";
  kite(*f);
  f->harness.title = "Firefly LED bar";
  f->harness.plugs[0].id = "bar";
  f->harness.plugs[0].leads = {lead(1, Colour::White, {}, 2), lead(2, Colour::Red, {}, 1),
                               lead(3, Colour::Black, {}, 0)};
  f->harness.devices[0].id = "bar";
  f->harness.devices[0].terminals[2] = terminal("D", TerminalFunction::Input, "led-data");
  f->board.headers[0].pins[0].signal = "led-data";
  finish(*f);
  f->advice.verdict = Verdict::Adapt;
  f->advice.summary = "Put a level buffer into the data line, then plug in.";
  f->advice.parts = {
      "a level buffer fed with 5 V, its input threshold at or below 2.9 V, in the lead of cavity 1"};
  Finding level;
  level.rule = Rule::LevelHigh;
  level.weight = Weight::Fault;
  level.message = "high level 2.9 V on 'D', which needs 3.5 V";
  level.first = f->harness.plugs[0].leads[0].span;
  level.second = f->board.headers[0].pins[0].span;
  f->advice.now.findings = {level};
  return f;
}

FixturePtr foreign_titles() {
  FixturePtr f = probe_to_repin();
  f->name = "foreign_titles";
  f->harness.title = "Датчик стола «Коршун»";
  f->harness.plugs[0].label = "управление";
  f->board.title = "苍鹭运动控制板";
  f->board.headers[0].label = "探头";
  f->harness.devices[0].terminals[0].id = "Земля";
  f->harness.devices[0].terminals[1].id = "电源";
  f->advice.summary = "Поменяйте местами контакты 1 и 3.";
  return f;
}

FixturePtr twenty_in_a_row() {
  auto f = std::make_unique<Fixture>();
  f->name = "twenty_in_a_row";
  f->board = heron_m7();
  f->board.headers.push_back(header("J20", "EXPANSION", "pin-2.54", 20, 1, 30, 3, 0));
  Device d;
  d.id = "tool";
  std::vector<Lead> leads;
  std::vector<int> after;
  for (int n = 1; n <= 20; ++n) {
    set(f->board.headers[0].pins[static_cast<std::size_t>(n) - 1],
        n % 3 == 0   ? PinFunction::Ground
        : n % 3 == 1 ? PinFunction::Input
                     : PinFunction::Supply,
        n % 3 == 1   ? "limit"
        : n % 3 == 2 ? "24V"
                     : "");
    d.terminals.push_back(terminal(format("T{}", n),
                                   n % 3 == 0   ? TerminalFunction::Ground
                                   : n % 3 == 1 ? TerminalFunction::Output
                                                : TerminalFunction::Supply,
                                   n % 3 == 1 ? "limit" : ""));
    leads.push_back(lead(n, all_colours()[static_cast<std::size_t>(n) % all_colours().size()].colour,
                         n % 4 == 0 ? std::optional(Colour::White) : std::nullopt, n - 1));
    after.push_back(n);
  }
  f->harness.title = "Tool head cable";
  f->harness.devices = {d};
  f->harness.plugs = {plug("head", "pin-2.54", 20, 1, leads)};
  finish(*f);
  std::swap(after[1], after[4]);
  std::swap(after[9], after[18]);
  add_plan(*f, plan_for(*f, after,
                        {step(StepKind::Hold, 1, 2, 0), step(StepKind::Move, 4, 5, 2),
                         step(StepKind::Insert, 1, 0, 5), step(StepKind::Hold, 9, 10, 0),
                         step(StepKind::Move, 18, 19, 10), step(StepKind::Insert, 9, 0, 19)}));
  f->advice.summary = "Exchange 2 with 5 and 10 with 19.";
  return f;
}

std::vector<FixturePtr> all_fixtures() {
  std::vector<FixturePtr> all;
  for (FixturePtr (*make)() : {probe_to_repin, parked_and_spare, ribbon_ten, ribbon_swapped, motor_mates,
                               limit_apart, fan_to_measure, led_to_adapt, foreign_titles, twenty_in_a_row}) {
    all.push_back(make());
  }
  return all;
}

namespace {

/// From `before` to `after` by parking or holding; plain, not shortest: order_moves() is not under test here.
std::vector<Step> some_steps(const Arrangement& before, const Arrangement& after, int positions) {
  std::vector<int> at = before.cavity;
  std::vector<Step> steps;
  const auto taken = [&](int cavity) { return std::find(at.begin(), at.end(), cavity) != at.end(); };
  for (std::size_t i = 0; i < at.size(); ++i) {
    if (after.cavity[i] == 0) {
      steps.push_back(step(StepKind::Insulate, static_cast<int>(i), at[i], 0));
      at[i] = 0;
    }
  }
  for (bool again = true; again;) {
    again = false;
    for (std::size_t i = 0; i < at.size(); ++i) {
      if (at[i] == after.cavity[i] || taken(after.cavity[i])) continue;
      steps.push_back(
          step(at[i] == 0 ? StepKind::Insert : StepKind::Move, static_cast<int>(i), at[i], after.cavity[i]));
      at[i] = after.cavity[i];
      again = true;
    }
    if (again) continue;
    for (std::size_t i = 0; i < at.size(); ++i) {
      if (at[i] == after.cavity[i]) continue;
      int empty = 0;
      for (int c = 1; c <= positions; ++c) {
        if (!taken(c)) empty = c;
      }
      steps.push_back(step(empty > 0 ? StepKind::Park : StepKind::Hold, static_cast<int>(i), at[i], empty));
      at[i] = empty;
      again = true;
      break;
    }
  }
  return steps;
}

}  // namespace

FixturePtr random_fixture(unsigned seed) {
  std::mt19937 random(seed);
  // Not std::uniform_int_distribution: its results differ between libraries.
  const auto pick = [&](int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
  };
  static const std::string names[] = {
      "V",  "G", "signal", "OUT_2", "концевик", "温度传感器", "a-rather-long-terminal-name-of-forty-lett",
      "X.1"};
  static const char* fams[] = {"pin-2.54", "box-2.54",   "xh-2.50", "kk-2.54",       "gh-1.25",
                               "vh-3.96",  "screw-5.08", "m12",     "microfit-3.00", "not-in-catalogue"};
  auto f = std::make_unique<Fixture>();
  f->name = format("random {}", seed);
  f->board = heron_m7();
  const std::string fam = fams[pick(0, 9)];
  const bool two_rows = (fam == "pin-2.54" || fam == "box-2.54" || fam == "microfit-3.00") && pick(0, 1) == 1;
  const int positions = two_rows ? 2 * pick(1, 10) : pick(1, pick(0, 2) == 0 ? 20 : 8);
  const int rows = two_rows ? 2 : 1;
  const Numbering numbering = pick(0, 1) == 0 ? Numbering::Zigzag : Numbering::ByRow;
  int pins = positions;
  if (pick(0, 3) == 0) pins = std::max(rows, positions + rows * pick(-2, 4));
  static const double xs[] = {3, 30, 55, 107};
  f->board.headers.push_back(
      header("J9", pick(0, 2) == 0 ? "A label as long as anybody might print on a board" : "PROBE", fam, pins,
             rows, xs[pick(0, 3)], pick(2, 80), 90 * pick(0, 3)));
  f->board.headers[0].numbering = numbering;
  f->board.headers[0].underside = pick(0, 4) == 0;
  add_other_headers(f->board);
  for (Pin& pin : f->board.headers[0].pins) {
    pin.function = static_cast<PinFunction>(pick(0, 7));
    if (pin.function == PinFunction::Supply) {
      if (pick(0, 1) == 0)
        pin.rail = "24V";
      else
        pin.jumper = "JP2";
    } else if (pick(0, 1) == 0) {
      pin.signal = names[pick(0, 7)];
    }
    if (pick(0, 4) == 0) pin.label = names[pick(0, 7)];
    if (pick(0, 2) == 0) pin.high = Range<Volts>{Volts(2.9), Volts(3.4)};
  }
  Device d;
  d.id = "device";
  std::vector<Lead> leads;
  for (int c = 1; c <= positions; ++c) {
    d.terminals.push_back(terminal(names[pick(0, 7)], static_cast<TerminalFunction>(pick(0, 7)),
                                   pick(0, 1) == 0 ? "" : names[pick(0, 7)]));
    if (pick(0, 6) == 0) continue;
    const auto colour = [&] { return all_colours()[static_cast<std::size_t>(pick(0, 13))].colour; };
    leads.push_back(
        lead(c, pick(0, 8) == 0 ? std::nullopt : std::optional(colour()), {}, pick(0, 9) == 0 ? -1 : c - 1));
    if (leads.back().colour.first && pick(0, 2) == 0) leads.back().colour.second = colour();
  }
  f->harness.title = pick(0, 3) == 0 ? "A title that goes on and on and does not want to come to its end, so "
                                       "that it has to be cut somewhere"
                                     : "Жгут 线束";
  f->harness.devices = {d};
  f->harness.plugs = {plug("p", fam, positions, rows, leads)};
  f->harness.plugs[0].numbering = numbering;
  finish(*f);
  f->advice.summary = "One sentence that sums it up, of a usual length.";
  const int what = pick(0, 5);
  if (what <= 1 && leads.size() > 1) {
    std::vector<int> goals(static_cast<std::size_t>(positions));
    std::iota(goals.begin(), goals.end(), 1);
    for (std::size_t i = goals.size(); i > 1; --i)
      std::swap(goals[i - 1], goals[static_cast<std::size_t>(pick(0, static_cast<int>(i) - 1))]);
    std::vector<int> after;
    for (std::size_t i = 0; i < leads.size(); ++i) after.push_back(pick(0, 9) == 0 ? 0 : goals[i]);
    PlugPlan plan = plan_for(*f, after, {});
    plan.steps = some_steps(plan.before, plan.after, positions);
    add_plan(*f, std::move(plan));
    return f;
  }
  f->advice.verdict = static_cast<Verdict>(what == 2 ? 0 : what == 3 ? 2 : what == 4 ? 3 : 4);
  for (int i = pick(0, 7); i > 0; --i) {
    Finding finding;
    finding.weight = static_cast<Weight>(pick(0, 3));
    finding.message =
        "26.4 V between 'V' and 'G' of a device with a name that is not short, which stand 5.5 V";
    if (!leads.empty() && pick(0, 2) > 0)
      finding.first = f->harness.plugs[0]
                          .leads[static_cast<std::size_t>(pick(0, static_cast<int>(leads.size()) - 1))]
                          .span;
    if (pick(0, 1) > 0)
      finding.second = f->board.headers[0].pins[static_cast<std::size_t>(pick(0, pins - 1))].span;
    f->advice.now.findings.push_back(finding);
  }
  return f;
}

TextMeasure::Size StubMeasure::measure(const std::string& text, double points, bool) const {
  const double em = points * 25.4 / 72.0;
  return {0.6 * em * static_cast<double>(count_code_points(text)), 0.93 * em, 0.24 * em};
}

}  // namespace plugward::test
