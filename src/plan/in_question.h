// SPDX-License-Identifier: MIT
// Which headers cannot suit a plug, told from words alone, before anything is judged.
//
//   const std::vector<PlugDemands> wanted = demands(harness);      // once
//   if (!in_question(wanted[plug], harness.plugs[plug], board, header)) ...   // no motor on a fan header
//
// What is refused here is refused for good: no move of contacts, no part, no position of a jumper and no
// measurement of what the file leaves open would let the plug on. What is let through is only worth judging.
#pragma once

#include <string>
#include <vector>

#include "fit/match.h"

namespace plugward {

/// A lead that must meet a pin which grants the end's wish.
struct Demand {
  End end;
  bool may_hang = false;  ///< its terminal is reached another way too: the lead may also lie on no pin
};

/// What a plug demands of a header.
struct PlugDemands {
  /// A device with leads in the plug, what it is for, and its signals.
  struct Purpose {
    std::string use;
    std::vector<std::string> signals;
  };
  std::vector<Purpose> purposes;
  std::vector<std::vector<Demand>> ways;  ///< one of them must be met; none: any header will do
};

/// By plug.
std::vector<PlugDemands> demands(const Harness&);

/// False: the header is meant for something else and names no signal of the device, or in no order of the
/// leads does each meet a pin that grants its wish. A pin that is not known, contested or assumed may be
/// anything.
bool in_question(const PlugDemands&, const Plug&, const Board&, const Header&);

/// What the file says of the pin may turn out otherwise: not known, contested, or by assumption only.
bool open_to_doubt(const Board&, const Header&, const Pin&);

}  // namespace plugward
