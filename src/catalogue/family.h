// SPDX-License-Identifier: MIT
// Connector families: what is published about a series of housings and headers, each figure with its
// source and how sure it is. What is not known stays empty and is printed as "not known".
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diag/source.h"
#include "quantity/gauge.h"
#include "quantity/quantity.h"

namespace plugward {

/// Where a figure comes from. Figures from memory are not shipped as ratings.
enum class Certainty {
  Maker,      ///< the manufacturer's own text was read
  Quoted,     ///< a third party quotes the manufacturer's document
  Footprint,  ///< geometry in public footprint scripts that cite the drawing
  Secondary,  ///< a secondary page: seller, wiki, notes
  Derived,    ///< arithmetic on other figures
  Memory,     ///< recalled, no source seen: shown as such, proves nothing
  User        ///< stated in a user's own family file without a certainty
};

/// A published figure with its source.
template <class T>
struct Cited {
  T value{};
  Certainty certainty{};
  std::string source;
};

/// Current one contact may carry with a wire of this size. Not interpolated to other sizes.
struct Rating {
  Amps amps{};
  Gauge gauge{};          ///< area 0: the publication names none
  std::string condition;  ///< "shrouded header only", "" when none
  int circuits = 0;       ///< holds in housings of at most this many positions; 0: of any number
};

/// What keeps the plug in place, which decides the possible seatings (facts of each family's housings).
enum class Profile {
  Bare,          ///< open pins, nothing guides the plug: every shift, both ways round
  BoxShroud,     ///< header walled on four sides with a key: not turned; a smaller plug may sit shifted
  OpenWafer,     ///< low open header, guides on the plug: a wider plug may sit on a narrower header
  FrictionRamp,  ///< ramp along one side: not turned on a ramped header; shifts only overhanging
  Screw,         ///< pluggable screw block
  Circular,      ///< coded circular connector
  Coded          ///< any other shell that enters one way only and is drawn by nobody here: D shell, modular jack
};

/// Home is the only seating, and the contacts stand in no row of one pitch.
constexpr bool enters_one_way(Profile profile) {
  return profile == Profile::Circular || profile == Profile::Coded;
}

enum class Lance { Contact, Housing, None };

struct Family {
  std::string id;     ///< "pin-2.54"
  std::string title;  ///< "2.54 mm square pins, unkeyed crimp housing"
  Span span{};        ///< where a user's file declares it; unknown for the built-in ones
  Millimetres pitch{};      ///< 0 for profiles that enter one way only
  Millimetres row_pitch{};  ///< 0 for one row
  int rows = 1;             ///< most rows made
  int fewest_positions = 1;
  int most_positions = 100;
  Profile profile = Profile::Bare;
  std::vector<Cited<Rating>> ratings;
  std::optional<Cited<Volts>> voltage;
  std::optional<Cited<Range<SquareMillimetres>>> wire;  ///< conductor sizes its contacts take
  /// Outer width = (positions per row - 1) x pitch + this.
  std::optional<Cited<Millimetres>> plug_extra;
  std::optional<Cited<Millimetres>> header_extra;
  std::optional<Cited<Millimetres>> plug_depth;
  std::optional<Cited<Millimetres>> header_depth;
  std::optional<Cited<bool>> latch;
  std::optional<Cited<Lance>> lance;
  std::optional<Cited<std::string>> first_cavity;  ///< how cavity 1 is marked, one sentence
  std::optional<Cited<std::string>> release;       ///< tool or technique, one sentence
  std::optional<Cited<std::string>> reuse;         ///< how often a contact may be moved
  std::vector<std::string> mates;                  ///< other families that are published to mate with this one
  std::vector<Cited<std::string>> cautions;        ///< traps worth printing

  /// The published rating at exactly this gauge (AWG number, or area within 2 %), or nothing. Of several it is the
  /// smallest that holds in a housing of this many positions; 0: the smallest of all.
  const Cited<Rating>* rating_at(const Gauge&, int positions = 0) const;
  /// The smallest published rating, whatever its gauge; nothing when none is published.
  const Cited<Rating>* smallest_rating() const;
};

/// A housing of which nobody has told yet what it is: family="unknown", or "unknown-2.50" when its pitch was
/// measured. Such families are found like any other and not listed; there is one for each pitch of the catalogue.
bool is_unknown_family(std::string_view id);
/// "unknown-2.50"
std::string unknown_family(Millimetres pitch);

class Catalogue {
 public:
  /// A later family of the same id replaces an earlier one (user files over built-in ones).
  void add(Family);
  const Family* find(std::string_view id) const;  ///< one of these, or "unknown"
  const std::vector<Family>& all() const { return families_; }
  std::vector<std::string> ids() const;

 private:
  std::vector<Family> families_;
  std::vector<Family> unknown_;  ///< in the order in which their pitches came
};

/// families.xml as built into the program; read by reader/family_reader.h like a user's file.
std::string_view builtin_families();

std::string_view to_word(Certainty);  ///< "maker", "quoted", ...; the words of the XML attribute
std::string_view to_word(Profile);    ///< "bare", "box-shroud", "open-wafer", "friction-ramp", "screw", "circular",
                                        ///< "coded"
std::string_view to_word(Lance);      ///< "contact", "housing", "none"

}  // namespace plugward
