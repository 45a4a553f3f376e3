// SPDX-License-Identifier: MIT
// repin: the procedure for the bench. Tested in tests/cases.
#include "plan/repin.h"
#include "cli/load.h"
#include "report/advice_json.h"
#include "report/repin_text.h"

namespace plugward {

Outcome run_repin(const Options& options) {
  Workbench bench;
  const std::optional<Fitting> fitting = load_fitting(bench, options);
  if (!fitting) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const Advice advice = advise(*fitting);
  const bool done = advice.verdict == Verdict::Mate || (advice.verdict == Verdict::Repin && advice.plan);
  return {done ? ExitStatus::Fine : ExitStatus::NotFine,
          options.format == ProductFormat::Json
              ? advice_json(bench.sources, *fitting, advice)
              : repin_text(*fitting, advice, {.colour = options.colour_out}),
          stderr_text(bench, options)};
}

}  // namespace plugward
