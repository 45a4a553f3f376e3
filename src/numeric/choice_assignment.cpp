// SPDX-License-Identifier: MIT
// Idea: leave every group undecided and let each of its rows take, in each column, the cheapest of its
// choices. That is a plain assignment, and its cost is a lower bound. If one choice explains what all rows of
// a group took, for every group, it is the answer. Otherwise a group that disagrees with itself is decided,
// in each way, and the same is done again (branch and bound, depth first, cheapest first).
//
//   switch A B on cavities 1 (signal) and 2 (ground), leads A in 2, B in 1: undecided, both stay for 0, and
//   "B is the signal end" explains it. Decided in one step.
//
// Second bound: each group needs at least its cheapest choice were it alone. It is the stronger one when the
// rows of a group contradict each other without getting in each other's way.
//
// What shares no column and no group is solved apart: four motors on four headers are four small problems,
// not 8^4 large ones. Deciding a group raises costs only, so the assignment is mended, not solved anew.
//
// Complexity: nodes x choices x O(rows of the group x columns^2); a node a group when the bounds are tight,
// exponential in the groups of one part at worst (the problem with costs at will is NP-hard:
// three-dimensional matching is a case of it), hence `most_nodes`. Not taken: the product of all choices (the
// twin), and one integer program (the check in tests/outside/optimum: glpsol finds the same, some hundred
// times slower). Reference: A. H. Land, A. G. Doig, Econometrica 28 (1960) 497. Tested in
// tests/unit/numeric/choice_assignment_test.cpp against the product of all choices.
#include "numeric/choice_assignment.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace plugward {
namespace {

constexpr std::size_t none = SIZE_MAX;

Cost least(const std::vector<Cost>& line) {
  return line.empty() ? forbidden : *std::min_element(line.begin(), line.end());
}

/// Sum that stays forbidden when one of the two is.
Cost plus(Cost a, Cost b) {
  return a >= forbidden || b >= forbidden ? forbidden : a + b;
}

/// What the choice costs when its rows get in nobody's way.
Cost alone(const Choice& choice) {
  Cost sum = choice.extra;
  for (const auto& line : choice.lines) sum = plus(sum, least(line));
  return sum;
}

/// A part of the problem that is independent of the rest.
class ChoicePart {
 public:
  ChoicePart(const ChoiceProblem& problem, std::size_t most_nodes) : problem_(problem), nodes_left_(most_nodes) {}

