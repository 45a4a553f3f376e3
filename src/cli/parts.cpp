// SPDX-License-Identifier: MIT
// parts: what to buy for a plan. Tested in tests/cases.
#include "base/format.h"
#include "cli/load.h"
#include "plan/parts_list.h"
#include "report/parts_json.h"
#include "report/parts_text.h"

namespace plugward {
namespace {

PartsList list_for(const Fitting& fitting, const Options& options) {
  const AdviseOptions quick{.wrong_seatings = false, .softer = false};
  const Advice advice = advise(fitting, quick);
  if (options.adapter) return parts_list(advise_adapter(fitting, advice, quick, options.adapter_length));
  return parts_list(fitting, advice);
}

std::string product(const Options& options, const Fitting& fitting, const PartsList& list) {
  switch (options.format) {
    case ProductFormat::Json:
      return parts_json(fitting, list);
    case ProductFormat::Csv:
      return parts_csv(list);
    default:  // the command takes no other
      break;
  }
  return parts_text(fitting, list, {.colour = options.colour_out});
}

}  // namespace

Outcome run_parts(const Options& options) {
  Workbench bench;
  const std::optional<Fitting> fitting = load_fitting(bench, options);
  if (!fitting) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const PartsList list = list_for(*fitting, options);
  if (!list.planned && options.format == ProductFormat::Csv) {
    bench.notes.push_back(format("no parts list: {}", list.summary));
  }
  return {list.planned ? ExitStatus::Fine : ExitStatus::NotFine, product(options, *fitting, list),
          stderr_text(bench, options)};
}

}  // namespace plugward
