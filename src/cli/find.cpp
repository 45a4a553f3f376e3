// SPDX-License-Identifier: MIT
// find: which boards take this harness. Each thread reads, judges and renders board after board with texts,
// diagnostics and catalogue of its own, and forgets them; a block a board goes out in the order of the files
// as soon as it is ready, and a short record is kept for the ranking at the end. So the memory does not grow
// with the boards but for these records, and the bytes do not depend on the number of threads.
//
// Exit status: 0 the search was done, whether or not a board takes the harness; 1 the harness or files in the
// folders have errors or cannot be read (the others are searched all the same); 2 a folder cannot be read, or
// no file is in it. Tested in tests/cases.
#include <algorithm>
#include <map>
#include <thread>

#include "base/file.h"
#include "base/format.h"
#include "cli/find_files.h"
#include "cli/in_order.h"
#include "cli/load.h"
#include "cli/progress.h"
#include "cli/retell.h"
#include "plan/find.h"
#include "report/diagnostic_text.h"
#include "report/find_json.h"
#include "report/find_text.h"

namespace plugward {
namespace {

enum class JumperFound { No, OtherPositions, Yes };

/// By --jumper: what boards have of it.
using JumpersFound = std::vector<JumperFound>;

/// What a thread hands over for one file.
struct Look {
  std::string product;
  std::string diagnostics;
  JumpersFound jumpers;
  FindSummary summary;  ///< of this file alone
  bool fault = false;
};

JumperFound found_on(const Board& board, const std::string& jumper, const std::string& rail) {
  if (has_position(board, jumper, rail)) return JumperFound::Yes;
  return board.jumper(jumper) == nullptr ? JumperFound::No : JumperFound::OtherPositions;
}

JumperPositions stated(const Options& options) {
  JumperPositions positions;
  for (const NamedValue& one : options.jumpers) {
    if (!positions.emplace(one.name, one.value).second)
      throw UsageError(format("'--jumper' names '{}' twice", one.name));
  }
  return positions;
}

/// Reads and judges board files, one after the other.
class Scout {
 public:
  Scout(const Workbench& bench, const Options& options, const std::vector<std::string>& files,
        FindMemory& memory)
      : bench_(bench),
        options_(options),
        files_(files),
        catalogue_(bench.catalogue),
        finder_(*bench.harness, catalogue_, memory, {.jumpers = stated(options)}) {}

  Scout(const Scout&) = delete;  // the finder points to the catalogue
  Scout& operator=(const Scout&) = delete;

  Look operator()(std::size_t index) {
    const std::string& path = files_[index];
    Look look;
    try {
      Sources sources;
      look_at(path, sources, sources.add(path, read_file(path)), look);
    } catch (const WorldError& error) {
      leave_out(look, path, "cannot be read", format("plugward: error: {}: left out\n", error.what()), true);
    }
    return look;
  }

 private:
  void look_at(const std::string& path, const Sources& sources, FileId file, Look& look) {
    Diagnostics diagnostics;
    const Description description = read_description(sources, file, catalogue_, diagnostics);
    if (diagnostics.has_errors()) {
      diagnostics.sort();
      DiagnosticTextOptions how;
      how.colour = options_.colour_err;
      how.per_rule = static_cast<std::size_t>(options_.max_errors);
      leave_out(look, path, "errors",
                diagnostics_text(sources, diagnostics, how) +
                    format("plugward: note: '{}' has errors: left out\n", path),
                true);
    } else if (description.board == nullptr) {
      const std::string_view what = description.harness ? "a harness" : "connector families";
      leave_out(look, path, "not a board",
                format("plugward: note: '{}' describes {}: left out\n", path, what), false);
    } else {
      for (const NamedValue& one : options_.jumpers)
        look.jumpers.push_back(found_on(*description.board, one.name, one.value));
      render(path, *description.board, finder_.look(*description.board), look);
    }
    if (description.families || diagnostics.has_errors()) catalogue_ = bench_.catalogue;
  }

  void render(const std::string& path, const Board& board, const BoardFit& fit, Look& look) const {
    const Harness& harness = *bench_.harness;
    look.summary.add(path, board, harness, fit);
    look.product = options_.format == ProductFormat::Json
                       ? find_json_board(path, board, harness, fit)
                       : find_block(path, board, harness, fit, {.colour = options_.colour_out});
  }

  static void leave_out(Look& look, const std::string& path, std::string why, std::string told, bool fault) {
    look.summary.left_out.push_back({path, std::move(why)});
    look.diagnostics = std::move(told);
    look.fault = fault;
  }

  const Workbench& bench_;
  const Options& options_;
  const std::vector<std::string>& files_;
  Catalogue catalogue_;
  Finder finder_;
};

/// Gathers what the threads found and passes it on.
class Gatherer {
 public:
  Gatherer(const Options& options, std::size_t count)
      : options_(options),
        progress_(options),
        count_(count),
        jumpers_(options.jumpers.size(), JumperFound::No) {}

