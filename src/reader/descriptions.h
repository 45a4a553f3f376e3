// SPDX-License-Identifier: MIT
// Reads board, harness and family files. Strict: all faults of all files are reported in one run, as data.
//
//   const FileId id = sources.add(path, read_file(path));
//   Description d = read_description(sources, id, catalogue, diagnostics);   // d.board
#pragma once

#include <memory>
#include <string>
#include <string_view>

#include "catalogue/family.h"
#include "diag/diagnostic.h"
#include "diag/source.h"
#include "model/board.h"
#include "model/harness.h"
#include "reader/limits.h"

namespace plugward {

/// What a file turned out to be.
struct Description {
  std::unique_ptr<Board> board;
  std::unique_ptr<Harness> harness;
  bool families = false;  ///< its families were added to the catalogue
};

/// Adds the built-in families. The built-in text is proved by the tests to have no errors.
void add_builtin_families(Catalogue&);

/// Reads one text that is already in `sources`. On errors the description is empty and the diagnostics,
/// in the order of the file, say why. Families are looked up in `catalogue`; a family file adds to it.
Description read_description(const Sources&, FileId, Catalogue&, Diagnostics&, const ReaderLimits& = {});

}  // namespace plugward
