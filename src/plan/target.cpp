// SPDX-License-Identifier: MIT
// Idea: once it is fixed how each group of passive ends is used (which end of a switch is the signal, which
// winding is on which bridge), every lead has one wish, and finding cavities is an assignment problem: leads
// against cavities, a move costs one, a cavity whose pin does not grant the wish is forbidden. Each lead also
// has a place of its own outside the housing (insulated), open only to leads that may stay unconnected.
//
//   switch A B, cavities 1 2, pins 1 signal, 2 ground, leads A in 2, B in 1: with "A is the signal end" both
//   leads would move; with "B is the signal end" none does. Cost 0.
//
// Complexity: product of the groups' alternatives (at most most_combinations) x O(leads^2 x cavities).
// Not taken: one integer program over alternatives and cavities together; the groups of one plug are few.
// Reference: R. Jonker, A. Volgenant, Computing 38 (1987) 325, for the assignment.
// Tested in tests/unit/plan/target_test.cpp against all permutations.
#include "plan/target.h"

#include <algorithm>
#include <map>

#include "judge/words.h"
#include "numeric/assignment.h"

namespace plugward {
namespace {

// A level of the order of preference outweighs everything below it.
constexpr Cost setting_cost = 1;
constexpr Cost move_cost = 1000;
constexpr Cost unconnected_cost = 1000000;
constexpr Cost wrong_volts_cost = 1000000000;
constexpr std::size_t most_combinations = 4096;

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

class Problem {
 public:
  Problem(const Fitting& fitting, const std::set<Refused>& refused) : fitting_(fitting), refused_(refused) {
    for (std::size_t p = 0; p < fitting.placements.size(); ++p) collect(static_cast<int>(p));
  }

  std::optional<Target> solve() {
    const std::vector<WishGroup> all = groups(*fitting_.harness);
    std::vector<std::size_t> choice(all.size(), 0);
    std::optional<Target> best;
    Cost best_cost = forbidden;
    for (std::size_t tries = 0; tries < most_combinations; ++tries) {
      Cost cost = 0;
      if (auto target = assign(all, choice, cost); target && cost < best_cost) {
        best = std::move(target);
        best_cost = cost;
      }
      if (!advance(all, choice)) break;
    }
    return best;
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

  /// Only groups with a lead in a placed plug have anything to choose.
  bool matters(const WishGroup& group) const {
    if (group.alternatives.size() < 2) return false;
    const auto& ends = group.alternatives.front().ends;
    return std::any_of(ends.begin(), ends.end(), [&](const End& end) {
      return std::any_of(rows_.begin(), rows_.end(),
                         [&](const Row& row) { return row.terminal == end.terminal; });
    });
  }

  /// The next combination; false after the last.
  bool advance(const std::vector<WishGroup>& all, std::vector<std::size_t>& choice) const {
    for (std::size_t g = all.size(); g-- > 0;) {
      if (!matters(all[g])) continue;
      if (++choice[g] < all[g].alternatives.size()) return true;
      choice[g] = 0;
    }
    return false;
  }

  Cost cost_of(const Row& row, const Column& column, const End& end) const {
    if (column.placement != row.id.placement || refused_.contains({row.id, column.cavity})) return forbidden;
    const Cost move = column.cavity == row.cavity ? 0 : move_cost;
    if (end.wish == Wish::Any) return move == 0 ? 0 : forbidden;
    if (column.pin == nullptr) return end.wish == Wish::Nothing ? move : forbidden;
    if (!grants(*column.pin, end)) return forbidden;
    return volts_suit(*column.pin, *fitting_.board, fitting_.jumpers, end) ? move : move + wrong_volts_cost;
  }

  Cost cost_of_insulating(const Row& row, const End& end) const {
    if (refused_.contains({row.id, 0})) return forbidden;
    if (end.wish == Wish::Nothing) return move_cost;
    return fitting_.harness->terminal(row.terminal).optional ? unconnected_cost + move_cost : forbidden;
  }

  std::optional<Target> assign(const std::vector<WishGroup>& all, const std::vector<std::size_t>& choice,
                               Cost& cost) {
    std::map<TerminalRef, const End*> end_of;
    cost = 0;
    Target target;
    for (std::size_t g = 0; g < all.size(); ++g) {
      const Alternative& alternative = all[g].alternatives[choice[g]];
      target.chosen.push_back(alternative);
      if (alternative.motor_turned) cost += setting_cost;
      for (const End& end : alternative.ends) end_of[end.terminal] = &end;
    }
    std::vector<std::vector<Cost>> matrix;
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      std::vector<Cost> line;
      const End& end = *end_of.at(rows_[r].terminal);
      for (const Column& column : columns_) line.push_back(cost_of(rows_[r], column, end));
      line.resize(columns_.size() + rows_.size(), forbidden);
      line[columns_.size() + r] = cost_of_insulating(rows_[r], end);
      matrix.push_back(std::move(line));
    }
    const auto assignment = cheapest_assignment(matrix);
    if (!assignment) return std::nullopt;
    cost += assignment->cost;
    target.cost = cost;
    for (const Placement& placement : fitting_.placements) {
      Arrangement now;
      for (const Lead& lead : plug_of(fitting_, placement.plug).leads) now.cavity.push_back(lead.cavity);
      target.arrangements.push_back(std::move(now));
    }
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      const auto column = static_cast<std::size_t>(assignment->columns[r]);
      const int cavity = column < columns_.size() ? columns_[column].cavity : 0;
      target.arrangements[static_cast<std::size_t>(rows_[r].id.placement)]
          .cavity[static_cast<std::size_t>(rows_[r].id.lead)] = cavity;
      if (cavity != rows_[r].cavity) ++target.moved;
    }
    return target;
  }

  const Fitting& fitting_;
  const std::set<Refused>& refused_;
  std::vector<Row> rows_;
  std::vector<Column> columns_;
};

}  // namespace

std::optional<Target> cheapest_target(const Fitting& fitting, const std::set<Refused>& refused) {
  return Problem(fitting, refused).solve();
}

}  // namespace plugward
