// SPDX-License-Identifier: MIT
// Dijkstra's method over the branches that conduct in one state; networks of ten nodes, so without a heap.
#include "circuit/path.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/format.h"

namespace plugward::circuit {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

constexpr double equal_volts = 0.01;   // a source this much below the victim still counts as its cause
constexpr double some_current = 1e-9;  // amperes; less is no current
constexpr double at_the_kink = 1e-7;  // volts; a diode this near its drop may be held there by nothing at all
constexpr double same_volts = 1e-6;
constexpr double with_blocked_diodes = -std::numeric_limits<double>::infinity();
constexpr double no_load = 1e-7;  // amperes through a diode; less is what leaks alone bring about

/// A branch that conducts in the state looked at; nodes are local.
struct Edge {
  int a = 0, b = 0;
  double ohms = 0;
  double amps = 0;    ///< from a to b
  int resistor = -1;  ///< of the circuit
};

struct Conducting {
  std::vector<Edge> edges;
  std::vector<double> volts;
  std::vector<bool> fixed;
  std::vector<bool> fed, drained;  ///< a current source delivers into the node, takes from it

  /// A diode counts from `least` volts beyond its drop.
  Conducting(const Solved& s, const Island& island, int state, double least = 0.0) {
    const Network n = network_in(s, island, state);
    const auto first = island.volts.begin() + static_cast<std::ptrdiff_t>(at(state) * island.nodes.size());
    volts.assign(first, first + static_cast<std::ptrdiff_t>(island.nodes.size()));
    fixed.assign(volts.size(), false);
    fed.assign(volts.size(), false);
    drained.assign(volts.size(), false);
    fixed[0] = true;
    for (const auto& f : n.fixed) fixed[at(f.node)] = true;
    for (std::size_t i = 0; i < n.resistors.size(); ++i) {
      const auto& r = n.resistors[i];
      if (r.ohms == open_circuit) continue;
      edges.push_back({r.a, r.b, r.ohms, (volts[at(r.a)] - volts[at(r.b)]) / r.ohms, island.resistors[i]});
    }
    for (const auto& d : n.diodes) {
      const double beyond = volts[at(d.anode)] - volts[at(d.cathode)] - d.drop;
      if (d.ohms != open_circuit && beyond > least && (least <= 0.0 || beyond > no_load * d.ohms))
        edges.push_back({d.anode, d.cathode, d.ohms, beyond / d.ohms, -1});
    }
    for (const auto& c : n.currents) {
      if (c.amps > 0.0) fed[at(c.to)] = drained[at(c.from)] = true;
    }
  }
};

/// By node: resistance of the best way to `start`, and the edge that leads one step nearer to it.
struct Ways {
  std::vector<double> ohms;
  std::vector<int> edge;
};

/// Only over nodes that `pass` lets through.
template <class Pass>
Ways ways_to(const Conducting& net, int start, Pass pass) {
  Ways ways{std::vector<double>(net.volts.size(), std::numeric_limits<double>::infinity()),
            std::vector<int>(net.volts.size(), -1)};
  std::vector<bool> done(net.volts.size(), false);
  ways.ohms[at(start)] = 0.0;
  while (true) {
    int nearest = -1;
    for (std::size_t i = 0; i < done.size(); ++i) {
      if (!done[i] && std::isfinite(ways.ohms[i]) && (nearest < 0 || ways.ohms[i] < ways.ohms[at(nearest)])) {
        nearest = static_cast<int>(i);
      }
    }
    if (nearest < 0) return ways;
    done[at(nearest)] = true;
    if (net.fixed[at(nearest)] && nearest != start) continue;  // a fixed node is an end
    for (std::size_t e = 0; e < net.edges.size(); ++e) {
      const Edge& edge = net.edges[e];
      if (edge.a != nearest && edge.b != nearest) continue;
      const int next = edge.a == nearest ? edge.b : edge.a;
      if (!pass(at(next))) continue;
      const double there = ways.ohms[at(nearest)] + edge.ohms;
      if (there < ways.ohms[at(next)]) {
        ways.ohms[at(next)] = there;
        ways.edge[at(next)] = static_cast<int>(e);
      }
    }
  }
}

/// By node: the volts that it has at least (Side::Highest) or at most (Side::Lowest), whatever leaks, and the
/// edge over which that comes; infinite where nothing holds the node on that side.
struct Bounds {
  std::vector<double> volts;
  std::vector<int> edge;
};

/// What a node conducts to shares its bound. A diode without a current holds its cathode above its anode less
/// its drop, and its anode below its cathode and its drop, no more.
Bounds bounds_of(const Conducting& net, Side side) {
  const double sign = side == Side::Highest ? 1.0 : -1.0;
  const double none = -std::numeric_limits<double>::infinity();
  std::vector<double> least(net.volts.size(), none);  // times sign
  Bounds bounds{{}, std::vector<int>(net.volts.size(), -1)};
  for (std::size_t i = 0; i < least.size(); ++i) {
    if (net.fixed[i]) least[i] = sign * net.volts[i];
  }
  for (bool more = true; more;) {
    more = false;
    const auto raise = [&](std::size_t edge, int from, int to, double drop) {
      const double there = std::min(least[at(from)] - drop, sign * net.volts[at(to)]);
      if (net.fixed[at(to)] || there <= least[at(to)] + same_volts) return;
      least[at(to)] = there;
      bounds.edge[at(to)] = static_cast<int>(edge);
      more = true;
    };
    for (std::size_t i = 0; i < net.edges.size(); ++i) {
      const Edge& e = net.edges[i];
      const double apart = net.volts[at(e.a)] - net.volts[at(e.b)];
      if (e.resistor >= 0 || e.amps > no_load) {
        raise(i, e.a, e.b, sign * apart);
        raise(i, e.b, e.a, -sign * apart);
      } else {
        const double drop = apart - e.amps * e.ohms;
        side == Side::Highest ? raise(i, e.a, e.b, drop) : raise(i, e.b, e.a, drop);
      }
    }
  }
  for (const double v : least) bounds.volts.push_back(sign * v);
  return bounds;
}

/// Puts names one after another, none twice in a row.
struct Words {
  std::string text, last;
  void add(const std::string& name) {
    if (name == last) return;
    text += text.empty() ? name : " - " + name;
    last = name;
  }
};

/// The names met when `edge` is walked from one end to the other, without the node it begins at.
void walk(const Solved& s, const Island& island, const Edge& edge, bool from_a, Words& words) {
  const Circuit& c = s.circuit;
  const auto contact = std::find_if(c.contacts.begin(), c.contacts.end(), [&](const ContactBranch& b) {
    return edge.resistor >= 0 && b.resistor == edge.resistor;
  });
  const Node end = island.nodes[at(from_a ? edge.b : edge.a)];
  if (contact != c.contacts.end()) {
    const TouchedPin& pin = c.pins[at(contact->pin)];
    const std::string pin_name = format("{}.{}", c.fitting->board->headers[at(pin.header)].id, pin.number);
    // A contact's resistance always begins at the pin.
    if (from_a) words.add(pin_name);
    words.add(to_code(contact->lead->colour));
    if (!from_a) words.add(pin_name);
  }
  words.add(node_name(c, end));
}

/// The names along the edges of `trail`, which begins at the node `source`.
Path path_along(const Solved& s, const Island& island, const Conducting& net, int source,
                const std::vector<int>& trail) {
  Path path;
  path.source = s.circuit.nodes[at(island.nodes[at(source)])];
  Words words;
  words.add(node_name(s.circuit, island.nodes[at(source)]));
  int node = source;
  for (const int e : trail) {
    const Edge& edge = net.edges[at(e)];
    walk(s, island, edge, edge.a == node, words);
    node = edge.a == node ? edge.b : edge.a;
  }
  path.words = words.text;
  return path;
}

/// From where the bound of a node comes that nothing conducts to.
Path path_of_bound(const Solved& s, Where where, int victim, Side side) {
  const Island& island = s.islands[at(where.island)];
  const Conducting net(s, island, where.state, with_blocked_diodes);
  const Bounds bounds = bounds_of(net, side);
  std::vector<int> trail;
  int node = victim;
  while (bounds.edge[at(node)] >= 0) {
    trail.push_back(bounds.edge[at(node)]);
    const Edge& edge = net.edges[at(trail.back())];
    node = edge.a == node ? edge.b : edge.a;
  }
  if (trail.empty()) return {};
  std::reverse(trail.begin(), trail.end());
  return path_along(s, island, net, node, trail);
}

}  // namespace

