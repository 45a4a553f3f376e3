// SPDX-License-Identifier: MIT
// Idea: every plug is judged on every header by itself; that gives a cost vector for each pair, packed into
// one integer so that a higher level outweighs all lower ones together. The cheapest set of headers is then
// an assignment problem. What plugs do to each other (a rail that is overloaded by both, a device that hangs
// on two plugs) shows only when they are judged together: assignments are taken in the order of their cost
// and judged jointly until none that is left can be cheaper than the best one judged.
//
// "Nearest" is measured from the header of the first plug, so each header that plug may take is tried as
// anchor.
//
// Complexity: plugs x headers judgements, then assignments of O(plugs^2 x headers) for each anchor.
// Tested in tests/unit/plan/place_test.cpp against all placements, and in tests/outside against an
// integer-programming solver.
#include "plan/place.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "base/format.h"
#include "judge/words.h"
#include "numeric/ranked_assignment.h"

namespace plugward {
namespace {

/// Width of each level in the packed cost, in bits; 53 in all.
constexpr std::array<int, 7> bits{5, 5, 5, 5, 9, 5, 19};

std::array<int, 7> levels(const PlaceCost& c) {
  return {c.unplaced, c.unknown, c.parts, c.housings, c.moves, c.settings, c.distance};
}

Cost packed(const PlaceCost& cost) {
  Cost sum = 0;
  const auto values = levels(cost);
  for (std::size_t i = 0; i < bits.size(); ++i) {
    const Cost most = (Cost{1} << bits[i]) - 1;
    sum = (sum << bits[i]) | std::min<Cost>(values[i], most);
  }
  return sum;
}

PlaceCost cost_of(const Advice& advice) {
  PlaceCost cost;
  cost.unknown = advice.verdict == Verdict::Measure ? 1 : 0;
  cost.housings = advice.new_housings;
  cost.parts = static_cast<int>(advice.parts.size()) - advice.new_housings;
  cost.moves = advice.moved;
  for (const Setting& setting : advice.settings) cost.settings += setting.inverts ? 1 : 0;
  return cost;
}

/// Distance between the pins 1 of two headers, in 0.1 mm.
int distance(const Board& board, int a, int b) {
  const Header& one = board.headers[static_cast<std::size_t>(a)];
  const Header& two = board.headers[static_cast<std::size_t>(b)];
  return static_cast<int>(std::lround(10.0 * std::hypot((one.x - two.x).value, (one.y - two.y).value)));
}

/// Every pin is described by evidence, uncontested, and not by a jumper of which the position is not stated.
bool known(const Fitting& fitting, const Header& header) {
  return std::all_of(header.pins.begin(), header.pins.end(), [&](const Pin& pin) {
    const Evidence* evidence = fitting.board->evidence_of(header, pin);
    return pin.function != PinFunction::Unknown && !pin.contest && evidence != nullptr &&
           evidence->kind != EvidenceKind::Assumption &&
           (pin.jumper.empty() || fitting.jumpers.contains(pin.jumper));
  });
}

/// Nothing on the header can suit the plug: every device is for something else and no signal is the same.
bool out_of_question(const Fitting& fitting, int plug, int header_index) {
  const Header& header = header_of(fitting, header_index);
  if (header.use == "spare" || !known(fitting, header)) return false;
  for (const Lead& lead : plug_of(fitting, plug).leads) {
    if (!lead.to) return false;
    const Device& device = fitting.harness->devices[static_cast<std::size_t>(lead.to->device)];
    if (device.use.empty() || device.use == header.use) return false;
    const std::string& signal = fitting.harness->terminal(*lead.to).signal;
    const bool shared = !signal.empty() && std::any_of(header.pins.begin(), header.pins.end(),
                                                       [&](const Pin& pin) { return pin.signal == signal; });
    if (shared) return false;
  }
  return true;
}

std::string reason_of(const Advice& advice) {
  if (advice.verdict == Verdict::Apart && !advice.now.findings.empty())
    return advice.now.findings.front().message;
  return advice.summary;
}

class Placer {
 public:
  Placer(const Fitting& fitting, const PlaceOptions& options) : fitting_(fitting), options_(options) {
    for (int p = 0; p < static_cast<int>(fitting.harness->plugs.size()); ++p) {
      const auto fixed = [&](const Placement& placement) { return placement.plug == p; };
      if (std::none_of(fitting.placements.begin(), fitting.placements.end(), fixed)) free_.push_back(p);
    }
  }

