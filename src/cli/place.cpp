// SPDX-License-Identifier: MIT
// place: the best headers for all plugs. Tested in tests/cases.
#include "plan/place.h"

#include "cli/load.h"
#include "cli/progress.h"
#include "cli/retell.h"
#include "report/place_json.h"
#include "report/place_text.h"

namespace plugward {

Outcome run_place(const Options& options) {
  Workbench bench;
  const std::optional<Fitting> fitting = load_fitting(bench, options, Placing::StatedOnly);
  if (!fitting) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const Stage stage(options, "placing the plugs");
  PlaceOptions how;
  how.advice.wrong_seatings = how.advice.softer = false;
  const PlacementPlan plan = place(*fitting, how);
  std::string check;
  if (plan.best) {
    Options chosen = options;
    chosen.at.clear();
    for (const Placement& p : plan.best->placements) {
      chosen.at.push_back({fitting->harness->plugs[static_cast<std::size_t>(p.plug)].id,
                           fitting->board->headers[static_cast<std::size_t>(p.header)].id});
    }
    check = retell("check", chosen);
  }
  const bool mate = plan.best && plan.best->cost.unplaced == 0 && plan.best->advice.verdict == Verdict::Mate;
  return {mate ? ExitStatus::Fine : ExitStatus::NotFine,
          options.format == ProductFormat::Json
              ? place_json(*fitting, plan, check)
              : place_text(*fitting, plan, {{.colour = options.colour_out}, check}),
          stderr_text(bench, options)};
}

}  // namespace plugward
