// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/find_text_test.cpp.
#include "report/find_text.h"

#include <algorithm>
#include <utility>

#include "base/counted.h"
#include "base/format.h"
#include "report/words.h"

namespace plugward {
namespace {

std::string title_of(const std::string& file, const Board& board) {
  return format("{}: {}{}", file, board.title,
                board.revision.empty() ? "" : format(", revision {}", board.revision));
}

constexpr std::size_t rows_at_once = 1000;

/// The rows of the boards that begin at `from`.
std::vector<std::vector<std::string>> ranking_rows(const FindSummary& summary, std::size_t from,
                                                   const TextOptions& how) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = from; i < std::min(from + rows_at_once, summary.found.size()); ++i) {
    const FoundBoard& board = summary.found[i];
    rows.push_back({format("{}.", i + 1), painted(to_word(board.verdict), tone_of(board.verdict), how),
                    board.file, board.where});
  }
  return rows;
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

void find_ranking(const FindSummary& summary, const std::string& next_command, const TextOptions& how,
                  const std::function<void(const std::string&)>& write) {
  const std::string boards = counted(summary.boards(), "{} board", "{} boards");
  Paper head(how);
  head.line(summary.found.empty() ? format("No header for it on {}.", boards)
                                  : painted(format("Best first, of {}", boards), Tone::Strong, how));
  write(head.text());
  if (summary.found.empty()) return;
  std::vector<std::size_t> widths;
  for (std::size_t at = 0; at < summary.found.size(); at += rows_at_once)
    widths = wider(std::move(widths), column_widths(ranking_rows(summary, at, how)));
  for (std::size_t at = 0; at < summary.found.size(); at += rows_at_once) {
    Paper rows(how);
    rows.table(ranking_rows(summary, at, how), widths);
    write(rows.text());
  }
  Paper paper(how);
  if (summary.empty_boards > 0) {
    const std::size_t unnamed = summary.empty_boards - summary.empty.size();
    paper.paragraph(format("No header for it: {}{}", join(summary.empty, ", "),
                           unnamed == 0 ? "" : format(" and {} more", unnamed)),
                    {"", "  "});
  }
  paper.line();
  paper.line("The best one, judged at length:");
  paper.line("  " + next_command);
  write(paper.text());
}

std::string find_ranking(const FindSummary& summary, const std::string& next_command,
                         const TextOptions& how) {
  std::string text;
  find_ranking(summary, next_command, how, [&](const std::string& piece) { text += piece; });
  return text;
}

}  // namespace plugward
