// SPDX-License-Identifier: MIT
// Tested in tests/unit/draw/grid_test.cpp.
#include "sheet/key_side.h"

#include "base/words.h"

namespace plugward {

KeySide key_side(const Family& family) {
  if (family.profile == Profile::Bare || enters_one_way(family.profile)) return KeySide::None;
  struct Row {
    std::string_view id;
    KeySide side;
  };
  static constexpr Row rows[] = {
      // Slot and bump on the side of pin 1 (IDC construction page; public footprints put the slot at the odd
      // row).
      {"box-2.54", KeySide::Near},
      // Looking into the mating face, guide tabs down, pin 1 is leftmost (collector's notes).
      {"xh-2.50", KeySide::Far},
      // Pin 1 left, looking at the wire side, clip up (collector's notes).
      {"vh-3.96", KeySide::Far},
      // Tab up and pins away from you: pin 1 left (collector's notes).
      {"sm-2.50", KeySide::Far},
  };
  for (const Row& row : rows) {
    if (family.id == row.id) return row.side;
  }
  return KeySide::NotStated;
}

std::string key_word(const Family& family) {
  if (family.latch && family.latch->value) return tr("latch");
  if (family.profile == Profile::FrictionRamp) return tr("ramp");
  if (family.id == "xh-2.50") return tr("guide tabs");
  return tr("key");
}

bool key_on_top(KeySide side) {
  return side == KeySide::Far;
}

}  // namespace plugward
