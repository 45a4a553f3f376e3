// SPDX-License-Identifier: MIT
// list: what plugward knows. Tested in tests/cases.
#include <array>

#include "base/edit_distance.h"
#include "base/format.h"
#include "catalogue/family_search.h"
#include "cli/load.h"
#include "report/list_text.h"

namespace plugward {
namespace {

std::string list_families(const Workbench& bench, const Options& options, const TextOptions& text) {
  if (options.words.size() == 1) return families_text(bench.catalogue, text);
  const Family* family = bench.catalogue.find(options.words[1]);
  if (family != nullptr) return family_text(*family, text);
  const std::string& name = options.words[1];
  const std::string near = nearest(name, bench.catalogue.ids());
  const std::vector<std::string> like =
      near.empty() ? families_like(bench.catalogue, name) : std::vector<std::string>{near};
  throw UsageError(
      format("unknown connector family '{}'{}", name, meant(like, "'plugward list families' names them")));
}

}  // namespace

Outcome run_list(const Options& options) {
  constexpr auto names =
      std::to_array<std::string_view>({"families", "functions", "colours", "gauges", "rules"});
  const TextOptions text{.colour = options.colour_out};
  const std::string& what = options.words[0];
  Workbench bench;
  load_families(bench, options);
  if (bench.diagnostics.has_errors()) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const auto done = [](std::string product) { return Outcome{ExitStatus::Fine, std::move(product), ""}; };
  if (what == "families") return done(list_families(bench, options, text));
  if (options.words.size() > 1) throw UsageError(format("'list {}' takes no further word", what));
  if (what == "functions") return done(functions_text(text));
  if (what == "colours") return done(colours_text(text));
  if (what == "gauges") return done(gauges_text(text));
  if (what == "rules") return done(rules_text(text));
  const std::string near = nearest(what, names);
  throw UsageError(format("'list' takes {}, not '{}'{}", join(names, ", "), what,
                          near.empty() ? "" : format("; did you mean '{}'?", near)));
}

}  // namespace plugward
