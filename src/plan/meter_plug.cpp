// SPDX-License-Identifier: MIT
// Idea: a meter's few tenths of a volt see a device as resistors. Each part is written as the least and as
// the most that it may read; the network of the plug (circuit/meter.h) is solved once with all of the least
// and once with all of the most. No reading can lie outside: a network between two points never reads less
// when one of its resistances grows (Rayleigh's monotonicity law; Doyle and Snell, "Random walks and electric
// networks", 1984).
//
//   heater 24 V 40 W     14.4 ohm: 12.2..16.6, and the meter's 0.2 ohm: 12..16.8
//   ... beside a fan     low: heater's least beside the fan's floor; high: as if the fan were open
//
// The alternative, to solve with nominal values and widen the result, goes wrong where parts lie in parallel.
// O(pairs) solutions of a network of one device. Tested in tests/unit/plan/meter_test.cpp.
#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <tuple>

#include "base/format.h"
#include "judge/words.h"
#include "plan/meter.h"
#include "plan/meter_words.h"
#include "quantity/temperature_sensor.h"

namespace plugward {
namespace {

constexpr double heater_share = 0.15, coil_share = 0.15, thermistor_share = 0.05, platinum_share = 0.01,
                 resistor_share = 0.05;
constexpr double meter_itself = 0.2;  // ohm
constexpr Celsius coolest{20.0}, warmest{25.0};
/// A closed contact that does its work (common practice, no source).
constexpr double contact_ohms = 2.0;
/// Along a whole lead: more than any lead in a desktop machine has (24 AWG: 0.084 ohm/m, "AWG Current
/// Capacity").
constexpr double lead_ohms = 1.0;
/// Electronics take less below their working voltage than at it: at least a quarter of volts / amperes, and
/// anything up to an open circuit (common practice, no source).
constexpr double load_share = 0.25;
/// An input or output stage without power: no short (common practice, no source).
constexpr double stage_ohms = 100.0;

struct LeastMost {
  double least = 0, most = 0;
};

LeastMost around(double ohms, double share) {
  return {ohms * (1.0 - share), ohms * (1.0 + share)};
}

LeastMost of_sensor(const TemperatureSensor& s) {
  if (s.beta) {
    return {thermistor_resistance(s.nominal, *s.beta, warmest).value * (1.0 - thermistor_share),
            thermistor_resistance(s.nominal, *s.beta, coolest).value * (1.0 + thermistor_share)};
  }
  return {platinum_resistance(s.nominal, coolest).value * (1.0 - platinum_share),
          platinum_resistance(s.nominal, warmest).value * (1.0 + platinum_share)};
}

/// The device as resistors and switches, all at their least or all at their most. Diodes stay.
class AsResistors {
 public:
  AsResistors(Device& device, bool most) : device_(device), most_(most) {}

  void run() {
    const std::vector<Part> parts = std::move(device_.parts);
    device_.parts.clear();
    for (const Part& part : parts) std::visit(*this, part);
  }

  void operator()(const Load& load) {
    if (load.plus == load.minus || !(load.draws.value > 0.0)) return;
    floor(load.plus, load.minus, load_share * load.needs.middle().value / load.draws.value);
  }
  void operator()(const Heater& h) {
    if (h.watts.value > 0.0 && h.volts.value > 0.0)
      resistor(h.a, h.b, around(h.volts.value * h.volts.value / h.watts.value, heater_share));
  }
  void operator()(const Resistor& r) { resistor(r.a, r.b, around(r.ohms.value, resistor_share)); }
  void operator()(const Coil& c) {
    if (c.ohms.value > 0.0) resistor(c.a, c.b, around(c.ohms.value, coil_share));
  }
  void operator()(const TemperatureSensor& s) {
    if (s.nominal.value > 0.0) resistor(s.a, s.b, of_sensor(s));
  }
  void operator()(const Driver& d) {
    floor(d.terminal, d.minus, stage_ohms);
    floor(d.terminal, d.plus, stage_ohms);
  }
  void operator()(const Receiver& r) {
    floor(r.terminal, r.minus, stage_ohms);
    floor(r.terminal, r.plus, stage_ohms);
  }
  void operator()(const Regulator& r) {
    floor(r.in, r.minus, stage_ohms);
    floor(r.out, r.minus, stage_ohms);
  }
  void operator()(const Source&) {}  // never measured: see plug_readings
  void operator()(const Switch& s) { device_.parts.emplace_back(s); }
  void operator()(const Diode& d) { device_.parts.emplace_back(d); }
  void operator()(const Join& j) { device_.parts.emplace_back(j); }

 private:
  void resistor(TerminalIndex a, TerminalIndex b, LeastMost ohms) {
    Resistor r;
    r.a = a;
    r.b = b;
    r.ohms = Ohms(most_ ? ohms.most : ohms.least);
    device_.parts.emplace_back(r);
  }
  /// At least this; at most open.
  void floor(TerminalIndex a, TerminalIndex b, double ohms) {
    if (!most_) resistor(a, b, {ohms, ohms});
  }

