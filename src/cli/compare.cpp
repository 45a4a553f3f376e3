// SPDX-License-Identifier: MIT
// compare: two states of a machine, or two descriptions of one board. Exit status 0: they were compared,
// whether or not they differ; 1: a file has errors. Tested in tests/cases.
#include "base/file.h"
#include "cli/board_difference.h"
#include "cli/load.h"
#include "plan/loom_difference.h"
#include "report/difference_json.h"
#include "report/difference_text.h"

namespace plugward {

Outcome run_compare(const Options& options) {
  Workbench bench;
  load_families(bench, options);
  std::vector<Description> looms;
  for (const std::string& path : options.words) {
    const FileId file = bench.sources.add(path, read_file(path));
    looms.push_back(read_description(bench.sources, file, bench.catalogue, bench.diagnostics, {},
                                     file_opener(bench.sources)));
    const Description& read = looms.back();
    if (read.harness || read.families) {
      throw UsageError("'" + path + "' is no loom: 'compare' takes two loom files, or two board files");
    }
  }
  if (looms[0].taken() && looms[1].taken() && (looms[0].board == nullptr) != (looms[1].board == nullptr)) {
    throw UsageError(
        "'" + options.words[looms[0].board ? 0 : 1] +
        "' is a board and the other file is not: 'compare' takes two loom files, or two board files");
  }
  bench.diagnostics.sort();
  if (bench.diagnostics.has_errors()) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  if (looms[0].board) {
    if (options.format == ProductFormat::Json)
      throw UsageError("'--format json' is for two looms; boards are told as text");
    return {ExitStatus::Fine,
            board_differences_text(board_differences(*looms[0].board, options.words[0], *looms[1].board,
                                                     options.words[1], bench.catalogue),
                                   options.words[0], options.words[1]),
            stderr_text(bench, options)};
  }
  const LoomDifference found =
      difference(*looms[0].loom, *looms[0].loom_files, *looms[1].loom, *looms[1].loom_files);
  return {ExitStatus::Fine,
          options.format == ProductFormat::Json ? difference_json(found)
                                                : difference_text(found, {.colour = options.colour_out}),
          stderr_text(bench, options)};
}

}  // namespace plugward
