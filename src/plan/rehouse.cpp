// SPDX-License-Identifier: MIT
// Idea: the drafts (plan/rehouse_draft) of all headers in question, in the order of what they cost, are
// carried out on the model and judged; the first that is clean is told.
//
// Complexity: the best of a board looks at every pair of headers and judges `most_judged` drafts. Not taken:
// splitting over three headers; nobody has asked for it. Tested in tests/unit/plan/rehouse_test.cpp against
// all seatings of the leads of a five-way plug.
#include "plan/rehouse.h"

#include <algorithm>

#include "fit/seating.h"
#include "judge/words.h"
#include "plan/rehouse_draft.h"
#include "plan/rehouse_words.h"

namespace plugward {
namespace {

constexpr int most_judged = 32;

/// The plug that will sit on the header: a kept housing, or a new one that suits it.
Plug plug_on(const Fitting& fitting, const RehousingDraft& draft, int target) {
  const int kept = draft.kept[static_cast<std::size_t>(target)];
  Plug plug = source_of(fitting, draft, std::max(kept, 0));
  plug.leads.clear();
  plug.id = housing_name(fitting, draft, target);
  if (kept < 0) {
    const Header& header = target_of(fitting, draft, target);
    plug.label.clear();
    plug.family = header.family;
    plug.positions = header.positions;
    plug.rows = header.rows;
    plug.numbering = header.numbering;
    plug.key = KeyState::Intact;
  }
  for (std::size_t row = 0; row < draft.leads.size(); ++row) {
    if (draft.places[row].cavity == 0 || draft.places[row].target != target) continue;
    Lead lead = lead_of(fitting, draft, draft.leads[row]);
    lead.cavity = draft.places[row].cavity;
    plug.leads.push_back(std::move(lead));
  }
  std::sort(plug.leads.begin(), plug.leads.end(),
            [](const Lead& a, const Lead& b) { return a.cavity < b.cavity; });
  return plug;
}

/// The new plugs stand where the first that is given up stood; those that are given up are gone.
void build(const Fitting& fitting, const RehousingDraft& draft, Rehousing& result) {
  const Harness& old = *fitting.harness;
  result.harness = old;
  result.harness.plugs.clear();
  std::vector<int> new_index(old.plugs.size(), -1);
  for (int p = 0; p < static_cast<int>(old.plugs.size()); ++p) {
    if (p == draft.plugs.front()) {
      for (int t = 0; t < static_cast<int>(draft.headers.size()); ++t) {
        result.placements.push_back(
            {static_cast<int>(result.harness.plugs.size()), draft.headers[static_cast<std::size_t>(t)]});
        result.harness.plugs.push_back(plug_on(fitting, draft, t));
      }
    }
    if (std::find(draft.plugs.begin(), draft.plugs.end(), p) != draft.plugs.end()) continue;
    new_index[static_cast<std::size_t>(p)] = static_cast<int>(result.harness.plugs.size());
    result.harness.plugs.push_back(plug_of(fitting, p));
  }
  for (const Placement& p : fitting.placements) {
    const int plug = new_index[static_cast<std::size_t>(p.plug)];
    if (plug >= 0) result.placements.push_back({plug, p.header});
  }
}

/// Carried out and judged; nothing when it is not clean.
std::optional<Rehousing> carried_out(const Fitting& fitting, const RehousingDraft& draft) {
  Rehousing result;
  result.plugs = draft.plugs;
  result.headers = draft.headers;
  result.housings = draft.housings;
  result.moves = draft.moves;
  result.crimps = draft.crimps;
  result.settings = draft.settings;
  build(fitting, draft, result);
  result.after =
      assess({fitting.board, &result.harness, fitting.catalogue, result.placements, fitting.jumpers});
  if (!result.after.clean()) return std::nullopt;
  tell(fitting, draft, result);
  return result;
}

bool is_free(const Fitting& fitting, const std::vector<int>& plugs, int header) {
  return std::none_of(fitting.placements.begin(), fitting.placements.end(), [&](const Placement& p) {
    return p.header == header && std::find(plugs.begin(), plugs.end(), p.plug) == plugs.end();
  });
}

/// All drafts on these sets of headers, cheapest first; the first that is clean.
std::optional<Rehousing> best_of(const Fitting& fitting, const std::vector<int>& plugs,
                                 const std::vector<std::vector<int>>& sets) {
  std::vector<RehousingDraft> all;
  for (const auto& headers : sets) {
    for (RehousingDraft& draft : rehousing_drafts(fitting, plugs, headers)) all.push_back(std::move(draft));
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const RehousingDraft& a, const RehousingDraft& b) { return a.cost() < b.cost(); });
  int judged = 0;
  for (const RehousingDraft& draft : all) {
    if (judged++ == most_judged) break;
    if (auto result = carried_out(fitting, draft)) return result;
  }
  return std::nullopt;
}

}  // namespace

std::optional<Rehousing> rehouse(const Fitting& fitting, const std::vector<int>& plugs,
                                 const std::vector<int>& headers) {
  return best_of(fitting, plugs, {headers});
}

std::optional<Rehousing> best_split(const Fitting& fitting, int plug) {
  std::vector<std::vector<int>> sets;
  const int headers = static_cast<int>(fitting.board->headers.size());
  for (int a = 0; a < headers; ++a) {
    for (int b = a + 1; b < headers; ++b) {
      if (is_free(fitting, {plug}, a) && is_free(fitting, {plug}, b)) sets.push_back({a, b});
    }
  }
  return best_of(fitting, {plug}, sets);
}

std::optional<Rehousing> best_join(const Fitting& fitting, int plug, int other) {
  std::vector<std::vector<int>> sets;
  for (int h = 0; h < static_cast<int>(fitting.board->headers.size()); ++h) {
    if (is_free(fitting, {plug, other}, h)) sets.push_back({h});
  }
  return best_of(fitting, {plug, other}, sets);
}

}  // namespace plugward
