// SPDX-License-Identifier: MIT
// The page: title and verdict above, the plug and its header, words at the right, limits below.
#include "draw/mating_picture.h"

#include "draw/mating_facts.h"
#include "draw/page_frame.h"
#include "draw/page_plan.h"
#include "draw/plug_frames.h"

namespace plugward {
namespace {

/// The page with the picture, and with `rest_follows` the sheets behind it.
std::vector<Scene> sheets_of(const Fitting& fitting, const Advice& advice,
                             const MatingPictureOptions& options, bool rest_follows,
                             const TextMeasure& measure) {
  MatingFacts facts = gather(fitting, advice, options.placement);
  std::vector<Scene> sheets{
      {options.width, options.height, title_of(facts), describe(facts, options.view), {}}};
  Scene& scene = sheets.front();
  // The frame first: it takes back flags that nothing explains.
  std::vector<Paragraph> rest = add_page_frame(scene, facts, options.place, rest_follows, measure);
  for (Group& group : plug_frames(facts, options.view, page_field(options.width, options.height), measure)) {
    scene.groups.push_back(std::move(group));
  }
  if (!rest_follows) return sheets;
  for (Scene& sheet :
       word_sheets(facts, std::move(rest), options.place, options.width, options.height, measure)) {
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

}  // namespace

Scene mating_picture(const Fitting& fitting, const Advice& advice, const MatingPictureOptions& options,
                     const TextMeasure& measure) {
  return std::move(sheets_of(fitting, advice, options, false, measure).front());
}

std::vector<Scene> mating_pages(const Fitting& fitting, const Advice& advice, MatingPictureOptions options,
                                const TextMeasure& measure) {
  std::vector<Scene> sheets = sheets_of(fitting, advice, options, true, measure);
  if (options.place.page.pages > 1 || sheets.size() == 1) return sheets;
  options.place.page.pages = static_cast<int>(sheets.size());
  return sheets_of(fitting, advice, options, true, measure);
}

}  // namespace plugward
