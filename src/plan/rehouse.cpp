// SPDX-License-Identifier: MIT
// Idea: the cavities of all new housings together are the columns, the leads of all old ones the rows, and
// the rest is the same problem as re-pinning one plug (numeric/choice_assignment). A lead that stays in a
// housing that is kept, in its cavity, costs nothing; every other one is moved.
//
//   a five-way plug, a board with headers of three and two pins: no housing is kept, five contacts move; with
//   a board of five and two pins, the five-way housing is kept and two contacts leave it
//
// What is cheapest is carried out on the model and judged; only a clean one is told.
// Complexity: for one pair of headers at most four choices of kept housings; the best of a board looks at
// every pair in the order of what it costs and judges `most_judged` of them. Not taken: splitting over three
// headers; nobody has asked for it. Tested in tests/unit/plan/rehouse_test.cpp against all seatings of the
// leads of a five-way plug.
#include "plan/rehouse.h"

#include <algorithm>
#include <tuple>

#include "base/format.h"
#include "fit/match.h"
#include "fit/seating.h"
#include "judge/words.h"
#include "numeric/choice_assignment.h"
#include "plan/technique.h"

namespace plugward {
namespace {

constexpr int most_judged = 32;
constexpr Cost setting_cost = 1;
constexpr Cost move_cost = 1000;

struct LeadAt {
  int source = 0;  ///< index into the plugs that are given up
  int lead = 0;
};

struct CavityAt {
  int target = 0;  ///< index into the headers
  int cavity = 0;
};

/// A housing for each header (kept: index into the sources, else -1) and a place for each lead.
struct Draft {
  std::vector<int> kept;
  std::vector<LeadAt> leads;
  std::vector<CavityAt> places;  ///< by lead; cavity 0: insulated
  int housings = 0;
  int moves = 0;
  int crimps = 0;
  int settings = 0;

  auto cost() const { return std::tuple(housings, moves, crimps, settings); }
};

class Rehouser {
 public:
  Rehouser(const Fitting& fitting, std::vector<int> plugs, std::vector<int> headers)
      : fitting_(fitting), plugs_(std::move(plugs)), headers_(std::move(headers)) {}

  /// Every choice of kept housings, cheapest first.
  std::vector<Draft> drafts() const {
    std::vector<Draft> all;
    if (!possible()) return all;
    std::vector<std::vector<int>> keeps{{}};
    for (std::size_t t = 0; t < headers_.size(); ++t) {
      std::vector<std::vector<int>> more;
      for (const auto& base : keeps) {
        for (int s = -1; s < static_cast<int>(plugs_.size()); ++s) {
          if (s >= 0 && (!fits(s, t) || std::find(base.begin(), base.end(), s) != base.end())) continue;
          more.push_back(base);
          more.back().push_back(s);
        }
      }
      keeps = std::move(more);
    }
    for (const auto& kept : keeps) {
      if (auto draft = drafted(kept)) all.push_back(std::move(*draft));
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Draft& a, const Draft& b) { return a.cost() < b.cost(); });
    return all;
  }

  /// Carried out and judged; nothing when it is not clean.
  std::optional<Rehousing> carry_out(const Draft& draft) const {
    Rehousing result;
    result.plugs = plugs_;
    result.headers = headers_;
    result.housings = draft.housings;
    result.moves = draft.moves;
    result.crimps = draft.crimps;
    result.settings = draft.settings;
    build(draft, result);
    const Fitting changed{fitting_.board, &result.harness, fitting_.catalogue, result.placements,
                          fitting_.jumpers};
    result.after = assess(changed);
    if (!result.after.clean()) return std::nullopt;
    tell(draft, result);
    return result;
  }

 private:
  const Plug& source(int s) const { return plug_of(fitting_, plugs_[static_cast<std::size_t>(s)]); }
  const Header& target(std::size_t t) const { return header_of(fitting_, headers_[t]); }
  const Lead& lead_at(const LeadAt& at) const {
    return source(at.source).leads[static_cast<std::size_t>(at.lead)];
  }

  bool possible() const {
    std::size_t leads = 0;
    int cavities = 0;
    for (std::size_t s = 0; s < plugs_.size(); ++s) {
      const Plug& plug = source(static_cast<int>(s));
      leads += plug.leads.size();
      if (!movable(*fitting_.catalogue->find(plug.family))) return false;
      for (const Lead& lead : plug.leads) {
        if (!lead.to) return false;
      }
    }
    for (std::size_t t = 0; t < headers_.size(); ++t) cavities += target(t).positions;
    return static_cast<int>(leads) <= cavities;
  }

