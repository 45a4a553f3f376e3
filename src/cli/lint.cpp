// SPDX-License-Identifier: MIT
// lint: the descriptions themselves. Tested in tests/cases.
#include "report/lint.h"
#include "base/file.h"
#include "cli/load.h"

namespace plugward {

Outcome run_lint(const Options& options) {
  Workbench bench;
  load_families(bench, options);
  std::vector<LintedFile> files;
  for (const std::string& path : options.words) {
    const FileId file = bench.sources.add(path, read_file(path));
    files.push_back({file, read_description(bench.sources, file, bench.catalogue, bench.diagnostics)});
  }
  bench.diagnostics.sort();
  const ExitStatus status = bench.diagnostics.has_errors() ? ExitStatus::NotFine : ExitStatus::Fine;
  if (options.format == ProductFormat::Json)
    return {status, lint_json(bench.sources, files, bench.diagnostics), ""};
  return {status, lint_text(bench.sources, files, bench.diagnostics), stderr_text(bench, options)};
}

}  // namespace plugward
