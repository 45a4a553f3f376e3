// SPDX-License-Identifier: MIT
// Tested in tests/words.
#include "sheet/languages.h"

#include <algorithm>
#include <cassert>
#include <list>

namespace plugward {

namespace {

/// Texts that were worded point into them.
std::list<Language>& kept() {
  static std::list<Language> languages;
  return languages;
}

}  // namespace

std::vector<std::string_view> languages() {
  std::vector<std::string_view> codes{"en"};
  for (const LanguageFile& file : language_files()) codes.push_back(file.code);
  for (const Language& language : kept()) {
    if (std::find(codes.begin(), codes.end(), language.code()) == codes.end())
      codes.emplace_back(language.code());
  }
  return codes;
}

const Language* language_of(std::string_view code) {
  for (const Language& language : kept()) {
    if (language.code() == code) return &language;
  }
  for (const LanguageFile& file : language_files()) {
    if (file.code != code) continue;
    PoReading read = parse_po(file.text);
    assert(read.faults.empty());  // a test reads them all
    return &kept().emplace_back(std::move(read.language));
  }
  return nullptr;
}

Language& add_language(Language language) {
  return kept().emplace_front(std::move(language));
}

}  // namespace plugward
