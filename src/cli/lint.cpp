// SPDX-License-Identifier: MIT
// lint: the descriptions themselves, and of a loom the machine as it stands. Tested in tests/cases.
#include "report/lint.h"
#include "base/file.h"
#include "cli/load.h"
#include "cli/sarif_options.h"

namespace plugward {
namespace {

/// What the circuit says about a whole machine; nothing when one of its files has errors.
void judge_loom(Workbench& bench, const Description& description) {
  if (!description.loom || !description.loom_files) return;
  const Loom& loom = *description.loom;
  const LoomBench machine = loom_bench(loom, *description.loom_files);
  const Fitting fitting = loom_fitting(*description.loom_files, machine, bench.catalogue);
  lint_loom(loom, fitting, assess_loom(loom, machine, fitting), bench.diagnostics);
}

}  // namespace

Outcome run_lint(const Options& options) {
  Workbench bench;
  load_families(bench, options);
  std::vector<LintedFile> files;
  const OpenFile open = file_opener(bench.sources);
  for (const std::string& path : options.words) {
    const FileId file = bench.sources.add(path, read_file(path));
    const std::size_t said = bench.diagnostics.all().size();
    const Description description =
        read_description(bench.sources, file, bench.catalogue, bench.diagnostics, {}, open);
    files.push_back(linted(file, description));
    judge_loom(bench, description);
    // Families stay in the catalogue with their places.
    const bool spoken_of = bench.diagnostics.all().size() > said || description.families || description.loom;
    if (!spoken_of) bench.sources.drop_text(file);
  }
  bench.diagnostics.sort();
  const ExitStatus status = bench.diagnostics.has_errors() ? ExitStatus::NotFine : ExitStatus::Fine;
  if (options.format == ProductFormat::Json)
    return {status, lint_json(bench.sources, files, bench.diagnostics), ""};
  if (options.format == ProductFormat::Sarif)
    return {status, lint_sarif(bench.sources, bench.diagnostics, sarif_options()), ""};
  return {status, lint_text(bench.sources, files, bench.diagnostics), stderr_text(bench, options)};
}

}  // namespace plugward
