// SPDX-License-Identifier: MIT
// Any bytes are read as a description or refused with reasons, and the reasons can be printed. Never both,
// never a crash. What quick_tree() reads, pugixml reads to the same tree.
#include <cstdlib>
#include <string>

#include "reader/descriptions.h"
#include "report/diagnostic_text.h"
#include "support/same_tree.h"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  plugward::Sources sources;
  plugward::Catalogue catalogue;
  plugward::Diagnostics diagnostics;
  plugward::add_builtin_families(catalogue);
  const plugward::FileId file = sources.add("fuzz", std::string(data, data + size));
  const plugward::Description description = plugward::read_description(sources, file, catalogue, diagnostics);
  const bool taken = description.taken();
  if (taken == diagnostics.has_errors()) std::abort();
  if (diagnostics_text(sources, diagnostics).empty() != diagnostics.all().empty()) std::abort();
  if (plugward::test::two_trees(std::string(data, data + size)) == plugward::test::TwoTrees::Different)
    std::abort();
  return 0;
}
