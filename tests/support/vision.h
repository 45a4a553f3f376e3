// SPDX-License-Identifier: MIT
// How an ink looks to an eye, or in print, that lacks some or all colour.
//
//   contrast(seen(0xc00000, Vision::NoRed), seen(0xffffff, Vision::NoRed))      // 4.5 for text by WCAG 2.2
#pragma once

#include <algorithm>
#include <array>
#include <cmath>

#include "draw/scene.h"

namespace plugward::test {

enum class Vision { Usual, NoRed, NoGreen, NoBlue, Grey };
inline constexpr std::array<Vision, 5> all_visions = {Vision::Usual, Vision::NoRed, Vision::NoGreen,
                                                      Vision::NoBlue, Vision::Grey};

/// Linear light 0..1.
using Light = std::array<double, 3>;

/// IEC 61966-2-1 (sRGB).
inline double linear(unsigned byte) {
  const double v = byte / 255.0;
  return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

/// Relative luminance (WCAG 2.2; the coefficients of ITU-R BT.709).
inline double luminance(const Light& l) {
  return 0.2126 * l[0] + 0.7152 * l[1] + 0.0722 * l[2];
}

/// The matrices of Machado, Oliveira, Fernandes, "A Physiologically-based Model for Simulation of Color
/// Vision Deficiency", IEEE TVCG 15 (2009), at full severity, applied to linear light; from memory.
inline Light seen(Ink ink, Vision vision) {
  const Light l{linear((ink >> 16) & 0xff), linear((ink >> 8) & 0xff), linear(ink & 0xff)};
  using Matrix = std::array<std::array<double, 3>, 3>;
  static constexpr Matrix no_red = {
      {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
  static constexpr Matrix no_green = {
      {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
  static constexpr Matrix no_blue = {
      {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};
  if (vision == Vision::Usual) return l;
  if (vision == Vision::Grey) return {luminance(l), luminance(l), luminance(l)};
  const Matrix& m = vision == Vision::NoRed ? no_red : vision == Vision::NoGreen ? no_green : no_blue;
  Light result{};
  for (std::size_t row = 0; row < 3; ++row) {
    for (std::size_t k = 0; k < 3; ++k) result[row] += m[row][k] * l[k];
    result[row] = std::min(1.0, std::max(0.0, result[row]));
  }
  return result;
}

/// 1 (none) to 21 (black on white), WCAG 2.2.
inline double contrast(const Light& a, const Light& b) {
  const double one = luminance(a) + 0.05, other = luminance(b) + 0.05;
  return one > other ? one / other : other / one;
}

}  // namespace plugward::test
