// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/swap_test.cpp.
#include "plan/renamed.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>

namespace plugward {
namespace {

using Words = std::set<std::string>;

/// In lower case; letters and figures part, so that "FAN2" and "FAN 2" are the same. Bytes beyond ASCII count
/// as letters.
Words words_of(std::string_view text) {
  enum class Kind { Gap, Letter, Figure };
  Words words;
  std::string word;
  Kind last = Kind::Gap;
  for (const char c : text) {
    const bool figure = c >= '0' && c <= '9';
    const bool letter =
        (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (static_cast<unsigned char>(c) & 0x80U) != 0;
    const Kind kind = figure ? Kind::Figure : letter ? Kind::Letter : Kind::Gap;
    if (kind != last && !word.empty()) {
      words.insert(word);
      word.clear();
    }
    if (kind != Kind::Gap) word += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    last = kind;
  }
  if (!word.empty()) words.insert(word);
  return words;
}

/// [header]: the words of its label that not every header of its use has.
std::vector<Words> telling_words(const Board& board) {
  std::map<std::string, std::vector<Words>> by_use;
  for (const Header& header : board.headers) by_use[header.use].push_back(words_of(header.label));
  std::vector<Words> all;
  for (const Header& header : board.headers) {
    Words own;
    const std::vector<Words>& like = by_use[header.use];
    for (const std::string& word : words_of(header.label)) {
      const bool everywhere = like.size() > 1 && std::all_of(like.begin(), like.end(), [&](const Words& w) {
                                return w.contains(word);
                              });
      if (!everywhere) own.insert(word);
    }
    all.push_back(std::move(own));
  }
  return all;
}

bool share(const Words& a, const Words& b) {
  return std::any_of(a.begin(), a.end(), [&](const std::string& word) { return b.contains(word); });
}

bool switches(const Header& header) {
  return std::any_of(header.pins.begin(), header.pins.end(),
                     [](const Pin& pin) { return pin.function == PinFunction::Switched; });
}

}  // namespace

std::vector<std::vector<int>> renamed(const Fitting& machine, const Board& to) {
  const std::vector<Words> old = telling_words(*machine.board);
  const std::vector<Words> now = telling_words(to);
  std::vector<std::vector<int>> all;
  for (std::size_t plug = 0; plug < machine.harness->plugs.size(); ++plug) {
    Words words = words_of(machine.harness->plugs[plug].id);
    std::string label;
    std::optional<bool> switched;
    for (const Placement& p : machine.placements) {
      if (p.plug != static_cast<int>(plug)) continue;
      switched = switches(machine.board->headers[static_cast<std::size_t>(p.header)]);
      label = machine.board->headers[static_cast<std::size_t>(p.header)].label;
      words.insert(old[static_cast<std::size_t>(p.header)].begin(),
                   old[static_cast<std::size_t>(p.header)].end());
    }
    std::vector<int> line;
    for (std::size_t h = 0; h < to.headers.size(); ++h) {
      const bool same = !label.empty() && words_of(label) == words_of(to.headers[h].label);
      const bool other = switched && *switched != switches(to.headers[h]);
      line.push_back((same ? 0 : share(words, now[h]) ? 1 : 2) + (other ? other_switching : 0));
    }
    all.push_back(std::move(line));
  }
  return all;
}

}  // namespace plugward
