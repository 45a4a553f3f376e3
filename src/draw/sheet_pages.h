// SPDX-License-Identifier: MIT
// A document on paper: A4 or Letter, portrait or landscape, as one PDF file with outline entries, page
// labels, metadata, searchable text, and links from a step to its picture.
//
//   write_file("swap.pdf", sheet_pdf(document, pictures, {.paper = Paper::A4}, *measure));
#pragma once

#include <string>
#include <vector>

#include "draw/sheet_pages_links.h"
#include "draw/sheet_pictures.h"

namespace plugward {

struct SheetPagesOptions {
  bool letter = false;
  bool landscape = false;
  View view = View::WireSide;
};

struct SheetPages {
  std::vector<Scene> pages;  ///< of the paper's size, margins included
  std::vector<OutlineEntry> outline;
  std::vector<PageLink> links;
};

/// The layout alone, free of any drawing library. Never empty.
SheetPages sheet_pages(const sheet::Document&, const SheetPictures&, const SheetPagesOptions&,
                       const TextMeasure&);

/// The whole file as bytes; equal input gives equal bytes: the date of the file is that of the title block.
std::string sheet_pdf(const sheet::Document&, const SheetPictures&, const SheetPagesOptions&,
                      const TextMeasure&);

}  // namespace plugward
