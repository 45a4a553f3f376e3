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

/// Its words stand one space apart, with none before the first and behind the last.
bool evenly_spaced(std::string_view text) {
  return text.find("  ") == text.npos && !text.starts_with(' ') && !text.ends_with(' ');
}

std::string with_single_spaces(std::string_view text) {
  std::string even;
  for (const char c : text) {
    if (c != ' ' || (!even.empty() && even.back() != ' ')) even += c;
  }
  if (even.ends_with(' ')) even.pop_back();
  return even;
}

/// How much of an evenly spaced text stands on a line of so many columns: all of it, or up to the space
/// behind the last word that fits; a first word that is too long stands there alone.
std::size_t line_end(std::string_view text, std::size_t columns) {
  std::size_t fits = text.npos;
  std::size_t taken = 0;
  bool escape = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == ' ') {
      if (taken > columns) return std::min(fits, i);
      fits = i;
    }
    escape = escape || c == '\x1b';
    if (!escape && (static_cast<unsigned char>(c) & 0xC0) != 0x80) ++taken;
    if (c == 'm') escape = false;
  }
  return taken > columns ? std::min(fits, text.size()) : text.size();
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

std::vector<std::size_t> column_widths(const std::vector<std::vector<std::string>>& rows) {
  std::size_t cells = 1;
  for (const auto& row : rows) cells = std::max(cells, row.size());
  std::vector<std::size_t> widths(cells - 1);
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < std::min(widths.size(), row.size()); ++i)
      widths[i] = std::max(widths[i], columns_of(row[i]));
  }
  return widths;
}

std::vector<std::size_t> wider(std::vector<std::size_t> a, const std::vector<std::size_t>& b) {
  a.resize(std::max(a.size(), b.size()));
  for (std::size_t i = 0; i < b.size(); ++i) a[i] = std::max(a[i], b[i]);
  return a;
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
  std::string even;
  if (!evenly_spaced(text)) text = even = with_single_spaces(text);
  const auto width = static_cast<std::size_t>(options_.width);
  std::string current = indent.first;
  while (true) {
    const std::size_t taken = columns_of(current);
    const std::size_t end = line_end(text, width - std::min(width, taken));
    line(current.append(text.substr(0, end)));
    if (end == text.size()) return;
    text.remove_prefix(end + 1);
    current = indent.next;
  }
}

void Paper::table(const std::vector<std::vector<std::string>>& rows, std::string_view indent) {
  table(rows, column_widths(rows), indent);
}

void Paper::table(const std::vector<std::vector<std::string>>& rows, const std::vector<std::size_t>& widths,
                  std::string_view indent) {
  const std::size_t last = widths.size();
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
