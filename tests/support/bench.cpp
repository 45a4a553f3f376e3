// SPDX-License-Identifier: MIT
#include "support/bench.h"

#include <stdexcept>
#include <utility>

#include "base/file.h"
#include "base/format.h"

namespace plugward::test {
namespace {

template <class T>
int index_of(const std::vector<T>& list, const std::string& id) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (list[i].id == id) return static_cast<int>(i);
  }
  throw std::runtime_error("no '" + id + "'");
}

}  // namespace

Bench::Bench(const std::string& board_text, const std::string& harness_text) {
  add_builtin_families(catalogue);
  const FileId board_file = sources.add("board.xml", board_text);
  const FileId harness_file = sources.add("harness.xml", harness_text);
  board = read_description(sources, board_file, catalogue, diagnostics).board;
  harness = read_description(sources, harness_file, catalogue, diagnostics).harness;
  if (board != nullptr && harness != nullptr && !diagnostics.has_errors()) return;
  std::string all;
  for (const Diagnostic& d : diagnostics.all()) all += place_name(sources, d.span) + ": " + d.message + "\n";
  throw std::runtime_error(all);
}

Bench Bench::shipped(const std::string& board_name, const std::string& harness_name) {
  const std::string root = PLUGWARD_SOURCE_DIR;
  return Bench(read_file(root + "/boards/" + board_name + ".xml"),
               read_file(root + "/harnesses/" + harness_name + ".xml"));
}

Fitting Bench::fitting(const std::map<std::string, std::string>& at,
                       const std::map<std::string, std::string>& jumpers) const {
  Fitting fitting{board.get(), harness.get(), &catalogue, {}, jumpers};
  for (const auto& [plug, header] : at) {
    fitting.placements.push_back({index_of(harness->plugs, plug), index_of(board->headers, header)});
  }
  return fitting;
}

}  // namespace plugward::test
