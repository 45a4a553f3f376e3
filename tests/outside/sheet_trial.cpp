// SPDX-License-Identifier: MIT
// Sheets by chance: every page keeps the rules of unit/draw/page_faults.h, and equal input gives equal bytes.
//
//   sheet_trial check 60          60 documents with random plugs; one line a fault, then the count
//   sheet_trial write FOLDER      a few PDF files for sheet_pdf_test.py
//   sheet_trial demo FOLDER       the sheets of the shipped machine and probe
#include <iostream>
#include <memory>
#include <string>

#include "base/file.h"
#include "draw/canvas.h"
#include "draw/sheet_pages.h"
#include "sheet/documents.h"
#include "support/machine.h"
#include "unit/draw/fixtures.h"
#include "unit/draw/looms.h"
#include "unit/draw/page_faults.h"
#include "unit/draw/sheet_documents.h"

namespace plugward {
namespace {

/// Every eighth seed is a board of many headers, the others are one plug each.
struct World {
  test::FixturePtr fixture;
  test::LoomPtr loom;
  const Fitting& fitting() const { return loom ? loom->fitting : fixture->fitting; }
  const Advice& advice() const { return loom ? loom->advice : fixture->advice; }
};

World world_of(unsigned seed) {
  World world;
  if (seed % 8 == 0) {
    world.loom = test::generated_loom(seed, 1 + static_cast<int>(seed % 24));
  } else {
    world.fixture = test::random_fixture(seed);
    // The reader lets no unknown family through, and the geometry of seatings relies on that.
    std::string& plug_family = world.fixture->harness.plugs.front().family;
    if (world.fixture->catalogue.find(plug_family) == nullptr) {
      plug_family = "pin-2.54";
      world.fixture->board.headers.front().family = "pin-2.54";
    }
  }
  return world;
}

int check(unsigned count, const TextMeasure& measure) {
  std::size_t pages = 0, faulty = 0;
  for (unsigned seed = 1; seed <= count; ++seed) {
    const World world = world_of(seed);
    const int placements = static_cast<int>(world.fitting().placements.size());
    const sheet::Document document = test::random_document(seed, std::min(placements, 6));
    const SheetPictures pictures(world.fitting(), world.advice());
    SheetPagesOptions options;
    options.letter = seed % 2 == 0;
    options.landscape = seed / 2 % 2 == 0;
    options.view = seed % 3 == 0 ? View::MatingFace : View::WireSide;
    const SheetPages laid = sheet_pages(document, pictures, options, measure);
    for (std::size_t i = 0; i < laid.pages.size(); ++i) {
      const std::string faults = test::faults(laid.pages[i], measure);
      if (faults.empty()) continue;
      ++faulty;
      std::cout << "seed " << seed << " page " << i + 1 << ":\n" << faults << "\n";
    }
    pages += laid.pages.size();
    if (seed % 20 != 0) continue;
    if (sheet_pdf(document, pictures, options, measure) != sheet_pdf(document, pictures, options, measure)) {
      ++faulty;
      std::cout << "seed " << seed << ": two files of the same sheet differ\n";
    }
  }
  std::cout << count << " documents, " << pages << " pages, " << faulty << " faulty\n";
  return faulty == 0 ? 0 : 1;
}

void write(const std::string& folder, const TextMeasure& measure) {
  const test::LoomPtr wren = test::shipped_loom(14);
  const SheetPictures pictures(wren->fitting, wren->advice);
  const sheet::Document document = test::every_block(14);
  for (const bool letter : {false, true}) {
    for (const bool landscape : {false, true}) {
      SheetPagesOptions options;
      options.letter = letter;
      options.landscape = landscape;
      const std::string name =
          std::string(letter ? "letter" : "a4") + (landscape ? "-landscape" : "-portrait");
      write_file(folder + "/" + name + ".pdf", sheet_pdf(document, pictures, options, measure));
    }
  }
  const test::FixturePtr foreign = test::foreign_titles();
  const SheetPictures foreign_pictures(foreign->fitting, foreign->advice);
  sheet::Document other = test::every_block(1);
  other.title.board = "苍鹭运动控制板";
  other.title.machine = "Датчик стола «Коршун»";
  write_file(folder + "/foreign.pdf", sheet_pdf(other, foreign_pictures, {}, measure));
}

/// The sheets of the demo's machine, as the program makes them.
void write_demo(const std::string& folder, const TextMeasure& measure) {
  const auto machine = test::Machine::shipped("wren-a4", "heron-m7");
  const Fitting fitting = machine->fitting();
  const auto plan = plan_swap(fitting, *machine->to, {});
  sheet::SheetFacts told;
  told.machine = "Wren no. 3";
  told.date = "2026-11-25";
  const sheet::Document swap = sheet::swap_document(swap_papers(*plan), told);
  const SheetPictures swap_pictures(*plan);
  write_file(folder + "/swap-a4.pdf", sheet_pdf(swap, swap_pictures, {}, measure));
  write_file(folder + "/swap-letter-landscape.pdf",
             sheet_pdf(swap, swap_pictures, {true, true, View::WireSide}, measure));
  const test::LoomPtr kite = test::shipped_loom(2);
  const SheetPictures kite_pictures(kite->fitting, kite->advice);
  write_file(folder + "/check-a4.pdf",
             sheet_pdf(sheet::check_document(kite->fitting, kite->advice), kite_pictures, {}, measure));
}

int run(int argc, char** argv) {
  const auto measure = make_text_measure();
  const std::string mode = argc == 3 ? argv[1] : "";
  if (mode == "check") return check(static_cast<unsigned>(std::stoul(argv[2])), *measure);
  if (mode == "write") {
    write(argv[2], *measure);
    return 0;
  }
  if (mode == "demo") {
    write_demo(argv[2], *measure);
    return 0;
  }
  std::cerr << "usage: sheet_trial check COUNT | write FOLDER | demo FOLDER\n";
  return 2;
}

}  // namespace
}  // namespace plugward

int main(int argc, char** argv) {
  try {
    return plugward::run(argc, argv);
  } catch (const std::exception& error) {
    std::cerr << error.what() << "\n";
    return 2;
  }
}
