// SPDX-License-Identifier: MIT
#include "plan/target.h"

#include <doctest/doctest.h>

#include <map>
#include <random>
#include <string>
#include <tuple>
#include <vector>

using namespace plugward;

namespace {

/// Optional terminals left out, contacts moved, motor turned: least in this order.
using Price = std::tuple<int, int, int>;

struct Bench {
  Board board;
  Harness harness;
  Catalogue catalogue;

  Fitting fitting() const { return {&board, &harness, &catalogue, {{0, 0}}, {}}; }
};

Bench bare_bench(int positions) {
  Bench bench;
  Family family;
  family.id = "bare";
  bench.catalogue.add(family);
  Header header;
  header.id = "J1";
  header.family = "bare";
  header.positions = positions;
  header.pins.resize(static_cast<std::size_t>(positions));
  for (int n = 1; n <= positions; ++n) header.pins[static_cast<std::size_t>(n) - 1].number = n;
  bench.board.rails.push_back({"5V", {Volts(5), Volts(5)}, {}, {}, {}});
  bench.board.headers.push_back(header);
  Plug plug;
  plug.id = "p";
  plug.family = "bare";
  plug.positions = positions;
  bench.harness.plugs.push_back(plug);
  bench.harness.devices.emplace_back();
  return bench;
}

Pin& pin(Bench& bench, int n) {
  return bench.board.headers[0].pins[static_cast<std::size_t>(n) - 1];
}

TerminalIndex add_terminal(Bench& bench, TerminalFunction function, bool optional = false) {
  Terminal terminal;
  terminal.id = "t" + std::to_string(bench.harness.devices[0].terminals.size());
  terminal.function = function;
  terminal.optional = optional;
  bench.harness.devices[0].terminals.push_back(terminal);
  return static_cast<TerminalIndex>(bench.harness.devices[0].terminals.size()) - 1;
}

void add_lead(Bench& bench, int cavity, TerminalIndex to) {
  Lead lead;
  lead.cavity = cavity;
  lead.to = TerminalRef{0, to};
  bench.harness.plugs[0].leads.push_back(lead);
}

/// A device of random functions and parts, its leads in random cavities of a header of random functions.
Bench random_bench(std::mt19937& random) {
  const auto pick = [&](int most) { return std::uniform_int_distribution(0, most)(random); };
  const int positions = 2 + pick(4);
  Bench bench = bare_bench(positions);
  const std::vector<PinFunction> functions{PinFunction::Supply, PinFunction::Ground,   PinFunction::Input,
                                           PinFunction::Output, PinFunction::Switched, PinFunction::Unused};
  const bool motor = pick(3) == 0 && positions >= 4;
  std::vector<int> order;
  for (int n = 1; n <= positions; ++n) order.push_back(n);
  std::shuffle(order.begin(), order.end(), random);
  for (int i = 0; i < positions; ++i) {
    Pin& p = pin(bench, order[static_cast<std::size_t>(i)]);
    p.function = functions[static_cast<std::size_t>(pick(5))];
    if (p.function == PinFunction::Supply) p.rail = "5V";
    if (motor && i < 4) {
      p.function = PinFunction::Coil;
      p.coil = 1 + i / 2;
      p.coil_end = i % 2 == 0 ? 'A' : 'B';
    }
  }
  std::vector<TerminalIndex> terminals;
  auto& parts = bench.harness.devices[0].parts;
  const auto pair = [&] {
    terminals.push_back(add_terminal(bench, TerminalFunction::Passive));
    terminals.push_back(add_terminal(bench, TerminalFunction::Passive));
    return std::pair(terminals[terminals.size() - 2], terminals.back());
  };
  if (motor) {
    for (int k = 0; k < 2; ++k) {
      const auto [a, b] = pair();
      parts.emplace_back(Coil{a, b, Ohms(2), {}, {}});
    }
  } else if (pick(1) == 0) {
    const auto [a, b] = pair();
    if (pick(1) == 0)
      parts.emplace_back(Switch{a, b, false, {}});
    else
      parts.emplace_back(Heater{a, b, Volts(24), Watts(40), {}});
  }
  const std::vector<TerminalFunction> of_terminals{TerminalFunction::Supply, TerminalFunction::Ground,
                                                   TerminalFunction::Input,  TerminalFunction::Output,
                                                   TerminalFunction::Return, TerminalFunction::Spare};
  while (static_cast<int>(terminals.size()) < positions && pick(2) > 0) {
    terminals.push_back(add_terminal(bench, of_terminals[static_cast<std::size_t>(pick(5))], pick(2) == 0));
  }
  std::shuffle(order.begin(), order.end(), random);
  for (std::size_t i = 0; i < terminals.size() && i < order.size(); ++i)
    add_lead(bench, order[i], terminals[i]);
  return bench;
}

bool granted(const Bench& bench, const Alternative& alternative, std::size_t lead, int cavity) {
  const Lead& l = bench.harness.plugs[0].leads[lead];
  for (const End& end : alternative.ends) {
    if (end.terminal != *l.to) continue;
    if (cavity == 0) return end.wish == Wish::Nothing || bench.harness.terminal(*l.to).optional;
    return grants(bench.board.headers[0].pin(cavity), end);
  }
  return true;  // another group's business
}

/// The slow twin: every placing of every lead under every combination of alternatives.
std::optional<Price> twin(const Bench& bench) {
  const std::vector<WishGroup> all = groups(bench.harness);
  const auto& leads = bench.harness.plugs[0].leads;
  std::optional<Price> best;
  std::vector<std::size_t> choice(all.size(), 0);
  std::vector<int> cavity(leads.size(), 0);
  const auto place = [&](auto&& self, std::size_t lead) -> void {
    if (lead == leads.size()) {
      int left_out = 0;
      int moved = 0;
      for (std::size_t l = 0; l < leads.size(); ++l) {
        moved += cavity[l] != leads[l].cavity ? 1 : 0;
        const bool spare = bench.harness.terminal(*leads[l].to).function == TerminalFunction::Spare;
        left_out += cavity[l] == 0 && !spare ? 1 : 0;
      }
      int turned = 0;
      for (std::size_t g = 0; g < all.size(); ++g)
        turned += all[g].alternatives[choice[g]].motor_turned ? 1 : 0;
      const Price price{left_out, moved, turned};
      if (!best || price < *best) best = price;
      return;
    }
    for (int c = 0; c <= bench.harness.plugs[0].positions; ++c) {
      const bool taken =
          c != 0 && std::find(cavity.begin(), cavity.begin() + static_cast<std::ptrdiff_t>(lead), c) !=
                        cavity.begin() + static_cast<std::ptrdiff_t>(lead);
      bool fine = !taken;
      for (std::size_t g = 0; fine && g < all.size(); ++g) {
        fine = granted(bench, all[g].alternatives[choice[g]], lead, c);
      }
      if (!fine) continue;
      cavity[lead] = c;
      self(self, lead + 1);
    }
  };
  for (bool more = true; more;) {
    place(place, 0);
    more = false;
    for (std::size_t g = 0; g < all.size() && !more; ++g) {
      more = ++choice[g] < all[g].alternatives.size();
      if (!more) choice[g] = 0;
    }
  }
  return best;
}

Price price_of(const Bench& bench, const Target& target) {
  Price price{0, target.moved, 0};
  const auto& leads = bench.harness.plugs[0].leads;
  for (std::size_t l = 0; l < leads.size(); ++l) {
    const bool spare = bench.harness.terminal(*leads[l].to).function == TerminalFunction::Spare;
    std::get<0>(price) += target.arrangements[0].cavity[l] == 0 && !spare ? 1 : 0;
  }
  for (const Alternative& a : target.chosen) std::get<2>(price) += a.motor_turned ? 1 : 0;
  return price;
}

}  // namespace

