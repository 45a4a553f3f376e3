// SPDX-License-Identifier: MIT
// Tested in tests/cases.
#include "cli/load.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "base/edit_distance.h"
#include "base/file.h"
#include "base/format.h"
#include "cli/draft.h"
#include "cli/measured.h"
#include "cli/placement.h"
#include "cli/seen.h"
#include "plan/place.h"
#include "report/diagnostic_text.h"

namespace plugward {
namespace {

Description read_one(Workbench& bench, const std::string& path) {
  const FileId file = bench.sources.add(path, read_file(path));
  return read_description(bench.sources, file, bench.catalogue, bench.diagnostics, {},
                          file_opener(bench.sources));
}

/// Plugs are told apart by the id of their harness, so one id cannot stand twice on the command line.
std::string twice_words(const Workbench& bench, const std::string& path, const Harness& other) {
  const std::string& first = bench.sources.file(other.span.file).path;
  std::error_code ignored;
  const bool same = path == first || std::filesystem::equivalent(path, first, ignored);
  return format(
      "{}; for several cables alike write a loom file, which may name one harness file several times, each "
      "time with an id of its own: see 'Loom files' in harnesses/README.md",
      same ? format("'{}' is given twice", path)
           : format("'{}' is harness '{}' once more, after '{}': give each harness an id of its own", path,
                    other.id, first));
}

/// What else to do with a loom that the command does not take.
std::string instead_of_loom(std::string_view command, const std::string& path) {
  if (command == "place") {
    return format("to move the whole machine to another board, 'plugward swap {} --to BOARD'", path);
  }
  return format("'plugward check {}' judges the machine as it stands", path);
}

void take(Workbench& bench, const std::string& path, Description description) {
  if (description.families) {
    throw UsageError(format("'{}' holds connector families: give it after --families", path));
  }
  if (description.board) {
    if (bench.board) throw UsageError(format("'{}' is a second board: give one board file", path));
    bench.board = std::move(description.board);
  }
  if (description.loom) {
    bench.loom = std::move(description.loom);
    bench.loom_files = std::move(description.loom_files);
  }
  if (!description.harness) return;
  for (const auto& other : bench.harnesses) {
    if (other->id == description.harness->id) throw UsageError(twice_words(bench, path, *other));
  }
  bench.harnesses.push_back(std::move(description.harness));
}

/// One harness of all that were read.
void join_harnesses(Workbench& bench) {
  std::vector<const Harness*> all;
  for (const auto& harness : bench.harnesses) all.push_back(harness.get());
  bench.harness = std::make_unique<Harness>(merged(all));
}

/// Harnesses of which there is no file: of the devices that --seen names by their kind.
void add_seen_kinds(Workbench& bench, const Options& options) {
  for (const NamedValue& one : options.seen_kinds) {
    CableDraft draft = read_draft(one.name, one.value);
    for (int more = 2; std::any_of(bench.harnesses.begin(), bench.harnesses.end(),
                                   [&](const auto& harness) { return harness->id == draft.id; });
         ++more) {
      draft.id = format("{}-{}", draft.kind->word, more);
    }
    draft.family = "unknown";
    const FileId file =
        bench.sources.add_words(format("from --seen {}:{}", one.name, one.value), draft_text(draft));
    Description read = read_description(bench.sources, file, bench.catalogue, bench.diagnostics);
    if (read.harness) bench.harnesses.push_back(std::move(read.harness));
  }
}

/// --at, with the name of the one plug of --seen where it was left out.
std::vector<NamedValue> stated_places(const Workbench& bench, const Options& options) {
  std::vector<NamedValue> at = options.at;
  for (NamedValue& one : at) {
    if (!one.name.empty()) continue;
    for (const Plug& plug : bench.harness->plugs) {
      if (bench.sources.file(plug.span.file).in_words) one.name = plug.id;
    }
  }
  return at;
}

void apply_seen(Workbench& bench, const Options& options) {
  std::vector<std::string> done;
  for (const NamedValue& seen : options.seen) {
    for (const std::string& other : done) {
      if (other == seen.name) throw UsageError(format("'--seen' names plug '{}' twice", seen.name));
    }
    done.push_back(seen.name);
    Parsed<SeenResult> result = rearrange_as_seen(*bench.harness, seen.name, seen.value);
    if (const Fault* fault = std::get_if<Fault>(&result)) throw UsageError("--seen: " + fault->message);
    SeenResult& fine = std::get<SeenResult>(result);
    *bench.harness = std::move(fine.harness);
    bench.notes.insert(bench.notes.end(), fine.notes.begin(), fine.notes.end());
  }
}

std::map<std::string, std::string> stated_jumpers(const Board& board, const Options& options) {
  std::map<std::string, std::string> stated;
  std::vector<std::string> ids;
  for (const Jumper& jumper : board.jumpers) ids.push_back(jumper.id);
  const auto hint = [](const std::string& name, const std::vector<std::string>& candidates) {
    const std::string near = nearest(name, candidates);
    if (!near.empty()) return format("; did you mean '{}'?", near);
    return candidates.empty() ? std::string("; it has none") : format("; it has {}", join(candidates, ", "));
  };
  for (const NamedValue& one : options.jumpers) {
    const Jumper* jumper = board.jumper(one.name);
    if (jumper == nullptr) {
      throw UsageError(
          format("--jumper: board '{}' has no jumper '{}'{}", board.id, one.name, hint(one.name, ids)));
    }
    if (std::find(jumper->rails.begin(), jumper->rails.end(), one.value) == jumper->rails.end()) {
      throw UsageError(format("--jumper: jumper '{}' has no position '{}'{}", one.name, one.value,
                              hint(one.value, jumper->rails)));
    }
    if (!stated.emplace(one.name, one.value).second) {
      throw UsageError(format("'--jumper' names '{}' twice", one.name));
    }
  }
  return stated;
}

/// A loom stands alone and says itself where its plugs sit.
Fitting loom_of(Workbench& bench, const Options& options) {
  const std::string& path = bench.sources.file(bench.loom->span.file).path;
  if (!options.command->takes.loom) {
    throw UsageError(format("'{}' is a loom file: '{}' takes a board file and harness files; {}", path,
                            options.command->name, instead_of_loom(options.command->name, path)));
  }
  if (options.words.size() > 1) throw UsageError(format("'{}' is a loom: give it alone", path));
  if (!options.at.empty() || !options.seen.empty()) {
    throw UsageError(format("'{}' is a loom and says itself where its plugs and leads are: leave out '{}'",
                            path, options.at.empty() ? "--seen" : "--at"));
  }
  const auto stated = stated_jumpers(bench.loom_files->board, options);
  std::erase_if(bench.loom->jumpers, [&](const FittedJumper& f) { return stated.contains(f.jumper); });
  bench.loom_bench = loom_bench(*bench.loom, *bench.loom_files);
  bench.loom_bench.jumpers.insert(stated.begin(), stated.end());
  return loom_fitting(*bench.loom_files, bench.loom_bench, bench.catalogue);
}

}  // namespace

// A file that was dropped since (Sources::drop_text) is read again.
OpenFile file_opener(Sources& sources) {
  return [&sources](const std::string& path, std::size_t limit) -> OpenedFile {
    for (FileId id = 1; id <= sources.size(); ++id) {
      if (sources.file(id).path == path && !sources.file(id).text.empty()) return {id, ""};
    }
    std::error_code ignored;
    const auto status = std::filesystem::status(path, ignored);
    if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status)) {
      return {0, format("cannot read '{}': it is no plain file", path)};
    }
    try {
      return {sources.add(path, read_file(path, limit)), ""};
    } catch (const WorldError& error) {
      return {0, error.what()};
    }
  };
}

