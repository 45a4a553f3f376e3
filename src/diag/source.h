// SPDX-License-Identifier: MIT
// The texts that were read, and places in them. A place is 12 bytes; line and column are computed
// only when it is printed.
#pragma once

#include <cstdint>
#include <deque>
#include <string>
#include <string_view>

namespace plugward {

/// Which text a place is in: index + 1 in Sources; 0 = no file.
using FileId = std::uint32_t;

/// The bytes [begin, end) of one file.
struct Span {
  FileId file = 0;
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  bool known() const { return file != 0; }
  friend bool operator==(const Span&, const Span&) = default;
};

/// A value with the place it was read from.
template <class T>
struct Placed {
  T value{};
  Span span{};
};

struct SourceFile {
  std::string path;  ///< exactly as the user gave it, '/' separators
  std::string text;
  bool in_words = false;  ///< no file: made from words of the command line, which `path` quotes
};

/// All texts of one run. Texts never move once added.
class Sources {
 public:
  FileId add(std::string path, std::string text);
  /// A text made from words of the command line: places in it have no line. `words`: "--seen fan:BK,RD".
  FileId add_words(std::string words, std::string text);
  const SourceFile& file(FileId id) const;  ///< REQUIRES: id from add()
  std::size_t size() const { return files_.size(); }
  /// Of a file into which nothing points any more; its path stays. REQUIRES: id from add().
  void drop_text(FileId id);
  std::string_view text(Span span) const;   ///< the bytes of the span; "" when it is not known

 private:
  std::deque<SourceFile> files_;
};

/// From 1. The column counts Unicode code points; a tab counts 1, a byte-order mark 0.
struct LineColumn {
  int line = 0;
  int column = 0;
};

LineColumn line_column(const Sources&, FileId, std::uint32_t offset);

/// The whole line (without its end) that holds `offset`, and where in the text it begins.
struct Line {
  std::string_view text;
  std::uint32_t begin = 0;
};
Line line_at(const Sources&, FileId, std::uint32_t offset);

/// "path:line:column", the words of the command line, or "" when the span is not known.
std::string place_name(const Sources&, Span);

}  // namespace plugward
