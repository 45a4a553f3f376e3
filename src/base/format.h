// SPDX-License-Identifier: MIT
// Formatted text. The one place that names the formatting library.
//
//   format("{} of {}", 3, name)                     // words, in the language that is spoken (words.h)
//   verbatim("<td id=\"{}\">", id)                  // markup and codes, the same in every language
//   count_of(n, "{} plug stays", "{} plugs stay", n)   // singular or plural, by the language's own rule
//
// The English text is checked against its arguments when it is compiled. A translated one is checked when its
// catalogue is read: it takes exactly the same places, in an order of its own ("{1} ... {0}").
#pragma once

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <concepts>

#include "base/words.h"

namespace plugward {

/// "a, b, c".
template <class Range>
std::string join(const Range& range, std::string_view between) {
  return fmt::format("{}", fmt::join(range, between));
}

template <class... Args>
std::string format(fmt::format_string<Args...> english, Args&&... args) {
  const fmt::string_view text = english;
  if (!words_translated()) return fmt::vformat(text, fmt::make_format_args(args...));
  const std::string_view said = tr(std::string_view(text.data(), text.size()));
  return fmt::vformat(fmt::string_view(said.data(), said.size()), fmt::make_format_args(args...));
}

/// With an English text of a table, marked by later(). REQUIRES: it takes just these arguments.
template <class... Args>
std::string format_later(std::string_view english, Args&&... args) {
  const std::string_view said = tr(english);
  return fmt::vformat(fmt::string_view(said.data(), said.size()), fmt::make_format_args(args...));
}

template <class... Args>
std::string verbatim(fmt::format_string<Args...> text, Args&&... args) {
  return fmt::vformat(text, fmt::make_format_args(args...));
}

/// REQUIRES: n is not negative.
template <class... Args>
std::string count_of(std::integral auto n, fmt::format_string<Args...> one, fmt::format_string<Args...> many,
                     Args&&... args) {
  const fmt::string_view first = one, rest = many;
  const std::string_view said =
      tr_count(static_cast<unsigned long>(n), {first.data(), first.size()}, {rest.data(), rest.size()});
  return fmt::vformat(fmt::string_view(said.data(), said.size()), fmt::make_format_args(args...));
}

}  // namespace plugward
