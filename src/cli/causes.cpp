// SPDX-License-Identifier: MIT
// causes: from a symptom back to what is wrong with the wiring. Exit status: 0 something was found or listed;
// 1 no single error makes the symptom, or the files have errors. Tested in tests/cases.
#include "plan/causes.h"
#include "base/edit_distance.h"
#include "base/format.h"
#include "cli/load.h"
#include "cli/progress.h"
#include "cli/retell.h"
#include "judge/doubts.h"
#include "judge/judgement.h"
#include "judge/words.h"
#include "report/causes_json.h"
#include "report/causes_text.h"

namespace plugward {
namespace {

std::string did_you_mean(const std::string& word, const std::vector<std::string>& candidates,
                         std::string_view what) {
  const std::string near = nearest(word, candidates);
  return near.empty() ? format("; {} {}", what, join(candidates, ", "))
                      : format("; did you mean '{}'?", near);
}

std::optional<Symptom> asked_symptom(const Options& options) {
  if (options.symptom.empty()) return std::nullopt;
  if (const auto found = symptom_of(options.symptom)) return found;
  std::vector<std::string> words;
  for (const SymptomWords& one : all_symptoms()) words.emplace_back(one.word);
  throw UsageError(format("--symptom: there is no symptom '{}'{}", options.symptom,
                          did_you_mean(options.symptom, words, "there are")));
}

std::optional<int> asked_plug(const Options& options, const Fitting& fitting) {
  if (options.plug.empty()) return std::nullopt;
  std::vector<std::string> names;
  for (const Placement& placed : fitting.placements) {
    names.push_back(fitting.harness->plugs[static_cast<std::size_t>(placed.plug)].id);
    if (names.back() == options.plug) return placed.plug;
  }
  throw UsageError(format("--plug: no plug '{}' is on a header{}", options.plug,
                          did_you_mean(options.plug, names, "these are:")));
}

/// Headers of which the loom says that something else sits on them.
std::vector<int> taken_headers(const Workbench& bench, const Fitting& fitting) {
  std::vector<int> taken;
  if (!bench.loom) return taken;
  for (const LoomHeader& one : bench.loom->headers) {
    for (std::size_t i = 0; one.taken && i < fitting.board->headers.size(); ++i) {
      if (fitting.board->headers[i].id == one.header) taken.push_back(static_cast<int>(i));
    }
  }
  return taken;
}

/// What the answer leans on and does not stand firm.
void note_what_is_open(Workbench& bench, const Options& options, const Fitting& fitting) {
  const FaultyMachine machine(fitting);
  for (const OpenJumper& open : open_jumpers(fitting, machine.contacts)) {
    bench.notes.push_back(
        format("nothing states where jumper {} sits, so what it feeds is taken to have no "
               "volts: give --jumper {}=RAIL",
               jumper_name(*open.jumper), open.jumper->id));
  }
  const Assessment now = assess(fitting);
  if (now.has(Weight::Harm) || now.has(Weight::Fault)) {
    bench.notes.push_back(format(
        "as the files have it, this machine is not right to begin with, and the causes are counted from "
        "there: '{}' says what is wrong",
        retell("check", options)));
  }
}

std::string next_command(const Options& options) {
  return format("{} --symptom WORD --plug {}", retell("causes", options),
                options.plug.empty() ? "PLUG" : options.plug);
}

}  // namespace

Outcome run_causes(const Options& options) {
  Workbench bench;
  const std::optional<Symptom> symptom = asked_symptom(options);
  const std::optional<Fitting> fitting = load_fitting(bench, options);
  if (!fitting) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const std::optional<int> plug = asked_plug(options, *fitting);
  note_what_is_open(bench, options, *fitting);

  const Stage stage(options, "planting errors");
  const CauseFinder finder(*fitting, taken_headers(bench, *fitting));
  const std::vector<PossibleSymptom> possible = finder.possible(plug);
  const std::vector<PlugCauses> found = symptom ? finder.causes(*symptom, plug) : std::vector<PlugCauses>{};
  const TextOptions how{.colour = options.colour_out};
  std::string product;
  if (options.format == ProductFormat::Json) {
    product = causes_json(*fitting, symptom, possible, found, finder.errors());
  } else if (symptom) {
    product = causes_text(*fitting, *symptom, found, finder.errors(), how);
  } else {
    product = possible_text(*fitting, possible, finder.errors(), next_command(options), how);
  }
  const bool any = symptom ? !found.empty() : !possible.empty();
  return {any ? ExitStatus::Fine : ExitStatus::NotFine, std::move(product), stderr_text(bench, options)};
}

}  // namespace plugward