  Device& device_;
  bool most_;
};

/// The harness with nothing in it but this plug's devices, as resistors.
Harness bench_harness(const Harness& whole, int plug, bool most) {
  Harness bench;
  bench.plugs.resize(whole.plugs.size());
  bench.plugs[static_cast<std::size_t>(plug)] = whole.plugs[static_cast<std::size_t>(plug)];
  bench.devices.resize(whole.devices.size());
  for (const Lead& lead : whole.plugs[static_cast<std::size_t>(plug)].leads) {
    if (!lead.to) continue;
    Device& device = bench.devices[static_cast<std::size_t>(lead.to->device)];
    if (!device.terminals.empty()) continue;
    device = whole.devices[static_cast<std::size_t>(lead.to->device)];
    AsResistors(device, most).run();
  }
  return bench;
}

/// What may be read. `one_way`: a diode lies between, so that the reading hangs on the way round.
struct OhmsBand {
  double least = 0, most = 0;
  bool one_way = false;
};

class PlugBench {
 public:
  PlugBench(const AsFound& found, int plug)
      : plug_(plug),
        held_(found.held[static_cast<std::size_t>(plug)]),
        least_(bench_harness(*found.fitting->harness, plug, false)),
        most_(bench_harness(*found.fitting->harness, plug, true)),
        fitting_(*found.fitting) {}

  /// From a cavity to the device's own end of a lead; open when the device is not one of this plug's.
  OhmsBand along(int cavity, TerminalRef end) {
    const auto device = static_cast<std::size_t>(end.device);
    const auto reading = [&](const Harness& harness) {
      if (harness.devices[device].terminals.empty()) return 2.0 * open_ohms;
      Fitting fitting = fitting_;
      fitting.harness = &harness;
      return ohms_along(fitting, plug_, held_, cavity, end);
    };
    return widened({reading(least_), reading(most_)});
  }

  OhmsBand read(int red, int black, Hand hand) {
    OhmsBand band{ohms(least_, red, black, hand), ohms(most_, red, black, hand)};
    const double back = ohms(most_, black, red, hand);
    band.one_way = (back > open_ohms) != (band.most > open_ohms);
    return widened(band);
  }

 private:
  static OhmsBand widened(OhmsBand band) {
    band.least = std::min(open_ohms, std::max(0.0, band.least - meter_itself));
    band.most = band.most > open_ohms ? std::numeric_limits<double>::infinity() : band.most + meter_itself;
    return band;
  }

  double ohms(const Harness& harness, int red, int black, Hand hand) {
    Fitting fitting = fitting_;
    fitting.harness = &harness;
    return ohms_in_hand(fitting, plug_, held_, red, black, hand).ohms;
  }

  int plug_;
  std::vector<HeldContact> held_;
  Harness least_, most_;
  Fitting fitting_;
};

bool has_own_supply(const Harness& harness, const Plug& plug) {
  return std::any_of(plug.leads.begin(), plug.leads.end(), [&](const Lead& lead) {
    if (!lead.to) return false;
    const auto& parts = harness.devices[static_cast<std::size_t>(lead.to->device)].parts;
    return std::any_of(parts.begin(), parts.end(),
                       [](const Part& part) { return std::holds_alternative<Source>(part); });
  });
}

/// The cavity of this plug that leads to the terminal or to one joined to it; 0: none.
int cavity_of(const Harness& harness, const Plug& plug, int device, TerminalIndex terminal) {
  for (const TerminalIndex t : joined_to(harness.devices[static_cast<std::size_t>(device)], terminal)) {
    for (const Lead& lead : plug.leads) {
      if (lead.cavity > 0 && lead.to == TerminalRef{device, t}) return lead.cavity;
    }
  }
  return 0;
}

class PlugReader {
 public:
  PlugReader(const Fitting& fitting, int plug)
      : harness_(*fitting.harness),
        plug_(plug_of(fitting, plug)),
        index_(plug),
        bench_(as_described(fitting), plug) {}

  std::vector<ExpectedReading> run() {
    if (has_own_supply(harness_, plug_)) return {};
    for (std::size_t d = 0; d < harness_.devices.size(); ++d) {
      const int device = static_cast<int>(d);
      int first_coil = 0;
      for (const Part& part : harness_.devices[d].parts) {
        const std::vector<TerminalIndex> ends = measured_ends(part);
        if (ends.empty()) continue;
        const int red = cavity_of(harness_, plug_, device, ends[0]);
        const int black = cavity_of(harness_, plug_, device, ends[1]);
        if (red == 0 || black == 0 || red == black) continue;
        add(part, red, black, Hand::Rest);
        if (std::holds_alternative<Switch>(part)) add(part, red, black, Hand::Worked);
        if (!std::holds_alternative<Coil>(part)) continue;
        if (first_coil > 0) add(part, first_coil, red, Hand::Rest);
        if (first_coil == 0) first_coil = red;
      }
    }
    if (looks_alike(harness_, index_)) follow_leads();
    return std::move(readings_);
  }

