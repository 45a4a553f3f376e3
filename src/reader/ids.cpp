// SPDX-License-Identifier: MIT
// Tested through board_reader_test.cpp and the broken files in tests/unit/reader/broken.
#include "reader/ids.h"

#include "base/format.h"

namespace plugward {

bool Ids::declare(const Reading& reading, const Attributes& attributes, int index) {
  const std::string_view id = attributes.id(Key::Id);
  if (id.empty()) {
    complete_ = false;
    return false;
  }
  const auto [entry, fresh] = entries_.try_emplace(id, Entry{index, attributes.span(Key::Id)});
  if (fresh) {
    names_.push_back(id);
  } else {
    reading.fault(Rule::DoubledId, attributes.span(Key::Id), format("the {} '{}' is declared twice", what_, id))
        .note(entry->second.span, "first here")
        .help("give one of the two another id");
  }
  return fresh;
}

std::optional<int> Ids::find(std::string_view id) const {
  const auto entry = entries_.find(id);
  if (entry == entries_.end()) return std::nullopt;
  return entry->second.index;
}

std::optional<int> Ids::resolve(const Reading& reading, std::string_view id, Span place) const {
  if (const auto index = find(id)) return index;
  if (!complete_) return std::nullopt;
  Diagnostic& diagnostic =
      reading.fault(Rule::UndeclaredReference, place, format("{} '{}' is not declared", what_, id));
  if (names_.empty()) {
    diagnostic.help(format("nothing of the kind '{}' is declared here", what_));
  } else {
    suggest(diagnostic, id, names_, "declared are");
  }
  return std::nullopt;
}

std::optional<int> Ids::resolve(const Reading& reading, const Attributes& attributes, Key key) const {
  const std::string_view id = attributes.id(key);
  if (id.empty()) return std::nullopt;
  return resolve(reading, id, attributes.span(key));
}

}  // namespace plugward
