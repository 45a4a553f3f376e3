// SPDX-License-Identifier: MIT
#include "plan/adapter_wire.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "base/format.h"
#include "reader/descriptions.h"

using namespace plugward;

namespace {

WireColour colour(const std::string& code) {
  return std::get<WireColour>(parse_colour(code));
}

Catalogue builtin() {
  Catalogue catalogue;
  add_builtin_families(catalogue);
  return catalogue;
}

}  // namespace

TEST_CASE("gauges that both ends take, the cable's own first") {
  // Wire ranges: pin-2.54 32..18 AWG (Amphenol 'FCI Basics'), XH 30..22 (JST eXH.pdf), PH 32..24 (JST PH data
  // sheet), VH 22..16 (seller guide), ribbon 28 (Wurth 63911015521CAB); screw blocks state none.
  struct Row {
    std::string a, b, cable;
    std::vector<std::string> choices;
  };
  const std::vector<Row> rows{
      {"pin-2.54", "pin-2.54", "26 AWG", {"26 AWG", "24 AWG", "22 AWG", "20 AWG", "18 AWG"}},
      {"xh-2.50", "pin-2.54", "26 AWG", {"26 AWG", "24 AWG", "22 AWG"}},
      {"xh-2.50", "xh-2.50", "0.14 mm2", {"0.14 mm2", "24 AWG", "22 AWG"}},
      {"xh-2.50", "xh-2.50", "", {"26 AWG", "24 AWG", "22 AWG"}},
      {"xh-2.50", "ph-2.00", "22 AWG", {"24 AWG"}},
      {"xh-2.50", "vh-3.96", "26 AWG", {"22 AWG"}},
      {"box-2.54", "box-2.54", "28 AWG", {"28 AWG"}},
      {"vh-3.96", "ph-2.00", "18 AWG", {}},
      {"screw-5.08", "screw-5.08", "12 AWG", {"12 AWG", "10 AWG"}},
  };
  const Catalogue catalogue = builtin();
  for (const Row& row : rows) {
    CAPTURE(row.a);
    CAPTURE(row.b);
    CAPTURE(row.cable);
    std::optional<Gauge> cable;
    if (!row.cable.empty()) cable = std::get<Gauge>(parse_gauge(row.cable));
    std::vector<std::string> choices;
    for (const Gauge& g : gauge_choices(cable, *catalogue.find(row.a), *catalogue.find(row.b))) {
      choices.push_back(to_text(g));
    }
    CHECK(choices == row.choices);
  }
  CHECK(thinner(awg(24), awg(22)));
  CHECK_FALSE(thinner(awg(22), awg(22)));
  CHECK_FALSE(thinner(awg(30), std::nullopt));
}

TEST_CASE("how a lead is fastened in a housing") {
  const Catalogue catalogue = builtin();
  CHECK(joint_of(*catalogue.find("xh-2.50")) == Joint::Crimp);
  CHECK(joint_of(*catalogue.find("ph-2.00")) == Joint::Crimp);  // its lance is not known; it is crimped
  CHECK(joint_of(*catalogue.find("screw-5.08")) == Joint::Screw);
  CHECK(joint_of(*catalogue.find("box-2.54")) == Joint::Displacement);
  CHECK(joint_of(*catalogue.find("m12-a")) == Joint::Other);
}

TEST_CASE("colours tell the leads apart") {
  struct Row {
    std::vector<std::string> cable, leads;
  };
  const std::vector<Row> rows{
      {{"BN", "RD", "OG"}, {"BN", "RD", "OG"}},
      {{"RD", "RD"}, {"RD", "BN"}},
      {{"?", "BN", "?"}, {"RD", "BN", "OG"}},
      {{"GNYE", "YEGN", "WHGN", "GNWH"}, {"BN", "RD", "WHGN", "OG"}},
  };
  for (const Row& row : rows) {
    std::vector<WireColour> cable;
    for (const std::string& code : row.cable) cable.push_back(colour(code));
    std::vector<std::string> leads;
    for (const WireColour& one : distinct_colours(cable)) leads.push_back(to_code(one));
    CHECK(leads == row.leads);
  }
  const std::vector<WireColour> many = distinct_colours(std::vector<WireColour>(64));
  for (std::size_t i = 0; i < many.size(); ++i) {
    CHECK(many[i].known());
    CHECK_FALSE(is_protective_earth(many[i]));
    for (std::size_t k = 0; k < i; ++k) CHECK_FALSE(many[i] == many[k]);
  }
}
