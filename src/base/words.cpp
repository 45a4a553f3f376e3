// SPDX-License-Identifier: MIT
// Tested in tests/unit/base/language_test.cpp.
#include "base/words.h"

#include "base/language.h"

namespace plugward {

namespace detail {
const Language* spoken = nullptr;
}

void speak(const Language* language) {
  detail::spoken = language;
}

std::string_view spoken_language() {
  return detail::spoken == nullptr ? "en" : std::string_view(detail::spoken->code());
}

const char* tr(const char* english) {
  if (detail::spoken == nullptr) return english;
  const std::string* said = detail::spoken->find("", english);
  return said == nullptr ? english : said->c_str();
}

std::string_view tr(std::string_view english) {
  if (detail::spoken == nullptr) return english;
  const std::string* said = detail::spoken->find("", english);
  return said == nullptr ? english : std::string_view(*said);
}

const char* tr_in(const char* context, const char* english) {
  if (detail::spoken == nullptr) return english;
  const std::string* said = detail::spoken->find(context, english);
  return said == nullptr ? english : said->c_str();
}

std::string_view tr_count(unsigned long n, std::string_view one, std::string_view many) {
  if (detail::spoken != nullptr) {
    if (const std::string* said = detail::spoken->find_count(n, one)) return *said;
  }
  return n == 1 ? one : many;
}

}  // namespace plugward