  bool fits(int s, std::size_t t) const {
    return mate(source(s), target(t), *fitting_.catalogue).kind == MateKind::Fits;
  }

  Cost cost_of(const LeadAt& at, const CavityAt& place, const End& end, const std::vector<int>& kept) const {
    const Header& header = target(static_cast<std::size_t>(place.target));
    const Pin& pin = header.pin(place.cavity);
    if (end.wish == Wish::Any || !grants(pin, end)) return forbidden;
    if (!volts_suit(pin, *fitting_.board, fitting_.jumpers, end)) return forbidden;
    const bool stays =
        kept[static_cast<std::size_t>(place.target)] == at.source && lead_at(at).cavity == place.cavity;
    return stays ? 0 : move_cost;
  }

  std::optional<Draft> drafted(const std::vector<int>& kept) const {
    Draft draft;
    draft.kept = kept;
    std::vector<CavityAt> columns;
    for (std::size_t s = 0; s < plugs_.size(); ++s) {
      for (std::size_t l = 0; l < source(static_cast<int>(s)).leads.size(); ++l)
        draft.leads.push_back({static_cast<int>(s), static_cast<int>(l)});
    }
    for (std::size_t t = 0; t < headers_.size(); ++t) {
      for (int cavity = 1; cavity <= target(t).positions; ++cavity)
        columns.push_back({static_cast<int>(t), cavity});
    }
    ChoiceProblem problem;
    problem.lines.resize(draft.leads.size());
    for (const WishGroup& group : groups(*fitting_.harness)) {
      ChoiceGroup choices;
      for (std::size_t row = 0; row < draft.leads.size(); ++row) {
        const auto& ends = group.alternatives.front().ends;
        if (std::any_of(ends.begin(), ends.end(),
                        [&](const End& e) { return e.terminal == *lead_at(draft.leads[row]).to; }))
          choices.rows.push_back(row);
      }
      if (choices.rows.empty()) continue;
      for (const Alternative& alternative : group.alternatives) {
        Choice choice{alternative.motor_turned ? setting_cost : 0, {}};
        for (const std::size_t row : choices.rows) {
          const LeadAt& at = draft.leads[row];
          const End& end = *std::find_if(alternative.ends.begin(), alternative.ends.end(),
                                         [&](const End& e) { return e.terminal == *lead_at(at).to; });
          std::vector<Cost> line(columns.size() + draft.leads.size(), forbidden);
          for (std::size_t c = 0; c < columns.size(); ++c) line[c] = cost_of(at, columns[c], end, kept);
          if (end.wish == Wish::Nothing) line[columns.size() + row] = move_cost;
          choice.lines.push_back(std::move(line));
        }
        choices.choices.push_back(std::move(choice));
      }
      problem.groups.push_back(std::move(choices));
    }
    const auto solution = cheapest_choice(problem);
    if (!solution) return std::nullopt;
    draft.moves = static_cast<int>(solution->cost / move_cost);
    draft.settings = static_cast<int>(solution->cost % move_cost);
    for (std::size_t row = 0; row < draft.leads.size(); ++row) {
      const auto column = static_cast<std::size_t>(solution->columns[row]);
      draft.places.push_back(column < columns.size() ? columns[column] : CavityAt{});
      if (column >= columns.size()) continue;
      const auto t = static_cast<std::size_t>(columns[column].target);
      const bool other_housing = kept[t] != draft.leads[row].source;
      if (other_housing && family_of(draft, t) != source(draft.leads[row].source).family) ++draft.crimps;
    }
    for (std::size_t t = 0; t < headers_.size(); ++t) {
      const bool used = std::any_of(draft.places.begin(), draft.places.end(), [&](const CavityAt& p) {
        return p.cavity > 0 && p.target == static_cast<int>(t);
      });
      if (!used) return std::nullopt;  // no split: one header would do
      if (kept[t] < 0) ++draft.housings;
    }
    return draft;
  }

  std::string family_of(const Draft& draft, std::size_t t) const {
    return draft.kept[t] >= 0 ? source(draft.kept[t]).family : target(t).family;
  }

