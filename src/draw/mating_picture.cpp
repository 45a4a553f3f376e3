// SPDX-License-Identifier: MIT
// The page: title and verdict above, the plug and its header, words at the right, limits below.
#include "draw/mating_picture.h"

#include "draw/mating_facts.h"
#include "draw/page_frame.h"
#include "draw/page_plan.h"
#include "draw/plug_frames.h"

namespace plugward {

Scene mating_picture(const Fitting& fitting, const Advice& advice, const MatingPictureOptions& options,
                     const TextMeasure& measure) {
  MatingFacts facts = gather(fitting, advice, options.placement);
  Scene scene{options.width, options.height, title_of(facts), describe(facts, options.view), {}};
  // The frame first: it takes back flags that it has no room to explain.
  add_page_frame(scene, facts, options.place, measure);
  for (Group& group : plug_frames(facts, options.view, page_field(options.width, options.height), measure)) {
    scene.groups.push_back(std::move(group));
  }
  return scene;
}

}  // namespace plugward
