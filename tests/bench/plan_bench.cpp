// SPDX-License-Identifier: MIT
// Planning at scale: the target of fifty leads on a header of sixty-four pins, and a loom of sixty plugs on a
// board of sixty-four headers. How much faster than an integer-programming solver the optimum is found, is
// printed by tests/outside/optimum/optimum_test.py --bench.
#include <algorithm>
#include <chrono>
#include <numeric>
#include <random>
#include <vector>

#include "base/format.h"
#include "plan/place.h"
#include "plan/swap.h"
#include "plan/target.h"
#include "support/bench_row.h"
#include "support/big_world.h"

using namespace plugward;

namespace {

using Clock = std::chrono::steady_clock;

/// Median time of several runs in milliseconds.
template <class F>
double median_of(int runs, F run) {
  std::vector<double> times;
  for (int i = 0; i < runs; ++i) {
    const auto begin = Clock::now();
    run();
    times.push_back(std::chrono::duration<double, std::milli>(Clock::now() - begin).count());
  }
  std::nth_element(times.begin(), times.begin() + runs / 2, times.end());
  return times[static_cast<std::size_t>(runs) / 2];
}

/// Twelve switches and twenty-six inputs in any order on a header of inputs and grounds.
struct FiftyLeads {
  Board board;
  Harness harness;
  Catalogue catalogue;

  FiftyLeads() {
    add_builtin_families(catalogue);
    std::mt19937 random(64);
    std::vector<int> order(64);
    std::iota(order.begin(), order.end(), 1);
    board.id = "b";
    board.evidence = "e";
    board.evidences.emplace_back().id = "e";
    board.evidences.back().kind = EvidenceKind::Measurement;
    Rail& rail = board.rails.emplace_back();
    rail.id = "3V3";
    rail.volts = {Volts(3.2), Volts(3.4)};
    Header& header = board.headers.emplace_back();
    header.id = "J1";
    header.use = "limit";
    header.family = "pin-2.54";
    header.positions = 64;
    header.pins.resize(64);
    std::shuffle(order.begin(), order.end(), random);
    for (std::size_t i = 0; i < 64; ++i) {
      Pin& pin = header.pins[static_cast<std::size_t>(order[i]) - 1];
      pin.number = order[i];
      pin.function = i < 40 ? PinFunction::Input : PinFunction::Ground;
      if (i >= 40) continue;
      pin.rail = "3V3";
      pin.signal = "limit";
      pin.withstands = Range<Volts>{Volts(-0.3), Volts(3.6)};
      pin.low_below = Volts(0.8);
      pin.high_above = Volts(2.0);
      pin.pull = Pull{true, Ohms(10000), {}};
    }
    harness.evidence = "e";
    harness.evidences.emplace_back().id = "e";
    harness.evidences.back().kind = EvidenceKind::Measurement;
    Plug& plug = harness.plugs.emplace_back();
    plug.id = "p";
    plug.family = "pin-2.54";
    plug.positions = 64;
    std::shuffle(order.begin(), order.end(), random);
    std::size_t next = 0;
    for (int d = 0; d < 25; ++d) {
      Device& device = harness.devices.emplace_back();
      device.id = format("s{}", d);
      device.use = "limit";
      for (int t = 0; t < 2; ++t) {
        Terminal& terminal = device.terminals.emplace_back();
        terminal.id = t == 0 ? "A" : "B";
        terminal.signal = "limit";
        Lead& lead = plug.leads.emplace_back();
        lead.cavity = order[next++];
        lead.to = TerminalRef{d, t};
      }
      device.parts.emplace_back(Switch{0, 1, false, {}});
    }
    // Inputs enough for every switch; grounds for 24 only would leave one without.
    for (Pin& pin : header.pins) {
      if (pin.function == PinFunction::Input && pin.number % 8 == 0) {
        const int number = pin.number;
        pin = Pin{};
        pin.number = number;
        pin.function = PinFunction::Ground;
      }
    }
  }

  Fitting fitting() const { return {&board, &harness, &catalogue, {{0, 0}}, {}}; }
};

}  // namespace

int main() {
  const FiftyLeads fifty;
  const Fitting one = fifty.fitting();
  const auto target = cheapest_target(one);
  test::bench_detail(format("target, 50 leads on 64 pins: {:.2f} ms (bar: under 5), {} contacts moved, {}",
                            median_of(11, [&] { cheapest_target(one); }), target ? target->moved : -1,
                            target && target->proven ? "proven" : "not proven"));
  AdviseOptions short_advice;
  short_advice.wrong_seatings = short_advice.softer = short_advice.cures = false;
  const Advice advice = advise(one, short_advice);
  test::bench_detail(format("advise on the same: {:.2f} ms (bar: under 5), {}, {} moved",
                            median_of(11, [&] { advise(one, short_advice); }), to_word(advice.verdict),
                            advice.moved));

  const auto world = test::big_world(64, 60);
  PlaceOptions options;
  options.reasons = options.rehouse = false;
  options.advice = short_advice;
  const PlacementPlan plan = place(world->fitting(), options);
  const double ms = median_of(5, [&] { place(world->fitting(), options); });
  test::bench_detail(format("place, 60 plugs on 64 headers: {:.1f} ms (bar: under 100), {} placed, {}", ms,
                            plan.best ? plan.best->placements.size() : 0,
                            plan.proven ? "proven" : "not proven"));

  // The same machine, as it was just placed, to a second board like it on which no jumper is stated.
  Fitting machine = world->fitting();
  if (plan.best) machine.placements = plan.best->placements;
  const auto swap = plan_swap(machine, world->board, {});
  const double swap_ms = median_of(5, [&] { plan_swap(machine, world->board, {}); });
  test::bench_detail(
      format("swap, 60 plugs to 64 headers, 3 jumpers open: {:.1f} ms (bar: under 100), {} go over, {}",
             swap_ms, swap->after.placements.size(), swap->proven ? "proven" : "not proven"));
  return 0;
}
