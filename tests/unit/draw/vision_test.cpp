// SPDX-License-Identifier: MIT
// Nothing is said by colour alone: what is read stands out for every eye and in grey, and what colour tells
// is also told by letters.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "base/format.h"
#include "draw/canvas.h"
#include "draw/sheet_pages.h"
#include "draw/style.h"
#include "draw/verdict_shape.h"
#include "judge/words.h"
#include "quantity/colour.h"
#include "support/vision.h"
#include "unit/draw/looms.h"
#include "unit/draw/sheet_documents.h"

namespace plugward {
namespace {

using test::Vision;

std::vector<Point> outline_of(const Shape& shape) {
  std::vector<Point> points;
  Point at;
  for (const Shape::Command& c : shape.path) {
    if (c.op == 'Z') continue;
    if (c.op == 'C') {
      for (int i = 1; i <= 8; ++i) {
        const double t = i / 8.0, u = 1 - t;
        const double a = u * u * u, b = 3 * u * u * t, d = 3 * u * t * t, e = t * t * t;
        points.push_back({a * at.x + b * c.p1.x + d * c.p2.x + e * c.p3.x,
                          a * at.y + b * c.p1.y + d * c.p2.y + e * c.p3.y});
      }
      at = c.p3;
      continue;
    }
    at = c.p1;
    points.push_back(at);
  }
  return points;
}

bool inside(const Shape& shape, Point p) {
  const std::vector<Point> points = outline_of(shape);
  bool in = false;
  for (std::size_t i = 0, k = points.size() - 1; i < points.size(); k = i++) {
    const Point &a = points[i], &b = points[k];
    if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) in = !in;
  }
  return in;
}

/// Words that hardly stand out from what lies under them, for the eye where it is worst.
std::vector<std::string> faint_words(const Scene& page, const TextMeasure& measure) {
  std::vector<std::string> faint;
  std::vector<const Shape*> filled;
  for (const Group& group : page.groups) {
    for (const auto& item : group.items) {
      if (const Shape* shape = std::get_if<Shape>(&item)) {
        if (shape->fill) filled.push_back(shape);
        continue;
      }
      const Words& words = std::get<Words>(item);
      if (words.text.empty()) continue;
      const Box box = words_box(words, measure);
      const Point middle{(box.left + box.right) / 2, (box.top + box.bottom) / 2};
      Ink under = style::paper;
      for (const Shape* shape : filled) {
        if (inside(*shape, middle)) under = *shape->fill;
      }
      for (const Vision vision : test::all_visions) {
        const double ratio = test::contrast(test::seen(words.ink, vision), test::seen(under, vision));
        if (ratio < 4.5) faint.push_back(format("'{}' ({}): {:.2f}", words.text, group.name, ratio));
      }
    }
  }
  return faint;
}

}  // namespace

TEST_CASE("words stand out 4.5 to 1 for every eye and in grey (WCAG 2.2, criterion 1.4.3)") {
  const test::LoomPtr loom = test::shipped_loom(14);
  const auto measure = make_text_measure();
  const SheetPictures pictures(loom->fitting, loom->advice);
  const SheetPages pages = sheet_pages(test::every_block(14), pictures, {}, *measure);
  REQUIRE(pages.pages.size() > 10);
  for (std::size_t i = 0; i < pages.pages.size(); ++i) {
    CAPTURE(i);
    CHECK(format("{}", join(faint_words(pages.pages[i], *measure), "\n")) == "");
  }
}

TEST_CASE("the check sees faint words") {
  const auto measure = make_text_measure();
  Scene page{100, 50, "", "", {}};
  Group group{"faint", {}};
  // Told from its ground by hue alone: as bright as the red below it.
  group.add(
      Shape{{{'M', {0, 0}, {}, {}}, {'L', {90, 0}, {}, {}}, {'L', {90, 40}, {}, {}}, {'L', {0, 40}, {}, {}}},
            Ink{0xd00000},
            std::nullopt});
  group.add(Words{{10, 20}, "hue", 12, true, 0x008000, Anchor::Start, 0});
  page.groups.push_back(group);
  const std::vector<std::string> faint = faint_words(page, *measure);
  REQUIRE(faint.size() >= 3);
  CHECK(faint.front().starts_with("'hue' (faint): "));
}

TEST_CASE("some colours of leads look alike to some eyes, so every lead carries its letters") {
  // Two inks that differ by less than this in lightness cannot be told apart in grey (L* of CIE 1976).
  const auto lightness = [](const test::Light& l) {
    const double y = test::luminance(l);
    return y > 0.008856 ? 116 * std::cbrt(y) - 16 : 903.3 * y;
  };
  int alike = 0;
  for (const ColourInfo& a : all_colours()) {
    for (const ColourInfo& b : all_colours()) {
      if (a.colour < b.colour && std::abs(lightness(test::seen(a.rgb, Vision::Grey)) -
                                          lightness(test::seen(b.rgb, Vision::Grey))) < 10)
        ++alike;
    }
  }
  CHECK(alike > 0);

  const test::LoomPtr loom = test::shipped_loom(14);
  const auto measure = make_text_measure();
  const SheetPictures pictures(loom->fitting, loom->advice);
  int leads = 0;
  for (int plug = 0; plug < 14; ++plug) {
    const sheet::Picture picture{"plug", sheet::PictureKind::Plug, plug, "", ""};
    const Scene scene = pictures.scene(picture, {190, 250}, View::WireSide, *measure);
    const Placement& placed = loom->fitting.placements[static_cast<std::size_t>(plug)];
    std::multiset<std::string> wanted, found;
    for (const Lead& lead : loom->harness.plugs[static_cast<std::size_t>(placed.plug)].leads)
      wanted.insert(to_code(lead.colour));
    for (const Group& group : scene.groups) {
      if (group.name.find(" lead in cavity ") == std::string::npos || group.name.starts_with("then"))
        continue;
      ++leads;
      for (const auto& item : group.items) {
        if (const Words* words = std::get_if<Words>(&item)) found.insert(words->text);
      }
      // Its outline stands out from paper, whatever its colour (WCAG 2.2, criterion 1.4.11: 3 to 1).
      const Shape* first = std::get_if<Shape>(&group.items.front());
      REQUIRE(first != nullptr);
      REQUIRE(first->stroke);
      for (const Vision vision : test::all_visions)
        CHECK(test::contrast(test::seen(first->stroke->ink, vision), test::seen(style::paper, vision)) >= 3);
    }
    CHECK(found == wanted);
  }
  CHECK(leads > 30);
}

}  // namespace plugward
