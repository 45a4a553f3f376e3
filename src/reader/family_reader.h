// SPDX-License-Identifier: MIT
// The meaning of a file of connector families. The format is families.xsd beside the built-in ones.
#pragma once

#include <vector>

#include "catalogue/family.h"
#include "reader/reading.h"

namespace plugward {

/// REQUIRES: the root is named "families". What is bad is reported; the family then lacks it. Adds nothing to
/// the catalogue: the caller does, when there was no error.
std::vector<Family> read_families(const Reading&);

}  // namespace plugward
