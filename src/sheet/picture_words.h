// SPDX-License-Identifier: MIT
// Pictures of a document and what they show in words: one sentence a line.
//
//   const Picture p = plug_picture(fitting, 0, plan_of(advice, plug), advice.now.findings);
//   p.id      // "plug-1"
//   p.words   // "Cavity 1: now BN to 'G', then BK to 'V'; meets J9.1, supply 5V.\n..."
#pragma once

#include <map>
#include <string>
#include <vector>

#include "plan/look_alike.h"
#include "plan/repin.h"
#include "sheet/document.h"

namespace plugward::sheet {

/// The moves of a plug; nullptr: none are planned for it.
const PlugPlan* plan_of(const Advice&, int plug);

/// One plug now and then over its header. `moves`: nullptr when nothing moves. Findings that touch a cavity
/// or its pin are told there.
Picture plug_picture(const Fitting&, int placement, const PlugPlan* moves, const std::vector<Finding>&);
/// "plug-3": the picture of this placement.
std::string plug_picture_id(int placement);

/// The board with its headers, who sits on which, and what may be mistaken for what.
Picture board_picture(const Fitting&, const std::vector<LookAlike>& = {});
Picture old_board_picture(const Fitting& machine);

/// Housings and headers at 1:1. REQUIRES: there is a placement.
Picture true_size_picture(const Fitting&);

}  // namespace plugward::sheet
