// SPDX-License-Identifier: MIT
// What the pictures of a document show.
//
//   const SheetPictures pictures(fitting, advice);                 // a check or a placement
//   const SheetPictures pictures(plan);                            // a swap: `before_moves` and its advice
//   pictures.scene(picture, {.width = 190, .height = 120}, View::WireSide, measure)
#pragma once

#include <memory>

#include "draw/grid.h"
#include "draw/scene.h"
#include "plan/swap.h"
#include "sheet/document.h"

namespace plugward {

/// Room for a picture, mm. A scene is no wider; it is as high as it needs, `height` at the most.
struct PictureRoom {
  double width = 190;
  double height = 250;
};

struct SheetPictureFacts;  ///< advice on each plug, which takes its time, and the numbers of the plugs

class SheetPictures {
 public:
  /// All must outlive this.
  SheetPictures(const Fitting&, const Advice&);
  explicit SheetPictures(const SwapPlan&);
  ~SheetPictures();
  SheetPictures(const SheetPictures&) = delete;
  SheetPictures& operator=(const SheetPictures&) = delete;

  /// REQUIRES: the picture is of the document that was made of the same fitting or plan; not TrueSize.
  Scene scene(const sheet::Picture&, PictureRoom, View, const TextMeasure&) const;

  /// Can everything be drawn in this room, with type of 9 points? If not, a scene says what it leaves out,
  /// and a room turned by 90 degrees may do.
  bool fits(const sheet::Picture&, PictureRoom, View, const TextMeasure&) const;

  /// Housings and headers at 1:1 with their ruler, as many pages as they need (true_size.h).
  std::vector<Scene> true_size(PictureRoom page, const TextMeasure&) const;

 private:
  const SheetPictureFacts& facts() const;

  const Fitting* fitting_;
  const Advice* advice_;
  const SwapPlan* swap_ = nullptr;
  mutable std::unique_ptr<SheetPictureFacts> facts_;  ///< gathered when the first picture is wanted
};

}  // namespace plugward
