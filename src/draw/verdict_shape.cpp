// SPDX-License-Identifier: MIT
//   MATE     one piece with round ends          REPIN   a block arrow each way
//   ADAPT    two pieces with a tongue between   MEASURE a double outline with pointed ends
//   APART    two halves with a gap, crossed corners
#include "draw/verdict_shape.h"

#include <algorithm>
#include <string>

#include "base/words.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

struct Tint {
  Ink fill, pen;
};

Tint tint(Verdict verdict) {
  switch (verdict) {
    case Verdict::Mate:
      return {0xdff0df, 0x1d5a28};
    case Verdict::Repin:
      return {0xdde9f6, style::move};
    case Verdict::Adapt:
      return {0xf6ecd2, 0x6e4e00};
    case Verdict::Measure:
      return {0xefe6f5, 0x52307a};
    case Verdict::Apart:
      break;
  }
  return {0xf8dedb, 0x8c1c13};
}

std::vector<Shape> outline(Verdict verdict, const Box& b, const Tint& t) {
  const double pen = std::min(style::bold_line, 0.07 * (b.bottom - b.top));
  const Look look = outlined(t.fill, t.pen, pen);
  const double w = b.right - b.left, h = b.bottom - b.top, middle = (b.top + b.bottom) / 2;
  switch (verdict) {
    case Verdict::Mate:
      return {rectangle({b.left, b.top}, w, h, look, h / 2)};
    case Verdict::Repin: {
      const double head = h * 0.55, wing = h * 0.14;
      return {polygon({{b.left, middle},
                       {b.left + head, b.top},
                       {b.left + head, b.top + wing},
                       {b.right - head, b.top + wing},
                       {b.right - head, b.top},
                       {b.right, middle},
                       {b.right - head, b.bottom},
                       {b.right - head, b.bottom - wing},
                       {b.left + head, b.bottom - wing},
                       {b.left + head, b.bottom}},
                      look)};
    }
    case Verdict::Adapt: {
      // Two plates, the right one's tongue in the left one's slot, above and below the word.
      const double step = h * 0.22, seam = b.right - h * 0.95;
      return {rectangle({b.left, b.top}, w, h, look),
              polyline({{seam, b.top},
                        {seam, b.top + step},
                        {seam - step, b.top + step},
                        {seam - step, b.bottom - step},
                        {seam, b.bottom - step},
                        {seam, b.bottom}},
                       stroked(t.pen, pen)),
              polyline({{seam + step, middle}, {b.right - step, middle}}, stroked(t.pen, pen)),
              polyline({{(seam + b.right) / 2, middle - step}, {(seam + b.right) / 2, middle + step}},
                       stroked(t.pen, pen))};
    }
    case Verdict::Measure: {
      const double tip = h * 0.5, in = std::min(1.2, 0.14 * h);
      return {polygon({{b.left, middle},
                       {b.left + tip, b.top},
                       {b.right - tip, b.top},
                       {b.right, middle},
                       {b.right - tip, b.bottom},
                       {b.left + tip, b.bottom}},
                      look),
              polygon({{b.left + 1.7 * in, middle},
                       {b.left + tip + 0.5 * in, b.top + in},
                       {b.right - tip - 0.5 * in, b.top + in},
                       {b.right - 1.7 * in, middle},
                       {b.right - tip - 0.5 * in, b.bottom - in},
                       {b.left + tip + 0.5 * in, b.bottom - in}},
                      stroked(t.pen, style::fine))};
    }
    case Verdict::Apart:
      break;
  }
  const double cut = h * 0.3, gap = std::min(1.4, 0.16 * h);
  const double split = b.left + h * 0.8;
  return {
      polygon({{split - gap / 2, b.top},
               {split - gap / 2, b.bottom},
               {b.left + cut, b.bottom},
               {b.left, b.bottom - cut},
               {b.left, b.top + cut},
               {b.left + cut, b.top}},
              look),
      polygon({{split + gap / 2, b.top},
               {b.right - cut, b.top},
               {b.right, b.top + cut},
               {b.right, b.bottom - cut},
               {b.right - cut, b.bottom},
               {split + gap / 2, b.bottom}},
              look),
      polyline({{b.left + cut, b.top + cut}, {split - cut * 0.8, b.bottom - cut}}, stroked(t.pen, 2 * pen)),
      polyline({{b.left + cut, b.bottom - cut}, {split - cut * 0.8, b.top + cut}}, stroked(t.pen, 2 * pen))};
}

/// Middle of the part of the outline that is free for the word.
double word_x(Verdict verdict, const Box& b) {
  const double h = b.bottom - b.top;
  if (verdict == Verdict::Adapt) return (b.left + b.right - h * 1.1) / 2;
  if (verdict == Verdict::Apart) return (b.left + h * 0.8 + b.right) / 2;
  return (b.left + b.right) / 2;
}

}  // namespace

Group verdict_shape(Verdict verdict, const Box& room, const TextMeasure& measure, double points) {
  const Tint t = tint(verdict);
  Group group{tr("verdict"), {}};
  append(group, outline(verdict, room, t));
  const TextMeasure::Size size = measure.measure("MATE", points, true);
  // Capital letters reach to about 0.78 of the ascent of the font family that is used.
  const double baseline = (room.top + room.bottom) / 2 + 0.39 * size.ascent;
  group.add(Words{{word_x(verdict, room), baseline},
                  std::string(to_word(verdict)),
                  points,
                  true,
                  t.pen,
                  Anchor::Middle,
                  0});
  return group;
}

}  // namespace plugward
