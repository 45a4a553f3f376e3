// SPDX-License-Identifier: MIT
#include "diag/source.h"

#include <algorithm>
#include <cassert>
#include <utility>

#include "base/format.h"
#include "base/utf8.h"

namespace plugward {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

}  // namespace

FileId Sources::add(std::string path, std::string text) {
  files_.push_back({std::move(path), std::move(text), false});
  return static_cast<FileId>(files_.size());
}

FileId Sources::add_words(std::string words, std::string text) {
  files_.push_back({std::move(words), std::move(text), true});
  return static_cast<FileId>(files_.size());
}

const SourceFile& Sources::file(FileId id) const {
  assert(id >= 1 && id <= files_.size());
  return files_[id - 1];
}

void Sources::drop_text(FileId id) {
  std::string().swap(files_[id - 1].text);
}

std::string_view Sources::text(Span span) const {
  if (!span.known()) return "";
  return std::string_view(file(span.file).text).substr(span.begin, span.end - span.begin);
}

Line line_at(const Sources& sources, FileId id, std::uint32_t offset) {
  const std::string_view text = sources.file(id).text;
  const std::size_t at = std::min<std::size_t>(offset, text.size());
  const std::size_t before = at == 0 ? std::string_view::npos : text.rfind('\n', at - 1);
  std::size_t begin = before == std::string_view::npos ? 0 : before + 1;
  if (begin == 0 && text.starts_with(byte_order_mark)) begin = byte_order_mark.size();
  std::size_t end = std::min(text.find('\n', at), text.size());
  if (end > begin && text[end - 1] == '\r') --end;
  end = std::max(end, begin);
  return {text.substr(begin, end - begin), static_cast<std::uint32_t>(begin)};
}

LineColumn line_column(const Sources& sources, FileId id, std::uint32_t offset) {
  const std::string_view text = sources.file(id).text;
  const std::size_t at = std::min<std::size_t>(offset, text.size());
  const Line line = line_at(sources, id, offset);
  const auto lines = std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(std::min<std::size_t>(line.begin, at)), '\n');
  const std::size_t into = at > line.begin ? at - line.begin : 0;
  const auto columns = count_code_points(text.substr(line.begin, into));
  return {static_cast<int>(lines) + 1, static_cast<int>(columns) + 1};
}

std::string place_name(const Sources& sources, Span span) {
  if (!span.known()) return "";
  if (sources.file(span.file).in_words) return sources.file(span.file).path;
  const auto [line, column] = line_column(sources, span.file, span.begin);
  return format("{}:{}:{}", sources.file(span.file).path, line, column);
}

}  // namespace plugward
