// SPDX-License-Identifier: MIT
// The look of every picture in one place: inks, line widths and type sizes. Inks only support what shapes,
// letters and words already say; a picture printed in grey loses nothing.
#pragma once

#include "draw/scene.h"

namespace plugward::style {

inline constexpr Ink text = 0x1a1a1a;
inline constexpr Ink quiet = 0x5a5a5a;  ///< captions, leader lines
inline constexpr Ink outline = 0x2b2b2b;
inline constexpr Ink paper = 0xffffff;
inline constexpr Ink housing = 0xebe7dc;  ///< moulded part
inline constexpr Ink shroud = 0xd5dae0;   ///< header body
inline constexpr Ink cavity = 0xfbfaf6;
inline constexpr Ink contact = 0x8f8a7c;
inline constexpr Ink pin = 0xd8b64a;
inline constexpr Ink board = 0xe2ede3;
inline constexpr Ink board_edge = 0x55775b;
inline constexpr Ink move = 0x174a7c;
inline constexpr Ink panel = 0xf4f3ef;

inline constexpr double fine = 0.25;  ///< mm
inline constexpr double line = 0.4;
inline constexpr double bold_line = 0.7;

inline constexpr double small_type = 9;  ///< points; nothing is smaller
inline constexpr double caption_type = 12;
inline constexpr double title_type = 14;

inline constexpr double mm_per_point = 25.4 / 72.0;
/// Baseline to baseline, mm.
inline constexpr double line_height(double points) {
  return 1.25 * points * mm_per_point;
}

}  // namespace plugward::style