void load_families(Workbench& bench, const Options& options) {
  add_builtin_families(bench.catalogue);
  for (const std::string& path : options.families) {
    const Description description = read_one(bench, path);
    if (description.board || description.harness || description.loom) {
      throw UsageError(format("'{}' after --families does not hold connector families", path));
    }
  }
}

std::optional<Fitting> load_fitting(Workbench& bench, const Options& options, Placing placing) {
  load_families(bench, options);
  for (const std::string& path : options.words) take(bench, path, read_one(bench, path));
  bench.diagnostics.sort();
  if (bench.diagnostics.has_errors()) return std::nullopt;
  if (bench.loom && !options.seen_kinds.empty())
    throw UsageError("'--seen KIND:COLOURS' goes with a board file, not with a loom");
  if (bench.loom && !options.measured.empty())
    throw UsageError("'--measured' goes with a board file and harness files, not with a loom");
  if (bench.loom) return loom_of(bench, options);
  add_seen_kinds(bench, options);
  if (!bench.board) throw UsageError("no board file is among the files");
  if (bench.harnesses.empty())
    throw UsageError(
        "no harness file is among the files; a cable without one is told by its kind and colours, such as "
        "--seen fan:BK,RD");

  join_harnesses(bench);
  apply_seen(bench, options);
  Fitting fitting{bench.board.get(), bench.harness.get(), &bench.catalogue, {}, {}};
  fitting.jumpers = stated_jumpers(*bench.board, options);
  apply_measured(bench, fitting, options);
  PlacementChoice choice =
      placing == Placing::StatedOnly
          ? stated_placements(*bench.board, *bench.harness, stated_places(bench, options))
          : choose_placements(*bench.board, *bench.harness, stated_places(bench, options));
  if (!choice.error.empty()) throw UsageError(choice.error);
  fitting.placements = std::move(choice.placements);
  bench.notes.insert(bench.notes.end(), choice.notes.begin(), choice.notes.end());
  return fitting;
}

