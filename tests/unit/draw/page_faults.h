// SPDX-License-Identifier: MIT
// What is wrong with a page: text on text, off the page or under 9 points.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "base/format.h"
#include "draw/text_fit.h"

namespace plugward::test {

/// Text boxes reach a little beyond the letters; this much may be shared.
inline constexpr double slack = 0.05;

inline std::string faults(const Scene& scene, const TextMeasure& measure) {
  std::vector<std::string> found;
  std::vector<std::pair<Box, std::string>> boxes;
  for (const Group& group : scene.groups) {
    for (const auto& item : group.items) {
      const Words* words = std::get_if<Words>(&item);
      if (words == nullptr) continue;
      const std::string name = format("'{}' ({})", words->text, group.name);
      if (words->points < 9) found.push_back(name + " is too small");
      if (words->text.empty()) continue;
      const Box box = words_box(*words, measure);
      if (box.left < -slack || box.top < -slack || box.right > scene.width + slack ||
          box.bottom > scene.height + slack) {
        found.push_back(name + " leaves the page");
      }
      for (const auto& [other, other_name] : boxes) {
        if (overlap(box, other, slack)) found.push_back(name + " lies on " + other_name);
      }
      boxes.emplace_back(box, name);
    }
  }
  return format("{}", join(found, "\n"));
}

}  // namespace plugward::test
