// SPDX-License-Identifier: MIT
// At which scale everything fits on the page, and with which words. Type never shrinks: the parts are drawn
// smaller, then words are left out that arcs and pins show anyway, then names are shortened.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "draw/header_picture.h"
#include "draw/leads.h"
#include "draw/mating_facts.h"

namespace plugward {

namespace page {
inline constexpr double title_height = 17, foot_height = 8;  ///< mm, as all lengths here
inline constexpr double gutter = 34;                         ///< captions at the left
inline constexpr double panel_width = 74;                    ///< at the right
inline constexpr double gap = 4;
inline constexpr double inset = 1.5;       ///< free along the edges of the page
inline constexpr double spare_row = 10.5;  ///< a lead that lies beside the housing
}  // namespace page

struct PageLabels {
  std::vector<Label> now, then, pins;  ///< [cavity - 1], [cavity - 1], [pin - 1]
};

struct PagePlan {
  double scale = 1;
  BodySize plug, header;
  Grid plug_grid, header_grid;  ///< their origins are not set yet
  PageLabels labels;
  LabelColumns columns;
  LeadZone zone;
  double now_labels = 0, then_labels = 0, pin_labels = 0;  ///< heights
  double tallest = 60;                                     ///< that a label may be
  double band = 0;                                         ///< between the housings; 0 when nothing moves
  bool brief = false;                                      ///< labels leave out more than the arcs show
  bool header_drawn = true;  ///< else its words stand at the leads of the housing then
  std::vector<int> spares;   ///< leads that lie beside the housing then
  double total = 0;          ///< height of everything in the field
};

/// Where housings, moves and header go on a page of this size.
Box page_field(double width, double height);

struct PagePlannerWork;

/// Plans for fields of one width and several heights: what does not depend on the height is worked out once.
class PagePlanner {
 public:
  /// The facts must outlive this.
  PagePlanner(const MatingFacts&, View, double width, const TextMeasure&);
  ~PagePlanner();
  PagePlanner(const PagePlanner&) = delete;
  PagePlanner& operator=(const PagePlanner&) = delete;

  /// In a field whose left edge is at `left`. Nothing when it does not fit at any readable scale.
  std::optional<PagePlan> plan(double left, double height);

 private:
  std::unique_ptr<PagePlannerWork> work_;
};

/// The same for one field.
std::optional<PagePlan> plan_page(const MatingFacts&, View, const Box& field, const TextMeasure&);

}  // namespace plugward
