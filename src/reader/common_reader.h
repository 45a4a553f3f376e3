// SPDX-License-Identifier: MIT
// What board and harness files have in common: evidence, and the shape of a header or plug.
#pragma once

#include <string>
#include <vector>

#include "model/board.h"
#include "model/evidence.h"
#include "reader/attributes.h"
#include "reader/ids.h"

namespace plugward {

/// The keys that every root takes beside its own: the link to a schema.
inline constexpr KeySet root_keys{Key::SchemaPrefix, Key::SchemaPlace};
inline constexpr KeySet shape_required{Key::Family, Key::Positions};
inline constexpr KeySet shape_optional{Key::Rows, Key::Numbering, Key::Key};

void read_evidence(const Reading&, XmlTree::Index, std::vector<Evidence>&, Ids&);

/// The evidence attribute as a checked reference: "" when absent or not declared.
std::string_view read_evidence_reference(const Reading&, const Attributes&, const Ids& evidences);

/// Reports that nobody declares this family.
void refuse_family(const Reading&, std::string_view id, Span, const std::vector<std::string>& known);

/// The shape of a header or plug. Checks it against the family; `positions` is 0 when it could not be read.
struct Outline {
  std::string family;
  int positions = 0;
  int rows = 1;
  Numbering numbering = Numbering::Zigzag;
  KeyState key = KeyState::Intact;
  Span family_span{};
  Span positions_span{};
};
Outline read_shape(const Reading&, const Attributes&);

}  // namespace plugward
