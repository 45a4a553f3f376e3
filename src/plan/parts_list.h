// SPDX-License-Identifier: MIT
// What to buy and to lay ready for a plan: one list, each thing once, in a stable order.
//
//   const PartsList list = parts_list(fitting, advice);
//   for (const PartItem& item : list.items) ... item.buy(), item.what
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "plan/adapter_lead.h"
#include "plan/repin.h"

namespace plugward {

/// In the order in which they are listed.
enum class PartKind { Housing, Counterpart, Contact, Wire, Component, HeatShrink, Other, Tool };

struct PartItem {
  PartKind kind{};
  std::string what;    ///< "contact for a housing of family 'pin-2.54'"
  std::string family;  ///< housings, counterparts, contacts, crimp tools; else ""
  int positions = 0;   ///< housings, counterparts, flat cable
  std::optional<Gauge> gauge;
  WireColour colour;                  ///< wire
  std::optional<Millimetres> length;  ///< wire: of one piece
  std::string value;                  ///< components: "6.8 kohm"
  std::string demands;                ///< components: "1 %, 0.125 W or more"
  int needed = 0;
  int spares = 0;
  std::string purpose;  ///< for whom, or on which condition; "" when the list as a whole says it

  int buy() const { return needed + spares; }
};

struct PartsList {
  bool planned = false;  ///< false: there is no plan, and `summary` says why
  std::string summary;   ///< one sentence
  std::vector<PartItem> items;
};

/// Contacts to have beyond those needed: a fifth more, at least two (common practice, no source).
int spare_contacts(int needed);

/// For the verdict's own plan. MATE needs nothing; MEASURE and APART have no plan.
PartsList parts_list(const Fitting&, const Advice&);
/// For an adapter lead.
PartsList parts_list(const AdapterAdvice&);

}  // namespace plugward