Path path_to(const Solved& s, Where where, Node victim, Side side) {
  const Island& island = s.islands[at(where.island)];
  const int start = island.local[at(victim)];
  if (start < 0) return {};
  const Conducting net(s, island, where.state);
  // What raises a node comes down to it from higher voltages, what lowers it from lower ones.
  const auto beyond = [&](std::size_t i) {
    return side == Side::Highest ? net.volts[i] >= net.volts[at(start)] - equal_volts
                                 : net.volts[i] <= net.volts[at(start)] + equal_volts;
  };
  const Ways ways = ways_to(net, start, beyond);
  const auto nearest = [&](auto accept) {
    int best = -1;
    for (std::size_t i = 0; i < net.volts.size(); ++i) {
      if (static_cast<int>(i) == start || !std::isfinite(ways.ohms[i]) || !accept(i)) continue;
      if (best < 0 || ways.ohms[i] < ways.ohms[at(best)]) best = static_cast<int>(i);
    }
    return best;
  };
  int source = nearest([&](std::size_t i) { return static_cast<bool>(net.fixed[i]); });
  if (source < 0) {
    const std::vector<bool>& supplied = side == Side::Highest ? net.fed : net.drained;
    source = nearest([&](std::size_t i) { return static_cast<bool>(supplied[i]); });
  }
  if (source < 0) return path_of_bound(s, where, start, side);
  std::vector<int> trail;
  for (int node = source; node != start;) {
    trail.push_back(ways.edge[at(node)]);
    const Edge& edge = net.edges[at(trail.back())];
    node = edge.a == node ? edge.b : edge.a;
  }
  return path_along(s, island, net, source, trail);
}

