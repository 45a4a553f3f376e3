// SPDX-License-Identifier: MIT
// How to free and seat the contacts of a family, what to keep in mind while doing so, and with which tools.
#pragma once

#include <string>
#include <vector>

#include "catalogue/family.h"
#include "quantity/gauge.h"

namespace plugward {

/// Can its leads be moved one by one? Not in a ribbon socket; a screw block has no lance and needs none.
bool movable(const Family&);

/// In the order of the hand. The way depends on where the lance sits; when that is not known, both are told.
std::vector<std::string> technique(const Family&);

/// What is needed on the bench.
std::vector<std::string> tools(const Family&);

/// Before anything is touched.
std::vector<std::string> cautions_before();

/// How hard a seated contact may be tugged: at most 80 % of the least crimp strength (NASA-STD-8739.4 p. 70)
/// of the UL 486A class (ETCO test values; TE 114-2157), so 7 N at 28 AWG, 10 N at 26, 17 N at 24, 28 N
/// at 22.
std::string tug_advice(const std::vector<Gauge>&);

/// After the last contact is seated.
std::vector<std::string> checks_after(const std::vector<Gauge>&);

}  // namespace plugward