  std::string name_of(const Draft& draft, std::size_t t) const {
    return draft.kept[t] >= 0 ? source(draft.kept[t]).id : format("{}-{}", source(0).id, target(t).id);
  }

  /// The new plugs stand where the first source stood; the sources are gone.
  void build(const Draft& draft, Rehousing& result) const {
    std::vector<Plug> made;
    for (std::size_t t = 0; t < headers_.size(); ++t) {
      Plug plug = source(std::max(draft.kept[t], 0));
      plug.leads.clear();
      plug.id = name_of(draft, t);
      if (draft.kept[t] < 0) {
        plug.label.clear();
        plug.family = target(t).family;
        plug.positions = target(t).positions;
        plug.rows = target(t).rows;
        plug.numbering = target(t).numbering;
        plug.key = KeyState::Intact;
      }
      for (std::size_t row = 0; row < draft.leads.size(); ++row) {
        if (draft.places[row].cavity == 0 || draft.places[row].target != static_cast<int>(t)) continue;
        Lead lead = lead_at(draft.leads[row]);
        lead.cavity = draft.places[row].cavity;
        plug.leads.push_back(lead);
      }
      std::sort(plug.leads.begin(), plug.leads.end(),
                [](const Lead& a, const Lead& b) { return a.cavity < b.cavity; });
      made.push_back(std::move(plug));
    }
    const Harness& old = *fitting_.harness;
    result.harness = old;
    result.harness.plugs.clear();
    std::vector<int> new_index(old.plugs.size(), -1);
    for (std::size_t p = 0; p < old.plugs.size(); ++p) {
      const bool given_up = std::find(plugs_.begin(), plugs_.end(), static_cast<int>(p)) != plugs_.end();
      if (static_cast<int>(p) == plugs_.front()) {
        for (std::size_t t = 0; t < made.size(); ++t) {
          result.placements.push_back({static_cast<int>(result.harness.plugs.size()), headers_[t]});
          result.harness.plugs.push_back(std::move(made[t]));
        }
      }
      if (given_up) continue;
      new_index[p] = static_cast<int>(result.harness.plugs.size());
      result.harness.plugs.push_back(old.plugs[p]);
    }
    for (const Placement& p : fitting_.placements) {
      const int plug = new_index[static_cast<std::size_t>(p.plug)];
      if (plug >= 0) result.placements.push_back({plug, p.header});
    }
  }

  std::string titles() const {
    std::vector<std::string> names;
    for (std::size_t t = 0; t < headers_.size(); ++t) {
      const Header& header = target(t);
      names.push_back(header.label.empty() ? header.id : format("{} ({})", header.id, header.label));
    }
    return format("{}", join(names, " and "));
  }

  std::string lead_words(const LeadAt& at) const {
    return format("the {} lead to {}", to_code(lead_at(at).colour), terminal_name(fitting_, *lead_at(at).to));
  }

  void tell(const Draft& draft, Rehousing& result) const {
    std::vector<std::string> names;
    for (std::size_t s = 0; s < plugs_.size(); ++s)
      names.push_back(format("'{}'", source(static_cast<int>(s)).id));
    const auto count = [](int n, std::string_view one) {
      return format("{} {}{}", n, one, n == 1 ? "" : "s");
    };
    result.summary = format("{} {} {} {}: {}, {} moved{}", plugs_.size() == 1 ? "split" : "join",
                            join(names, " and "), plugs_.size() == 1 ? "over" : "on", titles(),
                            count(draft.housings, "new housing"), count(draft.moves, "contact"),
                            draft.crimps == 0 ? "" : format(", {} of them crimped anew", draft.crimps));
    for (std::size_t t = 0; t < headers_.size(); ++t) {
      if (draft.kept[t] >= 0) continue;
      result.parts.push_back(format("a housing of family '{}' with {} positions, for {}", target(t).family,
                                    target(t).positions, target(t).id));
      int crimps = 0;
      for (std::size_t row = 0; row < draft.leads.size(); ++row) {
        const bool here = draft.places[row].cavity > 0 && draft.places[row].target == static_cast<int>(t);
        if (here && source(draft.leads[row].source).family != target(t).family) ++crimps;
      }
      if (crimps > 0)
        result.parts.push_back(format("{} of family '{}'", count(crimps, "contact"), target(t).family));
    }
    result.cautions = cautions_before();
    std::vector<Gauge> gauges;
    tell_taking_out(draft, result, gauges);
    tell_seating(draft, result);
    result.checks = checks_after(gauges);
  }

