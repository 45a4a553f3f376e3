// SPDX-License-Identifier: MIT
// Idea: once it is fixed how each group of passive ends is used (which end of a switch is the signal, which
// winding is on which bridge), every lead has one wish, and finding cavities is an assignment problem: leads
// against cavities, a move costs one, a cavity whose pin does not grant the wish is forbidden. Each lead also
// has a place of its own outside the housing (insulated), open only to leads that may stay unconnected. Which
// way the groups are used is found together with the cavities: numeric/choice_assignment.
//
//   switch A B, cavities 1 2, pins 1 signal, 2 ground, leads A in 2, B in 1: with "A is the signal end" both
//   leads would move; with "B is the signal end" none does. Cost 0.
//
// Complexity: as there; placements that share no group are apart by themselves, so four motors on four
// headers cost four times one motor. Not taken: trying every combination of the groups' alternatives (8^4 for
// four motors); it is the twin in tests/unit/plan/target_test.cpp. Reference: R. Jonker, A. Volgenant,
// Computing 38 (1987) 325, for the assignment. Tested there, and against glpsol in tests/outside/optimum.
#include "plan/target.h"

#include <algorithm>
#include <map>

#include "judge/words.h"
#include "numeric/choice_assignment.h"

namespace plugward {
namespace {

// A level of the order of preference outweighs everything below it.
constexpr Cost later_alternative_cost = 1;  ///< of equals, what the part prefers
constexpr Cost setting_cost = 4096 * later_alternative_cost;
constexpr Cost move_cost = 1024 * setting_cost;
constexpr Cost unconnected_cost = 4096 * move_cost;
constexpr Cost wrong_volts_cost = 4096 * unconnected_cost;

struct Row {
  LeadId id;
  TerminalRef terminal;
  int cavity = 0;
};

struct Column {
  int placement = 0;
  int cavity = 0;
  const Pin* pin = nullptr;  ///< nullptr: meets no pin
};

const End& end_of(const Alternative& alternative, TerminalRef terminal) {
  return *std::find_if(alternative.ends.begin(), alternative.ends.end(),
                       [&](const End& end) { return end.terminal == terminal; });
}

class Problem {
 public:
  Problem(const Fitting& fitting, const std::set<Refused>& refused) : fitting_(fitting), refused_(refused) {
    for (std::size_t p = 0; p < fitting.placements.size(); ++p) collect(static_cast<int>(p));
  }

  std::optional<Target> solve(const std::vector<WishGroup>& all) const {
    if (!refused_.empty() && !each_refused_finds_a_place(all)) return std::nullopt;
    const auto solution = cheapest_choice(problem_of(all));
    if (!solution) return std::nullopt;
    Target target;
    target.cost = solution->cost;
    target.proven = solution->proven;
    for (std::size_t g = 0; g < all.size(); ++g) {
      target.chosen.push_back(all[g].alternatives[static_cast<std::size_t>(solution->choices[g])]);
    }
    for (const Placement& placement : fitting_.placements) {
      Arrangement now;
      for (const Lead& lead : plug_of(fitting_, placement.plug).leads) now.cavity.push_back(lead.cavity);
      target.arrangements.push_back(std::move(now));
    }
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      const auto column = static_cast<std::size_t>(solution->columns[r]);
      const int cavity = column < columns_.size() ? columns_[column].cavity : 0;
      target.arrangements[static_cast<std::size_t>(rows_[r].id.placement)]
          .cavity[static_cast<std::size_t>(rows_[r].id.lead)] = cavity;
      if (cavity != rows_[r].cavity) ++target.moved;
    }
    return target;
  }

 private:
  void collect(int placement) {
    const Placement& where = fitting_.placements[static_cast<std::size_t>(placement)];
    const Plug& plug = plug_of(fitting_, where.plug);
    const Header& header = header_of(fitting_, where.header);
    const Seating home = home_seating(plug, where.header, *fitting_.board);
    std::set<int> fixed;
    for (std::size_t l = 0; l < plug.leads.size(); ++l) {
      const Lead& lead = plug.leads[l];
      const LeadId id{placement, static_cast<int>(l)};
      if (lead.to) {
        rows_of_[*lead.to].push_back(rows_.size());
        rows_.push_back({id, *lead.to, lead.cavity});
      } else if (lead.cavity > 0) {
        fixed.insert(lead.cavity);  // not known where it goes: it stays
      }
    }
    for (int cavity = 1; cavity <= plug.positions; ++cavity) {
      if (fixed.contains(cavity)) continue;
      const int pin = home.pin_of_cavity[static_cast<std::size_t>(cavity) - 1];
      columns_.push_back({placement, cavity, pin == 0 ? nullptr : &header.pin(pin)});
    }
  }

  /// False: a lead of a refused place has no other place however its group is used, and nothing need be
  /// solved.
  bool each_refused_finds_a_place(const std::vector<WishGroup>& all) const {
    return std::all_of(refused_.begin(), refused_.end(), [&](const Refused& refused) {
      const auto row =
          std::find_if(rows_.begin(), rows_.end(), [&](const Row& r) { return r.id == refused.lead; });
      if (row == rows_.end()) return true;
      bool in_a_group = false;
      for (const WishGroup& group : all) {
        for (const Alternative& alternative : group.alternatives) {
          for (const End& end : alternative.ends) {
            if (end.terminal != row->terminal) continue;
            in_a_group = true;
            if (finds_a_place(*row, end)) return true;
          }
        }
      }
      return !in_a_group;
    });
  }

