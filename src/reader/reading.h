// SPDX-License-Identifier: MIT
// What every part of the reader is handed: the tree, where faults go, what is already known.
#pragma once

#include <initializer_list>
#include <span>
#include <string>
#include <string_view>

#include "catalogue/family.h"
#include "diag/diagnostic.h"
#include "reader/limits.h"
#include "reader/xml_tree.h"

namespace plugward {

struct Reading {
  const XmlTree& tree;
  Catalogue& catalogue;
  Diagnostics& diagnostics;
  const ReaderLimits& limits;

  Diagnostic& fault(Rule rule, Span span, std::string message) const {
    return diagnostics.add(rule, span, std::move(message));
  }
};

/// A word of the file and what it stands for.
template <class Value>
struct Word {
  std::string_view text;
  Value value;
};

/// Adds "did you mean 'x'?", or when nothing is near, "`what`: a, b, c" (left out past 32 candidates).
/// Returns the x, or "".
std::string suggest(Diagnostic&, std::string_view name, std::span<const std::string_view> candidates,
                    std::string_view what);

/// Reports a child that has no place in `parent`: an unknown element, or text. Its children are not looked
/// at.
void refuse_child(const Reading&, const XmlNode& parent, const XmlNode& child,
                  std::span<const std::string_view> known);

/// Reports every child of an element that takes none.
void refuse_children(const Reading&, XmlTree::Index element);

}  // namespace plugward