TEST_CASE("random plugs of up to six positions: as cheap as the best of all arrangements") {
  std::mt19937 random(2026);
  int solvable = 0;
  for (int round = 0; round < 4000; ++round) {
    CAPTURE(round);
    const Bench bench = random_bench(random);
    const auto target = cheapest_target(bench.fitting());
    const auto expected = twin(bench);
    REQUIRE(target.has_value() == expected.has_value());
    if (!target) continue;
    ++solvable;
    CHECK(price_of(bench, *target) == *expected);
  }
  MESSAGE(solvable, " of 4000 have a solution (seed 2026)");
  CHECK(solvable > 400);
}

TEST_CASE("a refused place is not used again") {
  Bench bench = bare_bench(3);
  pin(bench, 1).function = PinFunction::Ground;
  pin(bench, 2).function = PinFunction::Ground;
  add_lead(bench, 1, add_terminal(bench, TerminalFunction::Ground));
  CHECK(cheapest_target(bench.fitting())->arrangements[0].cavity == std::vector{1});
  CHECK(cheapest_target(bench.fitting(), {{{0, 0}, 1}})->arrangements[0].cavity == std::vector{2});
  CHECK_FALSE(cheapest_target(bench.fitting(), {{{0, 0}, 1}, {{0, 0}, 2}}).has_value());
}

TEST_CASE("a lead whose far end is not known stays where it is") {
  Bench bench = bare_bench(2);
  pin(bench, 1).function = PinFunction::Ground;
  pin(bench, 2).function = PinFunction::Ground;
  Lead unknown;
  unknown.cavity = 1;
  bench.harness.plugs[0].leads.push_back(unknown);
  add_lead(bench, 2, add_terminal(bench, TerminalFunction::Ground));
  CHECK(cheapest_target(bench.fitting())->arrangements[0].cavity == std::vector{1, 2});
}
