// SPDX-License-Identifier: MIT
// What was read and is written reads back equal, and is written again the same: harnesses and looms.
#include "model/harness_text.h"
#include "support/said.h"
#include "texts.h"

namespace plugward::fuzz {
namespace {

struct Read {
  Sources sources;
  Catalogue catalogue;
  Diagnostics diagnostics;
  Description description;

  explicit Read(std::string text) {
    static const Catalogue builtin = [] {
      Catalogue families;
      add_builtin_families(families);
      return families;
    }();
    catalogue = builtin;
    const FileId file = sources.add("fuzz", std::move(text));
    description = read_description(sources, file, catalogue, diagnostics);
  }
};

}  // namespace
}  // namespace plugward::fuzz

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  using namespace plugward::fuzz;
  const Read first(std::string(data, data + size));
  if (first.description.harness) {
    const std::string text = plugward::harness_text(*first.description.harness);
    const Read second(text);
    must(second.description.harness != nullptr);
    must(plugward::test::same(*first.description.harness, *second.description.harness));
    must(plugward::harness_text(*second.description.harness) == text);
  }
  if (first.description.loom) {
    const std::string text = plugward::loom_text(*first.description.loom);
    const Read second(text);
    must(second.description.loom != nullptr);
    must(plugward::test::same(*first.description.loom, *second.description.loom));
    must(plugward::loom_text(*second.description.loom) == text);
  }
  return 0;
}