 private:
  void follow_leads() {
    for (const Lead& lead : plug_.leads) {
      if (!lead.to || lead.cavity < 1) continue;
      ExpectedReading r;
      r.kind = ReadingKind::Resistance;
      r.at = {-1, index_, lead.cavity, 0, Hand::Rest, lead.to};
      r.points = format("cavity {} to '{}' at the device", lead.cavity, harness_.terminal_name(*lead.to));
      r.unit = "ohm";
      r.low = 0.0;
      r.high = std::max(lead_ohms, bench_.along(lead.cavity, *lead.to).most);
      r.expect = tr("a beep");
      r.too_high = tr(
          "leads that look alike are exchanged, or one is broken; where that end cannot be reached, follow "
          "the lead by hand");
      readings_.push_back(std::move(r));
    }
  }

  /// Of a figure that nobody has stated nothing is expected: the judge asks for it.
  static bool not_stated(const Part& part) {
    if (const auto* load = std::get_if<Load>(&part)) return !load->draws_stated;
    if (const auto* contact = std::get_if<Switch>(&part)) return !contact->rests_stated;
    if (const auto* coil = std::get_if<Coil>(&part)) return !(coil->ohms.value > 0.0);
    if (const auto* sensor = std::get_if<TemperatureSensor>(&part)) return !(sensor->nominal.value > 0.0);
    if (const auto* heater = std::get_if<Heater>(&part))
      return !(heater->volts.value > 0.0 && heater->watts.value > 0.0);
    return false;
  }

  static std::vector<TerminalIndex> measured_ends(const Part& part) {
    if (not_stated(part)) return {};
    if (const auto* load = std::get_if<Load>(&part)) {
      if (load->plus == load->minus) return {};
      return {load->plus, load->minus};
    }
    if (const auto* driver = std::get_if<Driver>(&part)) return {driver->terminal, driver->minus};
    if (const auto* receiver = std::get_if<Receiver>(&part)) return {receiver->terminal, receiver->minus};
    if (std::holds_alternative<Regulator>(part) || std::holds_alternative<Source>(part)) return {};
    return ends_of(part);
  }

  void add(const Part& part, int red, int black, Hand hand) {
    if (!seen_.insert({std::min(red, black), std::max(red, black), hand == Hand::Worked}).second) return;
    const OhmsBand band = bench_.read(red, black, hand);
    ExpectedReading r;
    r.kind = ReadingKind::Resistance;
    r.at = {-1, index_, red, black, hand, {}};
    r.points =
        format("cavity {} to cavity {}{}", red, black, hand == Hand::Worked ? tr(", worked by hand") : "");
    r.unit = "ohm";
    r.low = band.least;
    r.high = band.most;
    if (band.one_way) {
      r.low = 0.0;
      r.high = std::numeric_limits<double>::infinity();
    }
    const bool contact = std::holds_alternative<Switch>(part) || std::holds_alternative<Join>(part);
    if (contact && band.most < contact_ohms) r.high = contact_ohms;
    r.expect = ohms_words(r, band.one_way, contact);
    explain_ohms(r, part);
    readings_.push_back(std::move(r));
  }

  const Harness& harness_;
  const Plug& plug_;
  int index_;
  PlugBench bench_;
  std::set<std::tuple<int, int, bool>> seen_;
  std::vector<ExpectedReading> readings_;
};

bool polarised(const Device& device) {
  return std::any_of(device.parts.begin(), device.parts.end(), [](const Part& part) {
    return std::holds_alternative<Load>(part) || std::holds_alternative<Driver>(part) ||
           std::holds_alternative<Receiver>(part) || std::holds_alternative<Diode>(part);
  });
}

}  // namespace

bool looks_alike(const Harness& harness, int plug) {
  const std::vector<Lead>& leads = harness.plugs[static_cast<std::size_t>(plug)].leads;
  const auto matters = [&](const Lead& lead) {
    return lead.to && polarised(harness.devices[static_cast<std::size_t>(lead.to->device)]);
  };
  for (std::size_t a = 0; a < leads.size(); ++a) {
    for (std::size_t b = a + 1; b < leads.size(); ++b) {
      if (leads[a].colour == leads[b].colour && leads[a].mark == leads[b].mark &&
          leads[a].to != leads[b].to && (matters(leads[a]) || matters(leads[b])))
        return true;
    }
  }
  return false;
}

std::vector<ExpectedReading> plug_readings(const Fitting& fitting, int plug) {
  return PlugReader(fitting, plug).run();
}

ExpectedReading read_plug_again(const ExpectedReading& reading, const AsFound& found) {
  ExpectedReading again = reading;
  PlugBench bench(found, reading.at.plug);
  const OhmsBand band = reading.at.end ? bench.along(reading.at.red, *reading.at.end)
                                       : bench.read(reading.at.red, reading.at.black, reading.at.hand);
  again.low = band.least;
  again.high = band.most;
  again.expect = ohms_words(again, band.one_way, false);
  return again;
}

}  // namespace plugward