  std::optional<ChoiceSolution> solve() {
    if (problem_.lines.size() > problem_.lines.front().size()) return std::nullopt;
    if (!take_possible_choices()) return std::nullopt;
    std::vector<std::vector<Cost>> relaxed = problem_.lines;
    Node root;
    root.decided.assign(groups_.size(), none);
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      Cost own = forbidden;
      for (const Choice& choice : groups_[g].choices) own = std::min(own, alone(choice));
      root.own += own;
      own_.push_back(own);
      for (std::size_t i = 0; i < groups_[g].rows.size(); ++i) relaxed[groups_[g].rows[i]] = undecided(g, i);
    }
    for (std::size_t row = 0; row < relaxed.size(); ++row) {
      if (!in_group(row)) root.own = plus(root.own, least(relaxed[row]));
    }
    LiveAssignment live(relaxed);
    if (!live.solve()) return std::nullopt;
    visit(live, root);
    if (!best_) return std::nullopt;
    best_->proven = nodes_left_ > 0;
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      best_->choices[g] = original_[g][static_cast<std::size_t>(best_->choices[g])];
    }
    return best_;
  }

 private:
  struct Node {
    std::vector<std::size_t> decided;  ///< [group] -> index into its choices; none: open
    Cost own = 0;                      ///< the second bound
  };
  struct Child {
    LiveAssignment live;
    Cost bound = 0;
    std::size_t choice = 0;
    Cost own = 0;
  };

  /// Choices that can be met at all; what a choice costs by itself rides on the first row of its group.
  bool take_possible_choices() {
    for (const ChoiceGroup& group : problem_.groups) {
      ChoiceGroup possible{group.rows, {}};
      std::vector<int> original;
      for (std::size_t k = 0; k < group.choices.size(); ++k) {
        if (alone(group.choices[k]) >= forbidden) continue;
        Choice choice = group.choices[k];
        for (Cost& cost : choice.lines.front()) cost = plus(cost, choice.extra);
        choice.extra = 0;
        possible.choices.push_back(std::move(choice));
        original.push_back(static_cast<int>(k));
      }
      if (possible.choices.empty()) return false;
      groups_.push_back(std::move(possible));
      original_.push_back(std::move(original));
    }
    return true;
  }

  bool in_group(std::size_t row) const {
    return std::any_of(groups_.begin(), groups_.end(), [&](const ChoiceGroup& group) {
      return std::find(group.rows.begin(), group.rows.end(), row) != group.rows.end();
    });
  }

  std::vector<Cost> undecided(std::size_t g, std::size_t i) const {
    std::vector<Cost> line = groups_[g].choices.front().lines[i];
    for (const Choice& choice : groups_[g].choices) {
      for (std::size_t c = 0; c < line.size(); ++c) line[c] = std::min(line[c], choice.lines[i][c]);
    }
    return line;
  }

  Cost cost_at(std::size_t g, std::size_t choice, const std::vector<int>& columns) const {
    Cost sum = 0;
    for (std::size_t i = 0; i < groups_[g].rows.size(); ++i) {
      const auto column = static_cast<std::size_t>(columns[groups_[g].rows[i]]);
      sum = plus(sum, groups_[g].choices[choice].lines[i][column]);
    }
    return sum;
  }

  Cost undecided_cost_at(std::size_t g, const std::vector<int>& columns) const {
    Cost sum = 0;
    for (std::size_t i = 0; i < groups_[g].rows.size(); ++i) {
      const auto column = static_cast<std::size_t>(columns[groups_[g].rows[i]]);
      Cost cheapest = forbidden;
      for (const Choice& choice : groups_[g].choices) cheapest = std::min(cheapest, choice.lines[i][column]);
      sum += cheapest;
    }
    return sum;
  }

  /// Decides every open group as it fits these columns best; keeps what comes out if it is the best so far.
  /// The group that disagrees most with itself; none when all agree.
  std::size_t round_off(const Assignment& assignment, const Node& node) {
    ChoiceSolution solution{assignment.columns, {}, assignment.cost, true};
    std::size_t worst = none;
    Cost worst_gap = 0;
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      std::size_t cheapest = node.decided[g];
      if (cheapest == none) {
        cheapest = 0;
        for (std::size_t k = 1; k < groups_[g].choices.size(); ++k) {
          if (cost_at(g, k, assignment.columns) < cost_at(g, cheapest, assignment.columns)) cheapest = k;
        }
        const Cost at_best = cost_at(g, cheapest, assignment.columns);
        const Cost gap =
            at_best >= forbidden ? forbidden : at_best - undecided_cost_at(g, assignment.columns);
        if (gap > worst_gap) {
          worst = g;
          worst_gap = gap;
        }
        solution.cost = plus(solution.cost, gap);
      }
      solution.choices.push_back(static_cast<int>(cheapest));
    }
    if (solution.cost < forbidden && (!best_ || solution.cost < best_->cost)) best_ = std::move(solution);
    return worst;
  }

  bool beaten(Cost bound) const { return best_ && bound >= best_->cost; }

  /// REQUIRES: live is solved. As deep as there are groups.
  void visit(const LiveAssignment& live, const Node& node) {
    if (nodes_left_ == 0) return;
    --nodes_left_;
    const Assignment assignment = live.result();
    const std::size_t group = round_off(assignment, node);
    if (group == none || beaten(std::max(assignment.cost, node.own))) return;
    std::vector<Child> children;
    for (std::size_t k = 0; k < groups_[group].choices.size(); ++k) {
      const Choice& choice = groups_[group].choices[k];
      Child child{live, 0, k, node.own - own_[group] + alone(choice)};
      for (std::size_t i = 0; i < choice.lines.size(); ++i) {
        child.live.raise(groups_[group].rows[i], choice.lines[i]);
      }
      if (!child.live.solve()) continue;
      child.bound = std::max(child.live.result().cost, child.own);
      children.push_back(std::move(child));
    }
    std::stable_sort(children.begin(), children.end(),
                     [](const Child& a, const Child& b) { return a.bound < b.bound; });
    for (const Child& child : children) {
      if (beaten(child.bound)) return;
      Node next{node.decided, child.own};
      next.decided[group] = child.choice;
      visit(child.live, next);
    }
  }

  const ChoiceProblem& problem_;
  std::size_t nodes_left_;
  std::vector<ChoiceGroup> groups_;
  std::vector<std::vector<int>> original_;  ///< [group][choice] -> index in the problem
  std::vector<Cost> own_;                   ///< [group]: its cheapest choice were it alone
  std::optional<ChoiceSolution> best_;
};

