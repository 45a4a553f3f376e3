// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/meter_test.cpp.
#include "plan/meter_words.h"

#include <cmath>

#include "base/format.h"

namespace plugward {
namespace {

/// Below this a meter beeps for certain, above `no_beep_ohms` for certain not (common practice, no source).
constexpr double beep_ohms = 3.0;
constexpr double no_beep_ohms = 100.0;

/// `hair`: so much of a step does not count. 3 / 0.01 is not quite 300.
double rounded(double value, double step, bool up, double hair = 1e-9) {
  return (up ? std::ceil(value / step - hair) : std::floor(value / step + hair)) * step;
}

/// To so many digits, but not finer than a tenth.
double rounded_ohms(double ohms, int digits, bool up) {
  if (!(ohms > 0.0)) return 0.0;
  const double step = std::max(0.1, std::pow(10.0, std::floor(std::log10(ohms)) + 1.0 - digits));
  return rounded(ohms, step, up, 0.01);  // the meter's own 0.2 ohm is nothing beside 95 kohm
}

void explain_switch(ExpectedReading& r, bool closed) {
  if (closed) {
    r.too_high =
        tr("the contact does not close, the lead is broken, or these are not the switch's two leads");
  } else {
    r.too_low = tr("the contact does not open, or the leads touch");
  }
}

}  // namespace

std::string ohms_words(const ExpectedReading& r, bool one_way, bool contact) {
  if (one_way) return tr("reads one way round only (diode range: 0.2..0.9 V), open the other way");
  if (!r.low || !r.high) return tr("write down what you see");
  if (contact && *r.high <= beep_ohms) return tr("a beep");
  if (*r.low >= open_ohms) return tr("open, no beep");
  if (std::isfinite(*r.high))
    return to_text(Range<Ohms>{Ohms(rounded_ohms(*r.low, 3, false)), Ohms(rounded_ohms(*r.high, 3, true))});
  return format("{} or more{}", to_text(Ohms(rounded_ohms(*r.low, 2, false))),
                *r.low >= no_beep_ohms ? tr(", no beep") : tr(": not a short"));
}

std::string volts_words(const ExpectedReading& r) {
  if (!r.low || !r.high) return tr("write down what you see");
  const double low = rounded(*r.low, 0.01, false), high = rounded(*r.high, 0.01, true);
  return to_text(Range<Volts>{Volts(low == 0.0 ? 0.0 : low), Volts(high)});
}

void explain_ohms(ExpectedReading& r, const Part& part) {
  if (const auto* s = std::get_if<Switch>(&part)) {
    explain_switch(r, s->rests_closed == (r.at.hand == Hand::Rest));
    return;
  }
  if (std::holds_alternative<Heater>(part)) {
    r.too_low = tr("a heater for a lower voltage or of more power, or a short: do not fit it");
    r.too_high = tr("a heater for a higher voltage or of less power, or a broken lead");
  } else if (std::holds_alternative<Coil>(part)) {
    if (r.low && *r.low >= open_ohms) {
      r.too_low = tr("these two leads belong to one winding: the pairs are mixed; or the windings touch");
      return;
    }
    r.too_low = tr("turns of the winding are shorted, or the leads touch");
    r.too_high = tr("the two leads do not belong to one winding, or one is broken");
  } else if (const auto* t = std::get_if<TemperatureSensor>(&part)) {
    r.too_low = t->beta ? tr("still warm, another kind of sensor (10 kohm, platinum), or the leads touch")
                        : tr("another kind of sensor, or the leads touch");
    r.too_high = tr("broken lead, or another kind of sensor");
  } else if (std::holds_alternative<Load>(part)) {
    r.too_low = tr("a short between supply and ground, or another device: do not fit it");
  } else if (std::holds_alternative<Join>(part)) {
    r.too_high = tr("one of the two leads is broken or not the ground that it is taken for");
  } else if (std::holds_alternative<Diode>(part)) {
    r.too_low = tr("the diode is short or bridged");
    r.too_high = tr("the diode is the wrong way round or not soldered");
  } else if (std::holds_alternative<Resistor>(part)) {
    r.too_low = tr("another value, or leads that touch");
    r.too_high = tr("another value, or a cold joint");
  } else {
    r.too_low = tr("the signal lead touches ground");
  }
}

}  // namespace plugward
