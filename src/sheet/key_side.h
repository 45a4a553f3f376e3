// SPDX-License-Identifier: MIT
// On which long side of a housing its key or latch is. A key drawn on the wrong side would send the plug on
// turned, so it is drawn only where a source tells the side relative to position 1.
#pragma once

#include <string>

#include "catalogue/family.h"

namespace plugward {

enum class KeySide {
  None,       ///< the family has nothing that guides the plug
  NotStated,  ///< it has, but no source says on which side
  Near,       ///< below when position 1 is at the left, seen from the wire side
  Far         ///< above
};

KeySide key_side(const Family&);

/// What the feature is called: "key", "latch", "ramp", "guide tabs".
std::string key_word(const Family&);

/// Is it at the top of the picture? REQUIRES: Near or Far. Exchanging left and right does not move it.
bool key_on_top(KeySide);

}  // namespace plugward