/// Which rows hang together, over columns and groups.
class RowIslands {
 public:
  RowIslands(std::size_t rows, std::size_t columns) : rows_(rows), parent_(rows + columns) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }
  void join_column(std::size_t row, std::size_t column) { join_rows(row, rows_ + column); }
  void join_rows(std::size_t a, std::size_t b) { parent_[find(a)] = find(b); }
  std::size_t of_row(std::size_t row) { return find(row); }
  std::size_t of_column(std::size_t column) { return find(rows_ + column); }

 private:
  std::size_t find(std::size_t i) {
    while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  std::size_t rows_;
  std::vector<std::size_t> parent_;
};

std::vector<Cost> picked(const std::vector<Cost>& line, const std::vector<std::size_t>& columns) {
  std::vector<Cost> result;
  result.reserve(columns.size());
  for (const std::size_t c : columns) result.push_back(line[c]);
  return result;
}

}  // namespace

std::optional<ChoiceSolution> cheapest_choice(const ChoiceProblem& problem, std::size_t most_nodes) {
  const std::size_t rows = problem.lines.size();
  std::size_t columns = 0;
  std::vector<std::size_t> group_of(rows, none);
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    for (const std::size_t row : problem.groups[g].rows) group_of[row] = g;
  }
  for (const auto& line : problem.lines) columns = std::max(columns, line.size());
  for (const auto& group : problem.groups) {
    for (const auto& line : group.choices.front().lines) columns = std::max(columns, line.size());
  }

  RowIslands islands(rows, columns);
  const auto join_line = [&](std::size_t row, const std::vector<Cost>& line) {
    for (std::size_t c = 0; c < line.size(); ++c) {
      if (line[c] < forbidden) islands.join_column(row, c);
    }
  };
  for (std::size_t row = 0; row < rows; ++row) {
    if (group_of[row] == none) join_line(row, problem.lines[row]);
  }
  for (const ChoiceGroup& group : problem.groups) {
    for (std::size_t i = 0; i < group.rows.size(); ++i) {
      islands.join_rows(group.rows.front(), group.rows[i]);
      for (const Choice& choice : group.choices) join_line(group.rows[i], choice.lines[i]);
    }
  }

  ChoiceSolution all{std::vector<int>(rows, -1), std::vector<int>(problem.groups.size(), 0), 0, true};
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    const auto& choices = problem.groups[g].choices;
    if (!problem.groups[g].rows.empty()) continue;
    const auto best = std::min_element(choices.begin(), choices.end(),
                                       [](const Choice& a, const Choice& b) { return a.extra < b.extra; });
    all.choices[g] = static_cast<int>(best - choices.begin());
    all.cost += best->extra;
  }
  std::vector<bool> done(rows, false);
  for (std::size_t first = 0; first < rows; ++first) {
    if (done[first]) continue;
    const std::size_t island = islands.of_row(first);
    std::vector<std::size_t> part_rows;
    std::vector<std::size_t> part_columns;
    std::vector<std::size_t> part_groups;
    std::vector<std::size_t> place_of(rows, none);
    for (std::size_t row = first; row < rows; ++row) {
      if (islands.of_row(row) != island) continue;
      done[row] = true;
      place_of[row] = part_rows.size();
      part_rows.push_back(row);
    }
    for (std::size_t c = 0; c < columns; ++c) {
      if (islands.of_column(c) == island) part_columns.push_back(c);
    }
    ChoiceProblem part;
    for (const std::size_t row : part_rows) {
      const bool free = group_of[row] == none;
      part.lines.push_back(free ? picked(problem.lines[row], part_columns)
                                : std::vector<Cost>(part_columns.size(), forbidden));
    }
    for (std::size_t g = 0; g < problem.groups.size(); ++g) {
      const ChoiceGroup& group = problem.groups[g];
      if (group.rows.empty() || place_of[group.rows.front()] == none) continue;
      part_groups.push_back(g);
      ChoiceGroup small;
      for (const std::size_t row : group.rows) small.rows.push_back(place_of[row]);
      for (const Choice& choice : group.choices) {
        Choice one{choice.extra, {}};
        for (const auto& line : choice.lines) one.lines.push_back(picked(line, part_columns));
        small.choices.push_back(std::move(one));
      }
      part.groups.push_back(std::move(small));
    }
    const auto solution = ChoicePart(part, most_nodes).solve();
    if (!solution) return std::nullopt;
    for (std::size_t i = 0; i < part_rows.size(); ++i) {
      all.columns[part_rows[i]] =
          static_cast<int>(part_columns[static_cast<std::size_t>(solution->columns[i])]);
    }
    for (std::size_t i = 0; i < part_groups.size(); ++i) all.choices[part_groups[i]] = solution->choices[i];
    all.cost += solution->cost;
    all.proven = all.proven && solution->proven;
  }
  return all;
}

}  // namespace plugward
