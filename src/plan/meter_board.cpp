// SPDX-License-Identifier: MIT
// The bare board is the circuit with no plug on it (circuit/meter.h), solved over the tolerances of its
// rails, with the meter's own resistance. Tested in tests/unit/plan/meter_test.cpp.
#include <algorithm>
#include <limits>
#include <map>

#include "base/format.h"
#include "fit/match.h"
#include "judge/words.h"
#include "plan/machine_fault.h"
#include "plan/meter.h"
#include "plan/meter_words.h"

namespace plugward {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
/// An output that is off reads less than this (TTL low level, "Logic levels").
constexpr double low_level = 0.4;
/// Across a switched output that is off. What leaks through its transistor shows at the meter.
constexpr double off_level = 1.0;
/// Ground beeps; a supply that is not short does not (common practice, no source).
constexpr double ground_ohms = 2.0;
constexpr double supply_ohms = 10.0;

int ground_pin(const Header& header) {
  for (const Pin& pin : header.pins) {
    if (pin.function == PinFunction::Ground && !pin.contest) return pin.number;
  }
  return 0;
}

/// The pin that feeds what a switched pin of this header switches; 0: none.
int feeding_pin(const Header& header) {
  for (const Pin& pin : header.pins) {
    if (pin.function == PinFunction::Supply && !pin.contest) return pin.number;
  }
  return 0;
}

class BoardReader {
 public:
  BoardReader(const Fitting& fitting, int header)
      : fitting_(fitting), header_(header_of(fitting, header)), index_(header) {
    bare_ = fitting;
    bare_.harness = &nothing_;
    bare_.placements.clear();
  }

  std::vector<ExpectedReading> volts() {
    for (const Pin& pin : header_.pins) add_volts(pin);
    return std::move(readings_);
  }

  std::vector<ExpectedReading> ohms() {
    for (const Pin& pin : header_.pins) {
      if (pin.contest) continue;
      if (pin.function == PinFunction::Ground) {
        ExpectedReading r = at_pins(pin.number, 0);
        r.kind = ReadingKind::Continuity;
        r.low = 0.0;
        r.high = ground_ohms;
        r.expect = tr("a beep");
        r.too_high = tr("not ground: the board is not as described; stop");
        readings_.push_back(std::move(r));
      } else if (pin.function == PinFunction::Supply) {
        ExpectedReading r = at_pins(pin.number, ground_pin(header_));
        r.kind = ReadingKind::Continuity;
        r.low = supply_ohms;
        r.high = infinite;
        r.expect = tr("no beep");
        r.too_low = tr("supply shorted to ground, or this pin is ground: no power before it is found");
        readings_.push_back(std::move(r));
      }
    }
    return std::move(readings_);
  }

  /// Fills in what the model gives for the points of a reading.
  void measure(ExpectedReading& r) const {
    const PinRef black = r.at.black > 0 ? PinRef{index_, r.at.black} : PinRef{};
    const Band band = volts_at(bare_, {}, {index_, r.at.red}, black, Hand::Rest);
    r.low.reset();
    r.high.reset();
    if (!band.found) return;
    r.low = band.least;
    r.high = band.most;
  }

 private:
  ExpectedReading at_pins(int red, int black) const {
    ExpectedReading r;
    r.at.header = index_;
    r.at.red = red;
    r.at.black = black;
    r.points = format("{} to {}", pin_name(fitting_, index_, red),
                      black > 0 ? pin_name(fitting_, index_, black) : tr("the supply's minus"));
    return r;
  }

  void put(ExpectedReading r) {
    r.kind = ReadingKind::Voltage;
    r.unit = "V";
    r.expect = volts_words(r);
    readings_.push_back(std::move(r));
  }

  void add_volts(const Pin& pin) {
    const int ground = ground_pin(header_);
    if (pin.contest || pin.function == PinFunction::Unknown) {
      ExpectedReading r = at_pins(pin.number, pin.number == ground ? 0 : ground);
      r.too_high = tr("what this pin is has to be settled before anything is plugged on it");
      put(std::move(r));
      return;
    }
    switch (pin.function) {
      case PinFunction::Supply:
        add_supply(pin, ground);
        return;
      case PinFunction::Input:
        if (pin.pull) add_input(pin, ground);
        return;
      case PinFunction::Output:
        add_output(pin, ground);
        return;
      case PinFunction::Switched:
        add_switched(pin, feeding_pin(header_));
        return;
      default:  // ground was beeped; what a motor driver shows is anything up to its supply
        return;
    }
  }

  void add_supply(const Pin& pin, int ground) {
    ExpectedReading r = at_pins(pin.number, ground);
    const bool known = rail_of(pin, *fitting_.board, fitting_.jumpers) != nullptr;
    if (known) measure(r);
    const std::string jumper = pin.jumper.empty() ? "" : format("jumper {} sits wrong, ", pin.jumper);
    r.too_low = jumper + tr("the rail is not up or overloaded, or this is another header");
    r.too_high = jumper + tr("the board is not as described, or this is another header: power off");
    if (!known) r.too_low = r.too_high = tr("where the jumper is to sit is not settled");
    put(std::move(r));
  }

  void add_input(const Pin& pin, int ground) {
    ExpectedReading r = at_pins(pin.number, ground);
    measure(r);
    if (!r.low) return;
    if (pin.pull->up) {
      r.too_low = tr("no pull-up behind it, an input that was damaged, or this is another header");
      r.too_high = tr("the input is pulled to a higher rail than described, or this is another header");
    } else {
      r.low = std::min(0.0, *r.low);
      r.high = std::max(low_level, *r.high);
      r.too_high = tr("not pulled down as described, or this is another header");
    }
    put(std::move(r));
  }

