// SPDX-License-Identifier: MIT
// Text for a terminal: lines broken at spaces, tables, and colour that only repeats what a word says.
//
//   Paper paper({.colour = false, .width = 80});
//   paper.paragraph("a long sentence ...", {.first = "  1. ", .next = "     "});
//   paper.text()
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace plugward {

struct TextOptions {
  bool colour = false;  ///< ANSI escape sequences; every coloured word says the same without them
  int width = 80;       ///< columns; a longer word (a path) stands alone on its line and is not broken
};

enum class Tone { Plain, Strong, Good, Caution, Bad, Faulty, Doubtful };

/// `text` in its tone, or unchanged when colour is off or the tone is plain.
std::string painted(std::string_view text, Tone, const TextOptions&);

/// Columns that the text takes: code points, escape sequences not counted.
std::size_t columns_of(std::string_view text);

/// Of the widest cell of each column but the last. Cells may be missing at the end of a row.
std::vector<std::size_t> column_widths(const std::vector<std::vector<std::string>>& rows);

/// The wider of each two.
std::vector<std::size_t> wider(std::vector<std::size_t>, const std::vector<std::size_t>&);

/// What stands before the first line of a paragraph and before its other lines.
struct Indent {
  std::string first;
  std::string next;
};

/// A text that grows line by line. Every call ends its last line.
class Paper {
 public:
  explicit Paper(TextOptions options) : options_(options) {}

  void line(std::string_view text = "");  ///< as it is, not broken
  void heading(std::string_view text);    ///< an empty line before it, unless it is the first line
  void paragraph(std::string_view text, const Indent& indent = {});
  /// Columns as wide as their widest cell, two spaces between them; the last one is broken into lines where
  /// the width leaves at least 20 columns for it. Cells may be missing at the end of a row.
  void table(const std::vector<std::vector<std::string>>& rows, std::string_view indent = "  ");
  /// The same for a piece of a long table, whose columns but the last are so wide.
  void table(const std::vector<std::vector<std::string>>& rows, const std::vector<std::size_t>& widths,
             std::string_view indent = "  ");

  const TextOptions& options() const { return options_; }
  const std::string& text() const { return text_; }

 private:
  TextOptions options_;
  std::string text_;
};

}  // namespace plugward
