// SPDX-License-Identifier: MIT
// Insulated leads: in their colours, striped when there are two, outlined, and lettered with the code on a
// tag.
#pragma once

#include "draw/housing.h"
#include "draw/labels.h"
#include "quantity/colour.h"

namespace plugward {

/// Heights of the zone between housing and labels.
struct LeadZone {
  double fan = 8;  ///< where leads spread to the columns of the labels
  double tag = 6;  ///< where they run straight and carry their tag
  double height() const { return fan + tag + 3.0; }
};
/// `turned`: tags stand upright; `codes`: the codes to be lettered.
LeadZone lead_zone(const Grid&, const LabelColumns&, const std::vector<std::string>& codes,
                   const TextMeasure&);

/// An insulated wire along a path.
void add_wire(Group&, const Shape& path, const WireColour&, double width);
/// The code in a tag about `at`, upright when `turned`.
void add_tag(Group&, const std::string& code, Point at, bool turned, const TextMeasure&);

/// The lead from its cavity to the beginning of its label; "NAME lead in cavity 3".
Group draw_lead(const Housing&, int cavity, const WireColour&, const LabelColumns&, const LeadZone&,
                const std::string& name, const TextMeasure&);

/// Where labels begin.
double label_edge(const Housing&, const LeadZone&);

}  // namespace plugward
