// SPDX-License-Identifier: MIT
// Flags for cables: a strip that is folded round the cable at its middle and stuck to itself, so that both
// sides say which plug it is, where it came from, where it goes, and what the housing looks like.
//
//   const auto flags = flags_of(plan);                      // or flags_of(fitting), of a machine as it
//   stands write_file("flags.pdf", render_pages(flag_pages(flags, FlagPaper::A4, *measure), {}));
#pragma once

#include <string>
#include <vector>

#include "draw/scene.h"
#include "plan/swap.h"

namespace plugward {

struct Flag {
  int number = 0;  ///< of the plug in the harness, from 1, as on the tags of a drawn board
  std::string name;                  ///< "motor-x/motor"
  std::string from, to;              ///< header ids; "": on none, or there is no other board
  std::string from_label, to_label;  ///< as printed on the boards; "stays off" without `to`
  std::string pins;                  ///< "4 pins"
  std::string family;                ///< "xh-2.50"
  std::string key;                   ///< "key intact", "key cut off", "key not looked at"
};

/// Of every plug, in the order of the harness.
std::vector<Flag> flags_of(const SwapPlan&);
std::vector<Flag> flags_of(const Fitting&);

enum class FlagPaper {
  Tape,   ///< 12 mm tape: one page a flag, as long as it needs
  A4,     ///< portrait, two columns, cut lines
  Letter  ///< likewise
};

/// Never empty when there are flags. Text is 9 pt or more; what is too long is shortened, the numbers of the
/// headers never.
std::vector<Scene> flag_pages(const std::vector<Flag>&, FlagPaper, const TextMeasure&);

}  // namespace plugward
