// SPDX-License-Identifier: MIT
// Running text beside the picture: headings, paragraphs with a tick box, a number flag or a mark in front.
#pragma once

#include <string>
#include <vector>

#include "draw/text_fit.h"

namespace plugward {

struct Paragraph {
  enum class Mark { None, TickBox, Flag, Number };
  Mark mark = Mark::None;
  std::string sign;  ///< in the flag; of Number: before the text
  std::string text;
  bool heading = false;
};

/// Sets as many paragraphs as `room` holds; the last line then says how many were left out, headings not
/// counted. A heading is set only together with the paragraph under it. `rest`: where they are ("more: see
/// the text report"); "": nothing is said of them. Returns how many paragraphs, headings too, came before
/// what was left out.
std::size_t add_paragraphs(Group&, const std::vector<Paragraph>&, const Box& room, const std::string& rest,
                           const TextMeasure&);

/// Likewise in two columns of equal width, read down the left one first; a heading begins the right one
/// where that keeps them about level.
std::size_t add_paragraph_columns(Group&, const std::vector<Paragraph>&, const Box& room,
                                  const std::string& rest, const TextMeasure&);

/// The height that holds them all in two columns of a room of this width.
double height_in_columns(const std::vector<Paragraph>&, double width, const TextMeasure&);

/// The height that holds them all in this width.
double height_of(const std::vector<Paragraph>&, double width, const TextMeasure&);

/// A flag with a sign, its pole's foot at `foot`; `upright` turns the sign. Returns the space it takes.
Box add_flag(Group&, const std::string& sign, Point foot, bool upright, const TextMeasure&);

}  // namespace plugward
