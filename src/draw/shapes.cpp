// SPDX-License-Identifier: MIT
#include "draw/shapes.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

#include "draw/style.h"

namespace plugward {
namespace {

/// A quarter circle as one cubic: the handle is this share of the radius (largest error 0.03 %).
constexpr double quarter = 0.5522847498;

Point ending(const Shape::Command& c) {
  return c.op == 'C' ? c.p3 : c.p1;
}

template <class Move>
void move_points(Group& group, const Move& move) {
  for (auto& item : group.items) {
    if (Words* words = std::get_if<Words>(&item)) {
      words->at = move(words->at);
      continue;
    }
    for (Shape::Command& command : std::get<Shape>(item).path) {
      for (Point* p : {&command.p1, &command.p2, &command.p3}) *p = move(*p);
    }
  }
}

}  // namespace

Look filled(Ink ink) {
  return {ink, std::nullopt};
}

Look outlined(Ink fill, Ink stroke, double width) {
  return {fill, Stroke{stroke, width, {}, false}};
}

Look stroked(Ink ink, double width, std::vector<double> dashes) {
  return {std::nullopt, Stroke{ink, width, std::move(dashes), false}};
}

Shape rectangle(Point p, double w, double h, Look look, double radius) {
  Shape s{{}, look.fill, std::move(look.stroke)};
  if (radius <= 0) {
    s.path = {{'M', p, {}, {}},
              {'L', {p.x + w, p.y}, {}, {}},
              {'L', {p.x + w, p.y + h}, {}, {}},
              {'L', {p.x, p.y + h}, {}, {}},
              {'Z', {}, {}, {}}};
    return s;
  }
  const double r = std::min({radius, w / 2, h / 2});
  const double k = r * (1 - quarter);
  const double x1 = p.x + w, y1 = p.y + h;
  s.path = {{'M', {p.x + r, p.y}, {}, {}},
            {'L', {x1 - r, p.y}, {}, {}},
            {'C', {x1 - k, p.y}, {x1, p.y + k}, {x1, p.y + r}},
            {'L', {x1, y1 - r}, {}, {}},
            {'C', {x1, y1 - k}, {x1 - k, y1}, {x1 - r, y1}},
            {'L', {p.x + r, y1}, {}, {}},
            {'C', {p.x + k, y1}, {p.x, y1 - k}, {p.x, y1 - r}},
            {'L', {p.x, p.y + r}, {}, {}},
            {'C', {p.x, p.y + k}, {p.x + k, p.y}, {p.x + r, p.y}},
            {'Z', {}, {}, {}}};
  return s;
}

Shape circle(Point c, double r, Look look) {
  const double k = r * quarter;
  return {{{'M', {c.x + r, c.y}, {}, {}},
           {'C', {c.x + r, c.y + k}, {c.x + k, c.y + r}, {c.x, c.y + r}},
           {'C', {c.x - k, c.y + r}, {c.x - r, c.y + k}, {c.x - r, c.y}},
           {'C', {c.x - r, c.y - k}, {c.x - k, c.y - r}, {c.x, c.y - r}},
           {'C', {c.x + k, c.y - r}, {c.x + r, c.y - k}, {c.x + r, c.y}},
           {'Z', {}, {}, {}}},
          look.fill,
          std::move(look.stroke)};
}

Shape polyline(const std::vector<Point>& points, Look look) {
  Shape s{{}, look.fill, std::move(look.stroke)};
  for (const Point p : points) s.path.push_back({s.path.empty() ? 'M' : 'L', p, {}, {}});
  return s;
}

Shape polygon(const std::vector<Point>& points, Look look) {
  Shape s = polyline(points, std::move(look));
  s.path.push_back({'Z', {}, {}, {}});
  return s;
}

Shape swing(Point a, Point b, Look look) {
  const double reach = 0.55 * (b.y - a.y);
  return {{{'M', a, {}, {}}, {'C', {a.x, a.y + reach}, {b.x, b.y - reach}, b}},
          look.fill,
          std::move(look.stroke)};
}

Shape arrow_head(Point tip, Point direction, double length, Ink ink) {
  const double norm = std::hypot(direction.x, direction.y);
  assert(norm > 0);
  const Point d{direction.x / norm, direction.y / norm};
  const Point back{tip.x - d.x * length, tip.y - d.y * length};
  const double half = 0.38 * length;
  return polygon(
      {tip, {back.x - d.y * half, back.y + d.x * half}, {back.x + d.y * half, back.y - d.x * half}},
      filled(ink));
}

std::vector<Shape> eye(Point c, double width) {
  const double w = width / 2, h = width * 0.32;
  Shape lids{{{'M', {c.x - w, c.y}, {}, {}},
              {'C', {c.x - w * 0.4, c.y - h * 1.3}, {c.x + w * 0.4, c.y - h * 1.3}, {c.x + w, c.y}},
              {'C', {c.x + w * 0.4, c.y + h * 1.3}, {c.x - w * 0.4, c.y + h * 1.3}, {c.x - w, c.y}},
              {'Z', {}, {}, {}}},
             style::paper,
             Stroke{style::outline, style::line, {}, true}};
  return {lids, circle(c, h * 0.62, filled(style::outline)),
          circle({c.x + h * 0.2, c.y - h * 0.2}, h * 0.16, filled(style::paper))};
}

Shape tick_box(Point corner, double side) {
  return rectangle(corner, side, side, outlined(style::paper, style::outline, style::fine));
}

void shift(Group& group, double dx, double dy) {
  move_points(group, [&](Point p) { return Point{p.x + dx, p.y + dy}; });
}

Scene turned(Scene scene) {
  for (Group& group : scene.groups) {
    move_points(group, [&](Point p) { return Point{p.y, scene.width - p.x}; });
    for (auto& item : group.items) {
      if (Words* words = std::get_if<Words>(&item)) words->rotation += 90;
    }
  }
  std::swap(scene.width, scene.height);
  return scene;
}

void append(Group& group, std::vector<Shape> shapes) {
  for (Shape& s : shapes) group.add(std::move(s));
}

Point point_on_curve(const Shape& shape, double t) {
  assert(shape.path.size() >= 2 && shape.path.back().op == 'C');
  const Point a = ending(shape.path[shape.path.size() - 2]);
  const Shape::Command& c = shape.path.back();
  const double u = 1 - t;
  const double ka = u * u * u, k1 = 3 * u * u * t, k2 = 3 * u * t * t, kb = t * t * t;
  return {ka * a.x + k1 * c.p1.x + k2 * c.p2.x + kb * c.p3.x,
          ka * a.y + k1 * c.p1.y + k2 * c.p2.y + kb * c.p3.y};
}

Point path_start(const Shape& shape) {
  return shape.path.front().p1;
}
Point path_end(const Shape& shape) {
  return ending(shape.path.back());
}

}  // namespace plugward
