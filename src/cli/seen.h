// SPDX-License-Identifier: MIT
// What a person really sees in a housing, put in the place of what the file says.
//
//   rearrange_as_seen(harness, "control", "BN,RD,OG")   cavity 1 brown, 2 red, 3 orange
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "model/harness.h"
#include "quantity/quantity.h"

namespace plugward {

struct SeenResult {
  Harness harness;
  std::vector<std::string> notes;  ///< which leads lost or changed what is known of them
};

/// `colours`: one entry a cavity, cavity 1 first, separated by commas; "-" an empty cavity, "?" a lead whose
/// colour cannot be told. A colour that the plug's file has once and the list once is that lead, moved. Leads
/// that colour cannot tell apart keep only what they share; where they go becomes unknown, unless the device
/// does not mind which is which (both to one terminal, or the two ends of a switch, heater or sensor). A
/// colour that the file does not have is a lead of which nothing else is known. Leads not seen are gone.
/// A Fault has the whole message: unknown plug, wrong count, not a colour.
Parsed<SeenResult> rearrange_as_seen(const Harness&, const std::string& plug, std::string_view colours);

}  // namespace plugward
