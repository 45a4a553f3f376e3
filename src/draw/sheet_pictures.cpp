// SPDX-License-Identifier: MIT
// Tested in sheet_pictures_test.cpp.
#include "draw/sheet_pictures.h"

#include <algorithm>
#include <cassert>
#include <optional>

#include "base/format.h"
#include "draw/page_plan.h"
#include "draw/placement_picture.h"
#include "draw/plug_panel.h"
#include "draw/shapes.h"
#include "draw/sheet_pictures_board.h"
#include "draw/true_size.h"

namespace plugward {
namespace {

constexpr double least_board_width = 236;  ///< callouts at both sides of a board that is still readable
constexpr double lowest_board = 100, highest_board = 175, step = 15;

/// A machine as it stands today: what its plugs are and where they sit; nothing is judged.
PlacementFacts old_facts(const Fitting& machine, const Advice& none) {
  PlacementFacts facts{machine, none, a4_landscape, {}, look_alikes(machine), {}, {}, {}, {}, {}};
  for (const Placement& placement : machine.placements) {
    const Header& header = machine.board->headers[static_cast<std::size_t>(placement.header)];
    CalloutText text;
    text.header =
        header.label.empty() || header.label == header.id ? header.id : header.id + " " + header.label;
    text.plug = machine.harness->plugs[static_cast<std::size_t>(placement.plug)].id;
    if (header.underside) text.notes = tr("underside");
    facts.texts.push_back(std::move(text));
  }
  return facts;
}

/// A plug that has its new housing in the plan's model is not yet ready: the housing is a part to be had
/// first.
void ask_for_housings(PlacementFacts& facts, const SwapPlan& plan) {
  for (std::size_t i = 0; i < facts.plugs.size(); ++i) {
    const PlugTransfer& transfer = plan.of(facts.fitting.placements[i].plug);
    Advice& advice = facts.plugs[i].advice;
    if (transfer.kind != Transfer::Adapt || advice.verdict == Verdict::Adapt) continue;
    advice.verdict = Verdict::Adapt;
    advice.parts = transfer.parts;
    advice.summary.clear();
    retell(facts, i);
  }
}

/// The sheet of placement_picture() that has this room between its title and its foot.
SheetSize sheet_around(double width, double height) {
  return {width, height + page::title_height + page::foot_height};
}

Scene board_scene(PlacementFacts facts, PictureRoom room, bool judged, const TextMeasure& measure) {
  if (room.width < least_board_width) return board_above_list(std::move(facts), room, judged, measure);
  const double most = std::min(room.height, highest_board);
  lay_placement(facts, sheet_around(room.width, most));
  const int lines = facts.callouts.lines;
  const double scale = facts.board.scale;
  // As low as it says the same at the same scale.
  for (double height = lowest_board; height < most; height += step) {
    lay_placement(facts, sheet_around(room.width, height));
    if (facts.callouts.lines >= lines && facts.board.scale >= scale) break;
    lay_placement(facts, sheet_around(room.width, most));
  }
  Scene scene;
  scene.width = facts.sheet.width;
  scene.height = facts.sheet.height;
  scene.title = facts.fitting.board->title;
  add_placement(scene, facts, measure);
  if (!judged) {
    std::erase_if(scene.groups, [](const Group& g) { return g.verdict; });
  }
  for (Group& group : scene.groups) shift(group, 0, -page::title_height);
  scene.height -= page::title_height + page::foot_height;
  return scene;
}

}  // namespace

struct SheetPictureFacts {
  PlacementFacts now;
  Advice nothing;
  std::optional<PlacementFacts> old;
};

SheetPictures::SheetPictures(const Fitting& fitting, const Advice& advice)
    : fitting_(&fitting), advice_(&advice) {}

SheetPictures::SheetPictures(const SwapPlan& plan)
    : fitting_(&plan.before_moves), advice_(&plan.advice), swap_(&plan) {}

SheetPictures::~SheetPictures() = default;

const SheetPictureFacts& SheetPictures::facts() const {
  if (facts_) return *facts_;
  facts_ = std::make_unique<SheetPictureFacts>(
      SheetPictureFacts{gather_placement(*fitting_, *advice_, a4_landscape), {}, {}});
  if (swap_ != nullptr) {
    ask_for_housings(facts_->now, *swap_);
    facts_->old.emplace(old_facts(*swap_->machine, facts_->nothing));
  }
  return *facts_;
}

Scene SheetPictures::scene(const sheet::Picture& picture, PictureRoom room, View view,
                           const TextMeasure& measure) const {
  const SheetPictureFacts& known = facts();
  Scene scene;
  switch (picture.kind) {
    case sheet::PictureKind::Board:
      scene = board_scene(known.now, room, true, measure);
      break;
    case sheet::PictureKind::OldBoard:
      assert(known.old);
      scene = board_scene(*known.old, room, false, measure);
      break;
    case sheet::PictureKind::Plug:
      scene = plug_panel_in(known.now, picture.placement, view, room.width, room.height, measure);
      break;
    case sheet::PictureKind::TrueSize:
      assert(false);
  }
  scene.title = picture.title;
  if (!picture.words.empty()) scene.description = picture.words;
  return scene;
}

bool SheetPictures::fits(const sheet::Picture& picture, PictureRoom room, View view,
                         const TextMeasure& measure) const {
  if (picture.kind == sheet::PictureKind::Plug) {
    return plug_panel_fits(facts().now, picture.placement, view, room.width, room.height, measure);
  }
  return true;
}

std::vector<Scene> SheetPictures::true_size(PictureRoom page, const TextMeasure& measure) const {
  return true_size_pages(true_size_parts(*fitting_), page, measure);
}

}  // namespace plugward
