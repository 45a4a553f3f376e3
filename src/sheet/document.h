// SPDX-License-Identifier: MIT
// The sheet that lies on the bench, as content: sections of blocks, free of any file format. PDF, HTML, text
// and Markdown are made of the same document, so they say the same.
//
//   const sheet::Document d = swap_document(papers, {.machine = "Wren no. 3", .date = "2026-11-25"});
//   sheet_text(d); sheet_markdown(d);                       // report/sheet_*.h
//   sheet_html(d, pictures); sheet_pages(d, pictures, ...)  // report/, draw/
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace plugward::sheet {

/// Carried by words and shapes first; colour only repeats it.
enum class Mood { Plain, Good, Caution, Bad, Doubtful };

struct Text {
  std::string text;
  bool strong = false;
};

/// A customary caution, at the step or section that it belongs to.
struct Warning {
  std::string text;
};

struct List {
  std::vector<std::string> items;
  bool boxes = false;  ///< each with a box to tick
  bool numbered = false;
};

struct Cell {
  std::string text;
  Mood mood = Mood::Plain;
  std::string picture;  ///< Picture::id that the cell leads to; "" for none
};

struct Table {
  std::vector<std::string> head;        ///< "" for a column that needs no name; empty: no head
  std::vector<std::vector<Cell>> rows;  ///< cells may be missing at the end of a row
};

/// A blank for a meter reading, and what it should be.
struct Blank {
  std::string id;                   ///< unique in the document: "r41-1"
  std::string points;               ///< "J9.2 to J9.3"
  std::string expect;               ///< "4.9..5.2 V"
  std::optional<double> low, high;  ///< in `unit`; high may be infinite; neither: nothing is expected
  std::string unit;                 ///< "V", "ohm"; "" : no number is written
  std::string too_low, too_high;    ///< what such a reading points to
};

struct Step {
  std::string id;                     ///< unique in the document: "s41"
  int number = 0;                     ///< as printed
  std::vector<std::string> cautions;  ///< before it is done
  std::string act;
  std::string see;                 ///< what must be seen; "" for nothing
  std::string wrong;               ///< what it points to when it is not seen
  std::vector<std::string> parts;  ///< smaller steps, each with a box
  std::vector<Blank> blanks;
  std::string code;        ///< public G-codes that check it
  std::string not_proved;  ///< what that check does not prove
  std::string picture;     ///< Picture::id; "" for none
  bool power = false;      ///< power is on during this step
};

struct Steps {
  std::vector<Step> steps;
};

enum class PictureKind {
  Board,     ///< the new board, or the only one: headers to scale, those in use marked, look-alikes flagged
  OldBoard,  ///< of a swap
  Plug,      ///< one plug now and then with its moves, and its header in place
  TrueSize   ///< housings and headers at 1:1 with a 50 mm rule; a page of its own
};

struct Picture {
  std::string id;  ///< unique in the document: "plug-3"
  PictureKind kind{};
  int placement = -1;  ///< Plug: index into the placements of the fitting
  std::string title;
  std::string words;  ///< says in words all that the picture shows, moves included; one sentence a line
};

using Block = std::variant<Text, Warning, List, Table, Steps, Picture>;

struct Section {
  std::string id;  ///< "order-of-work"
  std::string title;
  std::vector<Block> blocks;
  bool own_page = false;  ///< begins on a new page of a paged document
};

/// What stands in the title block of every page.
struct Title {
  std::string machine;  ///< as the user calls it; "" for none
  std::string harness;
  std::string board;      ///< with its revision
  std::string old_board;  ///< of a swap
  std::string date;       ///< ISO 8601, given by the user; "" leaves a blank to fill in
};

struct Document {
  Title title;
  std::string language = "en";  ///< BCP 47
  std::string heading;          ///< "Moving 'Wren no. 3' to Heron M7"
  std::string verdict;          ///< "REPIN"; of a swap "18 of 20 plugs"
  Mood mood = Mood::Plain;
  std::string summary;
  std::vector<Section> sections;
  std::string limits;  ///< what plugward cannot see; on every page
};

}  // namespace plugward::sheet
