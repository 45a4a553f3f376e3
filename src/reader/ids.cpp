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
  if (const Entry* earlier = entry(id)) {
    reading.fault(Rule::DoubledId, attributes.span(Key::Id), format("{} '{}' is declared twice", what_, id))
        .note(earlier->span, "first here")
        .help("give one of the two another id");
    return false;
  }
  names_.push_back(id);
  entries_.push_back({index, attributes.span(Key::Id)});
  return true;
}

const Ids::Entry* Ids::entry(std::string_view id) const {
  for (std::size_t i = 0; i < names_.size(); ++i) {
    if (names_[i].size() == id.size() && names_[i][0] == id[0] && names_[i] == id) return &entries_[i];
  }
  return nullptr;
}

std::optional<int> Ids::find(std::string_view id) const {
  const Entry* found = id.empty() ? nullptr : entry(id);
  if (found == nullptr) return std::nullopt;
  return found->index;
}

std::optional<int> Ids::resolve(const Reading& reading, std::string_view id, Span place) const {
  if (const auto index = find(id)) return index;
  if (!complete_) return std::nullopt;
  Diagnostic& diagnostic =
      reading.fault(Rule::UndeclaredReference, place, format("{} '{}' is not declared", what_, id));
  if (names_.empty()) {
    diagnostic.help(format("no {0} is declared here: add <{0} id=\"{1}\" .../>", what_, id));
  } else {
    suggest(diagnostic, id, names_, "declared are");
  }
  return std::nullopt;
}

std::optional<int> Ids::resolve(const Reading& reading, const Attributes& attributes, Key key) const {
  if (!attributes.has(key)) return std::nullopt;
  if (const auto index = find(attributes.raw(key))) return index;
  const std::string_view id = attributes.id(key);
  if (id.empty()) return std::nullopt;
  return resolve(reading, id, attributes.span(key));
}

std::string_view Ids::reference(const Reading& reading, const Attributes& attributes, Key key) const {
  return resolve(reading, attributes, key) ? attributes.raw(key) : std::string_view();
}

}  // namespace plugward
