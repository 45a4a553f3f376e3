// SPDX-License-Identifier: MIT
// 200 seeded errors planted in machines that move from one board to the other and back: every one that does
// harm shows at a step of the order of work before the step at which power reaches it, or stands among the
// headers that look alike. Whether an error does harm is asked of the judge, not of the order of work.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <random>

#include "base/format.h"
#include "plan/look_alike.h"
#include "plan/way_back.h"
#include "plan/work.h"
#include "plan/work_catch.h"
#include "support/machine.h"

using namespace plugward;
using plugward::test::Machine;

namespace {

using Random = std::mt19937;

int pick(Random& random, std::size_t below) {
  return static_cast<int>(std::uniform_int_distribution<std::size_t>(0, below - 1)(random));
}

/// The demo's machine with some plugs taken off, so that no two trials are of one machine.
Fitting thinned(const Fitting& whole, Random& random) {
  Fitting some = whole;
  std::erase_if(some.placements, [&](const Placement&) { return pick(random, 4) == 0; });
  return some;
}

/// Worst weight that the judge gives to the machine with the error.
bool does_harm(const Fitting& after, const MachineFault& fault) {
  const FaultyMachine machine(after, fault);
  Assessment found;
  if (fault.kind == FaultKind::Misseated) {
    std::vector<Seating> seatings;
    for (const Placement& p : after.placements) {
      seatings.push_back(
          p.plug == fault.plug
              ? *fault.seating
              : home_seating(after.harness->plugs[static_cast<std::size_t>(p.plug)], p.header, *after.board));
    }
    found = assess(after, seatings);
  } else {
    found = assess(machine.fitting);
  }
  return found.has(Weight::Harm);
}

bool is_planted(const MachineFault& fault) {
  switch (fault.kind) {
    case FaultKind::PlugsExchanged:
    case FaultKind::WrongJumper:
    case FaultKind::OtherHeader:
    case FaultKind::Misseated:
    case FaultKind::LeadsExchanged:
    case FaultKind::LeadMoved:
      return true;
    default:
      return false;
  }
}

bool is_named(const SwapPlan& plan, const std::vector<WorkStep>& steps, const MachineFault& fault,
              Mixup how) {
  if (caught_at(plan, steps, fault, how).in_time()) return true;
  if (fault.kind != FaultKind::OtherHeader || !fault.seating) return false;
  const std::vector<LookAlike> alike = look_alikes(plan);
  return std::any_of(alike.begin(), alike.end(), [&](const LookAlike& l) {
    return l.plug == fault.plug && l.mistaken == fault.seating->header && l.weight == Weight::Harm;
  });
}

}  // namespace

TEST_CASE("200 planted errors: what does harm is named before power reaches it") {
  const auto there = Machine::shipped("wren-a4", "heron-m7");
  const Fitting old_machine = there->fitting();
  const auto over = plan_swap(old_machine, *there->to, {});
  std::map<FaultKind, int> planted, harmful;
  int total = 0, missed = 0;
  for (unsigned seed = 1; total < 200; ++seed) {
    Random random(seed);
    const bool back = seed % 3 == 0;
    const Fitting machine = thinned(back ? over->after : old_machine, random);
    const auto plan = plan_swap(machine, back ? there->files->board : *there->to, {});
    REQUIRE(plan->result.clean());
    std::vector<MachineFault> faults = possible_faults(plan->after, {});
    std::erase_if(faults, [](const MachineFault& f) { return !is_planted(f); });
    const std::vector<WorkStep> steps = order_of_work(*plan);
    for (int i = 0; i < 5 && total < 200 && !faults.empty(); ++i) {
      const MachineFault& fault = faults[static_cast<std::size_t>(pick(random, faults.size()))];
      ++total;
      ++planted[fault.kind];
      if (!does_harm(plan->after, fault)) continue;
      ++harmful[fault.kind];
      for (const Mixup how : {Mixup::Set, Mixup::Tagged}) {
        const bool named = is_named(*plan, steps, fault, how);
        if (!named) ++missed;
        CAPTURE(seed);
        CAPTURE(to_word(fault.kind));
        CAPTURE(fault.plug < 0 ? std::string()
                               : plan->harness.plugs[static_cast<std::size_t>(fault.plug)].id);
        CHECK(named);
      }
    }
  }
  std::string words;
  for (const auto& [kind, count] : planted)
    words += format("{} {} ({} harmful); ", to_word(kind), count, harmful[kind]);
  MESSAGE(words);
  CHECK(missed == 0);
  CHECK(planted.size() == 6);  // no kind was left out by chance
}

TEST_CASE("the way back of 40 machines ends where they began") {
  const auto there = Machine::shipped("wren-a4", "heron-m7");
  const Fitting old_machine = there->fitting();
  const auto over = plan_swap(old_machine, *there->to, {});
  for (unsigned seed = 1; seed <= 40; ++seed) {
    Random random(seed);
    const bool back = seed % 2 == 0;
    const Fitting machine = thinned(back ? over->after : old_machine, random);
    const auto plan = plan_swap(machine, back ? there->files->board : *there->to, {});
    const WayBack way = way_back(*plan);
    CAPTURE(seed);
    CHECK(way.proven);
    CHECK(ends_as_it_was(*plan, way));
  }
}
