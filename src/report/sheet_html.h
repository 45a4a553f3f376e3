// SPDX-License-Identifier: MIT
// A document as one HTML file that needs no network: for a phone or tablet on the bench. Boxes stay ticked
// and readings stay typed in the browser's own store; a reading is compared with what was expected as it is
// typed.
//
//   sheet_html(document, [&](const sheet::Picture& p, PictureFace face) { return svg_of(p, face); })
#pragma once

#include <functional>
#include <string>

#include "sheet/document.h"

namespace plugward {

enum class PictureFace { Wire, Mating };

/// An SVG element of the picture whose ids are unique in the file; called for each face of a plug,
/// and once for any other picture. An empty one leaves the words alone.
using PictureSvg = std::function<std::string(const sheet::Picture&, PictureFace)>;

std::string sheet_html(const sheet::Document&, const PictureSvg&);

}  // namespace plugward
