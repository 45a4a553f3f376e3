// SPDX-License-Identifier: MIT
// What a check and a placement have in common: an advice on paper.
#pragma once

#include "sheet/documents.h"
#include "sheet/numbering.h"

namespace plugward::sheet {

/// Title block and limits.
void begin(Document&, const Fitting&, const SheetFacts&);
/// All sections that an advice fills, from the pictures of the plugs to the parts.
void add_advice(Document&, const Fitting&, const Advice&, const SheetFacts&, Numbering&);
/// The fitting once the advice was followed; as it is when the advice has no plan. Points into the advice.
Fitting followed(const Fitting&, const Advice&);

}  // namespace plugward::sheet
