// SPDX-License-Identifier: MIT
// Every state of the circuit is looked at, as the judge does; which of the two levels a state gives follows
// from the middle between the receiver's thresholds. Linear in the states of the mating. Tested in
// tests/unit/plan/cure_reading_test.cpp.
#include "plan/cure_reading.h"

#include <algorithm>
#include <cmath>

#include "base/format.h"
#include "circuit/circuit.h"
#include "fit/seating.h"
#include "judge/words.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

std::vector<Contact> contacts_at_home(const Fitting& fitting) {
  std::vector<Contact> contacts;
  for (const Placement& p : fitting.placements) {
    const Plug& plug = plug_of(fitting, p.plug);
    const Seating home = home_seating(plug, p.header, *fitting.board);
    for (std::size_t l = 0; l < plug.leads.size(); ++l) {
      const int cavity = plug.leads[l].cavity;
      const int pin = cavity < 1 ? 0 : home.pin_of_cavity[at(cavity) - 1];
      if (pin != 0) contacts.push_back({p.plug, static_cast<int>(l), p.header, pin});
    }
  }
  return contacts;
}

bool is_pin(const Locus& locus, const ReadingPlace& place) {
  return place.pin >= 0 && locus.terminal < 0 && locus.header == place.header && locus.pin == place.pin;
}

bool is_terminal(const Locus& locus, int device, TerminalIndex terminal) {
  return terminal >= 0 && locus.device == device && locus.terminal == terminal;
}

void widen(std::optional<Range<Volts>>& range, Volts volts) {
  if (!range) range = Range<Volts>::at(volts);
  range->min = std::min(range->min, volts);
  range->max = std::max(range->max, volts);
}

/// Outwards to 10 mV, as a meter on its range of volts shows it. A hundredth of a step is rounding.
std::string rounded(const Range<Volts>& range) {
  constexpr double step = 100, slack = 0.01;
  const double low = std::floor(range.min.value * step + slack) / step + 0.0;
  const double high = std::ceil(range.max.value * step - slack) / step + 0.0;
  return low == high ? format("{:.2f} V", low) : format("{:.2f}..{:.2f} V", low, high);
}

}  // namespace

void add_readings(const Fitting& fitting, const ReadingPlace& place, Readings& readings) {
  const std::vector<Contact> contacts = contacts_at_home(fitting);
  for_each_snapshot(fitting, contacts, {}, [&](const Snapshot& s) {
    if (s.state.starts_with(tr("board without power"))) return;
    std::optional<double> hot;
    double minus = 0;
    for (std::size_t n = 0; n < s.nodes.size(); ++n) {
      const Locus& locus = s.nodes[n].locus;
      if (is_pin(locus, place) || is_terminal(locus, place.device, place.terminal)) {
        hot = s.solution.volts[n];
      } else if (is_terminal(locus, place.device, place.minus)) {
        minus = s.solution.volts[n];
      }
    }
    if (!hot) return;
    const Volts volts(*hot - minus);
    widen(volts > place.middle ? readings.high : readings.low, volts);
  });
}

void add_readings_alone(const Fitting& fitting, const ReadingPlace& place, Readings& readings) {
  Board board = *fitting.board;
  Pin& pin = board.headers[at(place.header)].pins[at(place.pin) - 1];
  pin.pull.reset();
  pin.clamp.reset();
  Fitting alone = fitting;
  alone.board = &board;
  add_readings(alone, place, readings);
}

std::string to_words(const Readings& readings) {
  std::string words;
  if (readings.high) words = format("{} when high", rounded(*readings.high));
  if (readings.low) {
    words += format("{}{} when low", words.empty() ? "" : tr(" and "), rounded(*readings.low));
  }
  return words;
}

}  // namespace plugward
