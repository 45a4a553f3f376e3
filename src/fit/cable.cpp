// SPDX-License-Identifier: MIT
// All contacts and cores of the chain are nodes; leads, joins and the contacts that meet between two cables
// join them (union of sets). A group is what then hangs together at the two outer ends. What it is called
// follows from comparing each group with the contact that a rule gives: one pass over the groups a rule.
// Tested in tests/unit/fit/cable_test.cpp and tests/outside/standard_test.cpp.
#include "fit/cable.h"

#include <algorithm>
#include <cassert>
#include <functional>
#include <map>
#include <numeric>
#include <optional>

#include "base/format.h"
#include "catalogue/lines.h"
#include "fit/seating.h"

namespace plugward {
namespace {

using Chain = std::vector<const Harness*>;

class Nets {
 public:
  explicit Nets(const Chain& chain) {
    for (const Harness* cable : chain) {
      first_.emplace_back();
      for (const Plug& plug : cable->plugs) begin(plug.positions);
      for (const Device& device : cable->devices) begin(static_cast<int>(device.terminals.size()));
    }
    root_.resize(static_cast<std::size_t>(size_));
    std::iota(root_.begin(), root_.end(), 0);
  }

  int contact(std::size_t cable, std::size_t plug, int number) const {
    return first_[cable][plug] + number - 1;
  }
  int terminal(const Chain& chain, std::size_t cable, TerminalRef to) const {
    return first_[cable][chain[cable]->plugs.size() + static_cast<std::size_t>(to.device)] + to.terminal;
  }
  void join(int one, int other) { root_[static_cast<std::size_t>(root(one))] = root(other); }
  int root(int node) const {
    while (root_[static_cast<std::size_t>(node)] != node) node = root_[static_cast<std::size_t>(node)];
    return node;
  }

 private:
  void begin(int count) {
    first_.back().push_back(size_);
    size_ += count;
  }

