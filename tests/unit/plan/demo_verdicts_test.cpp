// SPDX-License-Identifier: MIT
// Every verdict that the shipped demo world is made for.
#include <doctest/doctest.h>

#include <map>
#include <string>
#include <vector>

#include "plan/repin.h"
#include "support/bench.h"

using namespace plugward;
using plugward::test::Bench;

namespace {

struct Row {
  std::string harness;
  std::map<std::string, std::string> at;
  std::string board;
  std::map<std::string, std::string> jumpers;
  Verdict verdict;
};

}  // namespace

TEST_CASE("the demo world's verdicts") {
  const std::string m7 = "heron-m7";
  const std::string a4 = "heron-a4";
  using enum Verdict;
  const std::vector<Row> rows{
      {"kite-probe", {{"control", "J9"}, {"trigger", "J10"}}, m7, {{"JP2", "5V"}}, Repin},
      {"kite-probe", {{"control", "J9"}, {"trigger", "J10"}}, m7, {}, Measure},
      {"kite-probe", {{"control", "J9"}, {"trigger", "J10"}}, m7, {{"JP2", "24V"}}, Adapt},
      {"kite-probe", {{"control", "J23"}}, m7, {}, Measure},
      {"kite-probe", {{"trigger", "J10"}}, m7, {}, Mate},
      {"kite-probe", {{"control", "J9"}, {"trigger", "J10"}}, a4, {}, Repin},
      {"kite-probe", {{"trigger", "J10"}}, a4, {}, Repin},
      {"firefly-led-bar", {{"light", "J20"}}, m7, {}, Adapt},
      {"firefly-led-bar", {{"light", "J8"}}, a4, {}, Mate},
      {"firefly-led-bar", {{"light", "J5"}}, m7, {}, Apart},
      {"firefly-led-bar", {{"light", "J7"}}, m7, {}, Apart},
      {"firefly-led-bar", {{"light", "J8"}}, m7, {}, Apart},
      {"firefly-led-bar", {{"light", "J21"}}, m7, {}, Apart},
      {"firefly-led-bar", {{"light", "J5"}}, a4, {}, Apart},
      {"firefly-led-bar", {{"light", "J19"}}, a4, {}, Apart},
      {"fan-24v", {{"fan", "J11"}}, m7, {{"JP4", "24V"}}, Mate},
      {"fan-24v", {{"fan", "J11"}}, m7, {}, Measure},
      {"fan-24v", {{"fan", "J11"}}, m7, {{"JP4", "12V"}}, Adapt},
      {"fan-24v", {{"fan", "J12"}}, m7, {{"JP4", "24V"}}, Mate},
      {"fan-24v", {{"fan", "J12"}}, m7, {}, Measure},
      {"fan-24v", {{"fan", "J18"}}, m7, {}, Apart},
      {"fan-24v", {{"fan", "J11"}}, a4, {}, Mate},
      {"fan-24v", {{"fan", "J12"}}, a4, {}, Repin},
      {"fan-24v", {{"fan", "J17"}}, a4, {}, Apart},
      {"fan-24v", {{"fan", "J17"}}, m7, {}, Adapt},
      {"fan-12v", {{"fan", "J13"}}, m7, {{"JP3", "12V"}}, Mate},
      {"fan-12v", {{"fan", "J13"}}, m7, {{"JP3", "24V"}}, Adapt},
      {"fan-12v", {{"fan", "J13"}}, m7, {}, Measure},
      {"fan-12v", {{"fan", "J13"}}, a4, {}, Adapt},
      {"limit-switch", {{"limit", "J5"}}, m7, {}, Repin},
      {"limit-switch", {{"limit", "J7"}}, m7, {}, Repin},
      {"limit-switch", {{"limit", "J20"}}, m7, {}, Apart},
      {"limit-switch", {{"limit", "J21"}}, m7, {}, Apart},
      {"limit-switch", {{"limit", "J5"}}, a4, {}, Mate},
      {"changeover-limit", {{"limit", "J5"}}, m7, {}, Repin},
      {"changeover-limit", {{"limit", "J5"}}, a4, {}, Repin},
      {"optical-switch", {{"limit", "J5"}}, m7, {}, Mate},
      {"optical-switch", {{"limit", "J7"}}, m7, {}, Adapt},
      {"optical-switch", {{"limit", "J20"}}, m7, {}, Apart},
      {"optical-switch", {{"limit", "J21"}}, m7, {}, Apart},
      {"optical-switch", {{"limit", "J5"}}, a4, {}, Repin},
      {"optical-switch", {{"limit", "J8"}}, a4, {}, Apart},
      {"inductive-sensor", {{"sensor", "J21"}}, m7, {}, Measure},
      {"inductive-sensor", {{"sensor", "J19"}}, a4, {}, Mate},
      {"inductive-sensor", {{"sensor", "J5"}}, m7, {}, Apart},
      {"x-motor", {{"motor", "J2"}}, m7, {}, Repin},
      {"x-motor", {{"motor", "J4"}}, m7, {}, Mate},
      {"x-motor", {{"motor", "J2"}}, a4, {}, Mate},
      {"thermistor", {{"thermistor", "J18"}}, m7, {}, Mate},
      {"thermistor", {{"thermistor", "J17"}}, a4, {}, Mate},
      {"thermistor", {{"thermistor", "J11"}}, m7, {}, Apart},
      {"thermistor", {{"thermistor", "J11"}}, a4, {}, Apart},
      {"nozzle-heater", {{"heater", "J14"}}, m7, {}, Mate},
      {"nozzle-heater", {{"heater", "J14"}}, a4, {}, Mate},
      {"nozzle-heater", {{"heater", "J16"}}, m7, {}, Apart},
      {"nozzle-heater", {{"heater", "J17"}}, m7, {}, Apart},
      {"nozzle-heater", {{"heater", "J15"}}, a4, {}, Measure},
      {"nozzle-heater", {{"heater", "J15"}}, m7, {}, Adapt},
      {"mystery-lead", {{"lead", "J8"}}, m7, {}, Measure},
      {"limit-switch", {{"limit", "J20"}}, a4, {}, Apart},
  };
  for (const Row& row : rows) {
    const Bench bench = Bench::shipped(row.board, row.harness);
    const Advice advice = advise(bench.fitting(row.at, row.jumpers));
    std::string said = row.harness + " on " + row.board + " " + row.at.begin()->second;
    for (const auto& [jumper, rail] : row.jumpers) said += " " + jumper + "=" + rail;
    for (const Finding& f : advice.now.findings) {
      said += "\n  " + std::string(to_word(f.weight)) + ": " + f.message + " [" +
              std::string(rule_info(f.rule).id) + "] " + f.state;
    }
    CAPTURE(said);
    CHECK(to_word(advice.verdict) == to_word(row.verdict));
    CHECK((advice.verdict == Verdict::Repin || !advice.cures.empty()) == advice.plan.has_value());
    CHECK((advice.verdict == Verdict::Measure) == !advice.measurements.empty());
    CHECK((advice.verdict == Verdict::Adapt) == !advice.parts.empty());
  }
}
