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

/// The curved part of a step's path, for its number.
struct Arc {
  int step = 0;
  Shape curve;
};

struct Field {
  const Housing& now;
  const Housing& then;
  MoveField limits;
  std::vector<SpareEnd> spares;
  std::vector<Box> taken;
  int holds_left = 0, holds_right = 0;
  Point held;  ///< where the loose lead is at present
  bool held_right = true;
  std::vector<Arc> arcs;
};

Box around(Point p, double half) {
  return {p.x - half, p.y - half, p.x + half, p.y + half};
}

/// From the end of `path` to b; horizontal at b when `sideways`.
void curve(Shape& path, Point b, bool leave_sideways, bool arrive_sideways) {
  const Point a = path_end(path);
  const double v = 0.55 * (b.y - a.y), h = 0.6 * (b.x - a.x);
  path.path.push_back({'C', leave_sideways ? Point{a.x + h, a.y} : Point{a.x, a.y + v},
                       arrive_sideways ? Point{b.x - h, b.y} : Point{b.x, b.y - v}, b});
}

/// A place for a number on an arc: clear of other numbers, then as far from the other arcs as can be.
Point number_place(const Arc& arc, const std::vector<Arc>& arcs, const std::vector<Box>& taken) {
  Point best = point_on_curve(arc.curve, 0.5);
  double best_room = -1e9;
  for (int i = 0; i <= 28; ++i) {
    const double t = 0.5 + (i % 2 == 0 ? 1 : -1) * 0.0125 * i;  // from the middle outwards
    const Point p = point_on_curve(arc.curve, t);
    double boxes = 1e9, others = 2 * radius;
    for (const Box& b : taken) {
      const double dx = std::max({b.left - p.x, p.x - b.right, 0.0}),
                   dy = std::max({b.top - p.y, p.y - b.bottom, 0.0});
      boxes = std::min(boxes, std::hypot(dx, dy) - radius - 0.3);
    }
    for (const Arc& other : arcs) {
      if (&other == &arc) continue;
      for (int k = 0; k <= 20; ++k) {
        const Point q = point_on_curve(other.curve, k / 20.0);
        others = std::min(others, std::hypot(q.x - p.x, q.y - p.y));
      }
    }
    const double room = boxes < 0 ? boxes - 100 : others - 0.02 * i;
    if (room > best_room) {
      best = p;
      best_room = room;
    }
  }
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

/// The place beside the housing where a loose lead is held: on the side that is nearer to where it comes from
/// and goes to, lower for each that was held there before; not among leads that were taken out for good.
void choose_hold_place(Field& field, const Step& step, const std::vector<Step>& steps) {
  const Housing& now = field.now;
  double x = centre(now.grid, step.from).x;
  for (const Step& later : steps) {
    if (later.kind == StepKind::Insert && later.lead == step.lead) x = (x + centre(now.grid, later.to).x) / 2;
  }
  field.held_right = x >= (now.body.left + now.body.right) / 2 - 0.01;
  if (!field.spares.empty()) field.held_right = field.spares.front().end.x < now.body.left;
  const double top = numbers_edge(now), bottom = numbers_edge(field.then);
  const int before = field.held_right ? field.holds_right++ : field.holds_left++;
  const double y =
      field.spares.empty() ? (top + bottom) / 2 + (before % 3) * 5.2 - (before % 3 == 2 ? 15.6 : 0) : top + 5;
  constexpr double out = 16;
  field.held = field.held_right ? Point{std::min(now.body.right + out, field.limits.right - 12), y}
                                : Point{std::max(now.body.left - out, field.limits.left + 12), y};
}

void add_held(Group& group, Point p, bool right, Field& field, const TextMeasure& measure) {
  const double w = text_width(tr("held"), held_type, measure) + 2, h = 4.6;
  const Point corner{right ? p.x : p.x - w, p.y - h / 2};
  group.add(rectangle(corner, w, h, outlined(style::paper, style::move, style::fine), h / 2));
  const double half_x = 0.27 * held_type.points * style::mm_per_point;
  group.add(Words{
      {corner.x + w / 2, p.y + half_x}, tr("held"), held_type.points, false, style::text, Anchor::Middle, 0});
  field.taken.push_back({corner.x, corner.y, corner.x + w, corner.y + h});
}

Group draw_step(const Step& step, const std::vector<Step>& steps, int number, Field& field,
                const TextMeasure& measure) {
  Group group{format("step {}", number), {}};
  Shape path;
  const bool dashed =
      step.kind == StepKind::Park || step.kind == StepKind::Hold || step.kind == StepKind::Insert;
  path.stroke = Stroke{style::move, style::bold_line,
                       dashed ? std::vector<double>{2.2, 1.2} : std::vector<double>{}, false};

  if (step.kind == StepKind::Insert) {
    path.path.push_back({'M', field.held, {}, {}});
  } else {
    for (const Point p : way_out(field.now, step.from))
      path.path.push_back({path.path.empty() ? 'M' : 'L', p, {}, {}});
  }
  const std::size_t curved = path.path.size();
  const auto enter = [&](const std::vector<Point>& in) {
    for (std::size_t i = in.size() - 1; i-- > 0;) path.path.push_back({'L', in[i], {}, {}});
  };
  switch (step.kind) {
    case StepKind::Move:
    case StepKind::Insert: {
      const std::vector<Point> in = way_out(field.then, step.to);
      curve(path, in.back(), step.kind == StepKind::Insert, false);
      enter(in);
      break;
    }
    case StepKind::Park: {
      const std::vector<Point> in = way_out(field.now, step.to);
      const Point a = path_end(path), b = in.back();
      const double sag = std::min(9.0, 0.55 * (numbers_edge(field.then) - numbers_edge(field.now)));
      path.path.push_back({'C', {a.x, a.y + sag}, {b.x, b.y + sag}, b});
      enter(in);
      break;
    }
    case StepKind::Hold:
      choose_hold_place(field, step, steps);
      curve(path, field.held, false, true);
      break;
    case StepKind::Insulate:
      for (const SpareEnd& spare : field.spares) {
        if (spare.lead == step.lead) curve(path, spare.end, false, true);
      }
      break;
  }
  group.add(path);
  if (path.path.size() == curved) return group;
  const Shape::Command& end = path.path.back();
  const Point tip = path_end(path),
              before = end.op == 'C' ? end.p2 : path_end(Shape{{path.path[path.path.size() - 2]}, {}, {}});
  if (std::hypot(tip.x - before.x, tip.y - before.y) > 0) {
    group.add(arrow_head(tip, {tip.x - before.x, tip.y - before.y}, head, style::move));
  }
  if (step.kind == StepKind::Hold) add_held(group, field.held, field.held_right, field, measure);
  Shape curve_only = path;
  curve_only.path.resize(curved + 1);
  field.arcs.push_back({number, std::move(curve_only)});
  return group;
}

}  // namespace

double move_band(const std::vector<Step>& steps) {
  return std::clamp(14.5 + 1.2 * static_cast<double>(steps.size()), 18.0, 32.0);
}

std::vector<Group> draw_moves(const std::vector<Step>& steps, const Housing& now, const Housing& then,
                              const MoveField& limits, const std::vector<SpareEnd>& spares,
                              const TextMeasure& measure) {
  Field field{now, then, limits, spares, {}, 0, 0, {}, true, {}};
  std::vector<Group> groups;
  int number = 0;
  for (const Step& step : steps) groups.push_back(draw_step(step, steps, ++number, field, measure));
  for (const Arc& arc : field.arcs) {
    const Point place = number_place(arc, field.arcs, field.taken);
    field.taken.push_back(around(place, radius));
    Group group{format("number of step {}", arc.step), {}};
    add_number(group, place, arc.step);
    groups.push_back(std::move(group));
  }
  return groups;
}

}  // namespace plugward
