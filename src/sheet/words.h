// SPDX-License-Identifier: MIT
// The words that every kind of paper uses for pins, leads, headers and verdicts, so that all say the same.
//
//   header_title(header)              // "J9 (PROBE)"
//   lead_with_terminal(harness, lead) // "RD to 'V'"
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/repin.h"

namespace plugward {

std::string_view meaning(Verdict);  ///< "move contacts first"
std::string_view meaning(Weight);   ///< "can damage or hurt"

/// "J9 (PROBE)", or "J9" when nothing else is printed beside it.
std::string header_title(const Header&);
/// "RD", with its mark where it has one: "RD marked 'V'".
std::string lead_name(const Lead&);
/// "RD to 'V'", "GN, where it goes is not known".
std::string lead_with_terminal(const Harness&, const Lead&);
/// "supply 5V", "output servo", "ground": what stands behind a pin, by its description.
std::string pin_words(const Fitting&, const Pin&);

/// Indices of the harness's plugs that are on no header.
std::vector<int> unplaced_plugs(const Fitting&);
/// [cavity - 1] -> pin number when the plug sits home on its header; 0 where there is none.
std::vector<int> home_pins(const Fitting&, const Placement&);

const Plug& plug_at(const Fitting&, int plug);
const Header& header_at(const Fitting&, int header);

/// What every sheet says about itself.
std::string_view limits_sentence();
std::string_view power_sentence();

}  // namespace plugward
