// SPDX-License-Identifier: MIT
// The words beside each position: fanned out from the pitch of the housing to columns that text fits in;
// upright in narrow columns. By rule, never by eye: see choose_columns().
#pragma once

#include <string>
#include <vector>

#include "draw/grid.h"
#include "draw/text_fit.h"

namespace plugward {

/// What stands at one position: short phrases, the most important first.
struct Label {
  std::vector<std::string> phrases;
};

/// Columns for labels, the same for every frame of a picture.
struct LabelColumns {
  double centre = 0;  ///< x of the middle of all columns
  double width = 0;   ///< of one column
  int count = 1;
  bool turned = false;  ///< text runs upwards
};

/// As wide as they may be within `room`, but no wider than text needs; text is turned when a word does not
/// fit across.
LabelColumns choose_columns(int count, double least, double room, const std::vector<Label>&,
                            const TextMeasure&);

double slot_x(const LabelColumns&, int slot);

/// A label as it will be set, and how tall it stands.
struct SetLabel {
  std::vector<std::string> lines;
  double height = 0;
};
/// `tallest`: labels are shortened to it.
SetLabel set_label(const Label&, const LabelColumns&, double tallest, const TextMeasure&);

/// Sets it with its end that faces the lead at y: above y when `up`, else below.
void add_label(Group&, const SetLabel&, const LabelColumns&, int slot, double y, bool up, const TextMeasure&);

}  // namespace plugward
