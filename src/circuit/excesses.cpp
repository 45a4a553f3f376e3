// SPDX-License-Identifier: MIT
// From a fitting to its excesses: assemble the network, divide it into islands, solve every state, judge the
// limits.
#include <algorithm>
#include <tuple>

#include "circuit/circuit.h"
#include "circuit/limits.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

auto order(const Excess& e) {
  const Locus& l = e.at;
  return std::tuple(e.kind, l.header, l.pin, l.device, l.terminal, l.part, l.plug, l.lead, l.rail);
}

void judge_completeness(const circuit::Solved& s, circuit::Excesses& found) {
  for (const circuit::Island& island : s.islands) {
    if (!island.cut_short) continue;
    double count = 1;
    for (const int k : island.knobs) count *= static_cast<double>(s.circuit.knobs[at(k)].choices.size());
    Excess e;
    e.kind = ExcessKind::TooManyStates;
    e.value = count;
    e.limit = s.circuit.defaults.most_states;
    e.at = s.circuit.knobs[at(island.knobs.front())].at;
    found.add(e);
  }
}

}  // namespace

std::vector<Excess> excesses(const Fitting& fitting, std::span<const Contact> contacts,
                             const CircuitDefaults& defaults) {
  circuit::Solved solved = circuit::solve_states(circuit::assemble(fitting, contacts, defaults));
  circuit::Excesses found;
  circuit::judge_shorts(solved, found);
  circuit::judge_voltages(solved, found);
  circuit::judge_supplies(solved, found);
  circuit::judge_currents(solved, found);
  circuit::judge_added_parts(solved, found);
  circuit::judge_output_levels(solved, found);
  circuit::judge_input_levels(solved, found);
  judge_completeness(solved, found);
  std::stable_sort(found.list.begin(), found.list.end(),
                   [](const Excess& a, const Excess& b) { return order(a) < order(b); });
  return std::move(found.list);
}

void for_each_snapshot(const Fitting& fitting, std::span<const Contact> contacts,
                       const CircuitDefaults& defaults, const std::function<void(const Snapshot&)>& visit) {
  const circuit::Solved solved = circuit::solve_states(circuit::assemble(fitting, contacts, defaults));
  for (std::size_t i = 0; i < solved.islands.size(); ++i) {
    const circuit::Island& island = solved.islands[i];
    Snapshot snapshot{Network(), {}, {}, {}};
    for (const circuit::Node node : island.nodes) {
      snapshot.nodes.push_back({circuit::node_name(solved.circuit, node), solved.circuit.nodes[at(node)]});
    }
    for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
      snapshot.network = circuit::network_in(solved, island, state);
      const auto first = island.volts.begin() + static_cast<std::ptrdiff_t>(at(state) * island.nodes.size());
      snapshot.solution.volts.assign(first, first + static_cast<std::ptrdiff_t>(island.nodes.size()));
      snapshot.state = circuit::words_of(solved, {{static_cast<int>(i), state}});
      visit(snapshot);
    }
  }
}

}  // namespace plugward
