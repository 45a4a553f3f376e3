// SPDX-License-Identifier: MIT
// Idea: reading a board takes as long as judging one or two plugs on it, so most pairs must not be judged at
// all. in_question drops nine of ten by words alone; the rest is judged once for all boards on which headers,
// rails and jumpers are alike (plan/likeness.h), and of several plugs once for all on which their leads come
// to the same circuit (plan/wiring_memory.h). Whole placements come out of plan/placings in the order of what
// their pairs cost and are judged together, until the best judged is no dearer than the next sum.
//
//   two plugs, each with two headers: at most 3 x 3 placements, one of them judged together as a rule
//
// Complexity: plugs x headers words; for what is left one hash of some 100 bytes a pin. Not taken: place(),
// which judges every pair on the whole board, and the wrong seatings of the best; it is the twin in the
// tests. Tested in tests/unit/plan/find_test.cpp.
#include "plan/find.h"

#include <algorithm>
#include <mutex>

#include "base/format.h"
#include "plan/find_words.h"
#include "plan/place_judge.h"
#include "plan/placings.h"

namespace plugward {
namespace {

/// The verdict and what it costs; values of parts and wrong seatings are for who looks at one board.
constexpr AdviseOptions in_short{.wrong_seatings = false, .softer = false, .cures = false, .now = false};

/// Why the first of these plugs that is not decided by itself is not; "" when each is.
std::string first_doubt(const std::vector<std::vector<PlaceOption>>& options,
                        const std::vector<int>& headers) {
  for (std::size_t plug = 0; plug < headers.size(); ++plug) {
    for (const PlaceOption& option : options[plug]) {
      if (option.header == headers[plug] && option.verdict == Verdict::Measure) return option.reason;
    }
  }
  return "";
}

/// A lead sits in every cavity, and none may be taken out for good.
bool fills(const Harness& harness, const Plug& plug) {
  return static_cast<int>(plug.leads.size()) == plug.positions &&
         std::all_of(plug.leads.begin(), plug.leads.end(), [&](const Lead& lead) {
           if (lead.cavity < 1) return false;
           if (!lead.to) return true;
           const Terminal& terminal = harness.terminal(*lead.to);
           return !terminal.optional && terminal.function != TerminalFunction::Spare;
         });
}

}  // namespace

bool has_position(const Board& board, std::string_view jumper, std::string_view rail) {
  const Jumper* found = board.jumper(jumper);
  return found != nullptr && std::find(found->rails.begin(), found->rails.end(), rail) != found->rails.end();
}

std::optional<FindMemory::Judged> FindMemory::find(const std::string& key) const {
  const std::shared_lock lock(mutex_);
  const auto known = known_.find(key);
  return known == known_.end() ? std::nullopt : std::optional(known->second);
}

void FindMemory::add(std::string key, Judged judged) {
  const std::unique_lock lock(mutex_);
  if (known_.size() >= most_) known_.clear();
  known_.emplace(std::move(key), std::move(judged));
}

Finder::Finder(const Harness& harness, const Catalogue& catalogue, FindMemory& memory,
               const FindOptions& options)
    : harness_(harness),
      catalogue_(catalogue),
      memory_(memory),
      options_(options),
      demands_(demands(harness)) {
  for (const Plug& plug : harness.plugs) fills_.push_back(fills(harness, plug));
}

Finder::Judged Finder::judge(const Board& board, const std::vector<Placement>& placements,
                             JumperPositions stated) const {
  const Fitting fitting{&board, &harness_, &catalogue_, placements, std::move(stated)};
  AdviseOptions options = in_short;
  // Of several plugs only counts are told.
  if (options_.memo && placements.size() > 1) options.wirings = &memory_.wirings();
  const Advice advice = advise(fitting, options);
  if (advice.verdict == Verdict::Apart) return {};
  Judged judged{advice.verdict, cost_of(advice), say(advice)};
  if (advice.verdict == Verdict::Measure)
    judged.cost.unknown = std::max(1, static_cast<int>(advice.measurements.size()));
  if (placements.size() > 1) {
    judged.reason = say_in_numbers(judged.verdict, judged.cost);
    return judged;
  }
  if (advice.verdict != Verdict::Measure) return judged;
  const std::string outcomes = outcomes_by_position(fitting, in_short);
  if (!outcomes.empty()) judged.reason = outcomes;
  return judged;
}

JumperPositions Finder::stated_on(const Board& board) const {
  JumperPositions stated;
  for (const auto& [id, rail] : options_.jumpers) {
    if (has_position(board, id, rail)) stated.emplace(id, rail);
  }
  return stated;
}

Finder::Judged Finder::recall(const Board& board, const std::vector<Placement>& placements) {
  if (!options_.memo) {
    ++judged_;
    return judge(board, placements, stated_on(board));
  }
  std::vector<int> headers;
  for (const Placement& p : placements) headers.push_back(p.header);
  Likeness like = likeness(board, headers);
  std::vector<Placement> in_part;
  for (const Placement& p : placements) {
    like.key += format("/{}", p.plug);
    in_part.push_back({p.plug, static_cast<int>(in_part.size())});
  }
  if (!options_.jumpers.empty()) like.key += jumper_key(board, like, options_.jumpers);
  std::optional<Judged> judged = memory_.find(like.key);
  if (!judged) {
    ++judged_;
    const Board part = part_of(board, like);
    judged = judge(part, in_part, stated_in(board, like, part, options_.jumpers));
    memory_.add(like.key, *judged);
  }
  judged->reason = with_names(judged->reason, board, like);
  return *judged;
}

std::vector<int> Finder::surely_in_doubt(const Board& board, const Placement& placement) const {
  const Plug& plug = harness_.plugs[static_cast<std::size_t>(placement.plug)];
  const Header& header = board.headers[static_cast<std::size_t>(placement.header)];
  std::vector<int> pins;
  if (!options_.filter || !fills_[static_cast<std::size_t>(placement.plug)] ||
      plug.positions != header.positions || plug.rows != header.rows) {
    return pins;
  }
  for (std::size_t i = 0; i < header.pins.size(); ++i) {
    if (open_to_doubt(board, header, header.pins[i])) pins.push_back(static_cast<int>(i) + 1);
  }
  return pins;
}

std::vector<PlaceOption> Finder::options_of(const Board& board, int plug_index) {
  const auto at = static_cast<std::size_t>(plug_index);
  std::vector<PlaceOption> list;
  for (std::size_t h = 0; h < board.headers.size(); ++h) {
    if (options_.filter && !in_question(demands_[at], harness_.plugs[at], board, board.headers[h])) continue;
    const int header = static_cast<int>(h);
    const std::vector<int> in_doubt = surely_in_doubt(board, {plug_index, header});
    if (!in_doubt.empty()) {
      PlaceOption option{plug_index, header, Verdict::Measure, {}, find_out(board.headers[h], in_doubt)};
      option.cost.unknown = static_cast<int>(in_doubt.size());
      list.push_back(std::move(option));
      continue;
    }
    Judged judged = recall(board, {{plug_index, header}});
    if (judged.verdict == Verdict::Apart) continue;
    list.push_back({plug_index, header, judged.verdict, judged.cost, std::move(judged.reason)});
  }
  std::stable_sort(list.begin(), list.end(),
                   [](const PlaceOption& a, const PlaceOption& b) { return a.cost < b.cost; });
  return list;
}

std::optional<JointFit> Finder::best_of(const Board& board,
                                        const std::vector<std::vector<PlaceOption>>& options) {
  std::optional<JointFit> best;
  Placings placings(board, options);
  int looks = options_.partial_tries;
  int joint = options_.joint_tries;
  while (const auto next = placings.next(looks)) {
    if (best && best->cost <= next->bound) break;
    JointFit fit;
    for (std::size_t plug = 0; plug < next->headers.size(); ++plug) {
      if (next->headers[plug] != PartialPlacing::none)
        fit.placements.push_back({static_cast<int>(plug), next->headers[plug]});
    }
    if (fit.placements.empty()) break;
    if (joint-- == 0) break;
    const bool in_doubt = std::any_of(fit.placements.begin(), fit.placements.end(),
                                      [&](const Placement& p) { return !surely_in_doubt(board, p).empty(); });
    Judged judged{Verdict::Measure, next->cost, say_in_numbers(Verdict::Measure, next->cost)};
    if (!in_doubt) judged = recall(board, fit.placements);
    if (judged.verdict == Verdict::Apart) continue;
    fit.verdict = judged.verdict;
    fit.reason = std::move(judged.reason);
    fit.cost = judged.cost;
    fit.cost.unplaced = next->cost.unplaced;
    fit.cost.distance = next->cost.distance;
    if (fit.verdict == Verdict::Measure) {
      // Before the measurement, parts and moves are not told; they are not gone.
      fit.cost = std::max(fit.cost, next->cost);
      const std::string reason = first_doubt(options, next->headers);
      if (!reason.empty()) fit.reason = reason;
    }
    if (!best || fit.cost < best->cost) best = std::move(fit);
  }
  return best;
}

BoardFit Finder::look(const Board& board) {
  std::vector<std::vector<PlaceOption>> options;
  bool any = false;
  for (std::size_t plug = 0; plug < harness_.plugs.size(); ++plug) {
    options.push_back(options_of(board, static_cast<int>(plug)));
    any = any || !options.back().empty();
  }
  BoardFit fit;
  if (!any) return fit;
  fit.best = best_of(board, options);
  for (auto& list : options) {
    fit.options.insert(fit.options.end(), std::make_move_iterator(list.begin()),
                       std::make_move_iterator(list.end()));
  }
  return fit;
}

}  // namespace plugward
