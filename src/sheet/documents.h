// SPDX-License-Identifier: MIT
// What stands on the sheet of a check, a placement or a swap.
//
//   const Document d = check_document(fitting, advise(fitting, {.budget = true}), {.sources = &sources});
//   sheet_text(d)                                          // report/sheet_text.h
//
// A picture names its plug by an index into the placements of the fitting that the pictures are made of: the
// given one of a check; placed_fitting() of a placement; SwapPlan::before_moves of a swap.
#pragma once

#include <string>

#include "plan/swap_papers.h"
#include "sheet/document.h"

namespace plugward::sheet {

/// What the files do not say.
struct SheetFacts {
  std::string machine{};             ///< as the user calls it; "": the sheet leaves a blank
  std::string date{};                ///< ISO 8601; "": the sheet leaves a blank
  const Sources* sources = nullptr;  ///< findings name their places in these; nullptr: they name none
  bool standing = false;             ///< of a check: the plugs sit on their headers already
  std::string command{};             ///< what to call when the work is done; "" for nothing
};

/// REQUIRES: the advice is on this fitting.
Document check_document(const Fitting&, const Advice&, const SheetFacts& = {});
/// The fitting is what place() was given.
Document placement_document(const Fitting&, const PlacementPlan&, const SheetFacts& = {});
Document swap_document(const SwapPapers&, const SheetFacts& = {});

/// The fitting with the plugs where this placement puts them.
Fitting placed_fitting(const Fitting&, const PlacedHarness&);

}  // namespace plugward::sheet
