// SPDX-License-Identifier: MIT
// Texts of the user's files stand in comments and in `echo` only, with every sign replaced that ngspice could
// read as a command: a netlist may run a shell. Tested in tests/unit/report/spice_test.cpp and, run by
// ngspice and compared with --format json, in tests/outside/spice_test.py.
#include "report/spice.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/format.h"
#include "fit/seating.h"
#include "report/words.h"

namespace plugward {
namespace {

constexpr double open_ohms_written = 1e15;  ///< for a branch that is open: beside it 1e12 ohm go to ground

std::string plain(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool word = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    out += word || std::string_view(" .,:+-/()=").find(c) != std::string_view::npos ? c : '_';
  }
  return out;
}

double ohms_of(double ohms) {
  return std::isinf(ohms) ? open_ohms_written : ohms;
}

/// Every element of an island has a name and one value that may differ from state to state.
struct Element {
  std::string name;   ///< "r2_7"
  std::string nodes;  ///< "n2_1 0"
  double value = 0;
};

/// The same elements in the same order in every state of one island.
std::vector<Element> elements_of(const Network& n, std::size_t island) {
  std::vector<Element> list;
  const auto node = [&](Network::Node k) {
    return k == 0 ? std::string("0") : verbatim("n{}_{}", island, k);
  };
  const auto add = [&](char letter, std::size_t i, std::string nodes, double value) {
    list.push_back({verbatim("{}{}_{}", letter, island, i), std::move(nodes), value});
  };
  for (std::size_t i = 0; i < n.fixed.size(); ++i)
    add('v', i, node(n.fixed[i].node) + " 0", n.fixed[i].volts);
  for (std::size_t i = 0; i < n.resistors.size(); ++i) {
    const auto& r = n.resistors[i];
    add('r', i, node(r.a) + " " + node(r.b), ohms_of(r.ohms));
  }
  for (std::size_t i = 0; i < n.currents.size(); ++i) {
    const auto& c = n.currents[i];
    add('i', i, node(c.from) + " " + node(c.to), c.amps);
  }
  for (std::size_t i = 0; i < n.diodes.size(); ++i) {
    const auto& d = n.diodes[i];
    list.push_back({verbatim("vd{}_{}", island, i), verbatim("d{}_{} 0", island, i), d.drop});
    list.push_back({verbatim("vo{}_{}", island, i), verbatim("o{}_{} 0", island, i), ohms_of(d.ohms)});
  }
  return list;
}

/// What never changes: the diodes themselves, and a path to ground for nodes that nothing else is at.
std::string fixed_text(const Network& n, std::size_t island) {
  std::string text;
  const auto node = [&](Network::Node k) {
    return k == 0 ? std::string("0") : verbatim("n{}_{}", island, k);
  };
  for (std::size_t i = 0; i < n.diodes.size(); ++i) {
    const auto& d = n.diodes[i];
    const std::string at = verbatim("{0}_{1}", island, i);
    const std::string u = verbatim("v({},{})", node(d.anode), node(d.cathode));
    text += verbatim("b{0} {1} {2} i={3} > v(d{0}) ? ({3}-v(d{0}))/v(o{0}) + {3}*1e-12 : {3}*1e-12\n", at,
                     node(d.anode), node(d.cathode), u);
  }
  for (int k = 1; k < n.nodes; ++k) text += verbatim("rx{}_{} {} 0 1e15\n", island, k, node(k));
  return text;
}

class Deck {
 public:
  void take(const Snapshot& snapshot) {
    const bool fresh = begins_island(snapshot);
    const std::vector<Element> now = elements_of(snapshot.network, island_);
    if (fresh) begin(snapshot, now);
    ++state_;
    for (std::size_t i = 0; i < now.size(); ++i) {
      if (!fresh && now[i].value != last_[i].value) {
        script_ += verbatim("alter {} = {:.12g}\n", now[i].name, now[i].value);
      }
    }
    last_ = now;
    script_ += verbatim("op\necho state {}.{}: {}\n", island_, state_,
                        snapshot.state.empty() ? "at rest" : plain(snapshot.state));
    for (int k = 1; k < snapshot.network.nodes; ++k) script_ += verbatim("print v(n{}_{})\n", island_, k);
    for (std::size_t i = 0; i < snapshot.network.fixed.size(); ++i) {
      script_ += verbatim("print i(v{}_{})\n", island_, i);
    }
  }

