// SPDX-License-Identifier: MIT
#include "fit/seating.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace plugward;

namespace {

Family family(std::string id, Profile profile, double pitch, std::vector<std::string> mates = {}) {
  Family f;
  f.id = std::move(id);
  f.profile = profile;
  f.pitch = Millimetres(pitch);
  f.row_pitch = Millimetres(pitch);
  f.rows = 2;
  f.mates = std::move(mates);
  return f;
}

/// Families of every profile; figures are the test's own.
Catalogue families() {
  Catalogue c;
  c.add(family("bare", Profile::Bare, 2.54));
  c.add(family("box", Profile::BoxShroud, 2.50));
  c.add(family("wafer", Profile::OpenWafer, 3.96));
  c.add(family("ramp", Profile::FrictionRamp, 2.54, {"bare"}));
  c.add(family("round", Profile::Circular, 5.0));
  c.add(family("other", Profile::BoxShroud, 2.50));
  return c;
}

Plug plug(const std::string& of, int positions, int rows = 1) {
  Plug p;
  p.id = "p";
  p.family = of;
  p.positions = positions;
  p.rows = rows;
  for (int i = 1; i <= positions; ++i) {
    Lead lead;
    lead.cavity = i;
    p.leads.push_back(lead);
  }
  return p;
}

Header header(const std::string& of, int positions, int rows = 1, double x = 0) {
  Header h;
  h.id = "J" + std::to_string(static_cast<int>(x));
  h.family = of;
  h.positions = positions;
  h.rows = rows;
  h.x = Millimetres(x);
  h.pins.resize(static_cast<std::size_t>(positions));
  return h;
}

Board board(std::vector<Header> headers) {
  Board b;
  b.headers = std::move(headers);
  return b;
}

/// "1 2 3 | 3 2 1 turned ..." : the pins under cavities 1.., then the words.
std::vector<std::string> listed(const std::vector<Seating>& all) {
  std::vector<std::string> lines;
  for (const Seating& s : all) {
    std::string line;
    for (int pin : s.pin_of_cavity) line += std::to_string(pin) + " ";
    lines.push_back(line + s.words);
  }
  return lines;
}

}  // namespace

TEST_CASE("positions and places are each other's inverse") {
  for (const Numbering numbering : {Numbering::Zigzag, Numbering::ByRow}) {
    for (int n = 1; n <= 10; ++n) {
      CHECK(number_at(place_of(n, 10, 2, numbering), 10, 2, numbering) == n);
    }
  }
  // Ribbon numbering: odd numbers in one row, even in the other ("Data cables" page).
  CHECK(place_of(3, 10, 2, Numbering::Zigzag).column == 1);
  CHECK(place_of(3, 10, 2, Numbering::Zigzag).row == 0);
  CHECK(place_of(4, 10, 2, Numbering::Zigzag).row == 1);
  CHECK(place_of(6, 10, 2, Numbering::ByRow).column == 0);
  CHECK(place_of(6, 10, 2, Numbering::ByRow).row == 1);
  CHECK(number_at({5, 0}, 10, 2, Numbering::Zigzag) == 0);
}

TEST_CASE("every seating that the plastic allows, and no other") {
  struct Row {
    std::string name;
    Plug plug;
    Header header;
    std::vector<std::string> expected;
  };
  std::vector<Row> rows;
  rows.push_back({"two open pins, both ways and one off",
                  plug("bare", 2),
                  header("bare", 2),
                  {"1 2 home", "2 1 turned by 180 degrees", "2 0 shifted by 1 towards pin 2",
                   "0 1 shifted by 1 towards pin 1", "0 2 turned by 180 degrees, shifted by 1 towards pin 2",
                   "1 0 turned by 180 degrees, shifted by 1 towards pin 1"}});
  rows.push_back({"shrouded, same count: home only", plug("box", 3), header("box", 3), {"1 2 3 home"}});
  rows.push_back({"short plug in a long shroud",
                  plug("box", 2),
                  header("box", 4),
                  {"1 2 home", "2 3 shifted by 1 towards pin 4", "3 4 shifted by 2 towards pin 4"}});
  rows.push_back({"long plug, short shroud: it does not enter", plug("box", 4), header("box", 3), {}});
  rows.push_back({"wide plug on a narrow wafer (collector's notes)",
                  plug("wafer", 3),
                  header("wafer", 2),
                  {"1 2 0 home", "0 1 2 shifted by 1 towards pin 1"}});
  rows.push_back({"narrow plug on a wide wafer: guides stop it", plug("wafer", 2), header("wafer", 3), {}});
  rows.push_back({"ramp: not turned",
                  plug("ramp", 2),
                  header("ramp", 2),
                  {"1 2 home", "2 0 shifted by 1 towards pin 2", "0 1 shifted by 1 towards pin 1"}});
  rows.push_back({"circular: home only", plug("round", 4), header("round", 4), {"1 2 3 4 home"}});
  Plug shaved = plug("box", 2);
  shaved.key = KeyState::Removed;
  rows.push_back({"key removed: it also turns", shaved, header("box", 2), {"1 2 home", "2 1 turned by 180 degrees"}});
  const Catalogue catalogue = families();
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(listed(seatings(row.plug, 0, board({row.header}), catalogue)) == row.expected);
  }
}

