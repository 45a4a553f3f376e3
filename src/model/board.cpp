// SPDX-License-Identifier: MIT
#include "model/board.h"

#include <algorithm>

#include "base/words.h"

namespace plugward {
namespace {

template <class T>
const T* find_by_id(const std::vector<T>& list, std::string_view id) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const T& item) { return item.id == id; });
  return found == list.end() ? nullptr : &*found;
}

}  // namespace

const Rail* Board::rail(std::string_view wanted) const {
  return find_by_id(rails, wanted);
}
const Jumper* Board::jumper(std::string_view wanted) const {
  return find_by_id(jumpers, wanted);
}
const Header* Board::header(std::string_view wanted) const {
  return find_by_id(headers, wanted);
}
const Evidence* Board::find_evidence(std::string_view wanted) const {
  return find_by_id(evidences, wanted);
}

const Evidence* Board::evidence_of(const Header& header, const Pin& pin) const {
  if (!pin.evidence.empty()) return find_evidence(pin.evidence);
  if (!header.evidence.empty()) return find_evidence(header.evidence);
  return find_evidence(evidence);
}

std::string_view to_word(PinFunction function) {
  switch (function) {
    case PinFunction::Supply:
      return later("supply");
    case PinFunction::Ground:
      return later("ground");
    case PinFunction::Output:
      return later("output");
    case PinFunction::Input:
      return later("input");
    case PinFunction::Switched:
      return later("switched");
    case PinFunction::Coil:
      return later("coil");
    case PinFunction::Unused:
      return later("unused");
    case PinFunction::Unknown:
      return later("unknown");
  }
  return "";
}

}  // namespace plugward
