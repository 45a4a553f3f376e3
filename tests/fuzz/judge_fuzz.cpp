// SPDX-License-Identifier: MIT
// A board and harnesses that the reader took are judged, advised on and told without a crash, and what is
// advised holds when it is judged again. Input: words PLUG=HEADER and JUMPER=RAIL, then a board, then
// harnesses.
#include <algorithm>
#include <sstream>

#include "cli/placement.h"
#include "plan/adapter_lead.h"
#include "plan/parts_list.h"
#include "plan/place.h"
#include "report/adapter_text.h"
#include "report/advice_json.h"
#include "report/advice_text.h"
#include "report/parts_text.h"
#include "report/place_text.h"
#include "report/repin_text.h"
#include "texts.h"

namespace plugward::fuzz {
namespace {

/// Machines that take longer than a fuzzer should wait.
constexpr int most_choices = 9;
constexpr std::size_t most_plugs = 3, most_headers = 4, most_harnesses = 3;

struct Machine {
  Sources sources;
  Catalogue catalogue;
  Diagnostics diagnostics;
  std::unique_ptr<Board> board;
  Harness harness;

  /// False when it is not whole, or too large.
  bool read(const Texts& texts) {
    add_builtin_families(catalogue);
    std::vector<std::unique_ptr<Harness>> harnesses;
    std::vector<const Harness*> all;
    for (std::size_t i = 1; i < texts.size(); ++i) {
      const FileId file = sources.add(format("{}.xml", i), texts.at(i));
      Description one = read_description(sources, file, catalogue, diagnostics, small_limits());
      if (one.board) board = std::move(one.board);
      if (one.harness) harnesses.push_back(std::move(one.harness));
    }
    for (const auto& one : harnesses) {
      for (const Harness* other : all) {
        if (other->id == one->id) return false;
      }
      all.push_back(one.get());
    }
    if (!board || all.empty() || all.size() > most_harnesses) return false;
    harness = merged(all);
    return harness.plugs.size() <= most_plugs && board->headers.size() <= most_headers &&
           choices(harness) + choices(*board) <= most_choices;
  }

  Fitting fitting(const std::string& words) {
    Fitting made{board.get(), &harness, &catalogue, {}, {}};
    std::istringstream in(words);
    std::vector<NamedValue> at;
    for (std::string word; in >> word;) {
      const std::size_t equals = word.find('=');
      if (equals == word.npos) continue;
      const NamedValue one{word.substr(0, equals), word.substr(equals + 1)};
      const Jumper* jumper = board->jumper(one.name);
      if (jumper == nullptr) {
        at.push_back(one);
      } else if (std::find(jumper->rails.begin(), jumper->rails.end(), one.value) != jumper->rails.end()) {
        made.jumpers[one.name] = one.value;
      }
    }
    PlacementChoice choice =
        at.empty() ? choose_placements(*board, harness, at) : stated_placements(*board, harness, at);
    made.placements = std::move(choice.placements);
    return made;
  }
};

/// Carries every plan out, step by step.
void carries_out(const Fitting& fitting, const RepinPlan& plan) {
  for (const PlugPlan& plug : plan.plugs) {
    const int positions = fitting.harness->plugs[static_cast<std::size_t>(plug.plug)].positions;
    const auto end = carry_out(plug.before, plug.steps, positions);
    must(end && *end == plug.after);
  }
}

void holds(const Fitting& fitting, const Advice& advice) {
  if (advice.verdict == Verdict::Mate) must(advice.now.clean());
  must(advice.verdict != Verdict::Repin || advice.plan);
  if (!advice.plan) return;
  carries_out(fitting, *advice.plan);
  must(advice.plan->after.clean());
  if (advice.verdict != Verdict::Repin) return;
  Fitting after = fitting;
  after.harness = &advice.plan->harness;
  must(assess(after).clean());
}

void tell(const Machine& machine, const Fitting& fitting, const Advice& advice) {
  must(!advice_text(machine.sources, fitting, advice).empty());
  must(!advice_json(machine.sources, fitting, advice).empty());
  must(!repin_text(fitting, advice).empty());
  must(!parts_text(fitting, parts_list(fitting, advice)).empty());
  const AdapterAdvice adapter = advise_adapter(fitting, advice);
  must(!adapter_text(fitting, advice, adapter).empty());
}

}  // namespace
}  // namespace plugward::fuzz

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  using namespace plugward;
  using namespace plugward::fuzz;
  const Texts texts(data, size);
  Machine machine;
  if (!machine.read(texts)) return 0;
  Fitting fitting = machine.fitting(texts.at(0));
  if (!fitting.placements.empty()) {
    const Advice advice = advise(fitting, {.budget = true});
    holds(fitting, advice);
    tell(machine, fitting, advice);
  }
  fitting.placements.clear();
  PlaceOptions few;
  few.joint_tries = 8;
  const PlacementPlan plan = place(fitting, few);
  must(!place_text(fitting, plan).empty());
  if (plan.best) {
    fitting.placements = plan.best->placements;
    holds(fitting, plan.best->advice);
  }
  return 0;
}
