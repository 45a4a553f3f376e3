// SPDX-License-Identifier: MIT
#include "plan/components.h"

#include <doctest/doctest.h>

#include <map>
#include <random>
#include <string>
#include <vector>

#include "plan/place.h"
#include "support/bench.h"

using namespace plugward;
using plugward::test::Bench;

namespace {

/// Two shipped harnesses as one.
struct Pair {
  Bench one;
  Bench two;
  Harness both;
};

Pair pair_of(const std::string& one, const std::string& two) {
  Pair pair{Bench::shipped("heron-m7", one), Bench::shipped("heron-m7", two), {}};
  pair.both = merged({pair.one.harness.get(), pair.two.harness.get()});
  return pair;
}

int badness(Verdict verdict) {
  const std::map<Verdict, int> order{{Verdict::Mate, 0},
                                     {Verdict::Repin, 1},
                                     {Verdict::Adapt, 2},
                                     {Verdict::Measure, 3},
                                     {Verdict::Apart, 4}};
  return order.at(verdict);
}

}  // namespace

TEST_CASE("plugs of one device hang together, others do not") {
  const Pair pair = pair_of("kite-probe", "x-motor");
  const std::vector<Cluster> all = clusters(pair.both);
  REQUIRE(all.size() == 2);
  CHECK(all[0].plugs == std::vector<int>{0, 1});
  CHECK(all[0].devices == std::vector<int>{-1, 0});
  CHECK(all[1].plugs == std::vector<int>{2});
  CHECK(all[1].devices == std::vector<int>{-1, 1});
  CHECK(all[1].harness.terminal_name(*all[1].harness.plugs[0].leads[0].to) ==
        pair.both.terminal_name(*pair.both.plugs[2].leads[0].to));
}

TEST_CASE("one cluster is no whole of parts") {
  const Bench kite = Bench::shipped("heron-m7", "kite-probe");
  CHECK_FALSE(
      advise_apart(kite.fitting({{"control", "J9"}, {"trigger", "J10"}}, {{"JP2", "5V"}}), {}).has_value());
}

TEST_CASE("random pairs: the worse verdict of both, their contacts together, and a plan that is clean") {
  const std::vector<std::string> names{"fan-24v",      "firefly-led-bar", "inductive-sensor",
                                       "limit-switch", "optical-switch",  "thermistor",
                                       "x-motor",      "nozzle-heater"};
  std::mt19937 random(12);
  const auto pick = [&](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
  };
  AdviseOptions options;
  options.wrong_seatings = options.softer = options.cures = false;
  int planned = 0;
  for (int round = 0; round < 80; ++round) {
    CAPTURE(round);
    const std::string first = names[pick(names.size())];
    const std::string second = names[pick(names.size())];
    if (first == second) continue;
    const Pair pair = pair_of(first, second);
    const int headers = static_cast<int>(pair.one.board->headers.size());
    // Every second time each on the first header that is meant for it, so that plans occur.
    const auto meant = [&](const Bench& bench, int other) {
      const std::string& use = bench.harness->devices.front().use;
      for (int h = 0; h < headers; ++h) {
        if (h != other && bench.board->headers[static_cast<std::size_t>(h)].use == use) return h;
      }
      return other == 0 ? 1 : 0;
    };
    const bool any = round % 2 == 0;
    const int a = any ? static_cast<int>(pick(static_cast<std::size_t>(headers))) : meant(pair.one, -1);
    const int b = any ? (a + 1 + static_cast<int>(pick(static_cast<std::size_t>(headers) - 1))) % headers
                      : meant(pair.two, a);
    const std::map<std::string, std::string> jumpers{{"JP2", "5V"}, {"JP3", "12V"}, {"JP4", "24V"}};
    const Fitting joint{pair.one.board.get(), &pair.both, &pair.one.catalogue, {{0, a}, {1, b}}, jumpers};
    const Fitting left{pair.one.board.get(), &pair.both, &pair.one.catalogue, {{0, a}}, jumpers};
    const Fitting right{pair.one.board.get(), &pair.both, &pair.one.catalogue, {{1, b}}, jumpers};
    const auto whole = advise_apart(joint, options);
    REQUIRE(whole.has_value());
    const Advice one = advise(left, options);
    const Advice two = advise(right, options);
    CHECK(badness(whole->verdict) == std::max(badness(one.verdict), badness(two.verdict)));
    CHECK(whole->moved == one.moved + two.moved);
    // Parts are told where they are the cure, not where something else keeps the two apart.
    const bool adapt = whole->verdict == Verdict::Adapt;
    CHECK(whole->parts.size() == (adapt ? one.parts.size() + two.parts.size() : 0));
    CHECK(whole->plan.has_value() == (whole->verdict == Verdict::Repin));
    if (!whole->plan) continue;
    ++planned;
    CHECK(whole->plan->after.clean());
    CHECK(whole->plan->harness.plugs.size() == 2);
  }
  CHECK(planned > 0);
}
