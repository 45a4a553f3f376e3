// SPDX-License-Identifier: MIT
#include "plan/plug_advice.h"

#include <doctest/doctest.h>

#include "base/format.h"
#include "unit/draw/looms.h"

namespace plugward {
namespace {

/// "p1 MATE 0: 'p1' on 'J1': plug it in as it is;" ...
std::string told(const test::Loom& loom) {
  std::string text;
  for (const PlugAdvice& one : advice_by_plug(loom.fitting, loom.advice).plugs) {
    text += format("{} {}: {}\n", to_word(one.advice.verdict), one.moves, one.advice.summary);
  }
  return text;
}

}  // namespace

TEST_CASE("a plan for the whole says of each plug what is to be done with it") {
  const test::LoomPtr loom = test::four_fans();
  REQUIRE(loom->advice.verdict == Verdict::Repin);
  CHECK(told(*loom) ==
        "MATE 0: 'p1' on 'J1': plug it in as it is\n"
        "REPIN 2: 'p2' on 'J2': move 2 contacts first\n"
        "MATE 0: 'p3' on 'J3': plug it in as it is\n"
        "MATE 0: 'p4' on 'J4': plug it in as it is\n");
  for (const PlugAdvice& one : advice_by_plug(loom->fitting, loom->advice).plugs) {
    if (one.advice.verdict != Verdict::Mate) continue;
    CHECK_FALSE(one.advice.now.has(Weight::Harm));
    CHECK_FALSE(one.advice.plan.has_value());
  }
}

TEST_CASE("one unknown plug does not hide the plans for the others") {
  const test::LoomPtr loom = test::four_fans();
  loom->board.headers[0].pins[0].function = PinFunction::Unknown;
  loom->advice = advise(loom->fitting);
  REQUIRE(loom->advice.verdict == Verdict::Measure);
  CHECK_FALSE(loom->advice.plan.has_value());
  const std::vector<PlugAdvice> each = advice_by_plug(loom->fitting, loom->advice).plugs;
  CHECK(each[0].advice.verdict == Verdict::Measure);
  CHECK(each[1].advice.verdict == Verdict::Repin);
  CHECK(each[1].moves == 2);
  CHECK(each[2].advice.verdict == Verdict::Mate);
  CHECK(each[3].advice.verdict == Verdict::Mate);
}

TEST_CASE("what only all together bring about counts against every plug that it touches") {
  const test::LoomPtr loom = test::four_fans();  // four fans of 0.1 A
  loom->board.rails[0].limit = Amps(0.25);
  loom->advice = advise(loom->fitting);
  const auto [each, together] = advice_by_plug(loom->fitting, loom->advice);
  REQUIRE(together.size() == 1);
  REQUIRE(loom->advice.verdict > Verdict::Repin);
  for (const PlugAdvice& one : each) {
    CHECK(one.advice.verdict == loom->advice.verdict);
    CHECK_FALSE(one.advice.plan.has_value());
    CHECK((one.advice.now.has(Weight::Harm) || one.advice.now.has(Weight::Fault)));
  }
}

TEST_CASE("a plug that takes the verdict of the whole does not show the parts of the others") {
  const test::LoomPtr loom = test::four_fans();
  loom->harness.plugs[3].family = "vh-3.96";  // on a header of 2.5 mm: another housing
  loom->advice = advise(loom->fitting);
  REQUIRE(loom->advice.verdict == Verdict::Adapt);
  Finding overload;
  overload.rule = Rule::RailOverload;
  overload.weight = Weight::Harm;
  overload.message = "what only all together bring about";
  overload.at.rail = 0;
  loom->advice.now.findings.push_back(overload);
  std::string parts;
  for (const PlugAdvice& one : advice_by_plug(loom->fitting, loom->advice).plugs) {
    parts += format("{} {}", loom->harness.plugs[static_cast<std::size_t>(one.placement)].id,
                    to_word(one.advice.verdict));
    for (const std::string& part : one.advice.parts) parts += ": " + part;
    parts += "\n";
  }
  CHECK(parts ==
        "p1 ADAPT\np2 ADAPT\np3 ADAPT\n"
        "p4 ADAPT: another housing for plug 'p4': family 'xh-2.50', 2 positions, with its own contacts, "
        "crimped anew\n");
}

TEST_CASE("no plug is said to go on a neighbour on which another one sits") {
  int seen = 0;
  for (const int plugs : {5, 14}) {
    const test::LoomPtr loom = test::shipped_loom(plugs);
    CAPTURE(plugs);
    loom->advice = advise(loom->fitting, {.softer = false});
    for (const PlugAdvice& one : advice_by_plug(loom->fitting, loom->advice).plugs) {
      const Placement& home = loom->fitting.placements[static_cast<std::size_t>(one.placement)];
      for (const SeatingJudgement& wrong : one.advice.wrong) {
        ++seen;
        CHECK(wrong.plug == home.plug);
        for (const Placement& other : loom->fitting.placements)
          CHECK_FALSE((other.plug != wrong.plug && other.header == wrong.seating.header));
      }
    }
  }
  CHECK(seen > 10);
}

TEST_CASE("no plug looks better than the whole allows") {
  for (unsigned seed = 1; seed <= 12; ++seed) {
    const test::LoomPtr loom = test::generated_loom(seed, 6);
    CAPTURE(seed);
    Verdict worst = Verdict::Mate;
    for (const PlugAdvice& one : advice_by_plug(loom->fitting, loom->advice).plugs)
      worst = std::max(worst, one.advice.verdict);
    CHECK(worst >= loom->advice.verdict);
  }
}

TEST_CASE("plugs of one device are advised together") {
  const test::LoomPtr loom = test::shipped_loom(5);  // the two plugs of the probe, then three more
  CHECK(placements_by_device(loom->fitting) == std::vector<std::vector<int>>{{0, 1}, {2}, {3}, {4}});
}

TEST_CASE("whom a finding touches") {
  const test::LoomPtr loom = test::four_fans();
  struct Row {
    std::string_view name;
    Locus at;
    std::string touched;
  };
  std::vector<Row> rows(5);
  rows[0] = {"a plug", {}, "p2;"};
  rows[0].at.plug = 1;
  rows[0].at.device = 0;  // the plug decides
  rows[1] = {"a header", {}, "p3;"};
  rows[1].at.header = 2;
  rows[2] = {"a device", {}, "p4;"};
  rows[2].at.device = 3;
  rows[3] = {"a rail", {}, "p1;p2;p3;p4;"};
  rows[3].at.rail = 0;
  rows[4] = {"nothing that can be named", {}, "p1;p2;p3;p4;"};
  for (const Row& row : rows) {
    CAPTURE(row.name);
    Finding finding;
    finding.at = row.at;
    std::string touched;
    for (const Placement& placement : loom->fitting.placements) {
      if (touches(finding, loom->fitting, placement))
        touched += loom->harness.plugs[static_cast<std::size_t>(placement.plug)].id + ";";
    }
    CHECK(touched == row.touched);
  }
}

}  // namespace plugward
