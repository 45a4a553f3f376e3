// SPDX-License-Identifier: MIT
// Where the supply's leads land on a board. Harnesses do not describe them, and the wrong way round they
// destroy it.
#pragma once

#include <optional>
#include <string>

#include "model/board.h"

namespace plugward {

/// The header of use "supply" with a supply pin; -1: none is described.
int power_header(const Board&);

/// "plus on pin 1 (+), minus on pin 2 (-)". REQUIRES: header is power_header(), not -1.
std::string landing_words(const Board&, int header);

/// "on the old board plus was on pin 2 of J1, here it is on pin 1"; "" when plus has the same pin, or one of
/// the boards has no such header. `was`: "on the old board plus was", as it begins.
std::string landing_caution(const Board& before, const Board& now, const std::string& was);

}  // namespace plugward