  void take(std::size_t index, Look look) {
    if (!look.diagnostics.empty()) tell(look.diagnostics);
    if (!look.product.empty()) {
      const bool json = options_.format == ProductFormat::Json;
      write((json ? find_json_between(boards_) : "") + look.product);
      ++boards_;
    }
    if (look.fault) outcome_.status = ExitStatus::NotFine;
    for (std::size_t i = 0; i < look.jumpers.size(); ++i) {
      jumpers_[i] = std::max(jumpers_[i], look.jumpers[i]);
      if (look.jumpers[i] != JumperFound::Yes && !look.summary.found.empty())
        without_[look.summary.found.front().file].push_back(i);
    }
    summary_.add(std::move(look.summary));
    if (progress_.due()) progress_.tell(format("{} of {} files", index + 1, count_));
  }

  void write(const std::string& text) {
    progress_.wipe();
    if (options_.stream_out) {
      options_.stream_out(text);
    } else {
      outcome_.product += text;
    }
  }

  void tell(const std::string& text) {
    progress_.wipe();
    if (options_.stream_err) {
      options_.stream_err(text);
    } else {
      outcome_.diagnostics += text;
    }
  }

  FindSummary& summary() { return summary_; }

  /// What was stated of jumpers that no board has.
  void tell_idle_jumpers() {
    for (std::size_t i = 0; i < jumpers_.size(); ++i) {
      const NamedValue& one = options_.jumpers[i];
      if (jumpers_[i] == JumperFound::No)
        tell(format("plugward: note: --jumper: no board here has a jumper '{}'\n", one.name));
      if (jumpers_[i] == JumperFound::OtherPositions)
        tell(format("plugward: note: --jumper: no board here has a position '{}' of its jumper '{}'\n",
                    one.value, one.name));
    }
  }

  /// Those of --jumper that the board in this file has.
  std::vector<NamedValue> jumpers_of(const std::string& file) const {
    std::vector<NamedValue> own;
    const auto without = without_.find(file);
    for (std::size_t i = 0; i < options_.jumpers.size(); ++i) {
      const bool lacks =
          without != without_.end() &&
          std::find(without->second.begin(), without->second.end(), i) != without->second.end();
      if (!lacks) own.push_back(options_.jumpers[i]);
    }
    return own;
  }

  Outcome finish() {
    progress_.wipe();
    return std::move(outcome_);
  }

 private:
  const Options& options_;
  Progress progress_;
  std::size_t count_;
  FindSummary summary_;
  Outcome outcome_;
  std::size_t boards_ = 0;                                   ///< written
  JumpersFound jumpers_;                                     ///< of the board that has most of it
  std::map<std::string, std::vector<std::size_t>> without_;  ///< by file: --jumper options it has no use for
};

/// The command that judges the best board at length.
std::string next_command(const Options& options, const Gatherer& gatherer, const FindSummary& summary) {
  if (summary.found.empty()) return "";
  Options next = options;
  const FoundBoard& best = summary.found.front();
  next.jumpers = gatherer.jumpers_of(best.file);
  next.words.insert(next.words.begin(), best.file);
  for (const auto& [plug, header] : summary.best_at) next.at.push_back({plug, header});
  return retell("check", next);
}

}  // namespace

Outcome run_find(const Options& options) {
  if (options.folders.empty()) throw UsageError("'find' takes --in DIR: the folder with the board files");
  stated(options);  // said once for all threads when it cannot be understood
  Workbench bench;
  if (!load_harness(bench, options)) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const std::vector<std::string> files = description_files(options.folders);
  if (files.empty()) throw WorldError(format("no '.xml' file is in '{}'", join(options.folders, "', '")));

  const bool json = options.format == ProductFormat::Json;
  const int cores = static_cast<int>(std::thread::hardware_concurrency());
  Gatherer gatherer(options, files.size());
  FindMemory memory;
  gatherer.tell(stderr_text(bench, options));
  if (json) gatherer.write(find_json_head(*bench.harness, options.words));
  in_order<Look>(
      files.size(), options.threads > 0 ? options.threads : cores,
      [&] { return Scout(bench, options, files, memory); },
      [&](std::size_t index, Look look) { gatherer.take(index, std::move(look)); });
  FindSummary& summary = gatherer.summary();
  summary.rank();
  const auto write = [&](const std::string& piece) { gatherer.write(piece); };
  if (json) {
    write(find_json_tail(summary));
  } else {
    find_ranking(summary, next_command(options, gatherer, summary), {.colour = options.colour_out}, write);
  }
  gatherer.tell_idle_jumpers();
  return gatherer.finish();
}

}  // namespace plugward