std::optional<Fitting> load_machine(Workbench& bench, const Options& options) {
  if (options.to_board.empty()) throw UsageError("the new board is missing: give '--to BOARD'");
  load_families(bench, options);
  take(bench, options.words.front(), read_one(bench, options.words.front()));
  if (bench.board || !bench.harnesses.empty()) {
    throw UsageError(format("'{}' is a {} file: '--to' goes with the loom file of a whole machine",
                            options.words.front(), bench.board ? "board" : "harness"));
  }
  Description board = read_one(bench, options.to_board);
  bench.diagnostics.sort();
  if (bench.diagnostics.has_errors()) return std::nullopt;
  if (!board.board) throw UsageError(format("--to: '{}' is no board file", options.to_board));
  bench.board = std::move(board.board);
  bench.loom_bench = loom_bench(*bench.loom, *bench.loom_files);
  return loom_fitting(*bench.loom_files, bench.loom_bench, bench.catalogue);
}

SwapOptions swap_options(const Workbench& bench, const Options& options) {
  SwapOptions how;
  how.jumpers = stated_jumpers(*bench.board, options);
  PlacementChoice choice = stated_placements(*bench.board, bench.loom_bench.harness, options.at);
  if (!choice.error.empty()) throw UsageError(choice.error);
  how.fixed = std::move(choice.placements);
  return how;
}

bool load_harness(Workbench& bench, const Options& options) {
  load_families(bench, options);
  for (const std::string& path : options.words) {
    take(bench, path, read_one(bench, path));
    if (bench.board)
      throw UsageError(format("'{}' is a board file: '{}' takes harness files", path, options.command->name));
    if (bench.loom)
      throw UsageError(format("'{}' is a loom file: '{}' takes harness files", path, options.command->name));
  }
  bench.diagnostics.sort();
  if (bench.diagnostics.has_errors()) return false;
  join_harnesses(bench);
  apply_seen(bench, options);
  return true;
}

std::string stderr_text(const Workbench& bench, const Options& options) {
  DiagnosticTextOptions how;
  how.colour = options.colour_err;
  how.per_rule = static_cast<std::size_t>(options.max_errors);
  std::string text = diagnostics_text(bench.sources, bench.diagnostics, how);
  for (const std::string& note : bench.notes) text += format("plugward: note: {}\n", note);
  return text;
}

}  // namespace plugward
