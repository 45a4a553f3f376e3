// SPDX-License-Identifier: MIT
#include "catalogue/family_search.h"

#include <doctest/doctest.h>

using namespace plugward;

TEST_CASE("families are found by what people call them") {
  Catalogue catalogue;
  const auto add = [&](const char* id, const char* title) {
    Family family;
    family.id = id;
    family.title = title;
    catalogue.add(std::move(family));
  };
  add("pin-2.54", "2.54 mm square pins, unkeyed crimp housing");
  add("kk-2.54", "Molex KK 254, 2.54 mm with friction ramp");
  add("xh-2.50", "JST XH, 2.50 mm");
  add("ph-2.00", "JST PH, 2.00 mm");
  add("microfit-3.00", "Molex Micro-Fit 3.0");
  add("m12-a", "M12 A-coded circular");

  using Ids = std::vector<std::string>;
  struct Row {
    const char* name;
    Ids expected;
  };
  const Row rows[] = {
      {"JST-XH", {"xh-2.50"}},
      {"xh", {"xh-2.50"}},
      {"XH", {"xh-2.50"}},
      {"XH2.54", {"xh-2.50"}},  // the word counts more than the pitch that sellers give it
      {"jst_xh_2.50", {"xh-2.50"}},
      {"JSTXH", {"xh-2.50"}},
      {"JST", {"xh-2.50", "ph-2.00"}},
      {"KK-254", {"kk-2.54"}},
      {"2.54", {"pin-2.54", "kk-2.54"}},
      {"Micro-Fit", {"microfit-3.00"}},
      {"M12", {"m12-a"}},
      {"snapwire", {}},
      {"x", {}},
      {"", {}},
      {"-.", {}},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(families_like(catalogue, row.name) == row.expected);
  }
}
