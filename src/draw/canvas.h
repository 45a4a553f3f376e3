// SPDX-License-Identifier: MIT
// Turns a scene into the bytes of an SVG, PDF or PNG file. The one place that names cairo and pango is
// canvas.cpp.
//
//   write_file("probe.svg", render(scene, {.format = PictureFormat::Svg}));
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "draw/scene.h"
#include "draw/sheet_pages_links.h"

namespace plugward {

enum class PictureFormat { Svg, Pdf, Png };

struct PictureOptions {
  PictureFormat format = PictureFormat::Svg;
  double dpi = 150;  ///< PNG only
  std::string
      date;  ///< PDF creation date, ISO 8601; "" leaves a fixed one, so that equal input gives equal bytes
  std::string prefix;  ///< SVG only: begins every id, so that several pictures can stand in one page
};

/// The whole file as bytes; equal scenes and options give equal bytes. Throws WorldError when the library
/// fails.
std::string render(const Scene&, const PictureOptions&);

/// Several pages as one PDF file, each of its own size; the title and description of the file are those of
/// the first. REQUIRES: at least one page; options.format is Pdf.
std::string render_pages(const std::vector<Scene>&, const PictureOptions&);

/// Several pages as one PDF file with an outline, links between its pages, page labels ("1", "2", ...) and
/// what it says about itself. REQUIRES: at least one page.
std::string render_book(const std::vector<Scene>&, const PageFacts&);

/// Measures with the fonts that render() uses.
std::unique_ptr<TextMeasure> make_text_measure();

}  // namespace plugward
