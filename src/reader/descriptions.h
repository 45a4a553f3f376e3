// SPDX-License-Identifier: MIT
// Reads board, harness, loom and family files. Strict: all faults of all files are reported in one run, as
// data.
//
//   const FileId id = sources.add(path, read_file(path));
//   Description d = read_description(sources, id, catalogue, diagnostics);   // d.board
#pragma once

#include <cstddef>
#include <functional>
#include <memory>
#include <string>
#include <string_view>

#include "catalogue/family.h"
#include "diag/diagnostic.h"
#include "diag/source.h"
#include "model/board.h"
#include "model/harness.h"
#include "model/loom.h"
#include "reader/limits.h"

namespace plugward {

/// What a file turned out to be.
struct Description {
  std::unique_ptr<Board> board;
  std::unique_ptr<Harness> harness;
  std::unique_ptr<Loom> loom;
  std::unique_ptr<LoomFiles> loom_files;  ///< of a loom that was read with an OpenFile
  bool families = false;                  ///< its families were added to the catalogue

  bool taken() const { return board || harness || loom || families; }  ///< the file has no errors
};

/// A file that a loom names, now in Sources, or why it cannot be read: "cannot read 'x.xml': ...".
struct OpenedFile {
  FileId file = 0;
  std::string error;
};

/// How the reader comes to such a file: it does not touch the disk itself. `path` as it is to be shown; a
/// text of more than `limit` bytes is an error. The same path may be asked for again, and is best the same
/// FileId.
using OpenFile = std::function<OpenedFile(const std::string& path, std::size_t limit)>;

/// Adds the built-in families. The built-in text is proved by the tests to have no errors.
void add_builtin_families(Catalogue&);

/// Reads one text that is already in `sources`. On errors the description is empty and the diagnostics,
/// in the order of the file, say why. Families are looked up in `catalogue`; a family file adds to it. The
/// files that a loom names are opened by `open`; without it nothing but the loom's own text is read and
/// checked.
Description read_description(const Sources&, FileId, Catalogue&, Diagnostics&, const ReaderLimits& = {},
                             const OpenFile& open = {});

}  // namespace plugward
