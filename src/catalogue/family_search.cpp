// SPDX-License-Identifier: MIT
// Name, id and title are cut into words and numbers: "JST-XH" is jst, xh, and so is "JST XH" in a title. A
// family gets 2 for each word of the name that it has and 1 for each number, as a pitch is shared by many;
// the families that get most are alike. When no word is found, the name run together may still be part of a
// title: "jstxh". Tested in tests/unit/catalogue/family_search_test.cpp.
#include "catalogue/family_search.h"

#include <algorithm>

namespace plugward {
namespace {

enum class Sort { Letter, Digit, Other };

char small(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

Sort sort_of(char c) {
  if (small(c) >= 'a' && small(c) <= 'z') return Sort::Letter;
  return c >= '0' && c <= '9' ? Sort::Digit : Sort::Other;
}

/// "JST-XH2.5" -> "jst", "xh", "2.5".
std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  Sort before = Sort::Other;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool point =
        text[i] == '.' && before == Sort::Digit && i + 1 < text.size() && sort_of(text[i + 1]) == Sort::Digit;
    const Sort sort = point ? Sort::Digit : sort_of(text[i]);
    if (sort != Sort::Other && sort != before) words.emplace_back();
    if (sort != Sort::Other) words.back() += small(text[i]);
    before = sort;
  }
  return words;
}

std::string run_together(std::string_view text) {
  std::string all;
  for (const std::string& word : words_of(text)) all += word;
  std::erase(all, '.');
  return all;
}

int in_common(const std::vector<std::string>& name, const std::vector<std::string>& family) {
  int score = 0;
  for (const std::string& word : name) {
    if (std::find(family.begin(), family.end(), word) == family.end()) continue;
    score += sort_of(word[0]) == Sort::Letter ? 2 : 1;
  }
  return score;
}

}  // namespace

std::vector<std::string> families_like(const Catalogue& catalogue, std::string_view name) {
  constexpr std::size_t shortest_part = 3;
  const std::vector<std::string> words = words_of(name);
  const std::string together = run_together(name);
  std::vector<std::string> best, parts;
  int most = 1;
  for (const Family& family : catalogue.all()) {
    const int score = in_common(words, words_of(family.id + " " + family.title));
    if (score > most) best.clear();
    if (score >= most) {
      best.push_back(family.id);
      most = score;
    }
    const bool part =
        together.size() >= shortest_part && (run_together(family.id).find(together) != std::string::npos ||
                                             run_together(family.title).find(together) != std::string::npos);
    if (part) parts.push_back(family.id);
  }
  return best.empty() ? parts : best;
}

}  // namespace plugward
