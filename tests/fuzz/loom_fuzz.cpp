// SPDX-License-Identifier: MIT
// A loom with the files that it names, and another board, which the machine moves to: judged, moved, written
// down and told without a crash; the record reads back as it was written and the way back is proved. Input:
// the new board, the loom, then the files that it names as "2.xml", "3.xml" ...
#include "plan/causes.h"
#include "plan/loom_bench.h"
#include "plan/record.h"
#include "plan/swap.h"
#include "plan/swap_papers.h"
#include "plan/way_back.h"
#include "report/advice_json.h"
#include "report/advice_text.h"
#include "report/lint.h"
#include "report/swap_json.h"
#include "report/swap_text.h"
#include "report/way_back_text.h"
#include "support/said.h"
#include "texts.h"

namespace plugward::fuzz {
namespace {

constexpr int most_choices = 8;
constexpr std::size_t most_plugs = 3, most_headers = 4;

bool small(const Board& board) {
  return board.headers.size() <= most_headers && choices(board) <= most_choices;
}

struct Machine {
  Sources sources;
  Catalogue catalogue;
  Diagnostics diagnostics;
  Description loom;

  explicit Machine(const Texts& texts) {
    add_builtin_families(catalogue);
    loom = read_description(sources, sources.add("1.xml", texts.at(1)), catalogue, diagnostics,
                            small_limits(), texts.opener(sources));
  }
};

void record_reads_back(const SwapPlan& plan, const Machine& machine) {
  if (!plan.result.clean()) return;
  const Record record = finished_state(plan, *machine.loom.loom, *machine.loom.loom_files,
                                       {.loom = "refit/loom.xml", .old_loom = "1.xml", .board = "0.xml"});
  for (const RecordFile& file : record.files) {
    Sources sources;
    Catalogue catalogue = machine.catalogue;
    Diagnostics diagnostics;
    const Description read =
        read_description(sources, sources.add(file.path, file.text), catalogue, diagnostics);
    must(read.taken());
    if (&file == &record.files.back()) must(read.loom && test::same(*read.loom, record.loom));
  }
}

void move(const Machine& machine, const Fitting& fitting, const Board& to) {
  const auto plan = plan_swap(fitting, to, {});
  const SwapPapers papers = swap_papers(*plan);
  must(!swap_text(papers).empty());
  must(!swap_json(papers).empty());
  const WayBack back = way_back(*plan);
  must(back.proven == ends_as_it_was(*plan, back));
  must(!way_back_text(*plan, back).empty());
  record_reads_back(*plan, machine);
}

}  // namespace
}  // namespace plugward::fuzz

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  using namespace plugward;
  using namespace plugward::fuzz;
  const Texts texts(data, size);
  Machine machine(texts);
  if (!machine.loom.loom || !machine.loom.loom_files) return 0;
  const Loom& loom = *machine.loom.loom;
  const LoomFiles& files = *machine.loom.loom_files;
  const LoomBench bench = loom_bench(loom, files);
  if (!small(files.board) || bench.harness.plugs.size() > most_plugs ||
      choices(bench.harness) + choices(files.board) > most_choices)
    return 0;
  const Fitting fitting = loom_fitting(files, bench, machine.catalogue);
  const Advice advice = advise_loom(loom, bench, fitting, {.budget = true});
  must(!advice_text(machine.sources, fitting, advice).empty());
  must(!advice_json(machine.sources, fitting, advice).empty());
  Diagnostics said;
  lint_loom(loom, fitting, assess_loom(loom, bench, fitting), said);
  const CauseFinder finder(fitting);
  must(finder.possible().empty() || finder.errors() > 0);

  const FileId file = machine.sources.add("0.xml", texts.at(0));
  const Description to =
      read_description(machine.sources, file, machine.catalogue, machine.diagnostics, small_limits());
  if (to.board && small(*to.board)) move(machine, fitting, *to.board);
  return 0;
}
