// SPDX-License-Identifier: MIT
// A table whose columns leave no room for the last one becomes a list: the first cells of a row as its item,
// the others under it, each with the head of its column.
//
// Tested in tests/unit/report/sheet_text_test.cpp.
#include "report/sheet_text.h"

#include <algorithm>

#include "base/format.h"
#include "report/reading_notes.h"

namespace plugward {
namespace {

using sheet::Mood;

constexpr std::size_t least_last_column = 20;  ///< below it Paper does not break the last column
constexpr std::string_view margin = "           ";

Tone tone_of(Mood mood) {
  switch (mood) {
    case Mood::Plain:
      return Tone::Plain;
    case Mood::Good:
      return Tone::Good;
    case Mood::Caution:
      return Tone::Caution;
    case Mood::Bad:
      return Tone::Bad;
    case Mood::Doubtful:
      return Tone::Doubtful;
  }
  return Tone::Plain;
}

class Writer {
 public:
  Writer(const sheet::Document& document, const TextOptions& options)
      : document_(document), paper_(options) {}

  std::string run() {
    const std::string verdict = painted(document_.verdict, tone_of(document_.mood), paper_.options());
    paper_.paragraph(format("{}: {}", verdict, document_.summary), {"", "  "});
    paper_.line();
    paper_.paragraph(document_.heading);
    title();
    for (const sheet::Section& section : document_.sections) {
      paper_.heading(painted(section.title, Tone::Strong, paper_.options()));
      first_ = true;
      for (const sheet::Block& block : section.blocks) {
        std::visit([this](const auto& one) { write(one); }, block);
        first_ = false;
      }
    }
    if (!document_.limits.empty()) {
      paper_.line();
      paper_.paragraph(document_.limits);
    }
    return paper_.text();
  }

 private:
  void title() {
    const sheet::Title& t = document_.title;
    std::vector<std::vector<std::string>> rows{
        {tr("machine"), t.machine.empty() ? "____________" : t.machine}, {tr("harness"), t.harness}};
    if (!t.old_board.empty()) rows.push_back({tr("from board"), t.old_board});
    rows.push_back({t.old_board.empty() ? tr("board") : tr("to board"), t.board});
    rows.push_back({tr("date"), t.date.empty() ? "____________" : t.date});
    paper_.table(rows);
  }

  void gap() {
    if (!first_) paper_.line();
  }

  void write(const sheet::Text& text) {
    const std::string words =
        text.strong ? painted(text.text, Tone::Strong, paper_.options()) : std::string(text.text);
    if (text.strong) gap();
    paper_.paragraph(words, {"  ", "  "});
  }

  void write(const sheet::Warning& warning) { paper_.paragraph(warning.text, {"  ! ", "    "}); }

  void write(const sheet::List& list) {
    int number = 0;
    for (const std::string& item : list.items) {
      ++number;
      const std::string sign = list.numbered ? format("{}.", number) : std::string("-");
      const std::string first = list.boxes ? std::string("  [ ] ") : format("  {} ", sign);
      paper_.paragraph(item, {first, std::string(first.size(), ' ')});
    }
  }

  std::string words_of(const sheet::Cell& cell) const {
    return painted(cell.text, tone_of(cell.mood), paper_.options());
  }

  bool fits(const sheet::Table& table) const {
    std::vector<std::size_t> widths(table.head.size());
    const auto widen = [&widths](std::size_t column, const std::string& text) {
      if (column >= widths.size()) widths.resize(column + 1);
      widths[column] = std::max(widths[column], columns_of(text));
    };
    for (std::size_t i = 0; i < table.head.size(); ++i) widen(i, table.head[i]);
    for (const auto& row : table.rows) {
      for (std::size_t i = 0; i < row.size(); ++i) widen(i, row[i].text);
    }
    std::size_t taken = 2;  // the indent
    for (std::size_t i = 0; i + 1 < widths.size(); ++i) taken += widths[i] + 2;
    const std::size_t last = widths.empty() ? 0 : std::min(widths.back(), least_last_column);
    return taken + last <= static_cast<std::size_t>(paper_.options().width);
  }