  std::vector<std::vector<int>> first_;  // by cable, by plug and then device: its first node
  std::vector<int> root_;
  int size_ = 0;
};

void join_inside(const Chain& chain, std::size_t c, Nets& nets) {
  const Harness& cable = *chain[c];
  for (std::size_t p = 0; p < cable.plugs.size(); ++p) {
    for (const Lead& lead : cable.plugs[p].leads) {
      if (lead.to) nets.join(nets.contact(c, p, lead.cavity), nets.terminal(chain, c, *lead.to));
    }
  }
  for (std::size_t d = 0; d < cable.devices.size(); ++d) {
    for (const Part& part : cable.devices[d].parts) {
      const auto& join = std::get<Join>(part);
      const auto end = [&](TerminalIndex t) { return nets.terminal(chain, c, {static_cast<int>(d), t}); };
      nets.join(end(join.a), end(join.b));
    }
  }
}

/// The contact of `to` at the place where `from` has its contact `number`. Plugs of one row, or of other
/// shapes, go by the number.
int same_place(const Plug& from, const Plug& to, int number) {
  if (from.rows != to.rows || from.positions != to.positions) return number;
  return number_at(place_of(number, from.positions, from.rows, from.numbering), to.positions, to.rows,
                   to.numbering);
}

bool go_together(const Plug& one, const Plug& other, const Catalogue& catalogue) {
  if (one.positions != other.positions || one.rows != other.rows) return false;
  const auto lists = [&](const Plug& a, const Plug& b) {
    const Family* family = catalogue.find(a.family);
    return family != nullptr &&
           std::find(family->mates.begin(), family->mates.end(), b.family) != family->mates.end();
  };
  return one.family == other.family || lists(one, other) || lists(other, one);
}

/// All groups that reach both ends, as the rule says: contact k of the first end to contact rule(k) of the
/// last.
bool obeys(const CableMap& map, const std::function<int(int)>& rule) {
  return std::all_of(map.groups.begin(), map.groups.end(), [&](const CableGroup& group) {
    if (group.a.empty() || group.b.empty()) return true;
    std::vector<int> expected;
    for (const int k : group.a) expected.push_back(rule(k));
    std::sort(expected.begin(), expected.end());
    return expected == group.b;
  });
}

bool exactly(const CableMap& map, int a, int b) {
  const CableGroup wanted{{a}, {b}};
  return std::find(map.groups.begin(), map.groups.end(), wanted) != map.groups.end();
}

bool reaches(const CableMap& map, int a, int b) {
  const std::vector<int> across = map.across(a);
  return std::find(across.begin(), across.end(), b) != across.end();
}

Handshake handshake_of(const CableMap& map) {
  if (reaches(map, 7, 8) && reaches(map, 8, 7) && reaches(map, 4, 6) && reaches(map, 6, 4))
    return Handshake::Full;
  for (const int line : {1, 4, 6, 7, 8, 9}) {
    if (!map.across(line).empty()) return Handshake::InPart;
  }
  return Handshake::None;
}

CableKind kind_of(const CableMap& map) {
  const Plug& a = *map.a;
  const Plug& b = *map.b;
  const bool nothing = std::none_of(map.groups.begin(), map.groups.end(),
                                    [](const CableGroup& g) { return !g.a.empty() && !g.b.empty(); });
  if (nothing) return CableKind::Nothing;
  if (obeys(map, [&](int k) { return same_place(a, b, k); })) return CableKind::Straight;
  if (a.family == "de-9" && b.family == "de-9" && exactly(map, 2, 3) && exactly(map, 3, 2) &&
      exactly(map, 5, 5)) {
    return CableKind::NullModem;
  }
  const auto crossed = [](int k) {
    constexpr int other[] = {0, 3, 6, 1, 4, 5, 2, 7, 8};
    return other[k];
  };
  if (a.family == "8p8c" && b.family == "8p8c" && obeys(map, crossed)) return CableKind::Crossover;
  const auto by_ribbon = [](int k) { return k <= 5 ? 2 * k - 1 : 2 * (k - 5); };
  const auto from_ribbon = [](int k) { return k % 2 == 1 ? (k + 1) / 2 : k / 2 + 5; };
  const auto two_by_five = [](const Plug& plug) {
    return plug.rows == 2 && plug.positions == 10 && plug.numbering == Numbering::Zigzag;
  };
  if ((a.family == "de-9" && two_by_five(b) && obeys(map, by_ribbon)) ||
      (b.family == "de-9" && two_by_five(a) && obeys(map, from_ribbon))) {
    return CableKind::RibbonOrder;
  }
  if (a.positions != b.positions || a.rows != b.rows) return CableKind::Other;
  if (obeys(map, [&](int k) { return same_place(a, b, a.positions + 1 - k); })) return CableKind::Turned;
  const auto exchanged = [&](int k) {
    Place place = place_of(k, a.positions, a.rows, a.numbering);
    place.row = 1 - place.row;
    return number_at(place, b.positions, b.rows, b.numbering);
  };
  return a.rows == 2 && obeys(map, exchanged) ? CableKind::RowsExchanged : CableKind::Other;
}

std::vector<int> open_contacts(const CableMap& map, bool at_b) {
  std::vector<int> open;
  for (const CableGroup& group : map.groups) {
    const std::vector<int>& here = at_b ? group.b : group.a;
    const std::vector<int>& there = at_b ? group.a : group.b;
    if (there.empty()) open.insert(open.end(), here.begin(), here.end());
  }
  std::sort(open.begin(), open.end());
  return open;
}

/// The cores of contacts `one` and `other` are twisted together; true where that cannot be told.
bool share_a_pair(const Harness& cable, const Plug& plug, ContactPair contacts) {
  const Lead* one = plug.lead_in(contacts.one);
  const Lead* other = plug.lead_in(contacts.other);
  if (one == nullptr || other == nullptr || !one->to || !other->to) return true;
  const auto& pairs = cable.devices[static_cast<std::size_t>(one->to->device)].pairs;
  if (pairs.empty()) return true;
  const CorePair wanted{std::min(one->to->terminal, other->to->terminal),
                        std::max(one->to->terminal, other->to->terminal)};
  return one->to->device == other->to->device && std::find(pairs.begin(), pairs.end(), wanted) != pairs.end();
}

void judge_pairs(const CableMap& map, const Chain& chain, CableJudgement& judgement) {
  judgement.pairs_stated = std::all_of(chain.begin(), chain.end(), [](const Harness* cable) {
    return std::all_of(cable->devices.begin(), cable->devices.end(),
                       [](const Device& device) { return !device.pairs.empty(); });
  });
  for (std::size_t c = 0; c < chain.size(); ++c) {
    for (std::size_t p = 0; p < 2; ++p) {
      const Plug& plug = chain[c]->plugs[p];
      for (const ContactPair& pair : contact_pairs(plug.family)) {
        judgement.pairs_matter = true;
        if (!share_a_pair(*chain[c], plug, pair)) {
          judgement.split.push_back({static_cast<int>(c), p == 1, pair.one, pair.other});
        }
      }
    }
  }
  for (const ContactPair& pair : contact_pairs(map.a->family)) {
    const std::vector<int> one = map.across(pair.one), other = map.across(pair.other);
    if (one.size() != 1 || other.size() != 1) continue;
    const auto [least, most] = std::minmax(one[0], other[0]);
    for (const ContactPair& there : contact_pairs(map.b->family)) {
      if (there.one == least && there.other == most) {
        judgement.pairs.push_back({{pair.one, pair.other}, {one[0], other[0]}});
      }
    }
  }
}

/// Contacts of the first end, or where there are none of the last, of groups with several outputs.
std::vector<int> clashes(const CableMap& map, LineEnd last) {
  std::vector<int> found;
  const auto outputs = [](const Plug& plug, const std::vector<int>& contacts, LineEnd end) {
    return std::count_if(contacts.begin(), contacts.end(), [&](int k) {
      const PortLine* line = port_line(plug.family, k);
      return line != nullptr && line->driven_by == end;
    });
  };
  for (const CableGroup& group : map.groups) {
    if (outputs(*map.a, group.a, LineEnd::Dte) + outputs(*map.b, group.b, last) < 2) continue;
    const std::vector<int>& named = group.a.empty() ? group.b : group.a;
    found.insert(found.end(), named.begin(), named.end());
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace

std::vector<int> CableMap::across(int number) const {
  for (const CableGroup& group : groups) {
    if (std::find(group.a.begin(), group.a.end(), number) != group.a.end()) return group.b;
  }
  return {};
}

std::string chain_fault(const Chain& chain, const Catalogue& catalogue) {
  for (const Harness* cable : chain) {
    if (cable->plugs.size() != 2) {
      return format("harness '{}' is no cable: a cable has two plugs, one at each end", cable->id);
    }
    for (const Device& device : cable->devices) {
      for (const Part& part : device.parts) {
        if (std::holds_alternative<Join>(part)) continue;
        return format("harness '{}' is no cable: its leads go to device '{}', which is more than wire",
                      cable->id, device.id);
      }
    }
    for (const Plug& plug : cable->plugs) {
      for (const Lead& lead : plug.leads) {
        if (!lead.to) {
          return format(
              "where the lead in cavity {} of plug '{}' of '{}' goes is not stated: beep it out first",
              lead.cavity, plug.id, cable->id);
        }
      }
    }
  }
  for (std::size_t c = 0; c + 1 < chain.size(); ++c) {
    const Plug& here = chain[c]->plugs[1];
    const Plug& next = chain[c + 1]->plugs[0];
    if (go_together(here, next, catalogue)) continue;
    return format(
        "plug '{}' of '{}' ({}, {} positions) does not go together with plug '{}' of '{}' ({}, {} positions)",
        here.id, chain[c]->id, here.family, here.positions, next.id, chain[c + 1]->id, next.family,
        next.positions);
  }
  return "";
}

CableMap cable_map(const Chain& chain) {
  assert(!chain.empty());
  Nets nets(chain);
  for (std::size_t c = 0; c < chain.size(); ++c) join_inside(chain, c, nets);
  for (std::size_t c = 0; c + 1 < chain.size(); ++c) {
    const Plug& here = chain[c]->plugs[1];
    const Plug& next = chain[c + 1]->plugs[0];
    for (int k = 1; k <= here.positions; ++k) {
      nets.join(nets.contact(c, 1, k), nets.contact(c + 1, 0, same_place(here, next, k)));
    }
  }
  CableMap map{&chain.front()->plugs[0], &chain.back()->plugs[1], {}};
  std::map<int, CableGroup> groups;
  for (const Lead& lead : map.a->leads) {
    groups[nets.root(nets.contact(0, 0, lead.cavity))].a.push_back(lead.cavity);
  }
  for (const Lead& lead : map.b->leads) {
    groups[nets.root(nets.contact(chain.size() - 1, 1, lead.cavity))].b.push_back(lead.cavity);
  }
  for (auto& [root, group] : groups) map.groups.push_back(std::move(group));
  constexpr int behind_all = 1 << 20;
  std::sort(map.groups.begin(), map.groups.end(), [](const CableGroup& x, const CableGroup& y) {
    const auto key = [](const CableGroup& g) { return g.a.empty() ? behind_all + g.b[0] : g.a[0]; };
    return key(x) < key(y);
  });
  return map;
}

CableJudgement judge_cable(const CableMap& map, const Chain& chain) {
  CableJudgement judgement;
  judgement.kind = kind_of(map);
  if (judgement.kind == CableKind::NullModem) judgement.handshake = handshake_of(map);
  judgement.open_a = open_contacts(map, false);
  judgement.open_b = open_contacts(map, true);
  for (const CableGroup& group : map.groups) {
    if (group.a.size() > 1 || group.b.size() > 1) judgement.joined.push_back(group);
  }
  judge_pairs(map, chain, judgement);
  if (map.a->family == "de-9" && map.b->family == "de-9") {
    judgement.clash_between_dte = clashes(map, LineEnd::Dte);
    judgement.clash_dte_to_dce = clashes(map, LineEnd::Dce);
  }
  return judgement;
}

std::string wiring_scheme(const Plug& plug) {
  if (plug.family != "8p8c") return "";
  for (const PairScheme& scheme : pair_schemes()) {
    const bool all = std::all_of(plug.leads.begin(), plug.leads.end(), [&](const Lead& lead) {
      const Parsed<WireColour> wanted =
          parse_colour(scheme.colours[static_cast<std::size_t>(lead.cavity) - 1]);
      return std::get<WireColour>(wanted) == lead.colour;
    });
    if (all && plug.leads.size() == scheme.colours.size()) return std::string(scheme.name);
  }
  return "";
}

std::string_view to_words(CableKind kind) {
  switch (kind) {
    case CableKind::Nothing:
      return "nothing reaches the other end";
    case CableKind::Straight:
      return "straight";
    case CableKind::Turned:
      return "turned end for end";
    case CableKind::RowsExchanged:
      return "the two rows exchanged";
    case CableKind::NullModem:
      return "null modem";
    case CableKind::Crossover:
      return "crossover";
    case CableKind::RibbonOrder:
      return "in the order of the ribbon";
    case CableKind::Other:
      return "neither straight nor a cross that is known here";
  }
  return "";
}

std::string_view to_word(CableKind kind) {
  switch (kind) {
    case CableKind::Nothing:
      return "nothing";
    case CableKind::Straight:
      return "straight";
    case CableKind::Turned:
      return "turned";
    case CableKind::RowsExchanged:
      return "rows-exchanged";
    case CableKind::NullModem:
      return "null-modem";
    case CableKind::Crossover:
      return "crossover";
    case CableKind::RibbonOrder:
      return "ribbon-order";
    case CableKind::Other:
      return "other";
  }
  return "";
}

}  // namespace plugward
