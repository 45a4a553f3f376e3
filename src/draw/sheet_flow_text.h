// SPDX-License-Identifier: MIT
// Words of a document as pieces of a page: headings, paragraphs, cautions, lists. A paragraph is one piece a
// line, so that it can go on on the next page, but neither its first nor its last line stands alone.
//
//   FlowText text(190, measure);
//   text.heading("Order of work", "order-of-work", 0);
//   text.paragraph("Power off before you plug.", {});
//   flow(text.pieces, ...);
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "draw/sheet_flow.h"

namespace plugward {

namespace flow_type {
inline constexpr Type body{10, false}, strong{10, true}, small{9, false}, small_strong{9, true},
    heading{13, true}, caption{11, true};
}

/// What stands in front of the first line of a paragraph.
enum class FlowMark { None, Box, Bullet, Warning };

struct FlowParagraph {
  Type type = flow_type::body;
  double left = 0;   ///< where mark and text begin, mm from the left edge
  double right = 0;  ///< free at the right edge
  FlowMark mark = FlowMark::None;
  std::string sign{};  ///< before the text: "3."; "" for none
  double before = 0;
  bool with_next = false;
  bool whole = false;  ///< all lines on one page, if a page holds them
};

/// From the top of a line to its baseline.
double baseline_of(Type, const TextMeasure&);
/// A triangle with an exclamation mark, 4.4 x 4 mm, its upper left corner at `corner`.
void add_warning_mark(Group&, Point corner);

/// Collects pieces of one width.
class FlowText {
 public:
  FlowText(double width, const TextMeasure& measure) : width_(width), measure_(measure) {}

  double width() const { return width_; }
  const TextMeasure& measure() const { return measure_; }

  /// Stays with what follows it. `level`: 0 for a section, 1 for a picture.
  void heading(const std::string& text, const std::string& name, int level);
  void paragraph(std::string_view text, const FlowParagraph&);
  void add(FlowPiece piece) { pieces.push_back(std::move(piece)); }

  std::vector<FlowPiece> pieces;

 private:
  double width_;
  const TextMeasure& measure_;
};

/// The pieces from `first` on stay on one page, if a page holds them.
void keep_together(std::vector<FlowPiece>&, std::size_t first);

}  // namespace plugward
