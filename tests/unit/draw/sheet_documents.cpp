// SPDX-License-Identifier: MIT
#include "unit/draw/sheet_documents.h"

#include <string>
#include <vector>

#include "base/format.h"
#include "support/dice.h"

namespace plugward::test {
namespace {

using sheet::Block, sheet::Cell, sheet::Document, sheet::List, sheet::Mood, sheet::Picture,
    sheet::PictureKind, sheet::Section, sheet::Step, sheet::Steps, sheet::Table, sheet::Text, sheet::Warning;

Section pictures(int placements, bool old_board) {
  Section section{"pictures", "Pictures", {}, true};
  section.blocks.emplace_back(Picture{"board", PictureKind::Board, -1, "The board from above", ""});
  if (old_board) {
    section.blocks.emplace_back(
        Picture{"old-board", PictureKind::OldBoard, -1, "The old board from above", ""});
  }
  for (int i = 0; i < placements; ++i) {
    section.blocks.emplace_back(
        Picture{format("plug-{}", i + 1), PictureKind::Plug, i, format("Plug {} now and then", i + 1), ""});
  }
  return section;
}

Section true_size() {
  Section section{"true-size", "True size", {}, true};
  section.blocks.emplace_back(
      Picture{"true-size-1", PictureKind::TrueSize, -1, "Housings and headers at 1:1", ""});
  return section;
}

Step measured_step() {
  Step step;
  step.id = "s1";
  step.number = 1;
  step.cautions = {"Power off, and wait until the supply's lamp is out."};
  step.act = "Unplug J9 and measure between its pins.";
  step.see = "5 V between J9.2 and J9.3";
  step.wrong = "the jumper JP2 sits at another position";
  step.parts = {"Set the meter to volts.", "Hold the black tip at J9.3."};
  step.blanks = {{"r1", "J9.2 to J9.3", "4.75..5.25 V", 4.75, 5.25, "V", "no supply on the board",
                  "the jumper feeds 24 V"},
                 {"r2", "J9.1 to J9.3", "", std::nullopt, std::nullopt, "", "", ""}};
  step.code = "M42 P0 S255\nM42 P0 S0";
  step.not_proved = "that the probe trips";
  step.picture = "plug-1";
  step.power = true;
  return step;
}

class Chance {
 public:
  explicit Chance(unsigned seed) : dice_(seed) {}

  std::string words(std::size_t most) {
    static const std::vector<std::string> vocabulary = {
        "pin",
        "contact",
        "the",
        "24 V",
        "J9.2",
        "4.75..5.25 V",
        "Датчик",
        "стола",
        "концевик",
        "温度传感器",
        "苍鹭运动控制板",
        "a-rather-long-terminal-name-of-forty-letters",
        "Donaudampfschifffahrtsgesellschaftskapitänskajütenschlüsselanhänger",
        "move",
        "to",
        "cavity",
        "7",
        "→",
        "kite-probe/control",
        "…",
        "超长的没有空格的名字用来检查换行是否正确并且不会超出页面的右边缘"};
    std::string text;
    const std::size_t count = 1 + dice_.below(most);
    for (std::size_t i = 0; i < count; ++i) text += (i == 0 ? "" : " ") + dice_.pick(vocabulary);
    return text;
  }

  std::string maybe(std::size_t most) { return dice_.chance(30) ? std::string() : words(most); }
  Dice& dice() { return dice_; }

  Table table() {
    Table table;
    const std::size_t columns = 1 + dice_.below(7), rows = dice_.below(40);
    if (dice_.chance(80)) {
      for (std::size_t c = 0; c < columns; ++c) table.head.push_back(maybe(3));
    }
    for (std::size_t r = 0; r < rows; ++r) {
      std::vector<Cell> row;
      const std::size_t cells = dice_.chance(90) ? columns : 1 + dice_.below(columns);
      for (std::size_t c = 0; c < cells; ++c) {
        Cell cell{maybe(dice_.chance(3) ? 300 : 8), static_cast<Mood>(dice_.below(5)), ""};
        if (dice_.chance(10)) cell.picture = "board";
        row.push_back(std::move(cell));
      }
      table.rows.push_back(std::move(row));
    }
    return table;
  }

