// SPDX-License-Identifier: MIT
// Text to tree to meaning. Tested in tests/unit/reader/.
#include "reader/descriptions.h"

#include <array>
#include <cassert>
#include <utility>

#include "base/format.h"
#include "reader/board_reader.h"
#include "reader/family_reader.h"
#include "reader/harness_reader.h"
#include "reader/loom_reader.h"
#include "reader/reading.h"
#include "reader/schema_link.h"
#include "reader/xml_tree.h"

namespace plugward {
namespace {

Description read_root(const Reading& reading, const Sources& sources, const OpenFile& open,
                      std::vector<Family>& families) {
  Description description;
  const XmlNode& root = reading.tree.node(0);
  if (root.name == "board") {
    check_schema_link(reading);
    description.board = read_board(reading);
  } else if (root.name == "harness") {
    check_schema_link(reading);
    description.harness = read_harness(reading);
  } else if (root.name == "loom") {
    check_schema_link(reading);
    description.loom = read_loom(reading);
    if (open) description.loom_files = read_loom_files(reading, sources, *description.loom, open);
  } else if (root.name == "families") {
    check_schema_link(reading);
    families = read_families(reading);
    description.families = true;
  } else {
    constexpr std::array<std::string_view, 4> roots{"board", "harness", "loom", "families"};
    suggest(reading.fault(Rule::WrongRoot, reading.tree.name_span(root),
                          format("the root element '{}' is no description", root.name)),
            root.name, roots, "the root is one of");
  }
  return description;
}

}  // namespace

Description read_description(const Sources& sources, FileId file, Catalogue& catalogue,
                             Diagnostics& diagnostics, const ReaderLimits& limits, const OpenFile& open) {
  Diagnostics found;
  std::vector<Family> families;
  Description description;
  if (const auto tree = read_tree(sources, file, limits, found)) {
    description = read_root({*tree, catalogue, found, limits}, sources, open, families);
  }
  if (found.has_errors()) {
    description = {};
  } else {
    for (Family& family : families) catalogue.add(std::move(family));
  }
  found.sort();
  for (const Diagnostic& diagnostic : found.all()) {
    Diagnostic& added = diagnostics.add(diagnostic.rule, diagnostic.span, diagnostic.message);
    added.notes = diagnostic.notes;
    added.helps = diagnostic.helps;
  }
  return description;
}

void add_builtin_families(Catalogue& catalogue) {
  Sources sources;
  const FileId file = sources.add("families.xml", std::string(builtin_families()));
  const ReaderLimits limits;
  Diagnostics diagnostics;
  const auto tree = read_tree(sources, file, limits, diagnostics);
  assert(tree);
  std::vector<Family> families = read_families({*tree, catalogue, diagnostics, limits});
  assert(!diagnostics.has_errors());
  for (Family& family : families) {
    family.span = {};
    catalogue.add(std::move(family));
  }
}

}  // namespace plugward