  /// What leaves a housing goes first; what moves within one then finds room.
  void tell_taking_out(const Draft& draft, Rehousing& result, std::vector<Gauge>& gauges) const {
    for (std::size_t s = 0; s < plugs_.size(); ++s) {
      const Plug& plug = source(static_cast<int>(s));
      Arrangement before;
      Arrangement after;
      std::vector<std::size_t> row_of;
      for (std::size_t row = 0; row < draft.leads.size(); ++row) {
        if (draft.leads[row].source != static_cast<int>(s)) continue;
        row_of.push_back(row);
        const CavityAt& place = draft.places[row];
        const bool stays =
            place.cavity > 0 && draft.kept[static_cast<std::size_t>(place.target)] == static_cast<int>(s);
        before.cavity.push_back(lead_at(draft.leads[row]).cavity);
        after.cavity.push_back(stays ? place.cavity : 0);
      }
      for (const Step& step : order_moves(before, after, plug.positions)) {
        const LeadAt& at = draft.leads[row_of[static_cast<std::size_t>(step.lead)]];
        if (lead_at(at).gauge) gauges.push_back(*lead_at(at).gauge);
        const std::string what = lead_words(at);
        switch (step.kind) {
          case StepKind::Move:
          case StepKind::Park:
            result.steps.push_back(
                format("move {} from cavity {} to cavity {} of '{}'", what, step.from, step.to, plug.id));
            break;
          case StepKind::Hold:
            result.steps.push_back(
                format("take {} out of cavity {} of '{}' and hold it beside", what, step.from, plug.id));
            break;
          case StepKind::Insert:
            result.steps.push_back(format("seat {} in cavity {} of '{}'", what, step.to, plug.id));
            break;
          case StepKind::Insulate:
            result.steps.push_back(
                format("take {} out of cavity {} of '{}' and flag it", what, step.from, plug.id));
        }
      }
    }
  }

  void tell_seating(const Draft& draft, Rehousing& result) const {
    for (std::size_t row = 0; row < draft.leads.size(); ++row) {
      const LeadAt& at = draft.leads[row];
      const CavityAt& place = draft.places[row];
      const std::string what = lead_words(at);
      if (place.cavity == 0) {
        result.steps.push_back(format("insulate {} singly: it has no use on these headers", what));
        continue;
      }
      const auto t = static_cast<std::size_t>(place.target);
      if (draft.kept[t] == at.source) continue;
      const std::string family = family_of(draft, t);
      const std::string crimp =
          family == source(at.source).family
              ? ""
              : format("cut its contact off, crimp one of family '{}' on, and ", family);
      const Pin& pin = target(t).pin(place.cavity);
      result.steps.push_back(format("{}: {}seat it in cavity {} of '{}'; it meets {}, {}", what, crimp,
                                    place.cavity, name_of(draft, t),
                                    pin_name(fitting_, headers_[t], place.cavity), to_words(pin)));
    }
  }

  const Fitting& fitting_;
  std::vector<int> plugs_;
  std::vector<int> headers_;
};

bool is_free(const Fitting& fitting, const std::vector<int>& plugs, int header) {
  return std::none_of(fitting.placements.begin(), fitting.placements.end(), [&](const Placement& p) {
    return p.header == header && std::find(plugs.begin(), plugs.end(), p.plug) == plugs.end();
  });
}

/// All drafts on these sets of headers, cheapest first; the first that is clean.
std::optional<Rehousing> best_of(const Fitting& fitting, const std::vector<int>& plugs,
                                 const std::vector<std::vector<int>>& sets) {
  struct Option {
    std::vector<int> headers;
    Draft draft;
  };
  std::vector<Option> all;
  for (const auto& headers : sets) {
    const Rehouser rehouser(fitting, plugs, headers);
    for (Draft& draft : rehouser.drafts()) all.push_back({headers, std::move(draft)});
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Option& a, const Option& b) { return a.draft.cost() < b.draft.cost(); });
  int judged = 0;
  for (const Option& option : all) {
    if (judged++ == most_judged) break;
    if (auto result = Rehouser(fitting, plugs, option.headers).carry_out(option.draft)) return result;
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
