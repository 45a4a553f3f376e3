// SPDX-License-Identifier: MIT
// Whole placements: no text on text, every plug is found, and the pages stay as they were.
// PLUGWARD_REWRITE=1 in the environment writes the golden file anew.
#include "draw/pages.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>

#include "base/file.h"
#include "base/format.h"
#include "draw/canvas.h"
#include "draw/mating_picture.h"
#include "draw/panel_words.h"
#include "draw/placement_picture.h"
#include "draw/shapes.h"
#include "unit/draw/fixtures.h"
#include "unit/draw/looms.h"
#include "unit/draw/page_faults.h"
#include "unit/draw/scene_query.h"

namespace plugward {
namespace {

using test::faults;
using test::find_group;
using test::first_words;

/// Every text of a scene, one a line.
std::string texts(const Scene& scene) {
  std::string all;
  for (const Group& group : scene.groups) {
    for (const auto& item : group.items) {
      if (const Words* words = std::get_if<Words>(&item)) all += words->text + "\n";
    }
  }
  return all;
}

bool contains(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::vector<test::LoomPtr> looms() {
  std::vector<test::LoomPtr> all;
  all.push_back(test::four_fans());
  for (const int plugs : {1, 2, 5, 14}) all.push_back(test::shipped_loom(plugs));
  for (const int plugs : {1, 5, 14, 30, 64}) all.push_back(test::generated_loom(7, plugs));
  for (unsigned seed = 20; seed < 24; ++seed) all.push_back(test::generated_loom(seed, 14));
  return all;
}

}  // namespace

TEST_CASE(
    "whole placements: no text lies on other text, leaves the page or is small; every plug has its page") {
  const auto measure = make_text_measure();
  for (const test::LoomPtr& loom : looms()) {
    for (const SheetSize& sheet : {a4_landscape, letter_landscape}) {
      CAPTURE(loom->name);
      CAPTURE(sheet.width);
      const std::vector<Scene> pages =
          placement_pages(loom->fitting, loom->advice, {sheet, View::WireSide}, *measure);
      const std::size_t plugs = loom->fitting.placements.size();
      REQUIRE(pages.size() >= plugs + 1);
      for (std::size_t i = 0; i < pages.size(); ++i) {
        CAPTURE(i);
        CHECK(faults(pages[i], *measure) == "");
        CHECK(contains(texts(pages[i]), format("page {} of {}\n", i + 1, pages.size())));
      }
      // Behind the board and its list come the sheets of the plugs, in the order of their tags.
      std::vector<std::string> tags;
      for (const Scene& page : pages) {
        const std::string tag = first_words(*find_group(page, "title")).text;
        const bool picture = find_group(page, "words beside the picture") != nullptr;
        if (picture) tags.push_back(tag);
        if (find_group(page, "words that go on") != nullptr) CHECK(tag == tags.back());
      }
      REQUIRE(tags.size() == plugs);
      for (std::size_t tag = 1; tag <= plugs; ++tag) CHECK(tags[tag - 1] == format("{}", tag));
      if (plugs > 30) continue;
      CHECK(faults(placement_image(loom->fitting, loom->advice, {sheet, View::WireSide}, *measure),
                   *measure) == "");
    }
  }
}

TEST_CASE("each callout names the header of its plug, and its leader ends there") {
  const auto measure = make_text_measure();
  for (const test::LoomPtr& loom : looms()) {
    CAPTURE(loom->name);
    const PlacementFacts facts = gather_placement(loom->fitting, loom->advice, a4_landscape);
    const Scene scene = placement_picture(facts, {}, *measure).scene;
    for (std::size_t i = 0; i < loom->fitting.placements.size(); ++i) {
      const CalloutSlot& slot = facts.callouts.slots[i];
      if (slot.middle < 0) continue;
      const Header& header =
          loom->board.headers[static_cast<std::size_t>(loom->fitting.placements[i].header)];
      CAPTURE(header.id);
      const Group& callout = *find_group(scene, format("plug {}", slot.tag));
      std::vector<std::string> words;
      for (const auto& item : callout.items) {
        if (const Words* w = std::get_if<Words>(&item)) words.push_back(w->text);
      }
      REQUIRE(words.size() >= 2);
      CHECK(words[0] == format("{}", slot.tag));
      CHECK(words[1].rfind(header.id, 0) == 0);
      CHECK(first_words(*find_group(scene, format("verdict of plug {}", slot.tag))).text ==
            to_word(facts.plugs[i].advice.verdict));
      const Shape& line = test::first_shape(*find_group(scene, "leader to " + header.id));
      CHECK(path_start(line).y == doctest::Approx(slot.middle));
      const Box& box = facts.board.headers[static_cast<std::size_t>(loom->fitting.placements[i].header)];
      const Point end = path_end(line);
      CHECK(end.x > box.left - 0.01);
      CHECK(end.x < box.right + 0.01);
      CHECK(end.y > box.top - 0.01);
      CHECK(end.y < box.bottom + 0.01);
    }
  }
}

namespace {

/// The words under the title, without the breaks between lines and without "continued".
std::string running_words(const Scene& page, const std::string& group) {
  std::string all;
  const Group* words = find_group(page, group);
  if (words == nullptr) return all;
  for (const auto& item : words->items) {
    if (const Words* w = std::get_if<Words>(&item)) all += w->text + " ";
  }
  return all;
}

}  // namespace

TEST_CASE("on paper every word of a plug stands beside its picture or behind it; in one image below it") {
  const auto measure = make_text_measure();
  for (const test::LoomPtr& loom : looms()) {
    if (loom->fitting.placements.size() > 14) continue;
    CAPTURE(loom->name);
    loom->advice = advise(loom->fitting, {.softer = false});
    for (const SheetSize& sheet : {a4_landscape, letter_landscape}) {
      const PlacementFacts facts = gather_placement(loom->fitting, loom->advice, sheet);
      const std::vector<Scene> pages =
          placement_pages(loom->fitting, loom->advice, {sheet, View::WireSide}, *measure);
      const Scene image = placement_image(loom->fitting, loom->advice, {sheet, View::WireSide}, *measure);
      for (const int placement : facts.by_tag) {
        const std::string tag = format("{}", facts.callouts.slots[static_cast<std::size_t>(placement)].tag);
        CAPTURE(tag);
        std::string on_paper;
        for (const Scene& page : pages) {
          if (first_words(*find_group(page, "title")).text != tag) continue;
          CHECK(faults(page, *measure) == "");
          on_paper +=
              running_words(page, "words beside the picture") + running_words(page, "words that go on");
        }
        const std::string in_image = running_words(image, format("plug {}: words", tag));
        const MatingFacts one =
            gather(loom->fitting, facts.plugs[static_cast<std::size_t>(placement)].advice, placement);
        for (const Paragraph& p : panel_text(one)) {
          CAPTURE(p.text);
          std::string first = p.text.substr(0, p.text.find(' '));  // lines break in different places
          CHECK(contains(on_paper, first));
          CHECK(contains(in_image, first));
        }
        CHECK_FALSE(contains(on_paper, "text report"));
        CHECK_FALSE(contains(in_image, "text report"));
      }
    }
  }
}

TEST_CASE("a list follows when the board's sheet had to leave something out") {
  const auto measure = make_text_measure();
  struct Row {
    int plugs;
    bool lists;
  };
  for (const Row& row : {Row{1, false}, {64, true}}) {
    const test::LoomPtr loom = test::generated_loom(7, row.plugs);
    const std::vector<Scene> pages = placement_pages(loom->fitting, loom->advice, {}, *measure);
    CAPTURE(row.plugs);
    std::string lists;
    for (const Scene& page : pages) {
      if (contains(texts(page), "List of plugs")) lists += texts(page);
    }
    CHECK(!lists.empty() == row.lists);
    if (!row.lists) continue;
    for (int tag = 1; tag <= row.plugs; ++tag) {
      bool found = false;
      for (const Scene& page : pages)
        found = found || find_group(page, format("plug {} in the list", tag)) != nullptr;
      CHECK(found);
    }
    CHECK(contains(lists, "List of plugs, continued\n"));
  }
}

TEST_CASE("one image: a panel for each plug, with the cavities of its own housing") {
  const auto measure = make_text_measure();
  const test::LoomPtr loom = test::four_fans();
  const PlacementFacts facts = gather_placement(loom->fitting, loom->advice, a4_landscape);
  const Scene image = placement_image(loom->fitting, loom->advice, {}, *measure);
  CHECK(image.width == 277);
  CHECK(image.height > 190);
  for (std::size_t i = 0; i < 4; ++i) {
    const int tag = facts.callouts.slots[i].tag;
    CAPTURE(tag);
    REQUIRE(find_group(image, format("panel of plug {}", tag)) != nullptr);
    const Group* lead = find_group(image, format("plug {}: now lead in cavity 1", tag));
    REQUIRE(lead != nullptr);
    CHECK(first_words(*lead).text == (i == 1 ? "BK" : "RD"));
    // Only the plug on J2 is re-pinned.
    const Group* then = find_group(image, format("plug {}: then lead in cavity 1", tag));
    CHECK((then != nullptr) == (i == 1));
    if (then != nullptr) CHECK(first_words(*then).text == "RD");
  }
}

TEST_CASE("pages: golden") {
  const test::StubMeasure measure;
  const test::LoomPtr loom = test::four_fans();
  const std::vector<Scene> pages = placement_pages(loom->fitting, loom->advice, {}, measure);
  const std::string path = format("{}/tests/unit/draw/golden/four_fans_board.scene", PLUGWARD_SOURCE_DIR);
  const std::string now = dump(pages.front());
  if (const char* rewrite = std::getenv("PLUGWARD_REWRITE");
      rewrite != nullptr && std::string_view(rewrite) == "1")
    write_file(path, now);
  CHECK(now == read_file(path));
  CHECK(
      pages.front().description ==
      "Verdict REPIN. 4 plugs: 3 MATE, 1 REPIN (2 contacts). 1: plug p1 on J1 FAN: MATE, as it is; looks "
      "like "
      "J2, J5. 2: plug p2 on J2 FAN: REPIN, move 2 contacts; looks like J1, J5. 3: plug p3 on J3 FAN: MATE, "
      "as it is. 4: plug p4 on J4 FAN: MATE, as it is; underside.");
}

}  // namespace plugward
