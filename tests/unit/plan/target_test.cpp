// SPDX-License-Identifier: MIT
#include "plan/target.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <numeric>
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
  const int positions = 2 + pick(5);
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

/// Open: out of the housing, or, when it may be so, on a pin that is connected to nothing. A spare one is
/// meant to be.
bool left_out(const Bench& bench, const Lead& lead, int cavity) {
  const Terminal& terminal = bench.harness.terminal(*lead.to);
  if (terminal.function == TerminalFunction::Spare) return false;
  if (cavity == 0) return true;
  return terminal.optional && bench.board.headers[0].pin(cavity).function == PinFunction::Unused;
}

bool granted(const Bench& bench, const Alternative& alternative, std::size_t lead, int cavity) {
  const Lead& l = bench.harness.plugs[0].leads[lead];
  for (const End& end : alternative.ends) {
    if (end.terminal != *l.to) continue;
    if (cavity == 0) return end.wish == Wish::Nothing || bench.harness.terminal(*l.to).optional;
    return grants(bench.board.headers[0].pin(cavity), end) || left_out(bench, l, cavity);
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
      int out = 0;
      int moved = 0;
      for (std::size_t l = 0; l < leads.size(); ++l) {
        moved += cavity[l] != leads[l].cavity ? 1 : 0;
        out += left_out(bench, leads[l], cavity[l]) ? 1 : 0;
      }
      int turned = 0;
      for (std::size_t g = 0; g < all.size(); ++g)
        turned += all[g].alternatives[choice[g]].motor_turned ? 1 : 0;
      const Price price{out, moved, turned};
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
    std::get<0>(price) += left_out(bench, leads[l], target.arrangements[0].cavity[l]) ? 1 : 0;
  }
  for (const Alternative& a : target.chosen) std::get<2>(price) += a.motor_turned ? 1 : 0;
  return price;
}

}  // namespace

