// SPDX-License-Identifier: MIT
#include "plan/contact_wire.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "reader/descriptions.h"

using namespace plugward;

namespace {

Plug plug_with(const std::vector<std::string>& gauges) {
  Plug plug;
  for (const std::string& gauge : gauges) {
    Lead lead;
    lead.cavity = static_cast<int>(plug.leads.size()) + 1;
    if (gauge == "out") lead.cavity = 0;
    if (gauge != "?") lead.gauge = std::get<Gauge>(parse_gauge(gauge == "out" ? "36 AWG" : gauge));
    plug.leads.push_back(lead);
  }
  return plug;
}

}  // namespace

TEST_CASE("leads that the contacts of a family do not take are named") {
  // Wire ranges: XH 30..22 (JST eXH.pdf), PH 32..24 (JST PH data sheet), VH 22..16 (seller guide), ribbon 28
  // (Wurth 63911015521CAB); screw blocks state none.
  struct Row {
    std::string name, family;
    std::vector<std::string> gauges;
    std::string range, misfit;
  };
  const std::string end =
      ": those leads need other wire, or take an adapter lead between ('plugward repin --adapter')";
  const std::vector<Row> rows{
      {"all suit", "xh-2.50", {"26 AWG", "22 AWG", "0.14 mm2"}, "30 to 22 AWG", ""},
      {"all too thin",
       "vh-3.96",
       {"26 AWG", "26 AWG"},
       "22 to 16 AWG",
       "they take 22 to 16 AWG, not the 26 AWG of its leads" + end},
      {"one too thick",
       "ph-2.00",
       {"26 AWG", "20 AWG"},
       "32 to 24 AWG",
       "they take 32 to 24 AWG, not the 20 AWG of the lead in cavity 2" + end},
      {"some, of two gauges",
       "vh-3.96",
       {"26 AWG", "20 AWG", "0.14 mm2"},
       "22 to 16 AWG",
       "they take 22 to 16 AWG, not the 26 AWG, 0.14 mm2 of the leads in cavities 1, 3" + end},
      {"gauges that are not stated", "vh-3.96", {"?", "?"}, "22 to 16 AWG", ""},
      {"a lead that is out of the housing", "vh-3.96", {"20 AWG", "out"}, "22 to 16 AWG", ""},
      {"a range that is not known", "screw-5.08", {"30 AWG"}, "", ""},
      {"no crimping: flat cable", "box-2.54", {"22 AWG"}, "28 AWG", ""},
  };
  Catalogue catalogue;
  add_builtin_families(catalogue);
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Family& family = *catalogue.find(row.family);
    CHECK(wire_range_words(family) == row.range);
    CHECK(misfit_words(family, plug_with(row.gauges)) == row.misfit);
  }
}

TEST_CASE("the nearest size that a family takes") {
  Catalogue catalogue;
  add_builtin_families(catalogue);
  CHECK(nearest_taken(*catalogue.find("vh-3.96"), awg(26)) == awg(22));
  CHECK(nearest_taken(*catalogue.find("vh-3.96"), awg(12)) == awg(16));
  CHECK(nearest_taken(*catalogue.find("vh-3.96"), awg(18)) == awg(18));
}
