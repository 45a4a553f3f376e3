// SPDX-License-Identifier: MIT
// Tested in tests/unit/cli/retell_test.cpp.
#include "cli/retell.h"

#include "base/format.h"

namespace plugward {
namespace {

std::string quoted(std::string_view word) {
  constexpr std::string_view plain =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-+=.,:/@%";
  if (!word.empty() && word.find_first_not_of(plain) == std::string_view::npos) return std::string(word);
  std::string text = "'";
  for (const char c : word) {
    if (c == '\'') {
      text += "'\\''";
    } else {
      text += c;
    }
  }
  return text + "'";
}

}  // namespace

std::string retell(std::string_view command, const Options& options) {
  std::string text = verbatim("plugward {}", command);
  const auto add = [&text](std::string_view option, const std::string& value) {
    text += verbatim("{}{} {}", option.empty() ? "" : " ", option, quoted(value));
  };
  const auto add_all = [&](std::string_view option, const std::vector<NamedValue>& list) {
    for (const NamedValue& one : list)
      add(option, one.name.empty() ? one.value : one.name + "=" + one.value);
  };
  for (const std::string& word : options.words) add("", word);
  if (!options.to_board.empty()) add("--to", options.to_board);
  add_all("--at", options.at);
  add_all("--jumper", options.jumpers);
  add_all("--seen", options.seen);
  for (const NamedValue& one : options.seen_kinds) add("--seen", one.name + ":" + one.value);
  for (const std::string& one : options.measured) add("--measured", one);
  for (const std::string& path : options.families) add("--families", path);
  return text;
}

}  // namespace plugward
