// SPDX-License-Identifier: MIT
// The twin follows the wires alone: which pins and terminals are one net once every lead, join and closed
// switch is drawn. It solves no circuit, knows no symptom table and plants its errors by a hand of its own.
#include "plan/causes.h"

#include <doctest/doctest.h>

#include <map>
#include <random>
#include <set>

#include "base/file.h"
#include "base/format.h"
#include "plan/loom_bench.h"
#include "plan/trial.h"
#include "reader/descriptions.h"
#include "support/bench.h"

namespace plugward {
namespace {

struct Wren {
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  Description description;
  LoomBench bench;

  Wren() {
    add_builtin_families(catalogue);
    const std::string path = PLUGWARD_SOURCE_DIR "/harnesses/wren-a4.xml";
    description = read_description(sources, sources.add(path, read_file(path)), catalogue, diagnostics, {},
                                   [&](const std::string& file, std::size_t) {
                                     return OpenedFile{sources.add(file, read_file(file)), ""};
                                   });
    REQUIRE(description.loom_files);
    bench = loom_bench(*description.loom, *description.loom_files);
  }
  Fitting fitting() const { return loom_fitting(*description.loom_files, bench, catalogue); }
  int plug(std::string_view id) const {
    for (std::size_t i = 0; i < bench.harness.plugs.size(); ++i) {
      if (bench.harness.plugs[i].id == id) return static_cast<int>(i);
    }
    return -1;
  }
};

using Net = std::string;

/// Nets as sets of names; "GND" and "+RAIL" are the board's.
class Wires {
 public:
  explicit Wires(const Fitting& f) : fitting(f) {
    for (const Placement& p : f.placements) {
      const Plug& plug = f.harness->plugs[static_cast<std::size_t>(p.plug)];
      for (std::size_t i = 0; i < plug.leads.size(); ++i) {
        if (plug.leads[i].cavity > 0 && plug.leads[i].to)
          contacts.push_back({p.plug, static_cast<int>(i), p.header, plug.leads[i].cavity});
      }
    }
  }

  const Fitting& fitting;
  std::vector<Contact> contacts;  // one-row plugs only: cavity n meets pin n
  std::vector<std::pair<Net, Net>> whiskers;

  Net pin_net(int header, int number) const {
    const Pin& pin = fitting.board->headers[static_cast<std::size_t>(header)].pin(number);
    if (pin.function == PinFunction::Ground) return "GND";
    if (pin.function == PinFunction::Supply)
      return "+" + (pin.jumper.empty() ? pin.rail : fitting.jumpers.at(pin.jumper));
    return format("p{}.{}", header, number);
  }
  static Net terminal_net(int device, int terminal) { return format("t{}.{}", device, terminal); }

  /// Everything that is one net with `from`.
  std::set<Net> net(const Net& from, bool worked, bool switched_on = false) const {
    std::vector<std::pair<Net, Net>> edges = whiskers;
    for (const Contact& c : contacts) {
      const auto& to =
          fitting.harness->plugs[static_cast<std::size_t>(c.plug)].leads[static_cast<std::size_t>(c.lead)].to;
      edges.emplace_back(pin_net(c.header, c.pin), terminal_net(to->device, to->terminal));
      const Pin& pin = fitting.board->headers[static_cast<std::size_t>(c.header)].pin(c.pin);
      if (switched_on && pin.function == PinFunction::Switched)
        edges.emplace_back(pin_net(c.header, c.pin), "GND");
    }
    for (std::size_t d = 0; d < fitting.harness->devices.size(); ++d) {
      for (const Part& part : fitting.harness->devices[d].parts) {
        const int device = static_cast<int>(d);
        if (const auto* join = std::get_if<Join>(&part))
          edges.emplace_back(terminal_net(device, join->a), terminal_net(device, join->b));
        if (const auto* sw = std::get_if<Switch>(&part); sw != nullptr && sw->rests_closed != worked)
          edges.emplace_back(terminal_net(device, sw->a), terminal_net(device, sw->b));
      }
    }
    std::set<Net> reached{from};
    for (bool grown = true; grown;) {
      grown = false;
      for (const auto& [a, b] : edges) {
        if (reached.contains(a) != reached.contains(b))
          grown = reached.insert(a).second | reached.insert(b).second;
      }
    }
    return reached;
  }

  bool shorted() const {
    for (const bool worked : {false, true}) {
      for (const bool on : {false, true}) {
        for (const Net& one : net("GND", worked, on)) {
          if (one.front() == '+') return true;
        }
      }
    }
    return false;
  }

