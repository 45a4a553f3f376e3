// SPDX-License-Identifier: MIT
// A scene as SVG text. Letters arrive as outlines (so that every viewer shows the same picture); the words
// themselves are kept as invisible <text>, which can be searched and copied, and in <title> and <desc>.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "draw/scene.h"

namespace plugward {

/// One letter: which outline, and where its origin is, in mm from the start of the text on its baseline.
struct Glyph {
  std::string outline;  ///< path data in mm, y downwards
  Point at;
};

/// Letters of a text as outlines, and how wide they are together.
struct GlyphRun {
  std::vector<Glyph> glyphs;
  double width = 0;
};

using GlyphSource = std::function<GlyphRun(const std::string& text, double points, bool bold)>;

/// `prefix` begins every id.
std::string write_svg(const Scene&, const std::string& prefix, const GlyphSource&);

/// "12.3", at most three decimals, no exponent, no negative zero.
std::string svg_number(double);

}  // namespace plugward
