// SPDX-License-Identifier: MIT
#include "draw/grid.h"

#include <algorithm>
#include <cassert>

namespace plugward {
namespace {

Place place(const Grid& grid, int number) {
  assert(number >= 1 && number <= grid.positions);
  return place_of(number, grid.positions, grid.rows, grid.numbering);
}

int column_from_left(const Grid& grid, int number) {
  const int column = place(grid, number).column;
  return grid.view == View::MatingFace ? drawn_columns(grid) - 1 - column : column;
}

}  // namespace

int columns(const Grid& grid) {
  return (grid.positions + grid.rows - 1) / grid.rows;
}

int drawn_columns(const Grid& grid) {
  return grid.shown_columns > 0 ? std::min(grid.shown_columns, columns(grid)) : columns(grid);
}

bool shown(const Grid& grid, int number) {
  return number >= 1 && number <= grid.positions && place(grid, number).column < drawn_columns(grid);
}

Point centre(const Grid& grid, int number) {
  return {grid.origin.x + column_from_left(grid, number) * grid.pitch,
          grid.origin.y - place(grid, number).row * grid.row_pitch};
}

Extent extent(const Grid& grid) {
  return {grid.origin.x, grid.origin.y - (grid.rows - 1) * grid.row_pitch,
          grid.origin.x + (drawn_columns(grid) - 1) * grid.pitch, grid.origin.y};
}

int label_slot(const Grid& grid, int number) {
  const int row = place(grid, number).row;
  return column_from_left(grid, number) * grid.rows +
         (grid.view == View::MatingFace ? grid.rows - 1 - row : row);
}

int label_slots(const Grid& grid) {
  return drawn_columns(grid) * grid.rows;
}

int side_step(const Grid& grid, int number, bool up) {
  if (grid.rows == 1) return 0;
  const int row = place(grid, number).row;
  const bool faces_labels = up ? row == grid.rows - 1 : row == 0;
  if (faces_labels) return 0;
  // The lower row's label stands before the upper row's, so its lead keeps to that side.
  const int lower = grid.view == View::MatingFace ? 1 : -1;
  return row == 0 ? lower : -lower;
}

}  // namespace plugward
