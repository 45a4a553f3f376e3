// SPDX-License-Identifier: MIT
// The plain form of XML read in one pass, without a library: elements, attributes written name="value" and
// comments, as nearly every description is written. Whatever looks different in any way (a reference, text,
// CDATA, an instruction, a blank beside '=', letters beyond ASCII in a name, a fault) is left to
// careful_tree(), which knows why it is wrong. What is read here is read to the same tree;
// tests/unit/reader/quick_tree_test.cpp proves it on every description of this repository and on mutants of
// them. It exists because building a document and walking it took two fifths of reading a board.
//
//   quick_tree("<a b=\"1\"/>" ...)    the tree
//   quick_tree("<a b='&lt;'/>" ...)   nothing: ask careful_tree()
#pragma once

#include <cstddef>
#include <optional>

#include "reader/xml_tree.h"

namespace plugward {

/// `body`: where the document begins. The tree looks at the text in `sources`, which must stay.
/// REQUIRES: check_text() has found nothing in the text.
std::optional<XmlTree> quick_tree(const Sources&, FileId, std::size_t body, const ReaderLimits&);

}  // namespace plugward