  bool finds_a_place(const Row& row, const End& end) const {
    return cost_of_insulating(row, end) < forbidden ||
           std::any_of(columns_.begin(), columns_.end(), [&](const Column& column) {
             return column.placement == row.id.placement && cost_of(row, column, end) < forbidden;
           });
  }

  /// Rows are leads; columns are cavities, then one place outside for each lead.
  ChoiceProblem problem_of(const std::vector<WishGroup>& all) const {
    ChoiceProblem problem;
    problem.lines.resize(rows_.size());
    for (const WishGroup& group : all) {
      ChoiceGroup choice_group;
      for (const End& end : group.alternatives.front().ends) {
        const auto found = rows_of_.find(end.terminal);
        if (found == rows_of_.end()) continue;
        choice_group.rows.insert(choice_group.rows.end(), found->second.begin(), found->second.end());
      }
      Cost later = 0;
      for (const Alternative& alternative : group.alternatives) {
        Choice choice{(alternative.motor_turned ? setting_cost : 0) + later, {}};
        for (const std::size_t row : choice_group.rows) {
          choice.lines.push_back(line_of(row, end_of(alternative, rows_[row].terminal)));
        }
        choice_group.choices.push_back(std::move(choice));
        later += later_alternative_cost;
      }
      problem.groups.push_back(std::move(choice_group));
    }
    return problem;
  }

  std::vector<Cost> line_of(std::size_t r, const End& end) const {
    const Row& row = rows_[r];
    std::vector<Cost> line(columns_.size() + rows_.size(), forbidden);
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      if (columns_[c].placement == row.id.placement) line[c] = cost_of(row, columns_[c], end);
    }
    line[columns_.size() + r] = cost_of_insulating(row, end);
    return line;
  }

  Cost cost_of(const Row& row, const Column& column, const End& end) const {
    if (!refused_.empty() && refused_.contains({row.id, column.cavity})) return forbidden;
    const Cost move = column.cavity == row.cavity ? 0 : move_cost;
    if (end.wish == Wish::Any) return move == 0 ? 0 : forbidden;
    if (column.pin == nullptr && end.wish == Wish::Nothing) return move;
    if (move == 0 && may_stay_open(row)) return 0;
    const bool open = column.pin == nullptr || column.pin->function == PinFunction::Unused;
    if (open && end.wish != Wish::Nothing && fitting_.harness->terminal(row.terminal).optional)
      return unconnected_cost + move;
    if (column.pin == nullptr) return forbidden;
    if (!grants(*column.pin, end)) return forbidden;
    return volts_suit(*column.pin, *fitting_.board, fitting_.jumpers, end) ? move : move + wrong_volts_cost;
  }

  /// What the lead meets where it is now; nullptr: no pin, or it is out.
  const Pin* pin_now(const Row& row) const {
    const auto now = std::find_if(columns_.begin(), columns_.end(), [&](const Column& column) {
      return column.placement == row.id.placement && column.cavity == row.cavity;
    });
    return now == columns_.end() ? nullptr : now->pin;
  }

  bool open_now(const Row& row) const {
    const Pin* pin = pin_now(row);
    return pin != nullptr && pin->function == PinFunction::Unused;
  }

  /// On a pin that is connected to nothing, and joined inside the device to a terminal that is not, or that
  /// has to leave such a pin. Of two that are open the later one stays.
  bool may_stay_open(const Row& row) const {
    if (!open_now(row)) return false;
    const auto serves = [&](TerminalIndex other) {
      const auto rows = rows_of_.find({row.terminal.device, other});
      if (rows == rows_of_.end()) return false;
      return other < row.terminal.terminal ||
             std::any_of(rows->second.begin(), rows->second.end(),
                         [&](std::size_t r) { return pin_now(rows_[r]) != nullptr && !open_now(rows_[r]); });
    };
    const Device& device = fitting_.harness->devices[static_cast<std::size_t>(row.terminal.device)];
    return std::any_of(device.parts.begin(), device.parts.end(), [&](const Part& part) {
      const auto* join = std::get_if<Join>(&part);
      return join != nullptr && ((join->a == row.terminal.terminal && serves(join->b)) ||
                                 (join->b == row.terminal.terminal && serves(join->a)));
    });
  }

  Cost cost_of_insulating(const Row& row, const End& end) const {
    if (refused_.contains({row.id, 0})) return forbidden;
    if (end.wish == Wish::Nothing) return move_cost;
    return fitting_.harness->terminal(row.terminal).optional ? unconnected_cost + move_cost : forbidden;
  }

  const Fitting& fitting_;
  const std::set<Refused>& refused_;
  std::vector<Row> rows_;
  std::vector<Column> columns_;
  std::map<TerminalRef, std::vector<std::size_t>> rows_of_;
};

}  // namespace

std::optional<Target> cheapest_target(const Fitting& fitting, const std::set<Refused>& refused) {
  return cheapest_target(fitting, groups(*fitting.harness), refused);
}

std::optional<Target> cheapest_target(const Fitting& fitting, const std::vector<WishGroup>& groups,
                                      const std::set<Refused>& refused) {
  return Problem(fitting, refused).solve(groups);
}

}  // namespace plugward
