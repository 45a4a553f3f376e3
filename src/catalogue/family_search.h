// SPDX-License-Identifier: MIT
// Families by what people call them: the trade writes "JST-XH" or "XH2.54" where the catalogue says
// 'xh-2.50'.
//
//   families_like(catalogue, "JST-XH")  ==  {"xh-2.50"}
//   families_like(catalogue, "snapwire")  ==  {}
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "catalogue/family.h"

namespace plugward {

/// The ids of the families of which id and title have most in common with `name`, in the order of the
/// catalogue; none when they have nothing in common. Small and capital letters count as the same.
std::vector<std::string> families_like(const Catalogue&, std::string_view name);

}  // namespace plugward