  PlacementPlan run() {
    for (const int plug : free_) judge_options(plug);
    search();
    for (auto& list : options_of_) {
      std::stable_sort(list.begin(), list.end(), [](const PlaceOption& a, const PlaceOption& b) {
        const bool a_apart = a.verdict == Verdict::Apart;
        const bool b_apart = b.verdict == Verdict::Apart;
        return a_apart != b_apart ? b_apart : a.cost < b.cost;
      });
      plan_.options.insert(plan_.options.end(), list.begin(), list.end());
    }
    return std::move(plan_);
  }

 private:
  void judge_options(int plug) {
    std::vector<PlaceOption> list;
    for (int h = 0; h < static_cast<int>(fitting_.board->headers.size()); ++h) {
      const bool taken = std::any_of(fitting_.placements.begin(), fitting_.placements.end(),
                                     [&](const Placement& p) { return p.header == h; });
      if (taken) continue;
      PlaceOption option{plug, h, Verdict::Apart, {}, ""};
      if (out_of_question(fitting_, plug, h)) {
        option.reason =
            format("header '{}' is for '{}'", header_of(fitting_, h).id, header_of(fitting_, h).use);
      } else {
        Fitting one = fitting_;
        one.placements.push_back({plug, h});
        const Advice advice = advise(one, {false, false});
        option.verdict = advice.verdict;
        option.cost = cost_of(advice);
        option.reason = reason_of(advice);
      }
      list.push_back(std::move(option));
    }
    options_of_.push_back(std::move(list));
  }

  /// Rows: free plugs. Columns: headers, then one "unplaced" for each plug.
  std::vector<std::vector<Cost>> matrix(int anchor, bool anchor_is_first_plug) const {
    const std::size_t headers = fitting_.board->headers.size();
    std::vector<std::vector<Cost>> cost;
    for (std::size_t row = 0; row < free_.size(); ++row) {
      std::vector<Cost> line(headers + free_.size(), forbidden);
      for (const PlaceOption& option : options_of_[row]) {
        if (option.verdict == Verdict::Apart) continue;
        if (row == 0 && anchor_is_first_plug && option.header != anchor) continue;
        if (row == 0 && anchor < 0) continue;  // the first plug finds no header
        PlaceCost with_distance = option.cost;
        if (anchor >= 0) with_distance.distance = distance(*fitting_.board, anchor, option.header);
        line[static_cast<std::size_t>(option.header)] = packed(with_distance);
      }
      if (!(row == 0 && anchor_is_first_plug)) line[headers + row] = packed({1, 0, 0, 0, 0, 0, 0});
      cost.push_back(std::move(line));
    }
    return cost;
  }

  struct Found {
    Cost cost = 0;
    std::vector<Placement> placements;
    int distance = 0;
    int unplaced = 0;
  };

  /// Everything that may be judged together, cheapest first.
  std::vector<Found> combinations() const {
    std::vector<Found> all;
    const auto collect = [&](int anchor, bool first) {
      RankedAssignments ranked(matrix(anchor, first));
      for (int i = 0; i < options_.joint_tries; ++i) {
        const auto next = ranked.next();
        if (!next) break;
        Found found{next->cost, fitting_.placements, 0, 0};
        for (std::size_t row = 0; row < free_.size(); ++row) {
          const int header = next->columns[row];
          if (header >= static_cast<int>(fitting_.board->headers.size())) {
            ++found.unplaced;
            continue;
          }
          found.placements.push_back({free_[row], header});
          if (anchor >= 0) found.distance += distance(*fitting_.board, anchor, header);
        }
        if (!found.placements.empty()) all.push_back(std::move(found));
      }
    };
    if (!fitting_.placements.empty()) {
      collect(fitting_.placements.front().header, false);
    } else {
      for (const PlaceOption& option : options_of_.front()) {
        if (option.verdict != Verdict::Apart) collect(option.header, true);
      }
      collect(-1, false);  // the first plug may find no header at all
    }
    std::stable_sort(all.begin(), all.end(), [](const Found& a, const Found& b) { return a.cost < b.cost; });
    return all;
  }

  PlacedHarness judge_together(const Found& found) const {
    Fitting joint = fitting_;
    joint.placements = found.placements;
    PlacedHarness placed;
    placed.placements = found.placements;
    placed.advice = advise(joint, {false, false});
    placed.cost = cost_of(placed.advice);
    placed.cost.unplaced = found.unplaced;
    placed.cost.distance = found.distance;
    return placed;
  }

