// SPDX-License-Identifier: MIT
// swap: a whole machine to another board. Tested in tests/cases (swap-*).
#include "plan/swap.h"

#include "base/format.h"
#include "base/utf8.h"
#include "cli/load.h"
#include "cli/progress.h"
#include "cli/retell.h"
#include "cli/write_record.h"
#include "plan/record.h"
#include "plan/way_back.h"
#include "report/swap_json.h"
#include "report/swap_text.h"
#include "report/way_back_text.h"
#include "sheet/swap_words.h"

namespace plugward {
namespace {

constexpr std::string_view usual_folder = "refit";

/// A name that no XML can hold would be another one when it is read back.
void check_names(const Loom& loom) {
  const auto check = [](const std::string& file) {
    if (printable(file) != file || file.find('\n') != file.npos) {
      throw UsageError(format(
          "--record: no loom file can name '{}', which has control characters or is not UTF-8: rename it",
          file));
    }
  };
  check(loom.board);
  for (const LoomHarness& harness : loom.harnesses) check(harness.file);
}

/// The state in which the plan ends, into the folder of --record. What was written, in words.
std::string record_state(const Workbench& bench, const Options& options, const SwapPlan& plan) {
  if (!plan.result.clean())
    throw UsageError("--record: the plan ends in no state that is clean; the plan without --record says why");
  const Record record = finished_state(
      plan, *bench.loom, *bench.loom_files,
      {.loom = options.record + "/loom.xml", .old_loom = options.words.front(), .board = options.to_board});
  check_names(record.loom);
  write_record(record.files);
  std::string text = "written:\n";
  for (const RecordFile& file : record.files) text += format("  {}\n", file.path);
  return text + format("Once the work is done and looked at, change evidence '{}' in '{}' to what you saw.\n",
                       record_evidence, options.record + "/loom.xml");
}

std::string product(const Options& options, const SwapPlan& plan) {
  const TextOptions text{.colour = options.colour_out};
  if (options.way_back) return way_back_text(plan, way_back(plan), text);
  const SwapPapers papers = swap_papers(plan);
  if (options.format == ProductFormat::Json) return swap_json(papers);
  return swap_text(papers, {text, options.record.empty() && plan.result.clean()
                                      ? retell("swap", options) + format(" --record {}", usual_folder)
                                      : ""});
}

}  // namespace

Outcome run_swap(const Options& options) {
  if (options.way_back && options.format == ProductFormat::Json)
    throw UsageError("--back is told as text only; leave out '--format json'");
  Workbench bench;
  const std::optional<Fitting> machine = load_machine(bench, options);
  if (!machine) return {ExitStatus::NotFine, "", stderr_text(bench, options)};
  const Stage stage(options, "planning the move");
  const auto plan = plan_swap(*machine, *bench.board, swap_options(bench, options));
  std::string said = stderr_text(bench, options);
  if (!options.record.empty()) said += record_state(bench, options, *plan);
  return {swap_is_whole(*plan) ? ExitStatus::Fine : ExitStatus::NotFine, product(options, *plan), said};
}

}  // namespace plugward