  void write(const sheet::Table& table) {
    if (!fits(table)) return write_as_list(table);
    std::vector<std::vector<std::string>> rows;
    if (std::any_of(table.head.begin(), table.head.end(), [](const auto& h) { return !h.empty(); }))
      rows.push_back(table.head);
    for (const auto& row : table.rows) {
      std::vector<std::string> cells;
      for (const sheet::Cell& cell : row) cells.push_back(words_of(cell));
      rows.push_back(std::move(cells));
    }
    paper_.table(rows);
  }

  void write_as_list(const sheet::Table& table) {
    for (const auto& row : table.rows) {
      std::size_t next = 0;
      std::string item;
      do {  // cells of columns without a name stand before the first that has one
        if (!row[next].text.empty()) item += (item.empty() ? "" : ": ") + words_of(row[next]);
        ++next;
      } while (next < row.size() && (table.head.size() < next || table.head[next - 1].empty()));
      std::vector<std::string> facts;
      for (; next < row.size(); ++next) {
        const std::string name = next < table.head.size() ? table.head[next] : "";
        if (row[next].text.empty()) continue;
        facts.push_back(name.empty() ? words_of(row[next]) : format("{}: {}", name, words_of(row[next])));
      }
      write_row(item, facts);
    }
  }

  /// In one run where that takes two lines at the most.
  void write_row(const std::string& item, const std::vector<std::string>& facts) {
    std::string run = item;
    for (const std::string& fact : facts) run += "; " + fact;
    if (columns_of(run) + 12 <= 2 * static_cast<std::size_t>(paper_.options().width))
      return paper_.paragraph(run, {"  - ", "    "});
    paper_.paragraph(item, {"  - ", "    "});
    for (const std::string& fact : facts) paper_.paragraph(fact, {"    ", "      "});
  }

  void write(const sheet::Steps& steps) {
    for (const sheet::Step& step : steps.steps) write(step);
    notes_.write(paper_);
  }

  void line(std::string_view word, const std::string& text) {
    if (!text.empty()) paper_.paragraph(text, {format("{}{}: ", margin, word), std::string(margin) + "  "});
  }

  void write(const sheet::Step& step) {
    for (const std::string& caution : step.cautions)
      paper_.paragraph(caution, {"       !   ", std::string(margin)});
    const std::string power = step.power ? tr(" (power on)") : "";
    paper_.paragraph(step.act + power, {format("  [ ] {:>3}. ", step.number), std::string(margin)});
    for (const std::string& part : step.parts)
      paper_.paragraph(part, {format("{}[ ] ", margin), std::string(margin) + "    "});
    line(tr("check with"), step.code);
    line(tr("must be seen"), step.see);
    line(tr("if not"), step.wrong);
    line(tr("does not prove"), step.not_proved);
    const std::string picture = title_of(step.picture);
    if (!picture.empty()) line(tr("picture"), picture);
    std::vector<std::vector<std::string>> rows;
    for (const sheet::Blank& b : step.blanks)
      rows.push_back({b.points, b.expect, b.unit.empty() ? "[ ]" : format("______ {}", b.unit),
                      notes_.pointers(b.too_low, b.too_high, !b.low && !b.high)});
    if (!rows.empty()) paper_.table(rows, margin);
  }

  void write(const sheet::Picture& picture) {
    gap();
    paper_.paragraph(painted(picture.title, Tone::Strong, paper_.options()), {"  ", "  "});
    std::string_view words = picture.words;
    while (!words.empty()) {
      const std::size_t end = words.find('\n');
      paper_.paragraph(words.substr(0, end), {"  - ", "    "});
      words = end == std::string_view::npos ? std::string_view() : words.substr(end + 1);
    }
  }

  std::string title_of(const std::string& id) const {
    for (const sheet::Section& section : document_.sections) {
      for (const sheet::Block& block : section.blocks) {
        const auto* picture = std::get_if<sheet::Picture>(&block);
        if (picture != nullptr && picture->id == id) return picture->title;
      }
    }
    return "";
  }

  const sheet::Document& document_;
  Paper paper_;
  ReadingNotes notes_;
  bool first_ = true;  ///< block of its section
};

}  // namespace

std::string sheet_text(const sheet::Document& document, const TextOptions& options) {
  return Writer(document, options).run();
}

}  // namespace plugward
