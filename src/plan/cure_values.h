// SPDX-License-Identifier: MIT
// Values of the parts that are put between a device and a board, from Ohm's law alone. Whether they do their
// work is then judged on the model; these functions only say what is worth judging.
//
//   24 V from a sourcing sensor on an input that withstands 5.5 V and has 4.7 kohm to 3.3 V:
//   choose_divider({...})  ->  6.8 kohm above, 1.3 kohm below: 3.7..4.2 V when high, 0.72 V when low
//
// All ranges hold what the circuit can give in every corner of its tolerances; a choice holds in every corner
// of its own. "No value" is a result: an empty optional.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "quantity/preferred.h"
#include "quantity/quantity.h"

namespace plugward {

/// A resistor from an input to a rail or to ground that is there already.
struct PullBehind {
  Range<Volts> to{};  ///< 0 V: to ground
  Ohms ohms{};
};

/// What a divider must do.
struct DividerNeeds {
  Range<Volts> high{};              ///< at the giver when it is high: with the largest drop .. with none
  std::optional<Range<Volts>> low;  ///< at the giver when it drives low; empty: it then only leaks
  Amps leak{};                      ///< into the divider when nothing drives it
  Amps taken{};                     ///< out of the input while it is high: of an output that sinks, when off
  std::optional<PullBehind> pull;   ///< of the input
  Volts most{};                     ///< that the input withstands
  Volts high_above{};
  std::optional<Volts> low_below;
  double tolerance = 0.01;
};

struct Divider {
  Ohms upper{}, lower{};
  Range<Volts> high{};  ///< at the input, in all corners
  Volts low{};          ///< highest low level
  Amps amps{};          ///< most that the giver gives
  Watts upper_watts{}, lower_watts{};
};

/// What this pair does. Formula: the node of three conductances, (sum of g v) / (sum of g).
Divider divider(const DividerNeeds&, Ohms upper, Ohms lower);
/// Does it keep everything that is needed?
bool meets(const DividerNeeds&, const Divider&);
/// A pair of the E24 series, else of E96, with room on every side and by preference 1..10 kohm seen from the
/// input and at most 5 mA. Only E24 when `series` says so.
std::optional<Divider> choose_divider(const DividerNeeds&);
std::optional<Divider> choose_divider(const DividerNeeds&, Series);

/// A resistor that holds an input when nothing drives it.
struct PullNeeds {
  Range<Volts> rail{};              ///< where it goes; 0 V: ground
  Amps leak{};                      ///< of what drives it, when off: against the pull
  std::optional<PullBehind> other;  ///< of the input
  Volts threshold{};                ///< to be passed: upwards for a rail, downwards for ground
  Volts against{};                  ///< to ground: highest level of what drives it
  double tolerance = 0.05;
  std::optional<Volts> most{};  ///< that the input withstands, where a rail could bring more
  std::optional<Amps> limit{};  ///< what drives against it gives or takes no more
};

struct PullChoice {
  Ohms ohms{};
  Volts level{};    ///< worst
  Volts highest{};  ///< to a rail: the other end of what the input gets
  Amps amps{};      ///< most, when something drives against it
  Watts watts{};
};

/// The input's worst level with this pull: rail - leak x R when it has none of its own.
PullChoice pull(const PullNeeds&, Ohms);
/// Does it keep everything that is needed?
bool meets(const PullNeeds&, const PullChoice&);
/// Every value of E24 from 100 ohm to 1 Mohm that does, the preferred first: the largest up to 10 kohm that
/// passes the threshold by 0.1 V and takes at most 5 mA; then those beyond 10 kohm, with more current, with
/// less room.
std::vector<PullChoice> pulls(const PullNeeds&);
/// The first of them.
std::optional<PullChoice> choose_pull(const PullNeeds&);

/// Forward voltage that an optocoupler's LED is reckoned with ("24V input optocoupler selection").
inline constexpr Volts opto_drop{1.2};

struct OptoChoice {
  Ohms ohms{};
  Amps amps{};  ///< at the middle of the supply
  Amps least{};
  Watts watts{};  ///< at the highest supply
};

/// The series resistor of an optocoupler's LED: nearest of E24 to (supply - 1.2 V) / amps.
OptoChoice opto_resistor(Range<Volts> supply, Volts drop, Amps amps, double tolerance = 0.05);

/// The least resistance before an input whose protection diode may carry `limit`:
/// (in - supply - drop) / limit. Empty: no resistance makes it legal.
std::optional<Ohms> clamp_resistor(Volts in, Volts supply, Volts drop, Amps limit);

/// The smallest usual power rating of at least twice `watts`; empty above 1 W.
std::optional<Watts> power_rating(Watts);

/// A usual output voltage with 5 % tolerance that lies within `needs`, nearest to its middle.
std::optional<Range<Volts>> usual_volts(Range<Volts> needs, std::span<const double> sizes);
/// The smallest usual current limit of at least 1.5 times `amps`; empty above 10 A.
std::optional<Amps> usual_limit(Amps amps);

}  // namespace plugward
