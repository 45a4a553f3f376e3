// SPDX-License-Identifier: MIT
// check: the verdict and everything that led to it. Tested in tests/cases.
#include "cli/load.h"
#include "cli/retell.h"
#include "cli/sarif_options.h"
#include "plan/repin.h"
#include "report/advice_json.h"
#include "report/advice_text.h"
#include "report/check_markdown.h"
#include "report/pin_table.h"
#include "report/spice.h"

namespace plugward {
namespace {

std::string product(const Workbench& bench, const Options& options, const Fitting& fitting,
                    const Advice& advice) {
  switch (options.format) {
    case ProductFormat::Json:
      return advice_json(bench.sources, fitting, advice);
    case ProductFormat::Csv:
      return check_csv(fitting, advice);
    case ProductFormat::Sarif:
      return check_sarif(bench.sources, advice, sarif_options());
    case ProductFormat::Markdown:
      return check_markdown(bench.sources, fitting, advice, bench.loom != nullptr);
    case ProductFormat::Spice:
      return check_spice(fitting, advice);
    case ProductFormat::Text:
      break;
  }
  const AdviceTextOptions text{{.colour = options.colour_out},
                               bench.loom ? "" : retell("repin", options)};
  return advice_text(bench.sources, fitting, advice, text);
}

}  // namespace

Outcome run_check(const Options& options) {
  Workbench bench;
  const std::optional<Fitting> fitting = load_fitting(bench, options);
  const bool sarif = options.format == ProductFormat::Sarif;
  if (!fitting) {
    return {ExitStatus::NotFine, sarif ? lint_sarif(bench.sources, bench.diagnostics, sarif_options()) : "",
            sarif ? "" : stderr_text(bench, options)};
  }
  const AdviseOptions whole{.budget = true};
  const Advice advice = bench.loom ? advise_loom(*bench.loom, bench.loom_bench, *fitting, whole)
                                   : advise(*fitting, whole);
  return {advice.verdict == Verdict::Mate ? ExitStatus::Fine : ExitStatus::NotFine,
          product(bench, options, *fitting, advice), stderr_text(bench, options)};
}

}  // namespace plugward
