// SPDX-License-Identifier: MIT
// check: the verdict and everything that led to it. Tested in tests/cases.
#include "cli/load.h"
#include "cli/retell.h"
#include "plan/repin.h"
#include "report/advice_json.h"
#include "report/advice_text.h"

namespace plugward {

Outcome run_check(const Options& options) {
  Workbench bench;
  const std::optional<Fitting> fitting = load_fitting(bench, options);
  if (!fitting) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const AdviseOptions whole{.budget = true};
  const Advice advice = bench.loom ? advise_loom(*bench.loom, bench.loom_bench, *fitting, whole)
                                   : advise(*fitting, whole);
  const AdviceTextOptions text{{.colour = options.colour_out},
                               bench.loom ? "" : retell("repin", options)};
  return {advice.verdict == Verdict::Mate ? ExitStatus::Fine : ExitStatus::NotFine,
          options.format == ProductFormat::Json ? advice_json(bench.sources, *fitting, advice)
                                                : advice_text(bench.sources, *fitting, advice, text),
          stderr_text(bench, options)};
}

}  // namespace plugward