  Step step(int number) {
    Step step;
    step.id = format("s{}", number);
    step.number = number;
    step.act = words(dice_.chance(5) ? 600 : 30);
    for (std::size_t i = dice_.below(3); i > 0; --i) step.cautions.push_back(words(20));
    step.see = maybe(15);
    step.wrong = maybe(25);
    for (std::size_t i = dice_.below(dice_.chance(5) ? 80 : 4); i > 0; --i) step.parts.push_back(words(12));
    for (std::size_t i = dice_.below(4); i > 0; --i) {
      step.blanks.push_back({format("r{}-{}", number, i), words(4), maybe(4), std::nullopt, std::nullopt,
                             dice_.chance(60) ? "V" : maybe(2), maybe(8), maybe(8)});
    }
    if (dice_.chance(20)) step.code = words(6) + "\n" + words(20);
    step.not_proved = maybe(12);
    if (dice_.chance(50)) step.picture = "plug-1";
    step.power = dice_.chance(20);
    return step;
  }

  Block block(int& number) {
    switch (dice_.below(5)) {
      case 0:
        return Text{words(dice_.chance(5) ? 1200 : 80), dice_.chance(20)};
      case 1:
        return Warning{words(40)};
      case 2: {
        List list;
        for (std::size_t i = dice_.below(9); i > 0; --i) list.items.push_back(words(30));
        list.boxes = dice_.chance(40);
        list.numbered = dice_.chance(40);
        return list;
      }
      case 3:
        return table();
      default: {
        Steps steps;
        for (std::size_t i = dice_.below(6); i > 0; --i) steps.steps.push_back(step(++number));
        return steps;
      }
    }
  }

 private:
  Dice dice_;
};

}  // namespace

Document every_block(int placements, bool old_board) {
  Document d;
  d.title = {"Wren no. 3", "Kite bed probe, five leads", "Heron M7 motion board, revision B",
             old_board ? "Heron A4 logic board, revision 2" : "", "2026-11-25"};
  d.heading = "Plugging 'Kite bed probe' on Heron M7";
  d.verdict = "REPIN";
  d.mood = Mood::Caution;
  d.summary = "Move two contacts of plug 'control'; then it may be plugged on J9.";
  d.limits =
      "plugward cannot see a bad crimp, a mislabelled board or a dead part. Power off before you plug.";
  Section work{"order-of-work", "Order of work", {}, false};
  work.blocks.emplace_back(Text{"Read the whole page before you begin.", true});
  work.blocks.emplace_back(Warning{"Mains wiring is for a qualified person."});
  work.blocks.emplace_back(List{{"crimping tool", "meter"}, true, false});
  work.blocks.emplace_back(List{{"unplug", "move", "plug"}, false, true});
  work.blocks.emplace_back(
      Table{{"plug", "header", "verdict"},
            {{{"control", Mood::Plain, "plug-1"}, {"J9", Mood::Plain, ""}, {"REPIN", Mood::Caution, ""}},
             {{"trigger", Mood::Plain, ""}, {"J10", Mood::Plain, ""}, {"MATE", Mood::Good, ""}}}});
  work.blocks.emplace_back(Steps{{measured_step()}});
  d.sections = {std::move(work), pictures(placements, old_board), true_size()};
  return d;
}

Document random_document(unsigned seed, int placements, bool old_board) {
  Chance chance(seed);
  Document d;
  d.title = {chance.maybe(6), chance.maybe(8), chance.words(5), chance.maybe(5),
             chance.dice().chance(50) ? "2026-11-25" : ""};
  d.heading = chance.maybe(12);
  static const std::vector<std::string> verdicts = {"MATE",  "REPIN", "ADAPT",         "MEASURE",
                                                    "APART", "",      "18 of 20 plugs"};
  d.verdict = chance.dice().chance(15) ? chance.words(6) : chance.dice().pick(verdicts);
  d.summary = chance.maybe(60);
  d.limits = chance.words(40);
  int number = 0;
  for (std::size_t s = 1 + chance.dice().below(4); s > 0; --s) {
    Section section{format("section-{}", s), chance.words(6), {}, chance.dice().chance(30)};
    for (std::size_t b = chance.dice().below(6); b > 0; --b) section.blocks.push_back(chance.block(number));
    d.sections.push_back(std::move(section));
  }
  d.sections.push_back(pictures(placements, old_board));
  d.sections.push_back(true_size());
  return d;
}

}  // namespace plugward::test
