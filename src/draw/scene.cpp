// SPDX-License-Identifier: MIT
#include "draw/scene.h"

#include <cmath>

#include "base/format.h"

namespace plugward {
namespace {

/// Rounded to 0.01, without a negative zero.
std::string number(double millimetres) {
  const double rounded = std::round(millimetres * 100.0) / 100.0;
  return verbatim("{:g}", rounded == 0.0 ? 0.0 : rounded);
}

std::string point(Point p) {
  return number(p.x) + "," + number(p.y);
}

std::string path_text(const Shape& shape) {
  std::string text;
  for (const Shape::Command& c : shape.path) {
    if (!text.empty()) text += ' ';
    text += c.op;
    if (c.op != 'Z') text += point(c.p1);
    if (c.op == 'C') text += " " + point(c.p2) + " " + point(c.p3);
  }
  return text;
}

std::string line(const Shape& shape) {
  std::string text = "shape";
  if (shape.fill) text += verbatim(" fill={:06x}", *shape.fill);
  if (shape.stroke) {
    text += verbatim(" stroke={:06x}/{}", shape.stroke->ink, number(shape.stroke->width));
    for (const double dash : shape.stroke->dashes) text += ":" + number(dash);
    if (shape.stroke->round) text += "/round";
  }
  return text + " " + path_text(shape);
}

std::string line(const Words& words) {
  static constexpr std::string_view anchors[] = {"start", "middle", "end"};
  std::string text = verbatim("words {} {}pt {}", point(words.at), number(words.points),
                              anchors[static_cast<std::size_t>(words.anchor)]);
  if (words.bold) text += " bold";
  if (words.ink != 0) text += verbatim(" ink={:06x}", words.ink);
  if (words.rotation != 0) text += " turned=" + number(words.rotation);
  return text + " '" + words.text + "'";
}

}  // namespace

std::string dump(const Scene& scene) {
  std::string text = verbatim("scene {} x {}\ntitle {}\ndescription {}\n", number(scene.width),
                              number(scene.height), scene.title, scene.description);
  for (const Group& group : scene.groups) {
    text += "group " + group.name + "\n";
    for (const auto& item : group.items) {
      text += "  " + std::visit([](const auto& i) { return line(i); }, item) + "\n";
    }
  }
  return text;
}

}  // namespace plugward
