// SPDX-License-Identifier: MIT
// Idea: the cavities of all new housings together are the columns, the leads of all old ones the rows, and
// the rest is the same problem as re-pinning one plug (numeric/choice_assignment). A lead that stays in a
// housing that is kept, in its cavity, costs nothing; every other one is moved.
//
//   a five-way plug, a board with headers of three and two pins: no housing is kept, five contacts move; with
//   a board of five and two pins, the five-way housing is kept and two contacts leave it
//
// Complexity: for one pair of headers at most four choices of kept housings, an assignment for each.
// Tested in tests/unit/plan/rehouse_test.cpp against all seatings of the leads of a five-way plug.
#include "plan/rehouse_draft.h"

#include <algorithm>
#include <optional>

#include "base/format.h"
#include "fit/match.h"
#include "fit/seating.h"
#include "judge/words.h"
#include "numeric/choice_assignment.h"
#include "plan/contact_wire.h"
#include "plan/technique.h"

namespace plugward {
namespace {

constexpr Cost setting_cost = 1;
constexpr Cost move_cost = 1000;

int count(std::size_t size) {
  return static_cast<int>(size);
}

bool possible(const Fitting& fitting, const RehousingDraft& draft) {
  std::size_t leads = 0;
  int cavities = 0;
  for (int s = 0; s < count(draft.plugs.size()); ++s) {
    const Plug& plug = source_of(fitting, draft, s);
    leads += plug.leads.size();
    if (!movable(*fitting.catalogue->find(plug.family))) return false;
    for (const Lead& lead : plug.leads) {
      if (!lead.to) return false;
    }
  }
  for (int t = 0; t < count(draft.headers.size()); ++t) cavities += target_of(fitting, draft, t).positions;
  return count(leads) <= cavities;
}

/// Every way to keep housings: by header, the plug whose housing stays, or -1.
std::vector<std::vector<int>> all_keeps(const Fitting& fitting, const RehousingDraft& draft) {
  std::vector<std::vector<int>> keeps{{}};
  for (int t = 0; t < count(draft.headers.size()); ++t) {
    std::vector<std::vector<int>> more;
    for (const auto& base : keeps) {
      for (int s = -1; s < count(draft.plugs.size()); ++s) {
        const bool again = std::find(base.begin(), base.end(), s) != base.end();
        if (s >= 0 &&
            (again ||
             mate(source_of(fitting, draft, s), target_of(fitting, draft, t), *fitting.catalogue).kind !=
                 MateKind::Fits)) {
          continue;
        }
        more.push_back(base);
        more.back().push_back(s);
      }
    }
    keeps = std::move(more);
  }
  return keeps;
}

Cost cost_of(const Fitting& fitting, const RehousingDraft& draft, const DraftLead& at,
             const DraftPlace& place, const End& end) {
  const Pin& pin = target_of(fitting, draft, place.target).pin(place.cavity);
  if (end.wish == Wish::Any || !grants(pin, end)) return forbidden;
  if (!volts_suit(pin, *fitting.board, fitting.jumpers, end)) return forbidden;
  const Lead& lead = lead_of(fitting, draft, at);
  if (crimped_anew(fitting, draft, at, place) &&
      !can_crimp(*fitting.catalogue->find(family_on(fitting, draft, place.target)), lead)) {
    return forbidden;
  }
  const bool stays =
      draft.kept[static_cast<std::size_t>(place.target)] == at.source && lead.cavity == place.cavity;
  return stays ? 0 : move_cost;
}

/// Rows: the leads of the draft; columns: `cavities`, then for each lead a place outside all housings.
ChoiceProblem problem_of(const Fitting& fitting, const RehousingDraft& draft,
                         const std::vector<DraftPlace>& cavities) {
  ChoiceProblem problem;
  problem.lines.resize(draft.leads.size());
  const auto terminal = [&](std::size_t row) { return *lead_of(fitting, draft, draft.leads[row]).to; };
  for (const WishGroup& group : groups(*fitting.harness)) {
    ChoiceGroup choices;
    for (std::size_t row = 0; row < draft.leads.size(); ++row) {
      const auto& ends = group.alternatives.front().ends;
      if (std::any_of(ends.begin(), ends.end(), [&](const End& e) { return e.terminal == terminal(row); }))
        choices.rows.push_back(row);
    }
    if (choices.rows.empty()) continue;
    for (const Alternative& alternative : group.alternatives) {
      Choice choice{alternative.motor_turned ? setting_cost : 0, {}};
      for (const std::size_t row : choices.rows) {
        const End& end = *std::find_if(alternative.ends.begin(), alternative.ends.end(),
                                       [&](const End& e) { return e.terminal == terminal(row); });
        std::vector<Cost> line(cavities.size() + draft.leads.size(), forbidden);
        for (std::size_t c = 0; c < cavities.size(); ++c)
          line[c] = cost_of(fitting, draft, draft.leads[row], cavities[c], end);
        if (end.wish == Wish::Nothing) line[cavities.size() + row] = move_cost;
        choice.lines.push_back(std::move(line));
      }
      choices.choices.push_back(std::move(choice));
    }
    problem.groups.push_back(std::move(choices));
  }
  return problem;
}

/// The cheapest places for the leads with these housings kept.
std::optional<RehousingDraft> drafted(const Fitting& fitting, RehousingDraft draft) {
  std::vector<DraftPlace> cavities;
  for (int s = 0; s < count(draft.plugs.size()); ++s) {
    for (int l = 0; l < count(source_of(fitting, draft, s).leads.size()); ++l) draft.leads.push_back({s, l});
  }
  for (int t = 0; t < count(draft.headers.size()); ++t) {
    for (int cavity = 1; cavity <= target_of(fitting, draft, t).positions; ++cavity)
      cavities.push_back({t, cavity});
  }
  const auto solution = cheapest_choice(problem_of(fitting, draft, cavities));
  if (!solution) return std::nullopt;
  draft.moves = static_cast<int>(solution->cost / move_cost);
  draft.settings = static_cast<int>(solution->cost % move_cost);
  std::vector<bool> used(draft.headers.size(), false);
  for (std::size_t row = 0; row < draft.leads.size(); ++row) {
    const auto column = static_cast<std::size_t>(solution->columns[row]);
    draft.places.push_back(column < cavities.size() ? cavities[column] : DraftPlace{});
    if (column >= cavities.size()) continue;
    used[static_cast<std::size_t>(draft.places.back().target)] = true;
    draft.crimps += crimped_anew(fitting, draft, draft.leads[row], draft.places.back()) ? 1 : 0;
  }
  if (std::find(used.begin(), used.end(), false) != used.end()) return std::nullopt;  // one header would do
  draft.housings = count(static_cast<std::size_t>(std::count(draft.kept.begin(), draft.kept.end(), -1)));
  return draft;
}

}  // namespace

std::vector<RehousingDraft> rehousing_drafts(const Fitting& fitting, const std::vector<int>& plugs,
                                             const std::vector<int>& headers) {
  std::vector<RehousingDraft> all;
  RehousingDraft base;
  base.plugs = plugs;
  base.headers = headers;
  if (!possible(fitting, base)) return all;
  for (const std::vector<int>& kept : all_keeps(fitting, base)) {
    base.kept = kept;
    if (auto draft = drafted(fitting, base)) all.push_back(std::move(*draft));
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const RehousingDraft& a, const RehousingDraft& b) { return a.cost() < b.cost(); });
  return all;
}

