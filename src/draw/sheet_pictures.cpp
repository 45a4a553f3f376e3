// SPDX-License-Identifier: MIT
// Tested in sheet_pictures_test.cpp.
#include "draw/sheet_pictures.h"

#include <algorithm>
#include <cassert>
#include <map>
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

/// A board's plugs have the same numbers in every picture of a document, whatever its size.
std::vector<int> tags_of(const PlacementFacts& facts) {
  std::vector<int> tags;
  for (const CalloutSlot& slot : facts.callouts.slots) tags.push_back(slot.tag);
  return tags;
}

/// A machine as it stands today: what its plugs are and where they sit; nothing is judged.
PlacementFacts old_facts(const Fitting& machine, const Advice& none) {
  PlacementFacts facts{machine, none, a4_landscape, {}, look_alikes(machine), {}, {}, {}, {}, {}};
  for (const Placement& placement : machine.placements) {
    const Header& header = machine.board->headers[static_cast<std::size_t>(placement.header)];
    CalloutText text;
    text.header =
        header.label.empty() || header.label == header.id ? header.id : header.id + " " + header.label;
    text.plug = machine.harness->plugs[static_cast<std::size_t>(placement.plug)].id;
    if (header.underside) text.notes = "underside";
    facts.texts.push_back(std::move(text));
  }
  return facts;
}

/// The sheet of placement_picture() that has this room between its title and its foot.
SheetSize sheet_around(double width, double height) {
  return {width, height + page::title_height + page::foot_height};
}

Scene board_scene(PlacementFacts facts, const std::vector<int>& tags, PictureRoom room, bool judged,
                  const TextMeasure& measure) {
  if (room.width < least_board_width) return board_above_list(std::move(facts), tags, room, judged, measure);
  const double most = std::min(room.height, highest_board);
  lay_placement(facts, sheet_around(room.width, most), tags);
  const int lines = facts.callouts.lines;
  const double scale = facts.board.scale;
  // As low as it says the same at the same scale.
  for (double height = lowest_board; height < most; height += step) {
    lay_placement(facts, sheet_around(room.width, height), tags);
    if (facts.callouts.lines >= lines && facts.board.scale >= scale) break;
    lay_placement(facts, sheet_around(room.width, most), tags);
  }
  Scene scene;
  scene.width = facts.sheet.width;
  scene.height = facts.sheet.height;
  scene.title = facts.fitting.board->title;
  add_placement(scene, facts, measure);
  if (!judged) {
    std::erase_if(scene.groups, [](const Group& g) { return g.name.rfind("verdict of plug ", 0) == 0; });
  }
  for (Group& group : scene.groups) shift(group, 0, -page::title_height);
  scene.height -= page::title_height + page::foot_height;
  return scene;
}

}  // namespace

struct SheetPictureFacts {
  PlacementFacts now;
  std::vector<int> tags;
  Advice nothing;
  std::optional<PlacementFacts> old;
  std::vector<int> old_tags;
};

SheetPictures::SheetPictures(const Fitting& fitting, const Advice& advice)
    : fitting_(&fitting), advice_(&advice) {}

SheetPictures::SheetPictures(const SwapPlan& plan)
    : fitting_(&plan.before_moves), advice_(&plan.advice), old_machine_(plan.machine) {}

SheetPictures::~SheetPictures() = default;

const SheetPictureFacts& SheetPictures::facts() const {
  if (facts_) return *facts_;
  facts_ = std::make_unique<SheetPictureFacts>(
      SheetPictureFacts{gather_placement(*fitting_, *advice_, a4_landscape), {}, {}, {}, {}});
  facts_->tags = tags_of(facts_->now);
  if (old_machine_ != nullptr) {
    facts_->old.emplace(old_facts(*old_machine_, facts_->nothing));
    // A plug keeps its number; those that find no place are numbered after all others.
    std::map<int, int> tag_of_plug;
    int last = 0;
    for (std::size_t i = 0; i < fitting_->placements.size(); ++i) {
      tag_of_plug[fitting_->placements[i].plug] = facts_->tags[i];
      last = std::max(last, facts_->tags[i]);
    }
    for (const Placement& placement : old_machine_->placements) {
      const auto [tag, is_new] = tag_of_plug.try_emplace(placement.plug, last + 1);
      if (is_new) ++last;
      facts_->old_tags.push_back(tag->second);
    }
  }
  return *facts_;
}

Scene SheetPictures::scene(const sheet::Picture& picture, PictureRoom room, View view,
                           const TextMeasure& measure) const {
  const SheetPictureFacts& known = facts();
  Scene scene;
  switch (picture.kind) {
    case sheet::PictureKind::Board:
      scene = board_scene(known.now, known.tags, room, true, measure);
      break;
    case sheet::PictureKind::OldBoard:
      assert(known.old);
      scene = board_scene(*known.old, known.old_tags, room, false, measure);
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
