// SPDX-License-Identifier: MIT
// A picture as data: shapes and words in millimetres, y downwards from the top left corner of the page.
// Free of any drawing library; golden tests compare dump(scene).
//
//   Scene page{.width = 277, .height = 190, .title = "Kite bed probe on J9"};
//   page.groups.push_back({"frame", {rectangle({0, 0}, 10, 5, body_look())}});   // shapes.h, style.h
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace plugward {

struct Point {
  double x = 0, y = 0;
};

/// 0xRRGGBB.
using Ink = std::uint32_t;

struct Stroke {
  Ink ink = 0x000000;
  double width = 0.25;         ///< mm
  std::vector<double> dashes;  ///< mm drawn, mm left out, ...
  bool round = false;          ///< round ends and joins; otherwise cut off square
};

struct Shape {
  /// Path of straight lines and cubic curves.
  struct Command {
    char op = 'M';
    Point p1, p2, p3;
  };  ///< 'M' p1, 'L' p1, 'C' p1 p2 p3, 'Z'
  std::vector<Command> path;
  std::optional<Ink> fill;
  std::optional<Stroke> stroke;
};

enum class Anchor { Start, Middle, End };

struct Words {
  Point at;  ///< on the baseline
  std::string text;
  double points = 9;  ///< type size in points (1/72 inch)
  bool bold = false;
  Ink ink = 0x000000;
  Anchor anchor = Anchor::Start;
  double rotation = 0;  ///< degrees anticlockwise about `at`
};

/// A named part of the picture: becomes a <g> with a title where the format has one.
struct Group {
  std::string name;
  std::vector<std::variant<Shape, Words>> items;
  bool verdict = false;  ///< of a plug: a page that tells it elsewhere leaves it out

  void add(Shape shape) { items.emplace_back(std::move(shape)); }
  void add(Words words) { items.emplace_back(std::move(words)); }
};

struct Scene {
  double width = 0, height = 0;  ///< mm
  std::string title;
  std::string description;  ///< says in words what the picture shows, moves included
  std::vector<Group> groups;
};

/// One line an item, millimetres rounded to 0.01: what golden tests compare.
std::string dump(const Scene&);

/// How wide a text is. The real one asks the text library; tests use a fixed-width stub.
class TextMeasure {
 public:
  virtual ~TextMeasure() = default;
  struct Size {
    double width = 0, ascent = 0, descent = 0;
  };  ///< mm
  virtual Size measure(const std::string& text, double points, bool bold) const = 0;
};

}  // namespace plugward
