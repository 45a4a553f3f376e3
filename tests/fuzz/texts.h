// SPDX-License-Identifier: MIT
// An input that stands for several files: texts with a line "====" between them.
//
//   const Texts texts(data, size);                       // texts.at(0), ..., "" beyond the last
//   const Read read(texts.at(1), limits, texts.opener(1));
#pragma once

#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "base/format.h"
#include "reader/descriptions.h"

namespace plugward::fuzz {

/// A property that does not hold ends the process, as a crash does.
inline void must(bool holds) {
  if (!holds) std::abort();
}

/// Small enough that one input takes milliseconds.
inline ReaderLimits small_limits() {
  ReaderLimits limits;
  limits.bytes = 20000;
  limits.positions = 6;
  limits.entries = 90;
  limits.harnesses = 4;
  limits.loom_bytes = 40000;
  return limits;
}

class Texts {
 public:
  Texts(const unsigned char* data, std::size_t size) {
    std::string_view rest(reinterpret_cast<const char*>(data), size);
    constexpr std::string_view mark = "\n====\n";
    for (;;) {
      const std::size_t end = rest.find(mark);
      texts_.emplace_back(rest.substr(0, end));
      if (end == rest.npos) return;
      rest.remove_prefix(end + mark.size());
    }
  }

  std::size_t size() const { return texts_.size(); }
  std::string at(std::size_t index) const { return index < texts_.size() ? texts_[index] : ""; }

  /// Opens text 2 as "2.xml" and so on, each once.
  OpenFile opener(Sources& sources) const {
    return [this, &sources](const std::string& path, std::size_t limit) -> OpenedFile {
      for (FileId id = 1; id <= sources.size(); ++id) {
        if (sources.file(id).path == path) return {id, ""};
      }
      for (std::size_t i = 0; i < texts_.size(); ++i) {
        if (path == format("{}.xml", i) && texts_[i].size() <= limit)
          return {sources.add(path, texts_[i]), ""};
      }
      return {0, format("cannot read '{}': No such file or directory", path)};
    };
  }

 private:
  std::vector<std::string> texts_;
};

/// How much the states of a circuit may be: two of each switch, driver, jumper.
inline int choices(const Harness& harness) {
  int count = 0;
  for (const Device& device : harness.devices) {
    for (const Part& part : device.parts) {
      if (std::holds_alternative<Switch>(part) || std::holds_alternative<Driver>(part) ||
          std::holds_alternative<Diode>(part))
        ++count;
    }
  }
  return count;
}

inline int choices(const Board& board) {
  int count = static_cast<int>(board.jumpers.size() + board.rails.size());
  for (const Header& header : board.headers) {
    for (const Pin& pin : header.pins) {
      if (pin.function == PinFunction::Switched || pin.function == PinFunction::Output ||
          pin.function == PinFunction::Coil || pin.clamp)
        ++count;
    }
  }
  return count;
}

}  // namespace plugward::fuzz