const Plug& source_of(const Fitting& fitting, const RehousingDraft& draft, int source) {
  return plug_of(fitting, draft.plugs[static_cast<std::size_t>(source)]);
}

const Header& target_of(const Fitting& fitting, const RehousingDraft& draft, int target) {
  return header_of(fitting, draft.headers[static_cast<std::size_t>(target)]);
}

const Lead& lead_of(const Fitting& fitting, const RehousingDraft& draft, const DraftLead& at) {
  return source_of(fitting, draft, at.source).leads[static_cast<std::size_t>(at.lead)];
}

std::string family_on(const Fitting& fitting, const RehousingDraft& draft, int target) {
  const int kept = draft.kept[static_cast<std::size_t>(target)];
  return kept >= 0 ? source_of(fitting, draft, kept).family : target_of(fitting, draft, target).family;
}

std::string housing_name(const Fitting& fitting, const RehousingDraft& draft, int target) {
  const int kept = draft.kept[static_cast<std::size_t>(target)];
  if (kept >= 0) return source_of(fitting, draft, kept).id;
  return format("{}-{}", source_of(fitting, draft, 0).id, target_of(fitting, draft, target).id);
}

bool crimped_anew(const Fitting& fitting, const RehousingDraft& draft, const DraftLead& at,
                  const DraftPlace& place) {
  return place.cavity > 0 && draft.kept[static_cast<std::size_t>(place.target)] != at.source &&
         family_on(fitting, draft, place.target) != source_of(fitting, draft, at.source).family;
}

}  // namespace plugward
