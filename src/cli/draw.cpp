// SPDX-License-Identifier: MIT
// draw: one picture of one plug and its header. Tested in tests/cases.
#include <algorithm>
#include <array>

#include "base/edit_distance.h"
#include "base/format.h"
#include "cli/load.h"
#include "draw/canvas.h"
#include "draw/mating_picture.h"
#include "plan/repin.h"

namespace plugward {
namespace {

PictureFormat picture_format(const Options& options) {
  const std::size_t dot = options.output.rfind('.');
  const std::string suffix = dot == std::string::npos ? "" : options.output.substr(dot + 1);
  const std::string& word = options.picture.empty() ? suffix : options.picture;
  if (word == "svg") return PictureFormat::Svg;
  if (word == "pdf") return PictureFormat::Pdf;
  if (word == "png") return PictureFormat::Png;
  if (!options.picture.empty()) throw UsageError(format("'--picture' takes svg, pdf, png, not '{}'", word));
  if (options.to_stdout()) throw UsageError("'draw' needs -o FILE.svg, .pdf or .png, or --picture KIND");
  throw UsageError(
      format("'{}' does not end in .svg, .pdf or .png: say which with --picture", options.output));
}

View view_of(const Options& options) {
  if (options.view == "wire") return View::WireSide;
  if (options.view == "mating") return View::MatingFace;
  throw UsageError(format("'--view' takes wire, mating, not '{}'", options.view));
}

int placement_to_draw(const Fitting& fitting, const Options& options) {
  std::vector<std::string> placed;
  for (const Placement& placement : fitting.placements) {
    placed.push_back(fitting.harness->plugs[static_cast<std::size_t>(placement.plug)].id);
  }
  if (options.plug.empty()) return 0;
  const auto found = std::find(placed.begin(), placed.end(), options.plug);
  if (found != placed.end()) return static_cast<int>(found - placed.begin());
  const std::string near = nearest(options.plug, placed);
  throw UsageError(
      format("--plug: no plug '{}' is on a header; {}", options.plug,
             near.empty() ? format("there are {}", join(placed, ", ")) : format("did you mean '{}'?", near)));
}

}  // namespace

Outcome run_draw(const Options& options) {
  const PictureFormat picture = picture_format(options);
  const View view = view_of(options);
  Workbench bench;
  const std::optional<Fitting> fitting = load_fitting(bench, options);
  if (!fitting) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const MatingPictureOptions which{.view = view, .placement = placement_to_draw(*fitting, options)};
  if (options.plug.empty() && fitting->placements.size() > 1) {
    bench.notes.push_back(
        format("drawn is plug '{}', the first of {}; --plug names another",
               fitting->harness->plugs[static_cast<std::size_t>(fitting->placements[0].plug)].id,
               fitting->placements.size()));
  }
  const std::unique_ptr<TextMeasure> measure = make_text_measure();
  PictureOptions drawn;
  drawn.format = picture;
  const Scene scene = mating_picture(*fitting, advise(*fitting), which, *measure);
  return {ExitStatus::Fine, render(scene, drawn), stderr_text(bench, options)};
}

}  // namespace plugward
