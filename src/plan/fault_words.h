// SPDX-License-Identifier: MIT
// Internal. A wiring error in words: what is wrong, how it comes about, what to do.
#pragma once

#include <string>

#include "plan/machine_fault.h"

namespace plugward {

/// "the WH lead in cavity 1 of 'limit-x/limit' (on J5.1) carries nothing: ..."; names both ends.
std::string what_is_wrong(const Fitting& whole, const MachineFault&);
std::string how_it_comes(const Fitting& whole, const MachineFault&);
std::string how_to_cure(const Fitting& whole, const MachineFault&);

/// "J5 (LIMIT X)".
std::string header_words(const Fitting&, int header);
/// "J5.1"; "ground" for no header.
std::string pin_words(const Fitting&, PinRef);
/// "WH".
std::string colour_words(const Lead&);
/// How a plug sits under an error: "home on J5 (LIMIT X)", "turned by 180 degrees on J5 (LIMIT X)".
std::string seat_words(const Fitting& whole, int plug, const MachineFault&);

}  // namespace plugward
