// SPDX-License-Identifier: MIT
// repin: the procedure for the bench, or an adapter lead instead. Tested in tests/cases.
#include "cli/load.h"
#include "plan/adapter_lead.h"
#include "report/adapter_json.h"
#include "report/adapter_text.h"
#include "report/advice_json.h"
#include "report/repin_text.h"

namespace plugward {
namespace {

Outcome run_adapter(const Options& options, const Workbench& bench, const Fitting& fitting) {
  const Advice advice = advise(fitting, {.wrong_seatings = false});
  const AdapterAdvice adapter = advise_adapter(fitting, advice, {}, options.adapter_length);
  const bool done = adapter.plan || adapter.nothing_to_do;
  return {done ? ExitStatus::Fine : ExitStatus::NotFine,
          options.format == ProductFormat::Json
              ? adapter_json(fitting, adapter)
              : adapter_text(fitting, advice, adapter, {.colour = options.colour_out}),
          stderr_text(bench, options)};
}

}  // namespace

Outcome run_repin(const Options& options) {
  Workbench bench;
  const std::optional<Fitting> fitting = load_fitting(bench, options);
  if (!fitting) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  if (options.adapter) return run_adapter(options, bench, *fitting);
  const Advice advice = advise(*fitting, {.budget = options.format == ProductFormat::Json});
  const bool done = advice.verdict == Verdict::Mate || (advice.verdict == Verdict::Repin && advice.plan);
  return {done ? ExitStatus::Fine : ExitStatus::NotFine,
          options.format == ProductFormat::Json
              ? advice_json(bench.sources, *fitting, advice)
              : repin_text(*fitting, advice, {.colour = options.colour_out}),
          stderr_text(bench, options)};
}

}  // namespace plugward
