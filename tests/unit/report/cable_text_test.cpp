// SPDX-License-Identifier: MIT
// Whole answers are kept in tests/cases (cable-*).
#include "report/cable_text.h"

#include <doctest/doctest.h>

using namespace plugward;

TEST_CASE("both numberings of two rows") {
  // Zigzag 1 3 5 7 9 over 2 4 6 8 10; row by row 1 2 3 4 5 over 6 7 8 9 10 (page on data cables).
  constexpr int by_row[] = {1, 6, 2, 7, 3, 8, 4, 9, 5, 10};
  Plug zigzag;
  zigzag.positions = 10;
  zigzag.rows = 2;
  Plug rows = zigzag;
  rows.numbering = Numbering::ByRow;
  for (int k = 1; k <= 10; ++k) {
    CAPTURE(k);
    CHECK(other_number(zigzag, k) == by_row[k - 1]);
    CHECK(other_number(rows, by_row[k - 1]) == k);
  }
  Plug one_row;
  one_row.positions = 10;
  CHECK(other_number(one_row, 3) == 0);
}
