// SPDX-License-Identifier: MIT
// The language that is spoken. The English text is the key; what its catalogue lacks is said in English.
//
//   const Language german = parse_po(text).language;  // base/language.h
//   speak(&german);                                   // cli, once, before anything is worded
//   tr("wrong seatings")                              // "falsche Sitze"; as it is when none is spoken
//   tr_in("of a table of jumpers", "at")              // where a short English word has two meanings
//   constexpr std::array heads{later("plug")};        // marked for the template, said by tr(heads[i])
//   format("{} of {}", 3, name)                       // base/format.h
//
// This is the one exception to "no globals": like a locale it belongs to the process, is set before threads
// start and never changes again. A table that is filled before that holds English texts and is put through
// tr() where it is read.
#pragma once

#include <string_view>

namespace plugward {

class Language;

/// From now on in this language; nullptr: English. It must outlive all that was worded.
void speak(const Language*);

namespace detail {
extern const Language* spoken;
}
/// BCP 47; "en" when none is set.
std::string_view spoken_language();

inline bool words_translated() {
  return detail::spoken != nullptr;
}

/// As a literal was a pointer that never dies, so is what it becomes.
const char* tr(const char* english);
/// The text given, or one that lives as long as the language; not always ended by a zero.
std::string_view tr(std::string_view english);
const char* tr_in(const char* context, const char* english);
/// One of the plural forms.
std::string_view tr_count(unsigned long n, std::string_view one, std::string_view many);

/// Marks a text for the template of the catalogue and changes nothing.
constexpr const char* later(const char* english) {
  return english;
}

}  // namespace plugward
