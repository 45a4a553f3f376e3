// SPDX-License-Identifier: MIT
// What everything that is fitted draws together, each figure beside what it may be, and where that limit
// comes from; and what follows for wires, heaters, LED strings and fuses.
//
//   const Budget b = budget(fitting);          // all plugs of the fitting at home
//   for (const BudgetRow& row : b.rows) ...    // row.what, row.amps, row.limit, row.basis
//
// A budget passes no judgement: what is beyond a limit that counts is a finding of assess(). It also shows
// what assess() does not judge: wires in a bundle, and the supply as a whole.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "circuit/circuit.h"
#include "model/fitting.h"

namespace plugward {

enum class BudgetKind { Supply, Rail, Jumper, Header, Pin, Contact, Wire, Bundle };

struct BudgetRow {
  BudgetKind kind{};
  Locus at;
  std::string what;             ///< "rail '5V'", "J9.2", "RD lead in cavity 2 of 'control'"
  double amps = 0;              ///< the most in any state
  std::optional<double> limit;  ///< A
  std::string basis;   ///< what the limit is, or why there is none: "rail limit", "contact rating at 26 AWG"
  std::string source;  ///< who says so: "the board file", "JST eXH.pdf (quoted)"
  std::string state;   ///< the choices in which it is most; "" at rest

  std::optional<double> share() const;  ///< of the limit; 1 = all of it
};

/// What one lead loses over its length, one way; a load on two such leads loses twice as much.
struct LeadLoss {
  Locus at;
  std::string what;  ///< as in BudgetRow
  double amps = 0;
  Gauge gauge{};
  Millimetres length{};
  Volts cold{};                 ///< copper at 20 C
  Volts warm{};                 ///< at BudgetOptions::warm
  std::optional<Volts> supply;  ///< lowest voltage of the rail at its pin; empty when that is no supply pin

  /// There and back, at 20 C, as a share of the supply.
  std::optional<double> share_both_ways() const;
};

struct HeaterBudget {
  Locus at;
  std::string what;  ///< the device's id
  Volts rated_at{};
  Watts rated{}, least{}, most{};  ///< least, most: switched on, the rails at their worst
};

/// A string of addressable LEDs.
struct StringBudget {
  Locus at;
  std::string what;  ///< the device's id
  int count = 0;
  double brightness = 1;
  Amps draws{};
  Volts near{};              ///< least that it gets
  std::optional<Volts> far;  ///< least at its far end; empty: `loop` is not stated
};

/// A fuse for a heater's, a bed's or a supply's leads: load < fuse <= wire and contact.
struct FuseBudget {
  Locus at;  ///< plug and header
  std::string what;
  Amps load{};
  std::optional<Amps> weakest;  ///< of wires and contacts, as far as known
  std::optional<Amps> fuse;
  std::string words;  ///< a whole sentence: which one and why, or what must be thicker
};

struct Budget {
  std::vector<BudgetRow>
      rows;  ///< supply, rails, jumpers, headers, then by contact; rows of 0 A are there as well
  std::vector<LeadLoss> losses;
  std::vector<HeaterBudget> heaters;
  std::vector<StringBudget> strings;
  std::vector<FuseBudget> fuses;
  Celsius warm{};          ///< of LeadLoss::warm
  bool shorted = false;    ///< states with a short circuit were left out
  bool cut_short = false;  ///< there are more states than were looked at
};

struct BudgetOptions {
  Celsius warm{60.0};  ///< a lead in a warm case
};

/// Of all plugs of the fitting at home. A jumper whose position is not stated counts in every position.
Budget budget(const Fitting&, const BudgetOptions& = {});

std::string_view to_word(BudgetKind);  ///< "supply", "rail", ...

}  // namespace plugward
