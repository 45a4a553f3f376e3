// SPDX-License-Identifier: MIT
#include "draw/text_fit.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <utility>

#include "draw/style.h"

namespace plugward {
namespace {

/// Length of the code point that begins at text[at]. Text is valid UTF-8 (the reader saw to it).
std::size_t code_point_length(std::string_view text, std::size_t at) {
  std::size_t length = 1;
  while (at + length < text.size() && (static_cast<unsigned char>(text[at + length]) & 0xC0U) == 0x80U)
    ++length;
  return length;
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// Does the space at text[at] hold a number and what it counts together: "5.25 V", "cavity 3"?
bool bound(std::string_view text, std::size_t at) {
  std::string_view next = text.substr(at + 1, text.find_first_of(" ,;:", at + 1) - at - 1);
  if (next.size() > 1 && next.back() == '.') next.remove_suffix(1);
  if (at == 0 || next.empty() || next.size() > 2) return false;
  if (is_digit(text[at - 1])) return next == "V" || next == "A" || next == "W" || next == "mm";
  return std::all_of(next.begin(), next.end(), is_digit) &&
         std::isalpha(static_cast<unsigned char>(text[at - 1])) != 0;
}

/// Pieces that may stand at a line's end; a trailing space belongs to its piece.
std::vector<std::string_view> pieces(std::string_view text) {
  std::vector<std::string_view> all;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char next = i + 1 < text.size() ? text[i + 1] : ' ';
    const bool digit = is_digit(next);
    const bool range = text[i] == '.' && i > 0 && text[i - 1] == '.' && digit;  // "4.75..5.25"
    const bool sign = text[i] == '/' || text[i] == '-' || text[i] == '_' || text[i] == '.';
    const bool joint = range || (sign && i + 1 - begin > 2 && !digit && next != '.' && next != ' ');
    if ((text[i] != ' ' || bound(text, i)) && !joint) continue;
    all.push_back(text.substr(begin, i + 1 - begin));
    begin = i + 1;
  }
  if (begin < text.size()) all.push_back(text.substr(begin));
  return all;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

/// Letters of two pieces may be set closer to each other or further apart than by themselves, by less than
/// this.
constexpr double joint_slack = 0.4;  ///< mm

/// Puts pieces of one text, which follow each other in it, on lines.
class Wrapper {
 public:
  Wrapper(double width, Type type, const TextMeasure& measure)
      : width_(width), type_(type), measure_(measure) {}

  std::vector<std::string> wrap(std::string_view text) {
    for (const std::string_view piece : pieces(text)) add(piece);
    if (!trimmed(line_).empty() || lines_.empty()) end_line();
    return std::move(lines_);
  }

 private:
  double width_of(std::string_view s) const {
    return measure_.measure(std::string(s), type_.points, type_.bold).width;
  }

  void end_line() {
    lines_.emplace_back(trimmed(line_));
    line_ = {};
    length_ = 0;
  }

  void add(std::string_view piece) {
    // The sum of the pieces tells in most cases whether they fit; the line itself is measured where it is
    // close.
    const double end = length_ + width_of(trimmed(piece));
    const std::string_view longer =
        line_.empty() ? piece : std::string_view(line_.data(), line_.size() + piece.size());
    // A blank at the end of a line needs no room: it is never set.
    const bool fits = trimmed(piece).empty() || end < width_ - joint_slack ||
                      (end < width_ + joint_slack && width_of(trimmed(longer)) <= width_);
    if (fits) {
      line_ = longer;
      length_ += width_of(piece);
      return;
    }
    if (!trimmed(line_).empty()) end_line();
    line_ = {};
    length_ = 0;
    if (width_of(trimmed(piece)) > width_) {
      part(piece);
    } else {
      line_ = piece;
    }
    length_ = width_of(line_);
  }

  /// A piece that is wider than a line.
  void part(std::string_view piece) {
    std::size_t begin = 0;
    for (std::size_t i = 0; i < piece.size();) {
      const std::size_t next = i + code_point_length(piece, i);
      line_ = piece.substr(begin, next - begin);
      if (i > begin && width_of(trimmed(line_)) > width_) {
        lines_.emplace_back(piece.substr(begin, i - begin));
        begin = i;
        line_ = piece.substr(begin, next - begin);
      }
      i = next;
    }
  }

  double width_;
  Type type_;
  const TextMeasure& measure_;
  std::vector<std::string> lines_;
  std::string_view line_;  ///< part of the text
  double length_ = 0;      ///< of line_, as the sum of its pieces
};

}  // namespace

double text_width(const std::string& text, Type type, const TextMeasure& measure) {
  return measure.measure(text, type.points, type.bold).width;
}

std::vector<std::string> wrap(std::string_view text, double width, Type type, const TextMeasure& measure) {
  return Wrapper(width, type, measure).wrap(text);
}

std::string shorten(std::string_view text, double width, Type type, const TextMeasure& measure) {
  std::string whole(text);
  if (text_width(whole, type, measure) <= width) return whole;
  std::string kept;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = code_point_length(text, i);
    const std::string longer = kept + std::string(text.substr(i, length));
    if (text_width(std::string(trimmed(longer)) + "…", type, measure) > width) break;
    kept = longer;
    i += length;
  }
  return std::string(trimmed(kept)) + "…";
}

std::vector<std::string> wrap_at_most(std::string_view text, double width, std::size_t most, Type type,
                                      const TextMeasure& measure) {
  std::vector<std::string> lines = wrap(text, width, type, measure);
  if (lines.size() <= most) return lines;
  std::string rest;
  for (std::size_t i = most - 1; i < lines.size(); ++i) rest += (rest.empty() ? "" : " ") + lines[i];
  lines.resize(most);
  lines.back() = shorten(rest, width, type, measure);
  return lines;
}

double widest_word(std::string_view text, Type type, const TextMeasure& measure) {
  double widest = 0;
  for (const std::string_view piece : pieces(text))
    widest = std::max(widest, text_width(std::string(trimmed(piece)), type, measure));
  return widest;
}

double add_lines(Group& group, const std::vector<std::string>& lines, Point at, Type type, Ink ink,
                 Anchor anchor) {
  for (const std::string& line : lines) {
    group.add(Words{at, line, type.points, type.bold, ink, anchor, 0});
    at.y += style::line_height(type.points);
  }
  return at.y;
}

Box words_box(const Words& words, const TextMeasure& measure) {
  const TextMeasure::Size size = measure.measure(words.text, words.points, words.bold);
  double start = 0;
  if (words.anchor == Anchor::Middle) start = -size.width / 2;
  if (words.anchor == Anchor::End) start = -size.width;
  const double angle = words.rotation * 3.14159265358979323846 / 180.0;
  const double c = std::cos(angle), s = std::sin(angle);
  Box box{1e9, 1e9, -1e9, -1e9};
  for (const double along : {start, start + size.width}) {
    for (const double up : {size.ascent, -size.descent}) {
      const double x = words.at.x + along * c - up * s;
      const double y = words.at.y - along * s - up * c;
      box = {std::min(box.left, x), std::min(box.top, y), std::max(box.right, x), std::max(box.bottom, y)};
    }
  }
  return box;
}

bool overlap(const Box& a, const Box& b, double slack) {
  return std::min(a.right, b.right) - std::max(a.left, b.left) > slack &&
         std::min(a.bottom, b.bottom) - std::max(a.top, b.top) > slack;
}

}  // namespace plugward