  /// A pulled-up input: low when its net holds ground.
  bool low(const Net& pin, bool worked) const { return net(pin, worked).contains("GND"); }
};

const Device& device_of(const Fitting& fitting, int plug) {
  return fitting.harness->devices[static_cast<std::size_t>(
      fitting.harness->plugs[static_cast<std::size_t>(plug)].leads.front().to->device)];
}

/// What the wires say is seen at a plug; nothing when they cannot say.
std::optional<Symptom> seen_by_wires(const Wires& healthy, const Wires& now, int plug) {
  const Fitting& fitting = now.fitting;
  const Device& device = device_of(fitting, plug);
  const int d = fitting.harness->plugs[static_cast<std::size_t>(plug)].leads.front().to->device;
  int header = -1;
  for (const Placement& p : fitting.placements) {
    if (p.plug == plug) header = p.header;
  }
  const Header& h = fitting.board->headers[static_cast<std::size_t>(header)];
  if (device.kind == "motor") {
    // Which driver end each winding end meets, as (coil, end).
    std::vector<std::pair<int, char>> ends;
    for (const Part& part : device.parts) {
      const auto* coil = std::get_if<Coil>(&part);
      if (coil == nullptr) continue;
      for (const TerminalIndex t : {coil->a, coil->b}) {
        std::set<std::pair<int, char>> met;
        for (const Pin& pin : h.pins) {
          if (now.net(Wires::terminal_net(d, t), false).contains(now.pin_net(header, pin.number)))
            met.insert({pin.coil, pin.coil_end});
        }
        if (met.size() > 1) return Symptom::Judders;  // a whisker between two ends
        ends.push_back(met.empty() ? std::pair{0, '-'} : *met.begin());
      }
    }
    int open = 0;
    for (const auto& end : ends) open += end.first == 0;
    if (open == 4) return Symptom::NeverStarts;
    if (open > 0 || ends[0].first != ends[1].first || ends[2].first != ends[3].first) return Symptom::Judders;
    int sign = ends[0].first == 1 ? 1 : -1;
    sign *= ends[0].second == 'A' ? 1 : -1;
    sign *= ends[2].second == 'A' ? 1 : -1;
    return sign > 0 ? std::nullopt : std::optional(Symptom::RunsBackwards);
  }
  for (const Part& part : device.parts) {
    if (const auto* load = std::get_if<Load>(&part); load != nullptr && device.use == "fan") {
      const auto feeds = [&](const Wires& w) {
        const auto plus = w.net(Wires::terminal_net(d, load->plus), false, true);
        return plus.contains("+24V") &&
               w.net(Wires::terminal_net(d, load->minus), false, true).contains("GND");
      };
      if (feeds(healthy) && !feeds(now)) return Symptom::NeverStarts;
      return std::nullopt;
    }
  }
  for (const Pin& pin : h.pins) {
    if (pin.function != PinFunction::Input) continue;
    const Net net = now.pin_net(header, pin.number);
    for (const Part& part : device.parts) {
      if (std::holds_alternative<Switch>(part)) {
        const bool rest = healthy.low(net, false), worked = healthy.low(net, true);
        const bool r = now.low(net, false), w = now.low(net, true);
        if (rest == worked) continue;
        if (r == w) return r == worked ? Symptom::AlwaysTriggered : Symptom::NeverTriggered;
        if (r != rest) return Symptom::Inverted;
      }
      if (const auto* sensor = std::get_if<TemperatureSensor>(&part)) {
        if (now.net(net, false).contains("GND")) return Symptom::ZeroScale;
        const auto a = now.net(Wires::terminal_net(d, sensor->a), false);
        const auto b = now.net(Wires::terminal_net(d, sensor->b), false);
        const bool joined = (a.contains(net) && b.contains("GND")) || (b.contains(net) && a.contains("GND"));
        if (!joined) return Symptom::FullScale;
      }
    }
  }
  return std::nullopt;
}

/// One random error, planted in the wires, and how the finder should call it.
MachineFault plant(Wires& wires, int plug, std::mt19937& random) {
  const auto pick = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
  std::vector<std::size_t> mine;
  for (std::size_t i = 0; i < wires.contacts.size(); ++i) {
    if (wires.contacts[i].plug == plug) mine.push_back(i);
  }
  MachineFault fault;
  fault.plug = plug;
  std::size_t a = mine[pick(mine.size())], b = a;
  while (b == a) b = mine[pick(mine.size())];
  if (a > b) std::swap(a, b);
  fault.lead = wires.contacts[a].lead;
  switch (pick(4)) {
    case 0:
      fault.kind = FaultKind::LeadOpen;
      wires.contacts.erase(wires.contacts.begin() + static_cast<std::ptrdiff_t>(a));
      break;
    case 1:
      fault.kind = FaultKind::LeadsExchanged;
      fault.other_lead = wires.contacts[b].lead;
      std::swap(wires.contacts[a].pin, wires.contacts[b].pin);
      break;
    case 2:
      fault.kind = FaultKind::LeadsTouch;
      fault.other_lead = wires.contacts[b].lead;
      wires.whiskers.emplace_back(wires.pin_net(wires.contacts[a].header, wires.contacts[a].pin),
                                  wires.pin_net(wires.contacts[b].header, wires.contacts[b].pin));
      break;
    default:
      fault.kind = FaultKind::PlugOff;
      fault.lead = -1;
      std::erase_if(wires.contacts, [&](const Contact& c) { return c.plug == plug; });
  }
  return fault;
}

bool same(const MachineFault& a, const MachineFault& b) {
  return a.kind == b.kind && a.plug == b.plug && a.lead == b.lead && a.other_lead == b.other_lead;
}

/// Where the path ends for a cause: the causes that are left.
std::vector<int> end_of_path(const PlugCauses& seen, int cause) {
  std::vector<int> left;
  for (std::size_t i = 0; i < seen.causes.size(); ++i) left.push_back(static_cast<int>(i));
  int step = seen.steps.empty() ? -1 : 0;
  while (step >= 0) {
    const TellingReading* taken = nullptr;
    for (const TellingReading& r : seen.steps[static_cast<std::size_t>(step)].readings) {
      if (std::find(r.causes.begin(), r.causes.end(), cause) == r.causes.end()) continue;
      CHECK(taken == nullptr);
      taken = &r;
    }
    REQUIRE(taken != nullptr);
    left = taken->causes;
    CHECK((taken->next < 0 || taken->next > step));
    step = taken->next;
  }
  return left;
}

/// How many of `count` planted errors had a symptom; each must be found.
int try_errors(const Fitting& fitting, const std::vector<int>& plugs, int count, unsigned seed) {
  const CauseFinder finder(fitting);
  const Wires healthy(fitting);
  REQUIRE(!healthy.shorted());
  std::mt19937 random(seed);
  int seen = 0;
  for (int i = 0; i < count; ++i) {
    Wires wires(fitting);
    const int plug = plugs[random() % plugs.size()];
    const MachineFault planted = plant(wires, plug, random);
    const bool dies = wires.shorted();
    const auto symptom = dies ? std::optional(Symptom::Dies) : seen_by_wires(healthy, wires, plug);
    CAPTURE(seed);
    CAPTURE(i);
    CAPTURE(fitting.harness->plugs[static_cast<std::size_t>(plug)].id);
    CAPTURE(to_word(planted.kind));
    CAPTURE(planted.lead);
    CAPTURE(planted.other_lead);
    if (!symptom) continue;
    CAPTURE(words_of(*symptom).word);
    ++seen;
    bool found = false;
    for (const PlugCauses& causes : finder.causes(*symptom, plug)) {
      for (std::size_t c = 0; c < causes.causes.size(); ++c) {
        if (!same(causes.causes[c].fault, planted)) continue;
        found = true;
        const std::vector<int> end = end_of_path(causes, static_cast<int>(c));
        CHECK(std::find(end.begin(), end.end(), static_cast<int>(c)) != end.end());
      }
    }
    CHECK(found);
  }
  return seen;
}

}  // namespace

TEST_CASE("200 errors planted in the wires of the demo machine are found from what they show") {
  const Wren wren;
  std::vector<int> plugs;
  for (const std::string_view id :
       {"motor-x/motor", "motor-y/motor", "limit-x/limit", "limit-z/limit", "nozzle-thermistor/thermistor",
        "bed-thermistor/thermistor", "part-fan/fan", "cold-end-fan/fan", "filament/filament", "kite/trigger"})
    plugs.push_back(wren.plug(id));
  CHECK(try_errors(wren.fitting(), plugs, 200, 20261125) > 120);
}

TEST_CASE("errors on the newer board are found too") {
  // Each re-pinned by hand for this board.
  const auto motor = test::Bench::shipped("heron-m7", "x-motor");
  std::vector<Lead>& windings = motor.harness->plugs[0].leads;
  std::swap(windings[1].to, windings[2].to);
  CHECK(try_errors(motor.fitting({{"motor", "J3"}}), {0}, 40, 7) > 30);
  const auto limit = test::Bench::shipped("heron-m7", "limit-switch");
  limit.harness->plugs[0].leads[0].cavity = 2;
  limit.harness->plugs[0].leads[1].cavity = 3;
  CHECK(try_errors(limit.fitting({{"limit", "J5"}}), {0}, 20, 8) > 5);
  const auto fan = test::Bench::shipped("heron-m7", "fan-24v");
  CHECK(try_errors(fan.fitting({{"fan", "J11"}}, {{"JP4", "24V"}}), {0}, 20, 9) > 15);
}

TEST_CASE("a mixed pair, a dead driver and a setting are told by the circuit, in these words") {
  const Wren wren;
  const Fitting fitting = wren.fitting();
  const CauseFinder finder(fitting);
  const auto backwards = finder.causes(Symptom::RunsBackwards, wren.plug("motor-x/motor"));
  REQUIRE(backwards.size() == 1);
  REQUIRE(backwards[0].causes.size() == 3);
  CHECK(backwards[0].causes[0].what ==
        "two leads of 'motor-x/motor' are exchanged: BK sits in cavity 2 instead of 1, and GN in 1");
  CHECK(backwards[0].causes[2].what ==
        "the wiring of 'motor-x/motor' on J2 (MOTOR X) is right; the firmware is set the other way round");
  const auto heats = finder.causes(Symptom::HeatsByItself, wren.plug("nozzle-heater/heater"));
  REQUIRE(heats.size() == 1);
  REQUIRE(heats[0].causes.size() == 1);
  CHECK(heats[0].causes[0].what == "the switched output J14.2 on J14 (HEAT 1) conducts all the time");
  REQUIRE(!heats[0].causes[0].harms.empty());
  CHECK(heats[0].causes[0].harms[0] == "it heats without having been told to: fire");
  CHECK(heats[0].cautions[0] ==
        "pull the mains plug at once, and leave it out until the cause is found and cured");
  REQUIRE(heats[0].steps.size() == 1);
  CHECK(
      heats[0].steps[0].action ==
      "take 'nozzle-heater/heater' off; ohms from J14.2 to the supply's minus, red meter lead at the first");
  CHECK(heats[0].steps[0].power == MeterPower::Off);
  CHECK(heats[0].steps[0].readings[0].words == "below 100 ohm");
}

TEST_CASE("a closed switch over supply and ground kills the board, and the way to it is safe") {
  const Wren wren;
  const Fitting fitting = wren.fitting();
  const CauseFinder finder(fitting);
  const auto dies = finder.causes(Symptom::Dies, wren.plug("limit-x/limit"));
  REQUIRE(dies.size() == 1);
  REQUIRE(dies[0].causes.size() == 2);
  CHECK(dies[0].causes[0].what == "the WH lead of 'limit-x/limit' sits in cavity 3 instead of 1");
  CHECK(dies[0].causes[1].what ==
        "two plugs are exchanged: 'limit-x/limit' sits on J7 (LIMIT Z) and 'limit-z/limit' on J5 (LIMIT X)");
  CHECK(!dies[0].causes[0].harms.empty());
  for (const PlugCauses& seen : finder.causes(Symptom::Dies)) {
    for (const TellingStep& step : seen.steps) CHECK(step.power != MeterPower::On);
  }
}

TEST_CASE("figures that a meter and a hand cannot tell apart are one reading") {
  const auto ohms = [](std::initializer_list<double> list) {
    std::vector<HandOhms> figures;
    for (const double f : list) figures.push_back({f, true});
    return ohm_readings(figures);
  };
  CHECK(ohms({0.1, 1.9, 2.21, 4.42, 1e9}) ==
        std::vector<std::string>{"below 2 ohm", "below 2 ohm", "about 2.21 ohm", "about 4.42 ohm", "open"});
  CHECK(ohms({100e3, 120e3}) == std::vector<std::string>{"100 kohm to 120 kohm", "100 kohm to 120 kohm"});
  CHECK(ohm_readings({{0.1, true}, {9.0, false}, {1e9, true}}) ==
        std::vector<std::string>{"below 2 ohm", "more than 2 ohm", "more than 2 ohm"});
  CHECK(volt_readings({{true, 4.85, 5.15}, {true, 0.0, 0.0}, {}}) ==
        std::vector<std::string>{"4.8..5.2 V", "about 0.0 V", "no steady reading"});
}

}  // namespace plugward
