// SPDX-License-Identifier: MIT
// What stands around the content of every page: the title block on page 1, a running title on the others, the
// limits and a 50 mm ruler at the foot.
#pragma once

#include "draw/sheet_flow.h"
#include "sheet/document.h"

namespace plugward {

/// The paper, mm.
struct SheetPaper {
  double width = 210, height = 297;
  double margin = 10;
  double content_width() const { return width - 2 * margin; }
};
SheetPaper sheet_paper(bool letter, bool landscape);

class SheetFrame {
 public:
  SheetFrame(const sheet::Document&, const SheetPaper&, const TextMeasure&);

  FlowRoom first() const { return {paper_.margin, title_bottom_ + 4, foot_top_ - 2}; }
  FlowRoom other() const { return {paper_.margin, paper_.margin + 9, foot_top_ - 2}; }

  /// Title, running title and foot of a page, from 1.
  std::vector<Group> groups(std::size_t page, std::size_t pages) const;

 private:
  void set_title();
  double add_fields(Group&, double top) const;
  Group running(std::size_t page, std::size_t pages) const;
  Group foot() const;

  const sheet::Document& document_;
  SheetPaper paper_;
  const TextMeasure& measure_;
  std::vector<Group> title_;
  std::vector<std::string> limits_;
  double title_bottom_ = 0, foot_top_ = 0;
};

/// "Moving 'Wren no. 3' to Heron M7"; of a document without a heading, its machine or board.
std::string heading_of(const sheet::Document&);

}  // namespace plugward
