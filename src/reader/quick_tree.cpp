// SPDX-License-Identifier: MIT
// Idea: a table tells the letters of names; values are searched eight bytes at a time for what may end them.
// No bounds are checked byte by byte: the text ends in the zero byte of its std::string, check_text() has
// refused every other one, and nothing here steps over a zero.
//
//   <pin n="1"/>   name to 'n', blank, name to '=', quote, value to the same quote, "/>"
//
// Complexity: one pass; two vectors. Alternative not taken: to read all of XML here, which would have to be
// proved against the whole standard; what is read here is a few productions of it (XML 1.0, fifth edition
// (W3C): [5] Name, [10] AttValue, [15] Comment, [40] STag, [42] ETag, [44] EmptyElemTag, all without
// references).
#include "reader/quick_tree.h"

#include <array>
#include <bit>
#include <cstdint>
#include <cstring>
#include <string>
#include <utility>
#include <vector>

namespace plugward {
namespace {

constexpr unsigned char begins_name = 1;
constexpr unsigned char within_name = 2;

constexpr auto letters = [] {
  std::array<unsigned char, 256> table{};
  for (std::size_t c = 0; c < 128; ++c) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
    const bool other = (c >= '0' && c <= '9') || c == '-' || c == '.' || c == ':';
    table[c] = letter ? begins_name | within_name : other ? within_name : 0;
  }
  return table;
}();

bool is(unsigned char kind, char c) {
  return (letters[static_cast<unsigned char>(c)] & kind) != 0;
}

bool is_blank(char c) {
  return c == ' ' || c == '\n' || c == '\r' || c == '\t';
}

const char* behind_blanks(const char* at) {
  while (is_blank(*at)) ++at;
  return at;
}

/// Behind the name that begins at `at`; `at` itself when none does.
const char* behind_name(const char* at) {
  if (!is(begins_name, *at)) return at;
  do ++at;
  while (is(within_name, *at));
  return at;
}

std::string_view between(const char* begin, const char* end) {
  return {begin, static_cast<std::size_t>(end - begin)};
}

/// What ends a value or has no place in it: its quote, '<', '&' and everything below the blank. A bit in each
/// such byte of `word` up to and with the lowest, by the classic (w - 0x01..) & ~w & 0x80.. for a zero byte;
/// behind the lowest there may be bits too many.
std::uint64_t marks_of(std::uint64_t word, char quote) {
  constexpr std::uint64_t ones = 0x0101010101010101U;
  const auto equal = [&](char c) {
    const std::uint64_t difference = word ^ (ones * static_cast<unsigned char>(c));
    return (difference - ones) & ~difference;
  };
  const std::uint64_t below_blank = (word - ones * 0x20) & ~word;
  return (equal(quote) | equal('<') | equal('&') | below_blank) & (ones << 7);
}

}  // namespace

class QuickTree {
 public:
  QuickTree(const std::string& text, FileId file, const ReaderLimits& limits)
      : begin_(text.c_str()), end_(begin_ + text.size()), limits_(limits) {
    tree_.file_ = file;
    tree_.nodes_.reserve(text.size() / 48 + 4);
    tree_.attributes_.reserve(text.size() / 12 + 4);
  }

  std::optional<XmlTree> build(std::size_t body) {
    at_ = begin_ + body;
    const std::string_view text = between(at_, end_);
    // check_text() has read the declaration that begins the file.
    if (text.starts_with("<?xml") && is_blank(at_[5])) at_ += text.find("?>") + 2;
    for (;;) {
      at_ = behind_blanks(at_);
      if (at_ == end_) break;
      if (*at_ != '<') return std::nullopt;
      const bool plain = at_[1] == '!' ? comment() : at_[1] == '/' ? end_tag() : start_tag();
      if (!plain) return std::nullopt;
    }
    if (tree_.nodes_.empty() || !open_.empty()) return std::nullopt;
    return std::move(tree_);
  }

 private:
  std::uint32_t offset(const char* at) const { return static_cast<std::uint32_t>(at - begin_); }
  std::uint32_t count() const { return static_cast<std::uint32_t>(tree_.nodes_.size()); }

  bool start_tag() {
    const bool second_root = open_.empty() && count() > 0;
    const bool too_many = static_cast<int>(count()) >= limits_.entries;
    if (second_root || too_many || static_cast<int>(open_.size()) >= limits_.depth) return false;
    const char* at = behind_name(at_ + 1);
    XmlNode node;
    node.name = between(at_ + 1, at);
    if (node.name.empty()) return false;
    node.begin = offset(at_);
    node.first_attribute = static_cast<std::uint32_t>(tree_.attributes_.size());
    while ((at = attribute(at)) != nullptr && *at != '>' && *at != '/') {
    }
    if (at == nullptr) return false;
    const bool childless = *at == '/';
    if (childless && *++at != '>') return false;
    at_ = at + 1;
    node.end = offset(at_);
    node.attributes = static_cast<std::uint32_t>(tree_.attributes_.size()) - node.first_attribute;
    node.after = count() + 1;  // of one with children set anew by its end tag
    if (!childless) open_.push_back(count());
    tree_.nodes_.push_back(node);
    return true;
  }

  /// Reads the attribute at `at`, which is behind a name or a value: there the '>' or "/>" may stand as well.
  /// Gives the place behind it; nullptr when something else stands here.
  const char* attribute(const char* at) {
    const char* const name = behind_blanks(at);
    if (*name == '>' || *name == '/') return name;
    const char* const equals = behind_name(name);
    if (name == at || equals == name || equals[0] != '=' || (equals[1] != '"' && equals[1] != '\''))
      return nullptr;
    const char* const value = equals + 2;
    const char* const quote = value_end(value, equals[1]);
    if (quote == nullptr) return nullptr;
    tree_.attributes_.push_back(
        {between(name, equals), between(value, quote), offset(name), offset(value), offset(quote)});
    return quote + 1;
  }

  /// Where the value that begins at `at` ends; nullptr when it does not end plainly.
  const char* value_end(const char* at, char quote) const {
    for (; std::endian::native == std::endian::little && end_ - at >= 8; at += 8) {
      std::uint64_t word = 0;
      std::memcpy(&word, at, sizeof word);
      if (const std::uint64_t marks = marks_of(word, quote)) {
        at += std::countr_zero(marks) / 8;
        return *at == quote ? at : nullptr;
      }
    }
    while (*at != quote && *at != '<' && *at != '&' && static_cast<unsigned char>(*at) >= 0x20) ++at;
    return *at == quote ? at : nullptr;
  }

  bool end_tag() {
    if (open_.empty()) return false;
    XmlNode& node = tree_.nodes_[open_.back()];
    const char* const name = at_ + 2;
    const char* const stop = behind_name(name);
    if (between(name, stop) != node.name || *stop != '>') return false;
    node.after = count();
    open_.pop_back();
    at_ = stop + 1;
    return true;
  }

  bool comment() {
    const std::string_view rest = between(at_, end_);
    if (!rest.starts_with("<!--")) return false;
    const std::size_t dashes = rest.find("--", 4);
    if (dashes == rest.npos || at_[dashes + 2] != '>') return false;
    at_ += dashes + 3;
    return true;
  }

  const char* begin_;
  const char* end_;
  const char* at_ = nullptr;
  const ReaderLimits& limits_;
  XmlTree tree_;
  std::vector<XmlTree::Index> open_;
};

std::optional<XmlTree> quick_tree(const Sources& sources, FileId file, std::size_t body,
                                  const ReaderLimits& limits) {
  return QuickTree(sources.file(file).text, file, limits).build(body);
}

}  // namespace plugward
