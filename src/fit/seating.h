// SPDX-License-Identifier: MIT
// Every way a plug can physically sit on a header.
//
//   for (const Seating& s : seatings(plug, header, catalogue)) ... s.pin_of_cavity[k - 1]
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/fitting.h"

namespace plugward {

enum class SeatingKind {
  Home,      ///< cavity 1 on pin 1
  Turned,    ///< by 180 degrees, all contacts on pins
  Shifted,   ///< along the row, all contacts on pins or some hanging over
  TurnedAndShifted,
  RowShifted,  ///< across the rows of a two-row header
  Neighbour  ///< home on another header
};

struct Seating {
  SeatingKind kind = SeatingKind::Home;
  int header = 0;   ///< index into Board::headers; differs from the intended one for Neighbour
  int shift = 0;    ///< positions along the row, towards higher pin numbers
  int row_shift = 0;
  bool turned = false;
  bool forced = false;             ///< only with force or after the key was cut
  std::vector<int> pin_of_cavity;  ///< [cavity - 1] -> pin number; 0: on no pin

  /// "home", "turned by 180 degrees", "shifted by 1 towards pin 5", "on the neighbour J10", ...
  std::string words;
};

/// How well two housings suit each other, apart from what is wired.
enum class MateKind {
  Fits,
  OtherFamily,     ///< different housings, same pitch: not made for each other
  OtherPitch,      ///< the pins do not meet the contacts
  TooWide,         ///< more positions than the header's shroud has
  OtherPositions,  ///< fewer positions than the header, or more on an open one: fits, but not alone
  OtherRows
};

struct Mate {
  MateKind kind = MateKind::Fits;
  std::optional<Millimetres> end_error;  ///< OtherPitch: (N - 1) x difference, first contacts aligned
  std::string words;                     ///< complete sentence part for a message; "" when Fits
};

Mate mate(const Plug&, const Header&, const Catalogue&);

/// All seatings of the plug on this header, home first when it exists; empty when it does not go on at all.
std::vector<Seating> seatings(const Plug&, const Header&, const Catalogue&);

/// Home seatings on the other headers of the board within `reach` (edge to edge), that this plug goes on.
std::vector<Seating> neighbour_seatings(const Plug&, int header, const Board&, const Catalogue&,
                                        Millimetres reach = Millimetres(40.0));

/// Where pin n (from 1) is, in positions: column along the row and row. The inverse of position_number.
struct Place { int column = 0; int row = 0; };
Place place_of(int number, int positions, int rows, Numbering);
int number_at(Place, int positions, int rows, Numbering);

}  // namespace plugward
