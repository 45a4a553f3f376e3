// SPDX-License-Identifier: MIT
// Idea: a WrongUse or WrongFunction is a fault that no part cures, so a plug for which every order of its
// leads has one needs no judgement. Whether some order has none is a matching of leads to pins.
//
//   plug with leads V, G, S(input 'tach') and pins supply, switched, -: G wants ground, no pin grants it: out
//
// The pins that grant an end are one machine word; the matching is H. W. Kuhn's (Naval Research Logistics
// Quarterly 2 (1955) 83, from memory). Complexity: ways x leads^2 x pins; a lead that no pin grants ends a
// way at once. Not taken: the assignment of plan/target, which also weighs moves and is 20 times slower.
// Tested in tests/unit/plan/in_question_test.cpp against the judge.
#include "plan/in_question.h"

#include <algorithm>
#include <cstdint>

namespace plugward {
namespace {

constexpr std::size_t most_ways = 64;  ///< more combinations: any header will do
constexpr int most_pins = 64;

using Pins = std::uint64_t;

int leads_to(const Plug& plug, TerminalRef terminal) {
  return static_cast<int>(std::count_if(plug.leads.begin(), plug.leads.end(),
                                        [&](const Lead& lead) { return lead.to == terminal; }));
}

/// Another lead or a join inside the device reaches it as well.
bool reached_otherwise(const Harness& harness, TerminalRef terminal) {
  int leads = 0;
  for (const Plug& plug : harness.plugs) leads += leads_to(plug, terminal);
  const Device& device = harness.devices[static_cast<std::size_t>(terminal.device)];
  return leads > 1 || std::any_of(device.parts.begin(), device.parts.end(), [&](const Part& part) {
           const auto* join = std::get_if<Join>(&part);
           return join != nullptr && (join->a == terminal.terminal || join->b == terminal.terminal);
         });
}

std::vector<Demand> demands_of(const Harness& harness, const Plug& plug, const Alternative& alternative) {
  std::vector<Demand> list;
  for (const End& end : alternative.ends) {
    if (end.wish == Wish::Any || end.wish == Wish::Nothing || harness.terminal(end.terminal).optional)
      continue;
    const int leads = leads_to(plug, end.terminal);
    list.insert(list.end(), static_cast<std::size_t>(leads),
                Demand{end, reached_otherwise(harness, end.terminal)});
  }
  return list;
}

bool has_leads_of(const Plug& plug, const WishGroup& group) {
  const auto& ends = group.alternatives.front().ends;
  return std::any_of(ends.begin(), ends.end(),
                     [&](const End& end) { return leads_to(plug, end.terminal) > 0; });
}

/// Every combination of the ways in which the groups may be used; nothing when there are too many.
std::vector<std::vector<Demand>> ways_of(const Harness& harness, const Plug& plug,
                                         const std::vector<WishGroup>& all) {
  std::vector<std::vector<Demand>> ways{{}};
  for (const WishGroup& group : all) {
    if (!has_leads_of(plug, group)) continue;
    if (ways.size() * group.alternatives.size() > most_ways) return {};
    std::vector<std::vector<Demand>> more;
    for (const auto& way : ways) {
      for (const Alternative& alternative : group.alternatives) {
        const std::vector<Demand> added = demands_of(harness, plug, alternative);
        more.push_back(way);
        more.back().insert(more.back().end(), added.begin(), added.end());
      }
    }
    ways = std::move(more);
  }
  return ways;
}

std::vector<PlugDemands::Purpose> purposes_of(const Harness& harness, const Plug& plug) {
  std::vector<PlugDemands::Purpose> list;
  for (std::size_t d = 0; d < harness.devices.size(); ++d) {
    PlugDemands::Purpose purpose{harness.devices[d].use, {}};
    bool here = false;
    for (const Lead& lead : plug.leads) {
      if (!lead.to || lead.to->device != static_cast<int>(d)) continue;
      here = true;
      const std::string& signal = harness.terminal(*lead.to).signal;
      if (!signal.empty()) purpose.signals.push_back(signal);
    }
    if (here && !purpose.use.empty()) list.push_back(std::move(purpose));
  }
  return list;
}

bool serves(const PlugDemands::Purpose& purpose, const Header& header) {
  if (header.use == purpose.use || header.use == "spare") return true;
  return std::any_of(purpose.signals.begin(), purpose.signals.end(), [&](const std::string& signal) {
    return std::any_of(header.pins.begin(), header.pins.end(),
                       [&](const Pin& pin) { return pin.signal == signal; });
  });
}

/// Finds a pin for `demand`, moving those that have one; `tried` keeps it from going in a circle.
bool augment(std::size_t demand, const std::vector<Pins>& granted, std::vector<int>& demand_of_pin,
             Pins& tried) {
  for (std::size_t pin = 0; pin < demand_of_pin.size(); ++pin) {
    const Pins bit = Pins{1} << pin;
    if ((granted[demand] & bit) == 0 || (tried & bit) != 0) continue;
    tried |= bit;
    if (demand_of_pin[pin] >= 0 &&
        !augment(static_cast<std::size_t>(demand_of_pin[pin]), granted, demand_of_pin, tried)) {
      continue;
    }
    demand_of_pin[pin] = static_cast<int>(demand);
    return true;
  }
  return false;
}

bool can_be_met(const std::vector<Demand>& way, const Header& header, Pins open, bool hangs) {
  std::vector<Pins> granted;
  for (const Demand& demand : way) {
    if (hangs && demand.may_hang) continue;
    Pins pins = open;
    for (std::size_t i = 0; i < header.pins.size(); ++i) {
      if (grants(header.pins[i], demand.end)) pins |= Pins{1} << i;
    }
    if (pins == 0) return false;
    granted.push_back(pins);
  }
  std::vector<int> demand_of_pin(header.pins.size(), -1);
  for (std::size_t i = 0; i < granted.size(); ++i) {
    Pins tried = 0;
    if (!augment(i, granted, demand_of_pin, tried)) return false;
  }
  return true;
}

}  // namespace

std::vector<PlugDemands> demands(const Harness& harness) {
  const std::vector<WishGroup> all = groups(harness);
  std::vector<PlugDemands> list;
  for (const Plug& plug : harness.plugs) {
    const bool all_seated =
        std::all_of(plug.leads.begin(), plug.leads.end(), [](const Lead& lead) { return lead.cavity >= 1; });
    list.push_back({purposes_of(harness, plug), {}});
    if (all_seated) list.back().ways = ways_of(harness, plug, all);
  }
  return list;
}

bool in_question(const PlugDemands& wanted, const Plug& plug, const Board& board, const Header& header) {
  const bool for_it = std::all_of(wanted.purposes.begin(), wanted.purposes.end(),
                                  [&](const PlugDemands::Purpose& p) { return serves(p, header); });
  if (!for_it) return false;
  if (wanted.ways.empty() || header.positions > most_pins) return true;
  Pins open = 0;
  for (std::size_t i = 0; i < header.pins.size(); ++i) {
    if (open_to_doubt(board, header, header.pins[i])) open |= Pins{1} << i;
  }
  const bool hangs = plug.rows != header.rows || plug.positions > header.positions;
  return std::any_of(wanted.ways.begin(), wanted.ways.end(),
                     [&](const std::vector<Demand>& way) { return can_be_met(way, header, open, hangs); });
}

bool open_to_doubt(const Board& board, const Header& header, const Pin& pin) {
  if (pin.function == PinFunction::Unknown || pin.contest) return true;
  const Evidence* evidence = board.evidence_of(header, pin);
  return evidence == nullptr || evidence->kind == EvidenceKind::Assumption;
}

}  // namespace plugward