  void search() {
    if (free_.empty()) {
      if (!fitting_.placements.empty()) plan_.best = judge_together({0, fitting_.placements, 0, 0});
    } else {
      take_best_of(combinations());
    }
    if (plan_.best) {
      Fitting joint = fitting_;
      joint.placements = plan_.best->placements;
      plan_.best->advice = advise(joint);
    }
  }

  void take_best_of(const std::vector<Found>& all) {
    std::vector<PlacedHarness> judged;
    int tries = 0;
    for (const Found& found : all) {
      const bool seen = std::any_of(judged.begin(), judged.end(), [&](const PlacedHarness& p) {
        return same_places(p.placements, found.placements);
      });
      if (seen) continue;
      const std::size_t wanted = options_.runner_up ? 2 : 1;
      if (judged.size() >= wanted && packed(judged[wanted - 1].cost) <= found.cost) break;
      if (++tries > options_.joint_tries) break;
      PlacedHarness placed = judge_together(found);
      if (placed.advice.verdict == Verdict::Apart) continue;
      judged.push_back(std::move(placed));
      std::stable_sort(judged.begin(), judged.end(),
                       [](const PlacedHarness& a, const PlacedHarness& b) { return a.cost < b.cost; });
    }
    if (judged.empty()) return;
    if (judged.size() > 1 && options_.runner_up) {
      plan_.runner_up = judged[1];
      plan_.why_it_lost = why_better(judged[0].cost, judged[1].cost);
      if (plan_.why_it_lost.empty())
        plan_.why_it_lost = "equal in all that counts; the board file names it later";
    }
    plan_.best = std::move(judged.front());
  }

  static bool same_places(const std::vector<Placement>& a, const std::vector<Placement>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Placement& x, const Placement& y) {
      return x.plug == y.plug && x.header == y.header;
    });
  }

  const Fitting& fitting_;
  PlaceOptions options_;
  std::vector<int> free_;
  std::vector<std::vector<PlaceOption>> options_of_;
  PlacementPlan plan_;
};

}  // namespace

PlaceCost operator+(const PlaceCost& a, const PlaceCost& b) {
  return {a.unplaced + b.unplaced, a.unknown + b.unknown,   a.parts + b.parts,      a.housings + b.housings,
          a.moves + b.moves,       a.settings + b.settings, a.distance + b.distance};
}

std::string why_better(const PlaceCost& better, const PlaceCost& worse) {
  const auto a = levels(better);
  const auto b = levels(worse);
  const std::array<std::string_view, 7> words{"leaves {} plugs without a header instead of {}",
                                              "needs {} measurements first instead of {}",
                                              "needs {} added parts instead of {}",
                                              "needs {} new housings instead of {}",
                                              "moves {} contacts instead of {}",
                                              "needs {} settings instead of {}",
                                              ""};
  for (std::size_t i = 0; i + 1 < a.size(); ++i) {
    if (a[i] != b[i]) return format(runtime(words[i]), a[i], b[i]);
  }
  if (better.distance == worse.distance) return "";
  return format("its headers are {} apart instead of {}", to_text(Millimetres(better.distance / 10.0)),
                to_text(Millimetres(worse.distance / 10.0)));
}

PlacementPlan place(const Fitting& fitting, const PlaceOptions& options) {
  return Placer(fitting, options).run();
}

Harness merged(const std::vector<const Harness*>& list) {
  if (list.size() == 1) return *list.front();
  Harness all;
  for (const Harness* one : list) {
    const int first_device = static_cast<int>(all.devices.size());
    const auto prefixed = [&](const std::string& id) { return format("{}/{}", one->id, id); };
    all.id += (all.id.empty() ? "" : "+") + one->id;
    all.title += (all.title.empty() ? "" : " + ") + one->title;
    all.span = one->span;
    for (Evidence evidence : one->evidences) {
      evidence.id = prefixed(evidence.id);
      all.evidences.push_back(std::move(evidence));
    }
    const auto evidence_of = [&](const std::string& own) {
      const std::string& id = own.empty() ? one->evidence : own;
      return id.empty() ? id : prefixed(id);
    };
    for (Device device : one->devices) {
      device.evidence = evidence_of(device.evidence);
      device.id = prefixed(device.id);
      all.devices.push_back(std::move(device));
    }
    for (Plug plug : one->plugs) {
      plug.evidence = evidence_of(plug.evidence);
      plug.id = prefixed(plug.id);
      for (Lead& lead : plug.leads) {
        if (lead.to) lead.to->device += first_device;
      }
      all.plugs.push_back(std::move(plug));
    }
  }
  return all;
}

}  // namespace plugward
