// SPDX-License-Identifier: MIT
// The tree of quick_tree() beside that of careful_tree().
//
//   two_trees("<a/>") == TwoTrees::Same
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "reader/quick_tree.h"
#include "reader/text_check.h"
#include "reader/xml_tree.h"

namespace plugward::test {

/// Every name, value and place of both is equal.
inline bool same_tree(const XmlTree& a, const XmlTree& b) {
  if (a.size() != b.size()) return false;
  for (XmlTree::Index i = 0; i < a.size(); ++i) {
    const XmlNode& x = a.node(i);
    const XmlNode& y = b.node(i);
    if (x.name != y.name || x.begin != y.begin || x.end != y.end || x.after != y.after) return false;
    const auto of_x = a.attributes(x);
    const auto of_y = b.attributes(y);
    if (of_x.size() != of_y.size()) return false;
    for (std::size_t k = 0; k < of_x.size(); ++k) {
      if (of_x[k].name != of_y[k].name || of_x[k].value != of_y[k].value) return false;
      if (a.name_span(of_x[k]) != b.name_span(of_y[k])) return false;
      if (a.value_span(of_x[k]) != b.value_span(of_y[k])) return false;
    }
  }
  return true;
}

enum class TwoTrees {
  NotQuick,  ///< quick_tree() leaves the text to careful_tree(), as it may any
  Same,      ///< both read it, to the same tree, and nothing is wrong with it
  Different
};

inline TwoTrees two_trees(std::string text, const ReaderLimits& limits = {}) {
  Sources sources;
  Diagnostics diagnostics;
  const FileId file = sources.add("t.xml", std::move(text));
  const std::optional<std::size_t> body = check_text(sources, file, limits, diagnostics);
  const auto quick = body ? quick_tree(sources, file, *body, limits) : std::nullopt;
  if (!quick) return TwoTrees::NotQuick;
  const auto careful = careful_tree(sources, file, *body, limits, diagnostics);
  const bool same = careful && diagnostics.all().empty() && same_tree(*quick, *careful);
  return same ? TwoTrees::Same : TwoTrees::Different;
}

}  // namespace plugward::test
