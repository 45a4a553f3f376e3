// SPDX-License-Identifier: MIT
// Finds things in a scene by the names of its groups.
#pragma once

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>

#include "draw/scene.h"

namespace plugward::test {

inline const Group* find_group(const Scene& scene, std::string_view name) {
  for (const Group& g : scene.groups) {
    if (g.name == name) return &g;
  }
  return nullptr;
}

/// REQUIRES: the group has a shape.
inline const Shape& first_shape(const Group& group) {
  for (const auto& item : group.items) {
    if (const Shape* s = std::get_if<Shape>(&item)) return *s;
  }
  throw std::logic_error("no shape in " + group.name);
}

/// REQUIRES: the group has words.
inline const Words& first_words(const Group& group) {
  for (const auto& item : group.items) {
    if (const Words* w = std::get_if<Words>(&item)) return *w;
  }
  throw std::logic_error("no words in " + group.name);
}

/// Middle of the rectangle around all end points of a path.
inline Point middle(const Shape& shape) {
  double left = 1e9, top = 1e9, right = -1e9, bottom = -1e9;
  for (const Shape::Command& c : shape.path) {
    if (c.op == 'Z') continue;
    const Point p = c.op == 'C' ? c.p3 : c.p1;
    left = std::min(left, p.x);
    right = std::max(right, p.x);
    top = std::min(top, p.y);
    bottom = std::max(bottom, p.y);
  }
  return {(left + right) / 2, (top + bottom) / 2};
}

}  // namespace plugward::test
