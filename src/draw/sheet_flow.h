// SPDX-License-Identifier: MIT
// Content that flows down pages: pieces that are never cut, set below each other. A piece may ask to stay
// with the next one, to begin a page, or to have another piece (the head of its table) set again above it at
// the top of a page.
//
//   std::vector<FlowPiece> pieces = ...;
//   const FlowPages pages = flow(std::move(pieces), {first_room, other_room});
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "draw/sheet_pages_links.h"
#include "draw/text_fit.h"

namespace plugward {

/// A part of a piece that leads to the place of this name.
struct FlowLink {
  Box box;                ///< from the piece's top left corner
  std::string to;         ///< FlowPiece::name
  bool numbered = false;  ///< "→ page 7" is set into the box once the page is known
};

struct FlowPiece {
  std::vector<Group> groups;  ///< from its top left corner, mm
  double height = 0;
  double before = 0;                       ///< free above it, but not at the top of a page
  bool with_next = false;                  ///< not on the page before the next piece
  bool new_page = false;                   ///< at the top of a page
  std::shared_ptr<const FlowPiece> again;  ///< head of the table that the piece is a row of
  std::vector<FlowLink> links;
  std::string name;   ///< a place that links and the outline lead to; "" for none
  std::string title;  ///< of its outline entry; "" for none
  int level = 0;      ///< of its outline entry
};

/// Where pieces go on a page, mm from the paper's corner.
struct FlowRoom {
  double left = 0, top = 0, bottom = 0;
};

struct FlowPages {
  std::vector<std::vector<Group>> pages;  ///< at least one
  std::vector<OutlineEntry> outline;
  std::vector<PageLink> links;
};

/// `first`: room on page 1; `other`: on all that follow. Pieces that want to stay together and are higher
/// than a page together are parted. REQUIRES: no piece, its head included, is higher than `other`.
FlowPages flow(const std::vector<FlowPiece>&, const FlowRoom& first, const FlowRoom& other,
               const TextMeasure&);

}  // namespace plugward
