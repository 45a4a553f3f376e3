// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/layout_test.cpp.
#include "report/layout.h"

#include <algorithm>

#include "base/format.h"
#include "base/utf8.h"

namespace plugward {
namespace {

std::string_view escape_of(Tone tone) {
  switch (tone) {
    case Tone::Plain:
      return "";
    case Tone::Strong:
      return "\x1b[1m";
    case Tone::Good:
      return "\x1b[1;32m";
    case Tone::Caution:
      return "\x1b[1;33m";
    case Tone::Bad:
      return "\x1b[1;31m";
    case Tone::Faulty:
      return "\x1b[1;35m";
    case Tone::Doubtful:
      return "\x1b[1;36m";
  }
  return "";
}

std::string padded(const std::string& text, std::size_t width) {
  const std::size_t columns = columns_of(text);
  return text + std::string(width > columns ? width - columns : 0, ' ');
}

std::string_view without_spaces_at_end(std::string_view text) {
  const std::size_t last = text.find_last_not_of(' ');
  return text.substr(0, last == std::string_view::npos ? 0 : last + 1);
}

}  // namespace

std::string painted(std::string_view text, Tone tone, const TextOptions& options) {
  if (!options.colour || tone == Tone::Plain || text.empty()) return std::string(text);
  return format("{}{}\x1b[0m", escape_of(tone), text);
}

std::size_t columns_of(std::string_view text) {
  std::size_t columns = 0;
  while (!text.empty()) {
    const std::size_t escape = text.find('\x1b');
    columns += count_code_points(text.substr(0, escape));
    if (escape == std::string_view::npos) break;
    const std::size_t end = text.find('m', escape);
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 1);
  }
  return columns;
}

void Paper::line(std::string_view text) {
  text_ += without_spaces_at_end(text);
  text_ += '\n';
}

void Paper::heading(std::string_view text) {
  if (!text_.empty()) line();
  line(painted(text, Tone::Strong, options_));
}

void Paper::paragraph(std::string_view text, const Indent& indent) {
  const auto width = static_cast<std::size_t>(options_.width);
  std::string current = indent.first;
  std::size_t columns = columns_of(current);
  bool empty = true;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t begin = text.find_first_not_of(' ', at);
    if (begin == std::string_view::npos) break;
    const std::size_t end = std::min(text.find(' ', begin), text.size());
    const std::string_view word = text.substr(begin, end - begin);
    const std::size_t wide = columns_of(word);
    if (!empty && columns + 1 + wide > width) {
      line(current);
      current = indent.next;
      columns = columns_of(current);
      empty = true;
    }
    if (!empty) current += ' ';
    current += word;
    columns += wide + (empty ? 0 : 1);
    empty = false;
    at = end;
  }
  line(current);
}

void Paper::table(const std::vector<std::vector<std::string>>& rows, std::string_view indent) {
  std::vector<std::size_t> widths;
  for (const auto& row : rows) {
    widths.resize(std::max(widths.size(), row.size()));
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], columns_of(row[i]));
  }
  if (widths.empty()) return;
  const std::size_t last = widths.size() - 1;
  std::size_t before = indent.size();
  for (std::size_t i = 0; i < last; ++i) before += widths[i] + 2;
  const bool breaks = before + 20 <= static_cast<std::size_t>(options_.width);
  for (const auto& row : rows) {
    std::string start(indent);
    for (std::size_t i = 0; i < std::min(last, row.size()); ++i) start += padded(row[i], widths[i]) + "  ";
    if (row.size() <= last) {
      line(start);
    } else if (breaks) {
      paragraph(row[last], {start, std::string(before, ' ')});
    } else {
      line(start + row[last]);
    }
  }
}

}  // namespace plugward
