// SPDX-License-Identifier: MIT
#include "judge/carrying.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "base/format.h"
#include "reader/descriptions.h"

using namespace plugward;

namespace {

std::string told(const CarryingLimit& limit) {
  return format("{} | {} | {}", limit.amps ? to_text(*limit.amps) : "not known", limit.basis, limit.source);
}

}  // namespace

TEST_CASE("contacts carry what is published for exactly this gauge") {
  Catalogue catalogue;
  add_builtin_families(catalogue);
  struct Row {
    const char* family;
    std::optional<Gauge> gauge;
    int positions;
    const char* expected;
  };
  const std::vector<Row> rows{
      {"xh-2.50", awg(22), 2, "3 A | contact rating at 22 AWG | JST eXH.pdf (quoted)"},
      {"xh-2.50", awg(26), 2, "not known | no contact rating of 'xh-2.50' at 26 AWG is published | "},
      {"xh-2.50", std::nullopt, 2, "not known | contact rating not known: the lead's gauge is not stated | "},
      {"screw-5.08", awg(14), 2,
       "12 A | contact rating, published without a gauge | public footprint scripts (MSTB 2,5 class) "
       "(footprint)"},
      {"minifit-4.20", awg(18), 6, "8 A | contact rating at 18 AWG | Molex PS-5556-002-001 (quoted)"},
      {"minifit-4.20", awg(18), 24, "6 A | contact rating at 18 AWG | Molex PS-5556-002-001 (quoted)"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.expected);
    CHECK(told(contact_limit(*catalogue.find(row.family), row.gauge, row.positions)) == row.expected);
  }
}

TEST_CASE("wires: alone by the chassis column, in a bundle by the bundled one or by factors") {
  const std::string chassis =
      "chassis wiring: Handbook of Electronic Tables and Formulas, as copied in \"AWG Current Capacity\"";
  CHECK(told(wire_limit(awg(22))) == "7 A | 22 AWG alone in free air | " + chassis);
  CHECK(told(wire_limit(awg(25))) == "not known | no chassis figure for 25 AWG is published | ");
  CHECK(told(bundle_limit(awg(22), 2)) ==
        "2.5 A | 22 AWG in a bundle | TFE wire, bundled: archived \"wire table\" page");
  CHECK(
      told(bundle_limit(awg(26), 3)) ==
      "1.958 A | 26 AWG in a bundle of 3 | chassis wiring x 0.89 (MIL-W-5088B, as used in a DC-load manual)");
  CHECK(told(bundle_limit(awg(26), 6)) ==
        "not known | no figure for 6 wires of 26 AWG in a bundle is published | ");
}

TEST_CASE("what a fuse may let through: the laxer published figure for a bundle, where there is one") {
  CHECK(told(fused_wire_limit(awg(16), 2)) ==
        "13 A | 16 AWG in a bundle | general table, bundled: archived \"wire table\" page");
  CHECK(told(fused_wire_limit(awg(24), 2)) ==
        "2 A | 24 AWG in a bundle | TFE wire, bundled: archived \"wire table\" page");
  CHECK(told(fused_wire_limit(awg(16), 1)) == told(wire_limit(awg(16))));
}

TEST_CASE("the next usual blade fuse of 1.25 times the load") {
  struct Row {
    double load;
    std::optional<Amps> fuse;
  };
  for (const Row& row :
       {Row{0.1, Amps(1)}, Row{0.8, Amps(1)}, Row{0.81, Amps(2)}, Row{1.667, Amps(3)}, Row{6.0, Amps(7.5)},
        Row{6.01, Amps(10)}, Row{10.0, Amps(15)}, Row{32.0, Amps(40)}, Row{32.1, std::nullopt}}) {
    CAPTURE(row.load);
    CHECK(blade_fuse(Amps(row.load)) == row.fuse);
  }
  CHECK(thinnest_for(Amps(5.0))->awg == 22);
  CHECK(thinnest_for(Amps(5.1))->awg == 20);
  CHECK(thinnest_for(Amps(23.0))->awg == 12);
  CHECK(!thinnest_for(Amps(23.1)));
}
