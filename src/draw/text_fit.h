// SPDX-License-Identifier: MIT
// Text is measured before it is placed: wrapped, turned upright or shortened, never made smaller.
//
//   const auto lines = wrap("seen from the wire side", 30, {9, false}, measure);
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "draw/scene.h"

namespace plugward {

struct Type {
  double points = 9;
  bool bold = false;
};

/// Lines no wider than `width` mm. Breaks at spaces, after '/', '.' and '-', and inside a word only when the
/// word alone is too wide (Chinese text has no spaces). Never empty.
std::vector<std::string> wrap(std::string_view text, double width, Type, const TextMeasure&);

/// `text`, or its beginning and '…' when it is wider than `width` mm.
std::string shorten(std::string_view text, double width, Type, const TextMeasure&);

/// At most `most` lines; the last one is shortened when there would be more.
std::vector<std::string> wrap_at_most(std::string_view text, double width, std::size_t most, Type,
                                      const TextMeasure&);

double text_width(const std::string&, Type, const TextMeasure&);
/// The widest single word, as wrap() breaks words.
double widest_word(std::string_view text, Type, const TextMeasure&);

/// Adds lines below each other from a first baseline `at`; returns the baseline after the last.
double add_lines(Group&, const std::vector<std::string>&, Point at, Type, Ink, Anchor = Anchor::Start);

/// Upright rectangle around a text, rotation by multiples of 90 degrees included.
struct Box {
  double left = 0, top = 0, right = 0, bottom = 0;
};
Box words_box(const Words&, const TextMeasure&);
/// Do they share more than `slack` mm both ways?
bool overlap(const Box&, const Box&, double slack = 0.0);

}  // namespace plugward
