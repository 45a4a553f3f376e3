// SPDX-License-Identifier: MIT
// A housing is a grid of columns x rows. A seating lays the plug's grid on the header's, turned or not, shifted
// or not; the profile decides which of these the plastic allows:
//
//   profile        turned   shift s of a plug with p columns on a header with h
//   Bare           yes      every s that leaves at least one contact on a pin
//   BoxShroud      no       0 <= s <= h - p (a smaller plug in a longer shroud), none when p > h
//   OpenWafer      no       h - p <= s <= 0 (a wider plug on a narrower header), none when p < h
//   FrictionRamp   no       as Bare: the header has no end walls
//   Screw          no       as BoxShroud
//   Circular       no       home only
//   Coded          no       home only
//
// A key that was removed, or of which that is not known, lets the plug turn. That short plugs sit in longer
// shrouds follows from the housing widths (maker's drawings as quoted); it was not tried on every family.
// Tested in tests/unit/fit/seating_test.cpp.
#include "fit/seating.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <tuple>

#include "base/format.h"

namespace plugward {
namespace {

struct Grid {
  int columns = 0;
  int rows = 1;
};

Grid grid_of(int positions, int rows) { return {positions / rows, rows}; }

const Family& family_of(const std::string& id, const Catalogue& catalogue) {
  const Family* family = catalogue.find(id);
  assert(family != nullptr);
  return *family;
}

/// A caliper over two or three contacts does not tell 2.5 from 2.54 mm.
constexpr double caliper_mm = 0.1;

/// Nothing speaks against a housing that is not told; that it is not told is a doubt of its own.
bool may_be(const Family& unknown, const Family& other) {
  return is_unknown_family(unknown.id) &&
         (!(unknown.pitch.value > 0.0) || !(other.pitch.value > 0.0) ||
          std::abs(unknown.pitch.value - other.pitch.value) < caliper_mm);
}

bool made_for_each_other(const Family& a, const Family& b) {
  if (may_be(a, b) || may_be(b, a)) return true;
  const auto lists = [](const Family& one, const Family& other) {
    return std::find(one.mates.begin(), one.mates.end(), other.id) != one.mates.end();
  };
  return a.id == b.id || lists(a, b) || lists(b, a);
}

std::string seating_words(const Seating& seating, int header_positions) {
  std::vector<std::string> parts;
  if (seating.turned) parts.emplace_back(tr("turned by 180 degrees"));
  if (seating.shift != 0) {
    parts.push_back(format("shifted by {} towards pin {}", std::abs(seating.shift),
                           seating.shift > 0 ? header_positions : 1));
  }
  if (seating.row_shift != 0) {
    parts.push_back(count_of(std::abs(seating.row_shift), "{} row off", "{} rows off", std::abs(seating.row_shift)));
  }
  return parts.empty() ? tr("home") : format("{}", join(parts, ", "));
}

Seating lay(const Plug& plug, int header_index, const Header& header, bool turned, int shift, int row_shift) {
  const Grid p = grid_of(plug.positions, plug.rows);
  Seating seating;
  seating.header = header_index;
  seating.turned = turned;
  seating.shift = shift;
  seating.row_shift = row_shift;
  const bool moved = shift != 0 || row_shift != 0;
  seating.kind = turned ? (moved ? SeatingKind::TurnedAndShifted : SeatingKind::Turned)
                        : (moved ? SeatingKind::Shifted : SeatingKind::Home);
  seating.pin_of_cavity.reserve(static_cast<std::size_t>(plug.positions));
  for (int cavity = 1; cavity <= plug.positions; ++cavity) {
    Place place = place_of(cavity, plug.positions, plug.rows, plug.numbering);
    if (turned) place = {p.columns - 1 - place.column, p.rows - 1 - place.row};
    place = {place.column + shift, place.row + row_shift};
    const int pin = number_at(place, header.positions, header.rows, header.numbering);
    seating.pin_of_cavity.push_back(pin);
    if (pin == 0 && plug.lead_in(cavity) != nullptr) seating.overhanging = true;
  }
  seating.words = seating_words(seating, header.positions);
  return seating;
}

bool touches_a_pin(const Seating& seating) {
  return std::any_of(seating.pin_of_cavity.begin(), seating.pin_of_cavity.end(), [](int pin) { return pin != 0; });
}

struct Box {
  double left = 0, bottom = 0, right = 0, top = 0;
};

/// The area of the header's pins on the board, half a pitch around them.
Box area_of(const Header& header, const Family& family) {
  const Grid grid = grid_of(header.positions, header.rows);
  const double pitch = family.pitch.value;
  const double row_pitch = family.row_pitch.value > 0 ? family.row_pitch.value : pitch;
  const double along = (grid.columns - 1) * pitch;
  const double across = (grid.rows - 1) * row_pitch;
  double dx = along;
  double dy = across;
  switch (header.rotation) {
    case 90: dx = -across, dy = along; break;
    case 180: dx = -along, dy = -across; break;
    case 270: dx = across, dy = -along; break;
    default: break;
  }
  const double half = pitch / 2;
  const double x = header.x.value;
  const double y = header.y.value;
  return {std::min(x, x + dx) - half, std::min(y, y + dy) - half, std::max(x, x + dx) + half,
          std::max(y, y + dy) + half};
}

double gap(const Box& a, const Box& b) {
  const double dx = std::max({0.0, a.left - b.right, b.left - a.right});
  const double dy = std::max({0.0, a.bottom - b.top, b.bottom - a.top});
  return std::hypot(dx, dy);
}

}  // namespace

Place place_of(int number, int positions, int rows, Numbering numbering) {
  const int index = number - 1;
  const int columns = positions / rows;
  if (numbering == Numbering::ByRow) return {index % columns, index / columns};
  return {index / rows, index % rows};
}

int number_at(Place place, int positions, int rows, Numbering numbering) {
  const int columns = positions / rows;
  if (place.column < 0 || place.column >= columns || place.row < 0 || place.row >= rows) return 0;
  if (numbering == Numbering::ByRow) return place.row * columns + place.column + 1;
  return place.column * rows + place.row + 1;
}

Profile mated_profile(const Plug& plug, const Header& header, const Catalogue& catalogue) {
  const Profile of_plug = family_of(plug.family, catalogue).profile;
  const Profile of_header = family_of(header.family, catalogue).profile;
  if (is_unknown_family(plug.family)) return of_header;
  if (is_unknown_family(header.family)) return of_plug;
  return of_plug == Profile::Bare ? Profile::Bare : of_header;
}

Mate mate(const Plug& plug, const Header& header, const Catalogue& catalogue) {
  const Family& mine = family_of(plug.family, catalogue);
  const Family& theirs = family_of(header.family, catalogue);
  const Grid p = grid_of(plug.positions, plug.rows);
  const Grid h = grid_of(header.positions, header.rows);
  Mate result;
  if (!made_for_each_other(mine, theirs)) {
    const double difference = std::abs(mine.pitch.value - theirs.pitch.value);
    if (difference < 0.005) {
      result.kind = MateKind::OtherFamily;
      result.words = format("plug '{}' is of family '{}', header '{}' of '{}': same pitch of {}, other housing",
                            plug.id, mine.id, header.id, theirs.id, to_text(mine.pitch));
      return result;
    }
    const int count = std::min(p.columns, h.columns);
    result.kind = MateKind::OtherPitch;
    result.end_error = Millimetres((count - 1) * difference);
    result.words = format(
        "plug '{}' has a pitch of {} ('{}'), header '{}' one of {} ('{}'): {} off at position {} when the first "
        "contacts are aligned",
        plug.id, to_text(mine.pitch), mine.id, header.id, to_text(theirs.pitch), theirs.id,
        to_text(*result.end_error), count);
    return result;
  }
  const auto counts = format("plug '{}' has {} positions, header '{}' has {}", plug.id, plug.positions, header.id,
                             header.positions);
  if (p.rows != h.rows) {
    result.kind = MateKind::OtherRows;
    result.words = count_of(p.rows, "plug '{}' has {} row, header '{}' has {}", "plug '{}' has {} rows, header '{}' has {}", plug.id, p.rows,
                          header.id, h.rows);
    return result;
  }
  if (p.columns == h.columns) return result;
  const Profile profile = mated_profile(plug, header, catalogue);
  const bool walled = profile == Profile::BoxShroud || profile == Profile::Screw || enters_one_way(profile);
  if (walled && p.columns > h.columns) {
    result.kind = MateKind::TooWide;
    result.words = counts + tr(": it does not enter the shroud");
  } else if ((profile == Profile::OpenWafer || enters_one_way(profile)) && p.columns < h.columns) {
    result.kind = MateKind::TooNarrow;
    result.words = counts + tr(": its guides do not go over the longer header");
  } else {
    result.kind = MateKind::OtherPositions;
    result.words = counts + tr(": it can sit in more than one place");
  }
  return result;
}

Seating home_seating(const Plug& plug, int header, const Board& board) {
  return lay(plug, header, board.headers[static_cast<std::size_t>(header)], false, 0, 0);
}

std::vector<Seating> seatings(const Plug& plug, int header_index, const Board& board, const Catalogue& catalogue) {
  const Header& header = board.headers[static_cast<std::size_t>(header_index)];
  if (!mate(plug, header, catalogue).goes_on()) return {};
  const Grid p = grid_of(plug.positions, plug.rows);
  const Grid h = grid_of(header.positions, header.rows);
  const Profile profile = mated_profile(plug, header, catalogue);
  const bool keyed = plug.key == KeyState::Intact && header.key == KeyState::Intact;

  int least = 0;
  int most = 0;
  int rows_off = 0;
  switch (profile) {
    case Profile::Bare:
    case Profile::FrictionRamp:
      least = 1 - p.columns;
      most = h.columns - 1;
      rows_off = profile == Profile::Bare ? h.rows - 1 : 0;
      break;
    case Profile::BoxShroud:
    case Profile::Screw: most = h.columns - p.columns; break;
    case Profile::OpenWafer: least = h.columns - p.columns; break;
    case Profile::Circular:
    case Profile::Coded: break;
  }
  std::vector<Seating> all;
  for (const bool turned : {false, true}) {
    if (turned && keyed && profile != Profile::Bare) continue;
    if (turned && enters_one_way(profile)) continue;
    for (int row = -rows_off; row <= rows_off; ++row) {
      for (int shift = least; shift <= most; ++shift) {
        Seating seating = lay(plug, header_index, header, turned, shift, row);
        if (touches_a_pin(seating)) all.push_back(std::move(seating));
      }
    }
  }
  const auto effort = [](const Seating& s) {
    return std::tuple(std::abs(s.shift) + 2 * std::abs(s.row_shift), s.turned, s.row_shift, s.shift < 0);
  };
  std::stable_sort(all.begin(), all.end(), [&](const Seating& a, const Seating& b) { return effort(a) < effort(b); });
  // Turning a plug of one position, or one that is its own mirror, is no other seating.
  std::vector<Seating> distinct;
  for (Seating& seating : all) {
    const bool seen = std::any_of(distinct.begin(), distinct.end(),
                                  [&](const Seating& s) { return s.pin_of_cavity == seating.pin_of_cavity; });
    if (!seen) distinct.push_back(std::move(seating));
  }
  return distinct;
}

std::vector<Seating> neighbour_seatings(const Plug& plug, int header_index, const Board& board,
                                        const Catalogue& catalogue, Millimetres reach) {
  const Header& intended = board.headers[static_cast<std::size_t>(header_index)];
  const Box here = area_of(intended, family_of(intended.family, catalogue));
  std::vector<Seating> found;
  for (std::size_t i = 0; i < board.headers.size(); ++i) {
    const Header& other = board.headers[i];
    if (static_cast<int>(i) == header_index || other.underside != intended.underside) continue;
    if (!mate(plug, other, catalogue).goes_on()) continue;
    if (gap(here, area_of(other, family_of(other.family, catalogue))) > reach.value) continue;
    Seating seating = lay(plug, static_cast<int>(i), other, false, 0, 0);
    seating.kind = SeatingKind::Neighbour;
    seating.words = other.label.empty() ? format("on the neighbour '{}'", other.id)
                                        : format("on the neighbour '{}' ({})", other.id, other.label);
    found.push_back(std::move(seating));
  }
  return found;
}

}  // namespace plugward
