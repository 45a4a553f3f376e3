// SPDX-License-Identifier: MIT
// What a picture says in words about pins, leads and steps.
#pragma once

#include <string>
#include <vector>

#include "plan/repin.h"

namespace plugward {

/// {"supply 5V", "4.75..5.25 V"}, {"ground"}, {"servo out", "2.9..3.4 V"}, {"not known"} ...
std::vector<std::string> pin_phrases(const Pin&, const Fitting&);

/// {"G", "ground"}, {"P", "servo in"}, {"goes to: not known"} ...
std::vector<std::string> lead_phrases(const Lead&, const Harness&);

/// "BN (G)", "RD (V)", "? (not known)": a lead in running text.
std::string lead_name(const Lead&, const Harness&);

/// "move RD (V) from cavity 2 to cavity 1", "take BN (G) out of cavity 1; hold it beside the housing" ...
std::string step_words(const Step&, const Plug&, const Harness&);

/// "J9", or "J9 PROBE" when it has another label than its id.
std::string header_name(const Header&);

/// "plug probe/control: Kite bed probe": its label and id, and the devices at its far end.
std::string plug_title(const Harness&, const Plug&);

std::string view_words(bool wire_side);

}  // namespace plugward
