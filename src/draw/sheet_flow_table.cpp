// SPDX-License-Identifier: MIT
// Tested in sheet_flow_test.cpp.
#include "draw/sheet_flow_table.h"

#include <algorithm>
#include <numeric>

#include "base/format.h"
#include "draw/shapes.h"
#include "draw/style.h"

namespace plugward {
namespace {

constexpr double cell_gap = 3;              ///< between columns
constexpr double above = 0.9, below = 0.9;  ///< free within a row
constexpr double most_of_least = 45;        ///< a longer word is parted before others are squeezed
constexpr Type cell_type = flow_type::small, head_type = flow_type::small_strong;
constexpr double short_column = 17;  ///< what is no wider is not wrapped while others can be
constexpr std::size_t most_head_lines = 6;

std::string shown_text(const sheet::Cell& cell) {
  const std::string_view sign = mood_sign(cell.mood);
  return sign.empty() || cell.text.empty() ? cell.text : format("{} {}", sign, cell.text);
}

class TableSetter {
 public:
  TableSetter(FlowText& text, const sheet::Table& table, double tallest)
      : text_(text), table_(table), measure_(text.measure()) {
    std::size_t columns = table.head.size();
    for (const auto& row : table.rows) columns = std::max(columns, row.size());
    std::vector<double> least(columns, 4), natural(columns, 4);
    const auto look = [&](std::size_t c, const std::string& words, Type type) {
      natural[c] = std::max(natural[c], text_width(words, type, measure_) + 0.2);
      const double narrow = std::min(natural[c], short_column);
      least[c] =
          std::max({least[c], narrow, std::min(most_of_least, widest_word(words, type, measure_) + 0.2)});
    };
    for (std::size_t c = 0; c < table.head.size(); ++c) look(c, table.head[c], head_type);
    for (const auto& row : table.rows) {
      for (std::size_t c = 0; c < row.size(); ++c) look(c, shown_text(row[c]), cell_type);
    }
    const double gaps = cell_gap * static_cast<double>(columns == 0 ? 0 : columns - 1);
    widths_ = column_widths(least, natural, text.width() - gaps - 2);
    double x = 1;
    for (const double width : widths_) {
      lefts_.push_back(x);
      x += width + cell_gap;
    }
    if (!table.head.empty()) head_ = std::make_shared<const FlowPiece>(head_piece());
    const double room = tallest - (head_ ? head_->height : 0) - above - below;
    most_lines_ = std::max<std::size_t>(1, static_cast<std::size_t>(room / line_));
  }

  void set() {
    const std::size_t first = text_.pieces.size();
    if (head_) {
      FlowPiece head = *head_;
      head.with_next = true;
      text_.add(std::move(head));
    }
    for (const auto& row : table_.rows) add_row(row);
    if (text_.pieces.size() == first) return;
    text_.pieces[first].before = 2;
    // Neither the first row nor the last stands alone.
    if (table_.rows.size() > 2) {
      if (!head_) text_.pieces[first].with_next = true;
      text_.pieces[text_.pieces.size() - 2].with_next = true;
    }
  }

 private:
  FlowPiece head_piece() const {
    std::vector<std::vector<std::string>> cells;
    std::size_t lines = 1;
    for (std::size_t c = 0; c < table_.head.size(); ++c) {
      cells.push_back(wrap_at_most(table_.head[c], widths_[c], most_head_lines, head_type, measure_));
      lines = std::max(lines, cells.back().size());
    }
    FlowPiece piece;
    piece.height = above + line_ * static_cast<double>(lines) + below;
    Group group{tr("head of a table"), {}};
    group.add(rectangle({0, 0}, text_.width(), piece.height, filled(style::panel)));
    group.add(
        polyline({{0, piece.height}, {text_.width(), piece.height}}, stroked(style::outline, style::line)));
    put_cells(group, cells, 0, lines, head_type);
    piece.groups.push_back(std::move(group));
    return piece;
  }

  void put_cells(Group& group, const std::vector<std::vector<std::string>>& cells, std::size_t from,
                 std::size_t to, Type type) const {
    const double baseline = above + baseline_of(type, measure_);
    for (std::size_t c = 0; c < cells.size(); ++c) {
      for (std::size_t l = from; l < std::min(to, cells[c].size()); ++l) {
        if (cells[c][l].empty()) continue;
        add_lines(group, {cells[c][l]}, {lefts_[c], baseline + line_ * static_cast<double>(l - from)}, type,
                  style::text);
      }
    }
  }

  void add_row(const std::vector<sheet::Cell>& row) {
    std::vector<std::vector<std::string>> cells;
    std::size_t lines = 1;
    for (std::size_t c = 0; c < row.size(); ++c) {
      cells.push_back(wrap(shown_text(row[c]), widths_[c], cell_type, measure_));
      lines = std::max(lines, cells.back().size());
    }
    for (std::size_t from = 0; from < lines; from += most_lines_) {
      const std::size_t to = std::min(lines, from + most_lines_);
      FlowPiece piece;
      piece.again = head_;
      piece.height = above + line_ * static_cast<double>(to - from) + below;
      Group group{"row", {}};
      put_cells(group, cells, from, to, cell_type);
      for (std::size_t c = 0; c < row.size() && from == 0; ++c) {
        if (row[c].picture.empty()) continue;
        const double foot = above + baseline_of(cell_type, measure_) + 0.7;
        const double wide = text_width(cells[c].front(), cell_type, measure_);
        group.add(polyline({{lefts_[c], foot}, {lefts_[c] + wide, foot}}, stroked(style::move, 0.2)));
        piece.links.push_back({{lefts_[c], 0, lefts_[c] + widths_[c], piece.height}, row[c].picture, false});
      }
      if (to == lines) {
        group.add(polyline({{0, piece.height}, {text_.width(), piece.height}}, stroked(style::quiet, 0.15)));
      }
      piece.groups.push_back(std::move(group));
      text_.add(std::move(piece));
    }
  }

  FlowText& text_;
  const sheet::Table& table_;
  const TextMeasure& measure_;
  std::vector<double> widths_, lefts_;
  std::shared_ptr<const FlowPiece> head_;
  double line_ = style::line_height(cell_type.points);
  std::size_t most_lines_ = 1;
};

}  // namespace

std::vector<double> column_widths(const std::vector<double>& least, const std::vector<double>& natural,
                                  double room) {
  const auto sum = [](const std::vector<double>& v) { return std::accumulate(v.begin(), v.end(), 0.0); };
  const double wanted = sum(natural), needed = sum(least);
  std::vector<double> widths = natural;
  if (wanted <= room) return widths;
  for (std::size_t c = 0; c < widths.size(); ++c) {
    widths[c] = needed > room ? least[c] * room / needed
                              : least[c] + (natural[c] - least[c]) * (room - needed) / (wanted - needed);
  }
  return widths;
}

std::string_view mood_sign(sheet::Mood mood) {
  switch (mood) {
    case sheet::Mood::Good:
      return "✓";
    case sheet::Mood::Caution:
      return "!";
    case sheet::Mood::Bad:
      return "✗";
    case sheet::Mood::Doubtful:
      return "?";
    case sheet::Mood::Plain:
      break;
  }
  return "";
}

void add_table(FlowText& text, const sheet::Table& table, double tallest) {
  TableSetter(text, table, tallest).set();
}

}  // namespace plugward
