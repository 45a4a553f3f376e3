// SPDX-License-Identifier: MIT
// Arcs leave and arrive vertically, so that it is plain which cavity they belong to. Numbers sit on the arcs:
// of a row of places along the arc the first is taken at which the number touches no other. Tested in
// moves_test.cpp.
#include "draw/moves.h"

#include <algorithm>
#include <cmath>

#include "base/format.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr double radius = 2.7;  ///< of a number's disc
constexpr double head = 2.6;    ///< of an arrow
constexpr Type held_type{style::small_type, false};

struct Field {
  const Housing& now;
  const Housing& then;
  MoveField limits;
  std::vector<SpareEnd> spares;
  std::vector<Box> taken;
  int holds = 0;
  Point held;  ///< where the loose lead is at present
};

Box around(Point p, double half) {
  return {p.x - half, p.y - half, p.x + half, p.y + half};
}

void to(Shape& path, const std::vector<Point>& points, bool backwards) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point p = backwards ? points[points.size() - 1 - i] : points[i];
    path.path.push_back({path.path.empty() ? 'M' : 'L', p, {}, {}});
  }
}

Point last(const Shape& path) {
  return path_end(path);
}

/// From the end of `path` to b; horizontal at b when `sideways`.
void curve(Shape& path, Point b, bool leave_sideways, bool arrive_sideways) {
  const Point a = last(path);
  const double v = 0.55 * (b.y - a.y), h = 0.6 * (b.x - a.x);
  path.path.push_back({'C', leave_sideways ? Point{a.x + h, a.y} : Point{a.x, a.y + v},
                       arrive_sideways ? Point{b.x - h, b.y} : Point{b.x, b.y - v}, b});
}

/// A free place for a number on the cubic that ends at command `at`.
Point number_place(const Shape& path, std::size_t at, Field& field) {
  Shape until = path;
  until.path.resize(at + 1);
  Point best = point_on_curve(until, 0.5);
  double best_room = -1;
  for (const double t :
       {0.5, 0.4, 0.6, 0.32, 0.68, 0.25, 0.75, 0.45, 0.55, 0.2, 0.8, 0.15, 0.85, 0.36, 0.64, 0.28, 0.72}) {
    const Point p = point_on_curve(until, t);
    double room = 1e9;
    for (const Box& b : field.taken) {
      const double dx = std::max({b.left - p.x, p.x - b.right, 0.0}),
                   dy = std::max({b.top - p.y, p.y - b.bottom, 0.0});
      room = std::min(room, std::hypot(dx, dy));
    }
    if (room > best_room + 1e-9) {
      best = p;
      best_room = room;
    }
    if (room >= radius + 0.3) break;
  }
  field.taken.push_back(around(best, radius));
  return best;
}

void add_number(Group& group, Point p, int number) {
  group.add(circle(p, radius, outlined(style::paper, style::move, style::line)));
  const double half_capital = 0.365 * style::small_type * style::mm_per_point;
  group.add(Words{{p.x, p.y + half_capital},
                  format("{}", number),
                  style::small_type,
                  true,
                  style::text,
                  Anchor::Middle,
                  0});
}

/// The place beside the housing where the k-th loose lead is held: right, left, right ...
Point hold_place(Field& field) {
  const double top = numbers_edge(field.now), bottom = numbers_edge(field.then);
  const int k = field.holds++;
  const double y = (top + bottom) / 2 + (k / 2 % 2 == 0 ? 1 : -1) * (k / 2 > 0 ? 6 : 0);
  const double out = 16;
  if (k % 2 == 0) return {std::min(field.now.body.right + out, field.limits.right - 12), y};
  return {std::max(field.now.body.left - out, field.limits.left + 12), y};
}

void add_held(Group& group, Point p, bool right, Field& field, const TextMeasure& measure) {
  const double w = text_width("held", held_type, measure) + 2, h = 4.6;
  const Point corner{right ? p.x : p.x - w, p.y - h / 2};
  group.add(rectangle(corner, w, h, outlined(style::paper, style::move, style::fine), h / 2));
  const double half_x = 0.27 * held_type.points * style::mm_per_point;
  group.add(Words{
      {corner.x + w / 2, p.y + half_x}, "held", held_type.points, false, style::text, Anchor::Middle, 0});
  field.taken.push_back({corner.x, corner.y, corner.x + w, corner.y + h});
}

Group draw_step(const Step& step, int number, Field& field, const TextMeasure& measure) {
  Group group{format("step {}", number), {}};
  Shape path;
  const bool dashed =
      step.kind == StepKind::Park || step.kind == StepKind::Hold || step.kind == StepKind::Insert;
  path.stroke = Stroke{style::move, style::bold_line,
                       dashed ? std::vector<double>{2.2, 1.2} : std::vector<double>{}, false};

  if (step.kind == StepKind::Insert) {
    path.path.push_back({'M', field.held, {}, {}});
  } else {
    to(path, way_out(field.now, step.from), false);
  }
  std::size_t curved = path.path.size();
  switch (step.kind) {
    case StepKind::Move:
    case StepKind::Insert: {
      const std::vector<Point> in = way_out(field.then, step.to);
      curve(path, in.back(), step.kind == StepKind::Insert, false);
      curved = path.path.size() - 1;
      for (std::size_t i = in.size() - 1; i-- > 0;) path.path.push_back({'L', in[i], {}, {}});
      break;
    }
    case StepKind::Park: {
      const std::vector<Point> in = way_out(field.now, step.to);
      const Point a = last(path), b = in.back();
      const double sag = std::min(9.0, 0.55 * (numbers_edge(field.then) - numbers_edge(field.now)));
      path.path.push_back({'C', {a.x, a.y + sag}, {b.x, b.y + sag}, b});
      for (std::size_t i = in.size() - 1; i-- > 0;) path.path.push_back({'L', in[i], {}, {}});
      break;
    }
    case StepKind::Hold:
      field.held = hold_place(field);
      curve(path, field.held, false, true);
      break;
    case StepKind::Insulate:
      for (const SpareEnd& spare : field.spares) {
        if (spare.lead == step.lead) curve(path, spare.end, false, true);
      }
      break;
  }
  const Point tip = last(path);
  const Shape::Command& end = path.path.back();
  const Point before = end.op == 'C' ? end.p2 : path.path[path.path.size() - 2].p1;
  const Point direction{tip.x - before.x, tip.y - before.y};
  const bool drawn = path.path.size() > curved;
  group.add(path);
  if (std::hypot(direction.x, direction.y) > 0) group.add(arrow_head(tip, direction, head, style::move));
  if (step.kind == StepKind::Hold)
    add_held(group, field.held, field.held.x > (field.now.body.left + field.now.body.right) / 2, field,
             measure);
  if (drawn) add_number(group, number_place(path, curved, field), number);
  return group;
}

}  // namespace

double move_band(const std::vector<Step>& steps) {
  return std::clamp(17.0 + 1.2 * static_cast<double>(steps.size()), 20.0, 32.0);
}

std::vector<Group> draw_moves(const std::vector<Step>& steps, const Housing& now, const Housing& then,
                              const MoveField& limits, const std::vector<SpareEnd>& spares,
                              const TextMeasure& measure) {
  Field field{now, then, limits, spares, {}, 0, {}};
  std::vector<Group> groups;
  int number = 0;
  for (const Step& step : steps) groups.push_back(draw_step(step, ++number, field, measure));
  return groups;
}

}  // namespace plugward
