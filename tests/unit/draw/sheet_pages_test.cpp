// SPDX-License-Identifier: MIT
#include "draw/sheet_pages.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "base/format.h"
#include "draw/canvas.h"
#include "draw/true_size.h"
#include "support/machine.h"
#include "unit/draw/looms.h"
#include "unit/draw/page_faults.h"
#include "unit/draw/sheet_documents.h"

namespace plugward {
namespace {

bool has_text(const Scene& page, const std::string& text) {
  return std::any_of(page.groups.begin(), page.groups.end(), [&](const Group& group) {
    return std::any_of(group.items.begin(), group.items.end(), [&](const auto& item) {
      const Words* words = std::get_if<Words>(&item);
      return words != nullptr && words->text == text;
    });
  });
}

std::string outline_words(const SheetPages& pages) {
  std::string text;
  for (const OutlineEntry& entry : pages.outline)
    text += format("{}{} p{}\n", std::string(static_cast<std::size_t>(entry.level), '-'), entry.title,
                   entry.to.page + 1);
  return text;
}

}  // namespace

TEST_CASE("pages have the size of their paper, a number, the limits and the rule") {
  const test::LoomPtr loom = test::shipped_loom(2);
  const auto measure = make_text_measure();
  const SheetPictures pictures(loom->fitting, loom->advice);
  const sheet::Document document = test::every_block(2);
  struct Row {
    bool letter, landscape;
    double width, height;
  };
  // ISO 216 A4; ANSI/ASME Y14.1 size A.
  for (const Row& row : {Row{false, false, 210, 297}, Row{false, true, 297, 210},
                         Row{true, false, 215.9, 279.4}, Row{true, true, 279.4, 215.9}}) {
    CAPTURE(row.width);
    const SheetPages pages =
        sheet_pages(document, pictures, {row.letter, row.landscape, View::WireSide}, *measure);
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
      CHECK(pages.pages[i].width == row.width);
      CHECK(pages.pages[i].height == row.height);
      CHECK(has_text(pages.pages[i], format("page {} of {}", i + 1, pages.pages.size())));
      CHECK(has_text(pages.pages[i], "50 mm"));
      CHECK(test::faults(pages.pages[i], *measure) == "");
    }
  }
}

TEST_CASE("outline: sections, and pictures below them; a step and a cell lead to a picture") {
  const test::LoomPtr loom = test::shipped_loom(2);
  const auto measure = make_text_measure();
  const SheetPictures pictures(loom->fitting, loom->advice);
  const SheetPages pages = sheet_pages(test::every_block(2), pictures, {}, *measure);
  CHECK(outline_words(pages) ==
        "Order of work p1\nPictures p2\n-The board from above p2\n-Plug 1 now and then p3\n"
        "-Plug 2 now and then p3\nTrue size p4\n-Housings and headers at 1:1 p4\n");
  REQUIRE(pages.links.size() == 2);
  for (const PageLink& link : pages.links) {
    CHECK(link.page == 0);
    CHECK(link.to.name == "plug-1");
    CHECK(link.to.page == 2);
  }
  CHECK(has_text(pages.pages[0], "→ page 3"));
}

TEST_CASE(
    "on both boards of a swap a plug bears its number in the loom; a new housing is a part to be had first") {
  const auto machine = test::Machine::shipped("wren-a4", "heron-m7");
  const Fitting today = machine->fitting();
  const auto plan = plan_swap(today, *machine->to, {});
  const auto measure = make_text_measure();
  const SheetPictures pictures(*plan);
  const auto tag_and_verdict = [&](sheet::PictureKind kind, int plug) {
    const Scene scene = pictures.scene({"board", kind, -1, "", ""}, {190, 250}, View::WireSide, *measure);
    std::string words;
    for (const Group& group : scene.groups) {
      if (group.name != format("tag {}", plug + 1) && group.name != format("verdict of plug {}", plug + 1))
        continue;
      for (const auto& item : group.items) {
        if (const Words* w = std::get_if<Words>(&item)) words += w->text + " ";
      }
    }
    return words;
  };
  const int filament = machine->plug("filament/filament"), motor = machine->plug("motor-x/motor");
  CHECK(filament == 17);
  CHECK(tag_and_verdict(sheet::PictureKind::Board, filament) == "18 J8 ADAPT ");
  CHECK(tag_and_verdict(sheet::PictureKind::OldBoard, filament) == "18 J20 ");
  CHECK(tag_and_verdict(sheet::PictureKind::Board, motor) == "1 J2 REPIN ");
  CHECK(tag_and_verdict(sheet::PictureKind::OldBoard, motor) == "1 J2 ");
}

