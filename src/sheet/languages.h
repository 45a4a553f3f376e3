// SPDX-License-Identifier: MIT
// The languages that a sheet can be written in: English, and one PO file each in src/sheet/languages/.
//
//   languages()                      // {"en", "de"}
//   language_of("de")->code()        // "de"; nullptr for English and for what there is not
//
// A further language is one file more there and no line of C++.
#pragma once

#include <string_view>
#include <vector>

#include "base/language.h"

namespace plugward {

struct LanguageFile {
  std::string_view code;  ///< BCP 47, the name of its file
  std::string_view text;  ///< PO
};

/// English first, then by code.
std::vector<std::string_view> languages();
/// Read once and kept.
const Language* language_of(std::string_view code);

/// One more, or another in place of a shipped one; for tests.
Language& add_language(Language);

/// As they stand in src/sheet/languages/; made by CMake.
std::vector<LanguageFile> language_files();

}  // namespace plugward
