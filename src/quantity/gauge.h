// SPDX-License-Identifier: MIT
// Conductor sizes: AWG by the formula of ASTM B258, or a cross-section in mm2.
//
//   parse_gauge("26 AWG"), parse_gauge("0.14 mm2")
//   wire_resistance(awg(26), Millimetres(1000), Celsius(60))   0.155 ohm: annealed copper, one way
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "quantity/quantity.h"

namespace plugward {

struct Gauge {
  std::optional<int> awg;  ///< when it was written as AWG; 4/0 is -3, 0000 not otherwise accepted
  SquareMillimetres area{};

  friend bool operator==(const Gauge&, const Gauge&) = default;
};

/// d = 0.127 mm x 92^((36 - n) / 39) (ASTM B258-02). REQUIRES: 0 <= n <= 44.
Millimetres awg_diameter(int n);
SquareMillimetres awg_area(int n);
Gauge awg(int n);

/// The AWG number whose area is nearest on the logarithmic scale.
int nearest_awg(SquareMillimetres);

/// Copper of 100 % IACS at 20 C: 0.017241 ohm mm2/m (IEC 60028:1925), temperature coefficient 3.93e-3 per K.
double copper_resistivity(Celsius = Celsius(20.0));
/// Resistance of `length` of one conductor (one way).
Ohms wire_resistance(const Gauge&, Millimetres length, Celsius = Celsius(20.0));

/// Currents a copper wire may carry, from published tables; nothing when the table has no row for the gauge.
/// Chassis wiring: single wire in free air (Handbook of Electronic Tables and Formulas, as copied in
/// "AWG Current Capacity"). Bundled: TFE wire in a bundle (archived "wire table" page, whose columns had to be read
/// from flattened text). A size in mm2 is judged as the next thinner AWG row.
std::optional<Amps> chassis_current(const Gauge&);
std::optional<Amps> bundled_current(const Gauge&);
/// Bundled, by the general table of the same archived page: even sizes 12..22 AWG.
std::optional<Amps> general_bundled_current(const Gauge&);
/// What is left of a single wire's current for each of `wires` in one bundle (MIL-W-5088B, as used in a DC-load
/// manual): 1, 0.94, 0.89, 0.83, 0.76 for one to five; nothing beyond. REQUIRES: wires >= 1.
std::optional<double> bundle_factor(int wires);
/// MIL-W-5088B, as used in a DC-load manual: single wire, 50 C ambient, 105 C conductor; even sizes 8..22 AWG but 16.
std::optional<Amps> military_current(const Gauge&);
/// 700 circular mils per ampere, the "power transmission" rule.
Amps conservative_current(const Gauge&);

/// "26 AWG" (0..44) or "0.14 mm2".
Parsed<Gauge> parse_gauge(std::string_view text);
std::string to_text(const Gauge&);

}  // namespace plugward
