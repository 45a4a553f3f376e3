// SPDX-License-Identifier: MIT
// Tested in pages_test.cpp.
#include "draw/pages.h"

#include <algorithm>

#include "base/format.h"
#include "draw/mating_picture.h"
#include "draw/page_plan.h"
#include "draw/placement_picture.h"
#include "draw/plug_list.h"
#include "draw/plug_panel.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr double between = 3;  ///< rows of panels, mm

/// Panels are set left to right in rows; a wide one has a row of its own.
class PanelRows {
 public:
  explicit PanelRows(Scene& scene) : scene_(scene) { y_ = scene.height; }

  void add(Scene panel, int tag) {
    const bool wide = panel.width > 0.6 * scene_.width;
    if (wide || x_ + panel.width > scene_.width + 0.01) next_row();
    Group frame{format("panel of plug {}", tag), {}};
    frame.add(rectangle({x_ + 0.5, y_}, panel.width - 1, panel.height,
                        {std::nullopt, Stroke{style::outline, style::fine, {}}}, 1));
    scene_.groups.push_back(std::move(frame));
    for (Group& group : panel.groups) {
      shift(group, x_, y_);
      group.name = format("plug {}: {}", tag, group.name);
      scene_.groups.push_back(std::move(group));
    }
    x_ += panel.width;
    row_ = std::max(row_, panel.height);
  }

  void end() {
    next_row();
    scene_.height = y_;
  }

 private:
  void next_row() {
    if (row_ > 0) y_ += row_ + between;
    row_ = x_ = 0;
  }

  Scene& scene_;
  double x_ = 0, y_ = 0, row_ = 0;
};

MatingPictureOptions sheet_of_plug(const PlacementPictureOptions& options, int placement, int tag,
                                   PagePlace page) {
  MatingPictureOptions one;
  one.view = options.view;
  one.placement = placement;
  one.width = options.sheet.width;
  one.height = options.sheet.height;
  one.place = {tag, page};
  return one;
}

}  // namespace

std::vector<Scene> placement_pages(const Fitting& fitting, const Advice& advice,
                                   const PlacementPictureOptions& options, const TextMeasure& measure) {
  const PlacementFacts facts = gather_placement(fitting, advice, options.sheet);
  const PagePlace any{1, 2};  // numbers take room in the title only
  const auto sheets_of = [&](int placement, PagePlace page) {
    const std::size_t i = static_cast<std::size_t>(placement);
    return mating_pages(fitting, facts.plugs[i].advice,
                        sheet_of_plug(options, placement, facts.callouts.slots[i].tag, page), measure);
  };
  const bool lists = !placement_picture(facts, any, measure).whole;
  std::size_t total = 1 + (lists ? plug_list(facts, 1, 2, measure).size() : 0);
  for (const int placement : facts.by_tag) total += sheets_of(placement, any).size();

  std::vector<Scene> pages;
  const auto add = [&](std::vector<Scene> sheets) {
    for (Scene& sheet : sheets) pages.push_back(std::move(sheet));
  };
  const int last = static_cast<int>(total);
  pages.push_back(placement_picture(facts, {1, last}, measure).scene);
  if (lists) add(plug_list(facts, 1, last, measure));
  for (const int placement : facts.by_tag)
    add(sheets_of(placement, {static_cast<int>(pages.size()) + 1, last}));
  return pages;
}

Scene placement_image(const Fitting& fitting, const Advice& advice, const PlacementPictureOptions& options,
                      const TextMeasure& measure) {
  const PlacementFacts facts = gather_placement(fitting, advice, options.sheet);
  PlacementPicture board = placement_picture(facts, {}, measure);
  Scene image = std::move(board.scene);
  image.height += between;
  PanelRows rows(image);
  for (const int placement : facts.by_tag) {
    rows.add(plug_panel(facts, placement, options.view, image.width, measure),
             facts.callouts.slots[static_cast<std::size_t>(placement)].tag);
  }
  rows.end();
  return image;
}

}  // namespace plugward
