// SPDX-License-Identifier: MIT
// cable: what a cable with two ends is, or several joined end to end in the order given. Exit status 0: a
// kind that has a name, no pair split. Tested in tests/cases.
#include "base/file.h"
#include "base/format.h"
#include "cli/load.h"
#include "report/cable_text.h"

namespace plugward {

Outcome run_cable(const Options& options) {
  Workbench bench;
  load_families(bench, options);
  std::vector<Description> read;
  JudgedCable cable;
  for (const std::string& path : options.words) {
    // One file may stand several times: the same cable once more.
    const FileId file = bench.sources.add(path, read_file(path));
    read.push_back(read_description(bench.sources, file, bench.catalogue, bench.diagnostics, {}));
    if (read.back().board || read.back().loom || read.back().families) {
      throw UsageError(format("'{}' is no harness file: 'cable' takes the files of cables", path));
    }
    cable.chain.push_back(read.back().harness.get());
  }
  bench.diagnostics.sort();
  if (bench.diagnostics.has_errors()) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const std::string fault = chain_fault(cable.chain, bench.catalogue);
  if (!fault.empty()) throw UsageError(fault);
  cable.map = cable_map(cable.chain);
  cable.judgement = judge_cable(cable.map, cable.chain);
  return {cable.fine() ? ExitStatus::Fine : ExitStatus::NotFine,
          options.format == ProductFormat::Json ? cable_json(cable)
                                                : cable_text(cable, {.colour = options.colour_out}),
          stderr_text(bench, options)};
}

}  // namespace plugward
