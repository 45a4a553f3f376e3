// SPDX-License-Identifier: MIT
// labels: flags for the cables of a machine. Tested in tests/cases (labels-*).
#include "base/format.h"
#include "cli/load.h"
#include "cli/progress.h"
#include "draw/canvas.h"
#include "draw/flags.h"

namespace plugward {
namespace {

FlagPaper paper_of(const Options& options) {
  if (options.paper == "a4") return FlagPaper::A4;
  if (options.paper == "letter") return FlagPaper::Letter;
  return FlagPaper::Tape;
}

}  // namespace

Outcome run_labels(const Options& options) {
  const FlagPaper paper = paper_of(options);
  if (options.to_stdout() || !options.output.ends_with(".pdf"))
    throw UsageError("'labels' writes a PDF file: give -o FILE.pdf");
  const Stage stage(options, "making the flags");
  Workbench bench;
  std::optional<Fitting> machine;
  std::vector<Flag> flags;
  if (options.to_board.empty()) {
    machine = load_fitting(bench, options);
    if (machine) flags = flags_of(*machine);
  } else {
    machine = load_machine(bench, options);
    if (machine) flags = flags_of(*plan_swap(*machine, *bench.board, swap_options(bench, options)));
  }
  if (!machine) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  if (flags.empty()) throw UsageError(format("'{}' has no plugs", options.words.front()));
  const auto measure = make_text_measure();
  PictureOptions drawn;
  drawn.format = PictureFormat::Pdf;
  return {ExitStatus::Fine, render_pages(flag_pages(flags, paper, *measure), drawn),
          stderr_text(bench, options)};
}

}  // namespace plugward
