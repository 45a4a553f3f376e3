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
  Home,       ///< cavity 1 on pin 1
  Turned,     ///< by 180 degrees, in place
  Shifted,    ///< along the row or across the rows
  TurnedAndShifted,
  Neighbour   ///< home on another header
};

struct Seating {
  SeatingKind kind = SeatingKind::Home;
  int header = 0;     ///< index into Board::headers; differs from the intended one for Neighbour
  int shift = 0;      ///< columns along the row, towards higher pin numbers
  int row_shift = 0;  ///< rows
  bool turned = false;
  bool overhanging = false;        ///< some cavities with leads are on no pin
  std::vector<int> pin_of_cavity;  ///< [cavity - 1] -> pin number; 0: on no pin

  /// "home", "turned by 180 degrees", "shifted by 1 towards pin 5", "on 'J10' (FAN1)", ...
  std::string words;
};

/// How well two housings suit each other, apart from what is wired.
enum class MateKind {
  Fits,
  OtherFamily,     ///< same pitch, but housings not made for each other
  OtherPitch,      ///< the pins do not meet the contacts
  TooWide,         ///< more positions than the header's shroud lets in
  TooNarrow,       ///< fewer positions than the header's guides let on
  OtherPositions,  ///< goes on, but the counts differ: home is not the only place
  OtherRows        ///< another number of rows
};

struct Mate {
  MateKind kind = MateKind::Fits;
  std::optional<Millimetres> end_error;  ///< OtherPitch: (N - 1) x difference of pitch, first contacts aligned
  std::string words;                     ///< a whole message; "" when Fits

  bool goes_on() const { return kind == MateKind::Fits || kind == MateKind::OtherPositions; }
};

Mate mate(const Plug&, const Header&, const Catalogue&);

/// What guides this plug on this header: the header's profile, or Bare when either housing has no guide.
/// REQUIRES: both families are in the catalogue.
Profile mated_profile(const Plug&, const Header&, const Catalogue&);

/// All seatings of the plug on this header, home first, then the likely ones first; empty when it does not
/// go on at all. `header` is the index that the seatings carry.
std::vector<Seating> seatings(const Plug&, int header, const Board&, const Catalogue&);

/// Home seatings on the other headers of the board within `reach` (edge to edge) that this plug goes on.
std::vector<Seating> neighbour_seatings(const Plug&, int header, const Board&, const Catalogue&,
                                        Millimetres reach = Millimetres(40.0));

/// The home seating, whether or not the housings suit each other: cavity n meets pin n.
Seating home_seating(const Plug&, int header, const Board&);

/// Where position `number` (from 1) is: column along the row, row, both from 0.
struct Place {
  int column = 0;
  int row = 0;
};
Place place_of(int number, int positions, int rows, Numbering);
/// The inverse of place_of; 0 when the place is outside.
int number_at(Place, int positions, int rows, Numbering);

}  // namespace plugward