TEST_CASE("a ramped plug on open pins is as free as an open one") {
  // Same 0.64 mm pins and pitch: reversed and offset are both possible (geometry).
  const Catalogue catalogue = families();
  CHECK(mated_profile(plug("ramp", 3), header("bare", 3), catalogue) == Profile::Bare);
  CHECK(mated_profile(plug("bare", 3), header("ramp", 3), catalogue) == Profile::Bare);
  CHECK(mated_profile(plug("ramp", 3), header("ramp", 3), catalogue) == Profile::FrictionRamp);
}

TEST_CASE("a 2x5 ribbon socket turned by 180 degrees: n becomes 11 - n") {
  // Arithmetic of a 2xN header, k -> 2N + 1 - k; reported for display ribbons.
  Plug ribbon = plug("bare", 10, 2);
  const auto all = seatings(ribbon, 0, board({header("bare", 10, 2)}), families());
  const Seating* turned = nullptr;
  for (const Seating& s : all) {
    if (s.kind == SeatingKind::Turned) turned = &s;
  }
  REQUIRE(turned != nullptr);
  CHECK(turned->pin_of_cavity == std::vector{10, 9, 8, 7, 6, 5, 4, 3, 2, 1});
}

TEST_CASE("how two housings suit each other, in words") {
  struct Row {
    Plug plug;
    Header header;
    MateKind kind;
    std::string words;
  };
  const std::vector<Row> rows{
      {plug("box", 3), header("box", 3), MateKind::Fits, ""},
      {plug("box", 3), header("other", 3), MateKind::OtherFamily,
       "plug 'p' is of family 'box', header 'J0' of 'other': same pitch of 2.5 mm, other housing"},
      // 2.50 mm against 2.54 mm, six ways: (6 - 1) x 0.04 mm = 0.2 mm (arithmetic on the published pitches).
      {plug("box", 6), header("bare", 6), MateKind::OtherPitch,
       "plug 'p' has a pitch of 2.5 mm ('box'), header 'J0' one of 2.54 mm ('bare'): 0.2 mm off at position 6 when "
       "the first contacts are aligned"},
      {plug("box", 4), header("box", 3), MateKind::TooWide,
       "plug 'p' has 4 positions, header 'J0' has 3: it does not enter the shroud"},
      {plug("wafer", 2), header("wafer", 3), MateKind::TooNarrow,
       "plug 'p' has 2 positions, header 'J0' has 3: its guides do not go over the longer header"},
      {plug("bare", 2), header("bare", 3), MateKind::OtherPositions,
       "plug 'p' has 2 positions, header 'J0' has 3: it can sit in more than one place"},
      {plug("bare", 4), header("bare", 4, 2), MateKind::OtherRows, "plug 'p' has 1 row, header 'J0' has 2"},
  };
  for (const Row& row : rows) {
    const Mate how = mate(row.plug, row.header, families());
    CHECK(how.kind == row.kind);
    CHECK(how.words == row.words);
  }
}

TEST_CASE("pitch error at the last pin, 2.50 on 2.54 mm") {
  // (N - 1) x 0.04 mm: arithmetic on the published pitches.
  const std::vector<std::pair<int, double>> table{{2, 0.04},  {3, 0.08},  {4, 0.12},  {5, 0.16},  {6, 0.20},
                                                  {8, 0.28},  {10, 0.36}, {12, 0.44}, {16, 0.60}, {20, 0.76}};
  for (const auto& row : table) {
    const int n = row.first;
    const double error = row.second;
    CAPTURE(n);
    const Mate how = mate(plug("box", n), header("bare", n), families());
    REQUIRE(how.end_error.has_value());
    CHECK(how.end_error->value == doctest::Approx(error));
  }
}

TEST_CASE("neighbours: only near ones of the same side that the plug goes on") {
  Board b = board({header("bare", 3, 1, 0), header("bare", 3, 1, 10), header("bare", 3, 1, 90), header("box", 3, 1, 20)});
  Header below = header("bare", 3, 1, 12);
  below.underside = true;
  b.headers.push_back(below);
  CHECK(listed(neighbour_seatings(plug("bare", 3), 0, b, families())) ==
        std::vector<std::string>{"1 2 3 on the neighbour 'J10'"});
}
