// SPDX-License-Identifier: MIT
// Idea: reading a board takes as long as judging one or two plugs on it, so most pairs must not be judged at
// all. in_question drops nine of ten by words alone; the rest is judged once for all boards on which headers,
// rails and jumpers are alike (plan/likeness.h). The best placement of all plugs is a best-first search (P.
// E. Hart, N. J. Nilsson, B. Raphael, IEEE Trans. SSC 4 (1968) 100, from memory): plugs take headers one
// after the other, a part's bound is what its pairs cost by themselves and the cheapest of the rest; whole
// placements come out in the order of that sum and are judged together, until the best judged is no dearer
// than the next sum.
//
//   two plugs, each with two headers: at most 3 x 3 placements, one of them judged together as a rule
//
// Complexity: plugs x headers words; for what is left one hash of some 100 bytes a pin. Not taken: place(),
// which judges every pair on the whole board, and the wrong seatings of the best; it is the twin in the
// tests. Tested in tests/unit/plan/find_test.cpp.
#include "plan/find.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <map>
#include <mutex>
#include <queue>

#include "base/format.h"
#include "judge/words.h"
#include "plan/place_judge.h"

namespace plugward {
namespace {

constexpr std::size_t most_positions = 64;  ///< combinations of jumper positions that are tried
constexpr std::size_t most_told = 4;        ///< of which so many are told

std::string counted(int n, std::string_view one) {
  return format("{} {}{}", n, one, n == 1 ? "" : "s");
}

/// The verdict and what it costs; values of parts and wrong seatings are for who looks at one board.
constexpr AdviseOptions in_short{.wrong_seatings = false, .softer = false, .cures = false};

std::string with_more(const std::string& first, std::size_t all, std::string_view one) {
  return all < 2 ? first : format("{}, and {} more", first, counted(static_cast<int>(all) - 1, one));
}

/// What is to be done, as one line.
std::string say(const Advice& advice) {
  const PlaceCost cost = cost_of(advice);
  const std::string setting =
      cost.settings == 0 ? "" : format("; then {} in the firmware", counted(cost.settings, "setting"));
  switch (advice.verdict) {
    case Verdict::Mate:
      return "plug it in as it is" + setting;
    case Verdict::Repin:
      return format("move {} first{}", counted(advice.moved, "contact"), setting);
    case Verdict::Adapt: {
      const std::string part =
          advice.parts.empty() ? "a part" : with_more(advice.parts.front(), advice.parts.size(), "part");
      return format("add {}{}", part,
                    advice.moved == 0 ? "" : format("; move {}", counted(advice.moved, "contact")));
    }
    case Verdict::Measure:
      if (advice.measurements.empty()) return "something must be known first";
      return "find out first " +
             with_more(advice.measurements.front().settles, advice.measurements.size(), "thing");
    case Verdict::Apart:
      break;
  }
  return "not at all";
}

/// Of several plugs: what each part is for is told plug by plug.
std::string say_in_numbers(Verdict verdict, const PlaceCost& cost) {
  if (verdict == Verdict::Measure) return format("find out first {}", counted(cost.unknown, "thing"));
  std::vector<std::string> what;
  if (cost.parts > 0) what.push_back("add " + counted(cost.parts, "part"));
  if (cost.housings > 0) what.push_back("fit " + counted(cost.housings, "new housing"));
  if (cost.moves > 0) what.push_back("move " + counted(cost.moves, "contact"));
  if (cost.settings > 0) what.push_back(counted(cost.settings, "setting") + " in the firmware");
  return what.empty() ? "plug them in as they are" : format("{}", join(what, ", "));
}

std::string find_out(const Header& header, const std::vector<int>& pins) {
  return with_more(format("find out first what {}.{} is", header.id, pins.front()), pins.size(), "thing");
}

using Positions = std::map<std::string, std::string>;

/// Every combination of positions of the jumpers that feed these headers; nothing when there is none to
/// choose, or too many.
std::vector<Positions> positions_of(const Fitting& fitting) {
  std::vector<const Jumper*> jumpers;
  for (const Placement& p : fitting.placements) {
    for (const Pin& pin : header_of(fitting, p.header).pins) {
      const Jumper* jumper = pin.jumper.empty() ? nullptr : fitting.board->jumper(pin.jumper);
      if (jumper != nullptr && std::find(jumpers.begin(), jumpers.end(), jumper) == jumpers.end())
        jumpers.push_back(jumper);
    }
  }
  if (jumpers.empty()) return {};
  std::vector<Positions> all{{}};
  for (const Jumper* jumper : jumpers) {
    if (all.size() * jumper->rails.size() > most_positions) return {};
    std::vector<Positions> more;
    for (const Positions& base : all) {
      for (const std::string& rail : jumper->rails) {
        more.push_back(base);
        more.back()[jumper->id] = rail;
      }
    }
    all = std::move(more);
  }
  return all;
}

/// "JP2 at 5V", "JP2 at 5V and JP4 at 12V".
std::string say(const Positions& positions) {
  std::vector<std::string> words;
  for (const auto& [jumper, rail] : positions) words.push_back(format("{} at {}", jumper, rail));
  return format("{}", join(words, " and "));
}

/// "JP2 at 5V: move 2 contacts first; JP2 at 24V: not at all"; "" when no jumper makes a difference.
std::string outcomes_by_position(Fitting fitting) {
  const std::vector<Positions> positions = positions_of(fitting);
  std::vector<std::string> outcomes;
  for (const Positions& one : positions) {
    fitting.jumpers = one;
    outcomes.push_back(say(advise(fitting, in_short)));
  }
  if (std::adjacent_find(outcomes.begin(), outcomes.end(), std::not_equal_to<>()) == outcomes.end())
    return "";
  std::vector<std::string> told;
  for (std::size_t i = 0; i < positions.size() && told.size() < most_told; ++i) {
    if (positions.size() > 2 && outcomes[i] == "not at all") continue;
    told.push_back(format("{}: {}", say(positions[i]), outcomes[i]));
  }
  return format("{}", join(told, "; "));
}

/// Distance between the pins 1 of two headers, in 0.1 mm.
int distance(const Board& board, int a, int b) {
  const Header& one = board.headers[static_cast<std::size_t>(a)];
  const Header& two = board.headers[static_cast<std::size_t>(b)];
  return static_cast<int>(std::lround(10.0 * std::hypot((one.x - two.x).value, (one.y - two.y).value)));
}

/// A placement of the first plugs. Orders by what it costs at least; of equals the longer one comes first,
/// then the one whose headers stand earlier in the board file.
struct Partial {
  PlaceCost bound;
  PlaceCost cost;
  std::vector<int> headers;  ///< by plug; none: no header