TEST_CASE("without a date there is a line to write it on") {
  const test::LoomPtr loom = test::shipped_loom(1);
  const auto measure = make_text_measure();
  const SheetPictures pictures(loom->fitting, loom->advice);
  sheet::Document document = test::every_block(1);
  CHECK(has_text(sheet_pages(document, pictures, {}, *measure).pages[0], "2026-11-25"));
  document.title.date = "";
  const Scene page = sheet_pages(document, pictures, {}, *measure).pages[0];
  CHECK(has_text(page, "Date"));
  CHECK_FALSE(has_text(page, "2026-11-25"));
}

TEST_CASE("a result that is no verdict stands in a plain frame") {
  const test::LoomPtr loom = test::shipped_loom(1);
  const auto measure = make_text_measure();
  const SheetPictures pictures(loom->fitting, loom->advice);
  sheet::Document document = test::every_block(1);
  document.verdict = "18 of 20 plugs";
  CHECK(has_text(sheet_pages(document, pictures, {}, *measure).pages[0], "18 of 20 plugs"));
}

TEST_CASE("equal input gives equal bytes") {
  const test::LoomPtr loom = test::shipped_loom(3);
  const auto measure = make_text_measure();
  const sheet::Document document = test::every_block(3);
  const SheetPictures first(loom->fitting, loom->advice), second(loom->fitting, loom->advice);
  const std::string bytes = sheet_pdf(document, first, {}, *measure);
  CHECK(bytes == sheet_pdf(document, second, {}, *make_text_measure()));
  CHECK(bytes.rfind("%PDF-", 0) == 0);
}

TEST_CASE("a swap: both boards, and a plug has the same number on either") {
  const auto machine = test::Machine::shipped("wren-a4", "heron-m7");
  const Fitting fitting = machine->fitting();
  const auto plan = plan_swap(fitting, *machine->to, {});
  const auto measure = make_text_measure();
  const SheetPictures pictures(*plan);
  const int plugs = static_cast<int>(plan->before_moves.placements.size());
  for (const bool landscape : {false, true}) {
    const SheetPages pages =
        sheet_pages(test::every_block(plugs, true), pictures, {false, landscape, View::WireSide}, *measure);
    for (const Scene& page : pages.pages) CHECK(test::faults(page, *measure) == "");
  }
  // The tag and the name of a plug stand in one group "plug TAG" of either picture.
  const auto tags = [&](sheet::PictureKind kind) {
    std::map<std::string, std::string> by_name;
    const Scene scene = pictures.scene({"b", kind, -1, "b", ""}, {190, 230}, View::WireSide, *measure);
    for (const Group& group : scene.groups) {
      if (group.name.rfind("plug ", 0) != 0) continue;
      for (const auto& item : group.items) {
        const Words* words = std::get_if<Words>(&item);
        if (words != nullptr && words->text.find('/') != std::string::npos) by_name[words->text] = group.name;
      }
    }
    return by_name;
  };
  const auto now = tags(sheet::PictureKind::OldBoard), then = tags(sheet::PictureKind::Board);
  CHECK(now.size() == fitting.placements.size());
  CHECK(then.size() == static_cast<std::size_t>(plugs));
  for (const auto& [name, tag] : then) {
    CAPTURE(name);
    CHECK(now.at(name) == tag);
  }
}

