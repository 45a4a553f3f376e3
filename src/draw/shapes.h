// SPDX-License-Identifier: MIT
// Plain shapes for scenes. All lengths in millimetres.
//
//   group.add(rectangle({10, 10}, 30, 8, {style::paper, Stroke{style::outline, 0.4, {}}}));
#pragma once

#include <vector>

#include "draw/scene.h"

namespace plugward {

struct Look {
  std::optional<Ink> fill;
  std::optional<Stroke> stroke;
};

Look filled(Ink);
Look outlined(Ink fill, Ink stroke, double width);
Look stroked(Ink, double width, std::vector<double> dashes = {});

/// From the top left corner; `radius` rounds the corners.
Shape rectangle(Point corner, double width, double height, Look, double radius = 0);
Shape circle(Point centre, double radius, Look);
Shape polygon(const std::vector<Point>&, Look);
Shape polyline(const std::vector<Point>&, Look);
/// From a to b, leaving and arriving vertically.
Shape swing(Point a, Point b, Look);
/// Filled triangle with its tip at `tip`, pointing along `direction` (any length but 0).
Shape arrow_head(Point tip, Point direction, double length, Ink);
/// An open eye, `width` wide, about its centre: states from where something is seen.
std::vector<Shape> eye(Point centre, double width);
/// A tick box with its upper left corner at `corner`.
Shape tick_box(Point corner, double side);

void append(Group&, std::vector<Shape>);

/// Moves everything in the group, mm.
void shift(Group&, double dx, double dy);
/// The scene turned by 90 degrees anticlockwise: its left edge is at the foot then.
Scene turned(Scene);

/// Point at t in [0, 1] on the last cubic of `shape`. REQUIRES: the path ends with a 'C' after one command or
/// more.
Point point_on_curve(const Shape&, double t);
/// Where the path begins and ends. REQUIRES: at least one 'M', no 'Z'.
Point path_start(const Shape&);
Point path_end(const Shape&);

}  // namespace plugward
