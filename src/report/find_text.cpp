// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/find_text_test.cpp.
#include "report/find_text.h"

#include "base/counted.h"
#include "base/format.h"
#include "report/words.h"

namespace plugward {
namespace {

std::string title_of(const std::string& file, const Board& board) {
  return format("{}: {}{}", file, board.title,
                board.revision.empty() ? "" : format(", revision {}", board.revision));
}

}  // namespace

std::string find_block(const std::string& file, const Board& board, const Harness& harness,
                       const BoardFit& fit, const TextOptions& how) {
  if (!fit.best) return "";
  Paper paper(how);
  paper.paragraph(title_of(file, board), {"", "  "});
  const bool several = harness.plugs.size() > 1;
  std::vector<std::vector<std::string>> rows;
  const auto verdict = [&](Verdict v) { return painted(to_word(v), tone_of(v), how); };
  for (std::size_t plug = 0; plug < harness.plugs.size(); ++plug) {
    bool first = true;
    const auto row = [&](std::vector<std::string> cells) {
      if (several) cells.insert(cells.begin(), first ? harness.plugs[plug].id : "");
      rows.push_back(std::move(cells));
      first = false;
    };
    for (const PlaceOption& option : fit.options) {
      if (option.plug != static_cast<int>(plug)) continue;
      row({header_title(board.headers[static_cast<std::size_t>(option.header)]), verdict(option.verdict),
           option.reason});
    }
    if (first) row({"-", "", "no header for it"});
  }
  paper.table(rows);
  if (several) {
    paper.paragraph(format("together: {}: {}: {}", where_words(board, harness, fit.best->placements),
                           verdict(fit.best->verdict), fit.best->reason),
                    {"  ", "    "});
  }
  paper.line();
  return paper.text();
}

std::string find_ranking(const FindSummary& summary, const std::string& next_command,
                         const TextOptions& how) {
  Paper paper(how);
  if (summary.found.empty()) {
    paper.line(format("No header for it on {}.", counted(summary.boards(), "{} board", "{} boards")));
    return paper.text();
  }
  paper.line(painted(format("Best first, of {}", counted(summary.boards(), "{} board", "{} boards")),
                     Tone::Strong, how));
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < summary.found.size(); ++i) {
    const FoundBoard& board = summary.found[i];
    rows.push_back({format("{}.", i + 1), painted(to_word(board.verdict), tone_of(board.verdict), how),
                    board.file, board.where});
  }
  paper.table(rows);
  if (summary.empty_boards > 0) {
    const std::size_t unnamed = summary.empty_boards - summary.empty.size();
    paper.paragraph(format("No header for it: {}{}", join(summary.empty, ", "),
                           unnamed == 0 ? "" : format(" and {} more", unnamed)),
                    {"", "  "});
  }
  paper.line();
  paper.line("The best one, judged at length:");
  paper.line("  " + next_command);
  return paper.text();
}

}  // namespace plugward