TEST_CASE("no room is too small for a picture, and none is wider than its room") {
  const test::LoomPtr loom = test::shipped_loom(14);
  const auto measure = make_text_measure();
  const SheetPictures pictures(loom->fitting, loom->advice);
  for (const PictureRoom room :
       {PictureRoom{190, 230}, PictureRoom{277, 150}, PictureRoom{195.9, 215}, PictureRoom{259.4, 160}}) {
    CAPTURE(room.width);
    for (int i = -1; i < 14; ++i) {
      const sheet::Picture picture{"p", i < 0 ? sheet::PictureKind::Board : sheet::PictureKind::Plug, i, "t",
                                   "w"};
      const Scene scene = pictures.scene(picture, room, View::WireSide, *measure);
      CHECK(scene.width <= room.width + 0.01);
      CHECK(scene.height <= room.height + 0.01);
      CHECK(test::faults(scene, *measure) == "");
    }
  }
}

TEST_CASE("true size: each housing and header once, with all its places, at its pitch") {
  const test::LoomPtr loom = test::shipped_loom(14);
  const TrueSizeParts parts = true_size_parts(loom->fitting);
  std::vector<std::string> words;
  for (const TrueSizePart& p : parts.parts)
    words.push_back(
        format("{} {} {}: {}", p.header ? "header" : "housing", p.family, p.positions, join(p.names, " ")));
  CHECK(words == std::vector<std::string>{
                     "housing pin-2.54 3: kite-probe/control", "housing pin-2.54 2: kite-probe/trigger",
                     "housing xh-2.50 4: x-motor/motor y-motor/motor",
                     "housing xh-2.50 3: limit-switch/limit changeover-limit/limit optical-switch/limit "
                     "firefly-led-bar/light inductive-sensor/sensor",
                     "housing xh-2.50 2: fan-24v/fan thermistor/thermistor bed-thermistor/thermistor",
                     "housing kk-2.54 3: fan-12v/fan", "housing vh-3.96 2: nozzle-heater/heater",
                     "header pin-2.54 3: J9 PROBE", "header pin-2.54 2: J10 TRIGGER",
                     "header xh-2.50 4: J2 MOTOR X J3 MOTOR Y",
                     "header xh-2.50 3: J5 LIMIT X J6 LIMIT Y J7 LIMIT Z J20 LIGHT J21 SENSOR",
                     "header xh-2.50 2: J11 FAN 1 J18 THERM 0 J19 THERM BED",
                     "header kk-2.54 3: J13 CASE FAN", "header vh-3.96 2: J14 HEAT"});
  const auto measure = make_text_measure();
  for (const Scene& page : true_size_pages(parts, {190, 240}, *measure)) {
    CHECK(test::faults(page, *measure) == "");
    for (const Group& group : page.groups) {
      if (group.name != "header at true size") continue;
      // Pins are the squares of 0.64 mm; neighbours of a row lie one pitch apart.
      std::vector<double> xs;
      for (const auto& item : group.items) {
        const Shape& shape = std::get<Shape>(item);
        if (shape.path.size() != 5 || std::abs(shape.path[1].p1.x - shape.path[0].p1.x - 0.64) > 1e-9)
          continue;
        xs.push_back(shape.path[0].p1.x);
      }
      for (std::size_t i = 1; i < xs.size(); ++i) {
        const double pitch = xs[i] - xs[i - 1];
        CAPTURE(pitch);
        // "pin-2.54", "xh-2.50", "kk-2.54", "vh-3.96"
        CHECK(
            (std::abs(pitch - 2.54) < 1e-9 || std::abs(pitch - 2.5) < 1e-9 || std::abs(pitch - 3.96) < 1e-9));
      }
    }
  }
}

}  // namespace plugward