  void add_output(const Pin& pin, int ground) {
    ExpectedReading r = at_pins(pin.number, ground);
    const Rail* rail = fitting_.board->rail(pin.rail);
    if (pin.on_at_reset) {
      measure(r);
    } else if (pin.high || rail != nullptr) {  // on or off, until the firmware says so
      r.low = 0.0;
      r.high = pin.high ? pin.high->max.value : rail->volts.max.value;
    }
    if (r.low && pin.on_at_reset && !*pin.on_at_reset) {
      r.low = 0.0;
      r.high = std::max(low_level, *r.high);
    }
    r.too_low =
        pin.on_at_reset.value_or(false) ? tr("off before the firmware runs, against the description") : "";
    r.too_high = pin.on_at_reset && !*pin.on_at_reset
                     ? tr("on before the firmware runs, or this is another header: leave its plug off")
                     : tr("this is another header, or the board is not as described: leave its plug off");
    put(std::move(r));
  }

  void add_switched(const Pin& pin, int plus) {
    if (plus == 0) return;
    ExpectedReading r = at_pins(plus, pin.number);
    if (pin.on_at_reset && rail_of(header_.pin(plus), *fitting_.board, fitting_.jumpers) != nullptr)
      measure(r);
    if (r.low && !*pin.on_at_reset) {
      r.low = 0.0;
      r.high = std::max(off_level, *r.high);
    }
    r.too_high =
        tr("the output is on by itself: a shorted transistor or the wrong header; fit nothing to it (a value "
           "between is leakage when it falls to 0 V with 10 kohm across)");
    put(std::move(r));
  }

  const Fitting& fitting_;
  const Header& header_;
  int index_;
  Harness nothing_;
  Fitting bare_;
  std::vector<ExpectedReading> readings_;
};

/// A lead in its position; `flag`: it bears the name of its terminal.
struct SeenLead {
  const Lead* lead = nullptr;
  bool flag = false;
};

/// Colours at these positions: "1 BN, 2 RD 'V'"; positions without a lead are left out.
std::string colour_words(const Harness& harness, const std::multimap<int, SeenLead>& leads) {
  std::vector<std::string> words;
  for (const auto& [position, seen] : leads) {
    std::string word = format("{} {}", position, to_code(seen.lead->colour));
    if (!seen.lead->mark.empty()) word += format(" '{}'", seen.lead->mark);
    if (seen.flag && seen.lead->to) word += format(" (flag {})", harness.terminal_name(*seen.lead->to));
    words.push_back(std::move(word));
  }
  return words.empty() ? tr("empty") : format("{}", join(words, ", "));
}

ExpectedReading look(const AsFound& found, MeterPoints at) {
  const Harness& harness = *found.fitting->harness;
  std::multimap<int, SeenLead> leads;
  if (at.header >= 0) {
    for (const Contact& c : found.contacts) {
      if (c.header == at.header)
        leads.emplace(c.pin, SeenLead{&lead_of(*found.fitting, c), looks_alike(harness, c.plug)});
    }
  } else {
    const Plug& plug = plug_of(*found.fitting, at.plug);
    for (const HeldContact& h : found.held[static_cast<std::size_t>(at.plug)]) {
      leads.emplace(h.cavity,
                    SeenLead{&plug.leads[static_cast<std::size_t>(h.lead)], looks_alike(harness, at.plug)});
    }
  }
  ExpectedReading r;
  r.kind = ReadingKind::Look;
  r.at = at;
  r.points = at.header >= 0 ? format("colours over the pins of {}", header_of(*found.fitting, at.header).id)
                            : tr("colours by cavity");
  r.expect = colour_words(harness, leads);
  r.too_high = at.header >= 0 ? tr("another plug, turned, shifted, or on the header beside: off with it")
                              : tr("another plug, or contacts in other cavities");
  return r;
}

}  // namespace

AsFound as_described(const Fitting& fitting) {
  AsFound found{&fitting, FaultyMachine(fitting).contacts, {}};
  for (const Plug& plug : fitting.harness->plugs) {
    std::vector<HeldContact>& held = found.held.emplace_back();
    for (std::size_t l = 0; l < plug.leads.size(); ++l) {
      if (plug.leads[l].cavity > 0) held.push_back({static_cast<int>(l), plug.leads[l].cavity});
    }
  }
  return found;
}

std::vector<ExpectedReading> bare_board_readings(const Fitting& fitting, int header) {
  return BoardReader(fitting, header).volts();
}

std::vector<ExpectedReading> power_off_readings(const Fitting& fitting, int header) {
  return BoardReader(fitting, header).ohms();
}

ExpectedReading colours_in_hand(const Fitting& fitting, int plug) {
  return look(as_described(fitting), {-1, plug, 0, 0, Hand::Rest, {}});
}

ExpectedReading colours_on(const Fitting& fitting, int header) {
  return look(as_described(fitting), {header, -1, 0, 0, Hand::Rest, {}});
}

ExpectedReading read_again(const ExpectedReading& reading, const AsFound& found) {
  switch (reading.kind) {
    case ReadingKind::Look:
      return look(found, reading.at);
    case ReadingKind::Resistance:
      return read_plug_again(reading, found);
    case ReadingKind::Voltage: {
      ExpectedReading again = reading;
      BoardReader(*found.fitting, reading.at.header).measure(again);
      again.expect = volts_words(again);
      return again;
    }
    case ReadingKind::Continuity:
      break;  // what else the board holds is not described
  }
  return reading;
}

bool certainly_differs(const ExpectedReading& expected, const ExpectedReading& found) {
  if (expected.kind == ReadingKind::Look) return expected.expect != found.expect;
  if (!expected.low || !expected.high || !found.low || !found.high) return false;
  return *found.low > *expected.high || *found.high < *expected.low;
}

}  // namespace plugward
