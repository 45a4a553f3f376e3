// SPDX-License-Identifier: MIT
// list: what plugward knows. Tested in tests/cases.
#include "base/edit_distance.h"
#include "base/format.h"
#include "catalogue/family_search.h"
#include "cli/choices.h"
#include "cli/load.h"
#include "report/list_text.h"
#include "report/schemas.h"

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

std::string list_schemas(const Options& options, const TextOptions& text) {
  if (options.words.size() == 1) return schemas_text(text);
  std::vector<std::string> names;
  for (const Schema& schema : all_schemas()) {
    if (schema.name == options.words[1]) return std::string(schema.text);
    names.emplace_back(schema.name);
  }
  const std::string near = nearest(options.words[1], names);
  throw UsageError(format("unknown schema '{}'{}", options.words[1],
                          meant(near.empty() ? std::vector<std::string>{} : std::vector<std::string>{near},
                                "'plugward list schemas' names them")));
}

}  // namespace

Outcome run_list(const Options& options) {
  const TextOptions text{.colour = options.colour_out};
  const std::string& what = options.words[0];
  Workbench bench;
  load_families(bench, options);
  if (bench.diagnostics.has_errors()) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const auto done = [](std::string product) { return Outcome{ExitStatus::Fine, std::move(product), ""}; };
  if (what == "families") return done(list_families(bench, options, text));
  if (what == "schemas") return done(list_schemas(options, text));
  if (options.words.size() > 1) throw UsageError(format("'list {}' takes no further word", what));
  if (what == "functions") return done(functions_text(text));
  if (what == "colours") return done(colours_text(text));
  if (what == "gauges") return done(gauges_text(text));
  if (what == "rules") return done(rules_text(text));
  const std::string near = nearest(what, list_topics);
  throw UsageError(format("'list' takes {}, not '{}'{}", join(list_topics, ", "), what,
                          near.empty() ? "" : format("; did you mean '{}'?", near)));
}

}  // namespace plugward