Path path_through(const Solved& s, Where where, int contact) {
  const Island& island = s.islands[at(where.island)];
  const Conducting net(s, island, where.state);
  const int resistor = s.circuit.contacts[at(contact)].resistor;
  int first = -1;
  for (std::size_t e = 0; e < net.edges.size(); ++e) {
    if (net.edges[e].resistor == resistor) first = static_cast<int>(e);
  }
  if (first < 0) return {};
  // From the contact to one end, then to the other.
  const auto follow = [&](bool downstream) {
    std::vector<int> trail;
    std::vector<bool> seen(net.volts.size(), false);
    const Edge& begin = net.edges[at(first)];
    int node = (begin.amps >= 0.0) == downstream ? begin.b : begin.a;
    while (!net.fixed[at(node)] && !seen[at(node)]) {
      seen[at(node)] = true;
      int best = -1;
      double most = some_current;
      for (std::size_t e = 0; e < net.edges.size(); ++e) {
        const Edge& edge = net.edges[e];
        if (edge.a != node && edge.b != node) continue;
        const double out = edge.a == node ? edge.amps : -edge.amps;
        if ((downstream ? out : -out) > most) {
          most = downstream ? out : -out;
          best = static_cast<int>(e);
        }
      }
      if (best < 0) break;
      trail.push_back(best);
      node = net.edges[at(best)].a == node ? net.edges[at(best)].b : net.edges[at(best)].a;
    }
    return std::pair(trail, node);
  };
  auto [upstream, source] = follow(false);
  const auto downstream = follow(true).first;
  std::reverse(upstream.begin(), upstream.end());
  upstream.push_back(first);
  upstream.insert(upstream.end(), downstream.begin(), downstream.end());

  return path_along(s, island, net, source, upstream);
}

bool driven(const Solved& s, Where where, Node node) {
  const Island& island = s.islands[at(where.island)];
  const Conducting net(s, island, where.state);
  const Ways ways = ways_to(net, island.local[at(node)], [](std::size_t) { return true; });
  for (std::size_t i = 0; i < net.fixed.size(); ++i) {
    if (net.fixed[i] && ways.ohms[i] < 1e8) return true;
  }
  return false;
}

std::optional<double> assured(const Solved& s, Where where, Node node, Side side) {
  const Island& island = s.islands[at(where.island)];
  const Conducting net(s, island, where.state, with_blocked_diodes);
  const double bound = bounds_of(net, side).volts[at(island.local[at(node)])];
  if (!std::isfinite(bound)) return std::nullopt;
  const double actual = net.volts[at(island.local[at(node)])];
  return std::abs(bound - actual) < same_volts ? actual : bound;
}

Extreme extreme_assured(const Solved& s, Node node, Side side, const Filter& filter) {
  const double sign = side == Side::Highest ? 1.0 : -1.0;
  const int number = s.island_of[at(node)];
  const Island& island = s.islands[at(number)];
  Extreme best;
  for (int state = 0; state < static_cast<int>(island.states.size()); ++state) {
    const double actual = island.volts[at(state) * island.nodes.size() + at(island.local[at(node)])];
    if (best.found && sign * actual <= sign * best.value) continue;  // the bound is no further out
    if (filter && !filter(number, island, state)) continue;
    const auto bound = assured(s, {number, state}, node, side);
    if (bound && (!best.found || sign * *bound > sign * best.value)) best = {true, *bound, {{number, state}}};
  }
  return best;
}

bool decided(const Solved& s, Where where, const Probe& probe, Side side) {
  const Island& island = s.islands[at(where.island)];
  if (probe.size() == 1 && s.island_of[at(probe.front().node)] == where.island) {
    const Node node = probe.front().node;
    const double actual = island.volts[at(where.state) * island.nodes.size() + at(island.local[at(node)])];
    return assured(s, where, node, side) == actual;
  }
  const Conducting net(s, island, where.state, probe.size() > 1 ? at_the_kink : -at_the_kink);
  // Groups of nodes that conduct to one another; all fixed nodes are in the group of ground, node 0.
  std::vector<int> group(net.volts.size());
  for (std::size_t i = 0; i < group.size(); ++i) group[i] = net.fixed[i] ? 0 : static_cast<int>(i);
  for (const Edge& edge : net.edges) {
    const int kept = std::min(group[at(edge.a)], group[at(edge.b)]);
    const int gone = std::max(group[at(edge.a)], group[at(edge.b)]);
    std::replace(group.begin(), group.end(), gone, kept);
  }
  const auto here = [&](const Term& t) { return s.island_of[at(t.node)] == where.island; };
  const auto group_of = [&](const Term& t) { return here(t) ? group[at(island.local[at(t.node)])] : 0; };
  const auto at_ground = [&](const Term& t) { return group_of(t) == 0; };
  const auto together = [&](const Term& t) { return here(t) && group_of(t) == group_of(probe.front()); };
  return std::all_of(probe.begin(), probe.end(), at_ground) ||
         (probe.size() > 1 && std::all_of(probe.begin(), probe.end(), together));
}

}  // namespace plugward::circuit