TEST_CASE("random plugs of up to seven positions: as cheap as the best of all arrangements") {
  std::mt19937 random(2026);
  int solvable = 0;
  for (int round = 0; round < 2000; ++round) {
    CAPTURE(round);
    const Bench bench = random_bench(random);
    const auto target = cheapest_target(bench.fitting());
    const auto expected = twin(bench);
    REQUIRE(target.has_value() == expected.has_value());
    if (!target) continue;
    ++solvable;
    CHECK(price_of(bench, *target) == *expected);
  }
  MESSAGE(solvable, " of 2000 have a solution (seed 2026)");
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

namespace {

/// A plug of four leads to the ends 1 2 (first winding) 3 4 (second), lead i in cavity `cavities[i]`, on a
/// header whose pin p is end `ends[p]` of 1A 1B 2A 2B.
Bench motor_bench(const std::vector<int>& ends, const std::vector<int>& cavities) {
  Bench bench = bare_bench(4);
  for (int n = 1; n <= 4; ++n) {
    const int end = ends[static_cast<std::size_t>(n) - 1];
    pin(bench, n).function = PinFunction::Coil;
    pin(bench, n).coil = 1 + end / 2;
    pin(bench, n).coil_end = end % 2 == 0 ? 'A' : 'B';
  }
  for (int i = 0; i < 4; ++i) {
    add_lead(bench, cavities[static_cast<std::size_t>(i)], add_terminal(bench, TerminalFunction::Passive));
  }
  for (TerminalIndex t = 0; t < 4; t += 2) {
    bench.harness.devices[0].parts.emplace_back(Coil{t, t + 1, Ohms(2), {}, {}});
  }
  return bench;
}

}  // namespace

TEST_CASE("motors in all 24 x 24 orders: fewest moves, then the right direction") {
  // The wire found at 1A 1B 2A 2B; forum note "Stepper wiring question", all 24 cases, derived anew from the
  // signed permutation of the phases. Direction is not the parity of the four wires: 2143 and 3421 both run
  // forward.
  const std::vector<std::string> forward{"1234", "2143", "3421", "4312"};
  const std::vector<std::string> reverse{"2134", "1243", "3412", "4321"};
  std::vector<int> ends{0, 1, 2, 3};
  int settings = 0;
  do {
    std::vector<int> cavities{1, 2, 3, 4};
    do {
      std::tuple<int, int> best{100, 0};
      std::vector<int> to{1, 2, 3, 4};
      do {
        std::string found = "....";
        int moves = 0;
        for (std::size_t lead = 0; lead < 4; ++lead) {
          const int end = ends[static_cast<std::size_t>(to[lead]) - 1];
          found[static_cast<std::size_t>(end)] = static_cast<char>('1' + lead);
          moves += to[lead] != cavities[lead] ? 1 : 0;
        }
        const bool runs = std::count(forward.begin(), forward.end(), found) > 0;
        const bool turned = std::count(reverse.begin(), reverse.end(), found) > 0;
        if (runs || turned) best = std::min(best, std::tuple(moves, turned ? 1 : 0));
      } while (std::next_permutation(to.begin(), to.end()));
      const Bench bench = motor_bench(ends, cavities);
      const auto target = cheapest_target(bench.fitting());
      REQUIRE(target.has_value());
      const auto [left_out, moved, turned] = price_of(bench, *target);
      CHECK(left_out == 0);
      CHECK(std::tuple(moved, turned) == best);
      settings += moved == 0 ? turned : 0;
    } while (std::next_permutation(cavities.begin(), cavities.end()));
  } while (std::next_permutation(ends.begin(), ends.end()));
  // Of 24 orders on each of 24 headers four run the other way round: there the setting is told, nothing is
  // moved.
  CHECK(settings == 24 * 4);
}

TEST_CASE("twelve motors on twelve headers at once are twelve small problems") {
  Bench bench = motor_bench({0, 1, 2, 3}, {1, 3, 2, 4});
  const Bench one = bench;
  for (int i = 1; i < 12; ++i) {
    bench.board.headers.push_back(one.board.headers[0]);
    bench.harness.devices.push_back(one.harness.devices[0]);
    bench.harness.plugs.push_back(one.harness.plugs[0]);
    for (Lead& lead : bench.harness.plugs.back().leads) lead.to->device = i;
  }
  Fitting fitting = bench.fitting();
  fitting.placements.clear();
  for (int i = 0; i < 12; ++i) fitting.placements.push_back({i, i});
  const auto target = cheapest_target(fitting);
  REQUIRE(target.has_value());
  CHECK(target->moved == 24);
  CHECK(target->proven);
}

TEST_CASE("fifty leads on a header of sixty-four pins") {
  Bench bench = bare_bench(64);
  // Twelve switches, their inputs and grounds mixed; then supplies.
  std::mt19937 random(64);
  std::vector<int> order(64);
  std::iota(order.begin(), order.end(), 1);
  std::shuffle(order.begin(), order.end(), random);
  for (std::size_t i = 0; i < 64; ++i) {
    Pin& p = pin(bench, order[i]);
    p.function = i < 16 ? PinFunction::Input : i < 32 ? PinFunction::Ground : PinFunction::Supply;
    if (p.function == PinFunction::Supply) p.rail = "5V";
  }
  std::shuffle(order.begin(), order.end(), random);
  std::size_t next = 0;
  for (int i = 0; i < 12; ++i) {
    const TerminalIndex a = add_terminal(bench, TerminalFunction::Passive);
    const TerminalIndex b = add_terminal(bench, TerminalFunction::Passive);
    bench.harness.devices[0].parts.emplace_back(Switch{a, b, false, {}});
    add_lead(bench, order[next++], a);
    add_lead(bench, order[next++], b);
  }
  while (next < 50) add_lead(bench, order[next++], add_terminal(bench, TerminalFunction::Supply));
  const auto target = cheapest_target(bench.fitting());
  REQUIRE(target.has_value());
  CHECK(target->proven);
  // No lead moves that need not: every lead that stays meets what it wishes.
  int stay = 0;
  for (std::size_t l = 0; l < 50; ++l) {
    stay += target->arrangements[0].cavity[l] == bench.harness.plugs[0].leads[l].cavity ? 1 : 0;
  }
  CHECK(stay == 50 - target->moved);
}
