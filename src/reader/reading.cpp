// SPDX-License-Identifier: MIT
// Tested through board_reader_test.cpp and the broken files in tests/unit/reader/broken.
#include "reader/reading.h"

#include "base/edit_distance.h"
#include "base/format.h"

namespace plugward {

std::string suggest(Diagnostic& diagnostic, std::string_view name,
                    std::span<const std::string_view> candidates, std::string_view what) {
  constexpr std::size_t most_listed = 32;
  std::string near = nearest(name, candidates);
  // Any letter is one edit from any other: only its capital is a good guess.
  if (name.size() <= 1 && near.size() == 1 && (name.empty() || (near[0] ^ name[0]) != 0x20)) near.clear();
  if (!near.empty()) {
    diagnostic.help(format("did you mean '{}'?", near));
  } else if (!candidates.empty() && candidates.size() <= most_listed) {
    diagnostic.help(format("{}: {}", what, join(candidates, ", ")));
  }
  return near;
}

void refuse_child(const Reading& reading, const XmlNode& parent, const XmlNode& child,
                  std::span<const std::string_view> known) {
  if (child.is_text()) {
    reading.fault(Rule::StrayText, reading.tree.span(child), format("text inside '{}'", parent.name))
        .help("delete it, make it a comment (<!-- ... -->), or put it into an attribute");
    return;
  }
  Diagnostic& diagnostic = reading.fault(Rule::UnknownElement, reading.tree.name_span(child),
                                         format("unknown element '{}' in '{}'", child.name, parent.name));
  if (known.empty()) {
    diagnostic.help(format("'{}' takes attributes only: end its tag with '/>'", parent.name));
  } else {
    suggest(diagnostic, child.name, known, format("'{}' takes the elements", parent.name));
  }
}

void refuse_children(const Reading& reading, XmlTree::Index element) {
  for (const XmlTree::Index child : reading.tree.children(element)) {
    refuse_child(reading, reading.tree.node(element), reading.tree.node(child), {});
  }
}

}  // namespace plugward