  std::string text(std::span<const std::string> heads) const {
    std::string all = "* plugward: the circuit of a wiring\n";
    for (const std::string& head : heads) all += verbatim("* {}\n", plain(head));
    all += ".options rshunt=1e12 reltol=1e-7 vntol=1e-9 abstol=1e-14 itl1=2000\n";
    return all + elements_ + ".control\nset numdgt=10\n" + script_ + "quit 0\n.endc\n.end\n";
  }

 private:
  bool begins_island(const Snapshot& snapshot) {
    std::vector<std::string> names;
    for (const NodeInfo& node : snapshot.nodes) names.push_back(node.name);
    if (names == names_ && island_ > 0) return false;
    names_ = std::move(names);
    ++island_;
    state_ = 0;
    return true;
  }

  void begin(const Snapshot& snapshot, const std::vector<Element>& elements) {
    elements_ += verbatim("*\n* island {}\n", island_);
    for (std::size_t k = 1; k < snapshot.nodes.size(); ++k) {
      const auto& fixed = snapshot.network.fixed;
      const bool held = std::any_of(fixed.begin(), fixed.end(),
                                    [&](const Network::Fixed& f) { return f.node == static_cast<int>(k); });
      elements_ += verbatim("* n{}_{} is {}{}\n", island_, k, plain(snapshot.nodes[k].name),
                            held ? ", held at its volts" : "");
    }
    for (const Element& e : elements) elements_ += verbatim("{} {} {:.12g}\n", e.name, e.nodes, e.value);
    elements_ += fixed_text(snapshot.network, island_);
  }

  std::size_t island_ = 0, state_ = 0;
  std::vector<std::string> names_;  // of the nodes of the island that is being written
  std::vector<Element> last_;
  std::string elements_, script_;
};

}  // namespace

std::string spice_netlist(const Fitting& fitting, std::span<const Contact> contacts,
                          const CircuitDefaults& defaults, std::span<const std::string> heads) {
  Deck deck;
  for_each_snapshot(fitting, contacts, defaults, [&](const Snapshot& snapshot) { deck.take(snapshot); });
  return deck.text(heads);
}

std::string check_spice(const Fitting& fitting, const Advice& advice) {
  std::vector<Contact> contacts;
  std::vector<std::string> heads{format("board {}, harness {}", fitting.board->id, fitting.harness->id)};
  for (const Placement& p : fitting.placements) {
    const Plug& plug = plug_at(fitting, p.plug);
    heads.push_back(format("plug {} on header {}", plug.id, header_at(fitting, p.header).id));
    const Seating home = home_seating(plug, p.header, *fitting.board);
    for (std::size_t i = 0; i < plug.leads.size(); ++i) {
      if (plug.leads[i].cavity < 1) continue;
      const int pin = home.pin_of_cavity[static_cast<std::size_t>(plug.leads[i].cavity) - 1];
      if (pin == 0) continue;
      contacts.push_back({p.plug, static_cast<int>(i), p.header, pin});
      const std::string& jumper = header_at(fitting, p.header).pins[static_cast<std::size_t>(pin) - 1].jumper;
      if (!jumper.empty() && !fitting.jumpers.contains(jumper)) {
        heads.push_back(format("{}.{} is left open: where jumper {} sits is not stated",
                               header_at(fitting, p.header).id, pin, jumper));
      }
    }
  }
  for (const auto& [jumper, rail] : fitting.jumpers) heads.push_back(format("jumper {} at {}", jumper, rail));
  heads.push_back(format("verdict of plugward: {}. This is the wiring as it stands, before any move or part",
                         to_word(advice.verdict)));
  return spice_netlist(fitting, contacts, {}, heads);
}

}  // namespace plugward
