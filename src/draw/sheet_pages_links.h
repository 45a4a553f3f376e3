// SPDX-License-Identifier: MIT
// What leads where in a file of several pages: places with names, links to them, and the outline.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace plugward {

/// Where a link leads to, or what an outline entry names: a place on a page.
struct PagePoint {
  std::size_t page = 0;  ///< from 0
  double y = 0;          ///< mm from the top of the paper
  std::string name;      ///< unique in the file: "plug-3"
};

/// A part of a page that leads elsewhere.
struct PageLink {
  std::size_t page = 0;
  double left = 0, top = 0, right = 0, bottom = 0;  ///< mm on the paper
  PagePoint to;
};

struct OutlineEntry {
  std::string title;
  int level = 0;  ///< 0: a section
  PagePoint to;
};

/// What a file of pages says about itself.
struct PageFacts {
  std::string title, subject, keywords;
  std::string date;  ///< ISO 8601, of the file's making; "" leaves a fixed one
  std::vector<OutlineEntry> outline;
  std::vector<PageLink> links;
};

}  // namespace plugward
