// SPDX-License-Identifier: MIT
// The ids of one kind (rails, jumpers, terminals ...) that a file declares, and references to them.
//
//   Ids rails("rail");
//   rails.declare(reading, attributes, 0);                 // reports a doubled id, with a note at the first
//   rails.resolve(reading, "5v", span) == std::nullopt     // reported: "rail '5v' is not declared"
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "reader/attributes.h"
#include "reader/reading.h"

namespace plugward {

class Ids {
 public:
  explicit Ids(std::string_view what) : what_(what) {}

  /// Takes the element's id for `index`; false when there is none or it is taken (both are reported).
  bool declare(const Reading&, const Attributes&, int index);
  /// The index of `id`, or nothing: then it is reported at `place`, unless an id of this kind could not be
  /// read.
  std::optional<int> resolve(const Reading&, std::string_view id, Span place) const;
  /// The same for an attribute that is an id; nothing when it is absent.
  std::optional<int> resolve(const Reading&, const Attributes&, Key) const;
  /// The same, giving the id itself; "" when absent or not declared.
  std::string_view reference(const Reading&, const Attributes&, Key) const;

  std::optional<int> find(std::string_view id) const;
  const std::vector<std::string_view>& names() const { return names_; }
  std::string_view what() const { return what_; }
  bool complete() const { return complete_; }  ///< false: an id of this kind could not be read

 private:
  struct Entry {
    int index = 0;
    Span span{};
  };
  const Entry* entry(std::string_view id) const;

  std::string_view what_;
  // Searched in order: a file declares a handful of each kind, and ReaderLimits bounds the rest.
  std::vector<std::string_view> names_;
  std::vector<Entry> entries_;  ///< of names_
  bool complete_ = true;
};

}  // namespace plugward