  static constexpr int none = std::numeric_limits<int>::max();

  bool later_than(const Partial& other) const {
    if (bound != other.bound) return bound > other.bound;
    if (headers.size() != other.headers.size()) return headers.size() < other.headers.size();
    return headers > other.headers;
  }
};

struct Later {
  bool operator()(const Partial& a, const Partial& b) const { return a.later_than(b); }
};

/// What two parts of a placement cost at least: one jumper may feed both.
PlaceCost together(const PlaceCost& a, const PlaceCost& b) {
  PlaceCost sum = a + b;
  sum.unknown = std::max(a.unknown, b.unknown);
  return sum;
}

/// Placements in the order of the sum of what their pairs cost.
class Placings {
 public:
  Placings(const Board& board, const std::vector<std::vector<PlaceOption>>& options)
      : board_(board), options_(options), rest_(options.size() + 1) {
    for (std::size_t i = options.size(); i-- > 0;) {
      PlaceCost least{1, 0, 0, 0, 0, 0, 0};
      for (const PlaceOption& option : options[i]) least = std::min(least, option.cost);
      rest_[i] = together(rest_[i + 1], least);
    }
    open_.push({rest_[0], {}, {}});
  }

  /// Nothing when there is none left, or after `tries` parts.
  std::optional<Partial> next(int& tries) {
    while (!open_.empty() && tries-- > 0) {
      Partial partial = open_.top();
      open_.pop();
      if (partial.headers.size() == options_.size()) return partial;
      extend(partial);
    }
    return std::nullopt;
  }

 private:
  void extend(const Partial& partial) {
    const std::size_t plug = partial.headers.size();
    for (const PlaceOption& option : options_[plug]) {
      const auto& taken = partial.headers;
      if (std::find(taken.begin(), taken.end(), option.header) != taken.end()) continue;
      PlaceCost cost = option.cost;
      if (plug > 0 && taken.front() != Partial::none)
        cost.distance = distance(board_, taken.front(), option.header);
      add(partial, option.header, cost);
    }
    add(partial, Partial::none, {1, 0, 0, 0, 0, 0, 0});
  }

  void add(const Partial& partial, int header, const PlaceCost& cost) {
    Partial longer{{}, together(partial.cost, cost), partial.headers};
    longer.headers.push_back(header);
    longer.bound = together(longer.cost, rest_[longer.headers.size()]);
    open_.push(std::move(longer));
  }

  const Board& board_;
  const std::vector<std::vector<PlaceOption>>& options_;
  std::vector<PlaceCost> rest_;  ///< [i]: the least that plugs i and later cost
  std::priority_queue<Partial, std::vector<Partial>, Later> open_;
};

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

Finder::Judged Finder::judge(const Board& board, const std::vector<Placement>& placements) const {
  Fitting fitting{&board, &harness_, &catalogue_, placements, {}};
  const Advice advice = advise(fitting, in_short);
  if (advice.verdict == Verdict::Apart) return {};
  Judged judged{advice.verdict, cost_of(advice), say(advice)};
  if (advice.verdict == Verdict::Measure)
    judged.cost.unknown = std::max(1, static_cast<int>(advice.measurements.size()));
  if (placements.size() > 1) {
    judged.reason = say_in_numbers(judged.verdict, judged.cost);
    return judged;
  }
  if (advice.verdict != Verdict::Measure) return judged;
  const std::string outcomes = outcomes_by_position(fitting);
  if (!outcomes.empty()) judged.reason = outcomes;
  return judged;
}

Finder::Judged Finder::recall(const Board& board, const std::vector<Placement>& placements) {
  if (!options_.memo) {
    ++judged_;
    return judge(board, placements);
  }
  std::vector<int> headers;
  for (const Placement& p : placements) headers.push_back(p.header);
  Likeness like = likeness(board, headers);
  std::vector<Placement> in_part;
  for (const Placement& p : placements) {
    like.key += format("/{}", p.plug);
    in_part.push_back({p.plug, static_cast<int>(in_part.size())});
  }
  std::optional<Judged> judged = memory_.find(like.key);
  if (!judged) {
    ++judged_;
    judged = judge(part_of(board, like), in_part);
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
      if (next->headers[plug] != Partial::none)
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
