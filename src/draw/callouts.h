// SPDX-License-Identifier: MIT
// The plugs of a placement in two columns beside the board, each with a straight line to its header. The
// lines do not cross.
//
//   const CalloutPlan plan = plan_callouts(anchors, left_edge, right_edge, top, bottom);
//   plan.slots[i].side, plan.slots[i].middle      // of placement i
#pragma once

#include <string>
#include <vector>

#include "draw/text_fit.h"
#include "judge/judgement.h"

namespace plugward {

/// What stands at one callout.
struct CalloutText {
  std::string header;  ///< "J9 PROBE"
  std::string plug;    ///< "kite-probe/control"
  std::string work;    ///< "move 2 contacts"
  std::string notes;   ///< "like J10, J23; underside"; "" when there is nothing
  Verdict verdict{};
};

struct CalloutSlot {
  bool right = false;  ///< in the column right of the board
  double middle = -1;  ///< mm, y; below 0: there was no room
  int tag = 0;         ///< number of the plug; not of plan_callouts()
};

struct CalloutPlan {
  int lines = 3;  ///< 3: header, plug, notes; 2: the notes are left out; 1: the header only
  std::vector<CalloutSlot> slots;
};

/// `anchors`: middles of the headers; `left` and `right`: where lines begin. Callouts are as full as their
/// number allows. Some may find no room even with one line.
CalloutPlan plan_callouts(const std::vector<Point>& anchors, double left, double right, double top,
                          double bottom);

/// Fills the width of `room`; lines of text about its middle height. Returns whether all words stand whole.
bool draw_callout(std::vector<Group>&, const CalloutText&, const CalloutSlot&, int lines, const Box& room,
                  const TextMeasure&);

}  // namespace plugward
