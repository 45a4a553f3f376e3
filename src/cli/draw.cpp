// SPDX-License-Identifier: MIT
// draw: one plug and its header, or the whole board with all plugs. Tested in tests/cases.
#include <algorithm>
#include <array>

#include "base/edit_distance.h"
#include "base/format.h"
#include "cli/load.h"
#include "draw/canvas.h"
#include "draw/mating_picture.h"
#include "draw/pages.h"
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
  if (options.to_stdout()) throw UsageError("'draw' needs -o FILE.svg, .pdf or .png, or --picture KIND");
  throw UsageError(
      format("'{}' does not end in .svg, .pdf or .png: say which with --picture", options.output));
}

View view_of(const Options& options) {
  return options.view == "wire" ? View::WireSide : View::MatingFace;
}

SheetSize sheet_of(const Options& options) {
  return options.paper == "a4" ? a4_landscape : letter_landscape;
}

/// REQUIRES: --plug is given, or there is one placement.
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
  const SheetSize sheet = sheet_of(options);
  Workbench bench;
  const std::optional<Fitting> fitting = load_fitting(bench, options);
  if (!fitting) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const bool all = options.plug.empty() && fitting->placements.size() > 1;
  const int placement = all ? 0 : placement_to_draw(*fitting, options);
  const std::unique_ptr<TextMeasure> measure = make_text_measure();
  PictureOptions drawn;
  drawn.format = picture;
  const Advice advice = advise(*fitting);
  std::string product;
  if (all && picture == PictureFormat::Pdf) {
    product = render_pages(placement_pages(*fitting, advice, {sheet, view}, *measure), drawn);
  } else if (all) {
    product = render(placement_image(*fitting, advice, {sheet, view}, *measure), drawn);
  } else {
    MatingPictureOptions one;
    one.view = view;
    one.placement = placement;
    one.width = sheet.width;
    one.height = sheet.height;
    product = picture == PictureFormat::Pdf
                  ? render_pages(mating_pages(*fitting, advice, one, *measure), drawn)
                  : render(mating_picture(*fitting, advice, one, *measure), drawn);
  }
  return {ExitStatus::Fine, std::move(product), stderr_text(bench, options)};
}

}  // namespace plugward
