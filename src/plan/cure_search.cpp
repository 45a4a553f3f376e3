// SPDX-License-Identifier: MIT
// Depth first, finding by finding: the worst finding that some part may cure is taken, its remedies are built
// in one after another, the preferred first, and each harness is judged again; what is then left is cured in
// the same way. A branch ends when nothing is left or when nothing cures what is left.
//
//   24 V sourcing sensor on a 3.3 V input: overvoltage -> divider -> clean -> four corners of two resistors
//   -> done
//
// Depth is bounded by the number of cures that anyone would build in, work by the number of judgements. Not
// taken: one optimisation over all values of all parts together; the parts of different findings hardly touch
// each other, and where they do the judgement says so.
// Tested in tests/unit/plan/cure_test.cpp.
#include <algorithm>
#include <set>
#include <tuple>

#include "base/format.h"
#include "judge/words.h"
#include "plan/cure.h"
#include "plan/cure_build.h"

namespace plugward {
namespace {

constexpr std::size_t most_cures = 4;
constexpr std::size_t most_resistors = 6;  ///< whose corners are all judged
constexpr int most_judgements = 160;

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

class CureSearch {
 public:
  CureSearch(const Fitting& fitting, const std::vector<Arrangement>& arrangements)
      : fitting_(fitting), arrangements_(arrangements) {}

  std::optional<Cured> run(const Assessment& assessment) {
    if (!cure(*fitting_.harness, assessment)) return std::nullopt;
    std::vector<Arrangement> where = arrangements_of(found_);
    return Cured{std::move(found_), std::move(where), std::move(cures_)};
  }

 private:
  /// Where the contacts will be: leads that a cure added stay where it put them, those it took out stay out.
  std::vector<Arrangement> arrangements_of(const Harness& base) const {
    std::vector<Arrangement> all = arrangements_;
    for (std::size_t p = 0; p < all.size(); ++p) {
      const auto& leads = base.plugs[at(fitting_.placements[p].plug)].leads;
      auto& cavity = all[p].cavity;
      for (std::size_t l = 0; l < cavity.size(); ++l) {
        if (leads[l].cavity == 0) cavity[l] = 0;
      }
      for (std::size_t l = cavity.size(); l < leads.size(); ++l) cavity.push_back(leads[l].cavity);
    }
    return all;
  }

  Harness arranged(const Harness& base) const {
    Harness harness = base;
    const std::vector<Arrangement> all = arrangements_of(base);
    for (std::size_t p = 0; p < all.size(); ++p) {
      auto& leads = harness.plugs[at(fitting_.placements[p].plug)].leads;
      for (std::size_t l = 0; l < leads.size(); ++l) leads[l].cavity = all[p].cavity[l];
    }
    return harness;
  }

  Fitting with(const Harness& harness) const {
    Fitting changed = fitting_;
    changed.harness = &harness;
    return changed;
  }

  Assessment judge(const Harness& base) {
    ++judgements_;
    const Harness harness = arranged(base);
    return assess(with(harness));
  }

  /// What speaks against it, worst first; "" when nothing does.
  static std::string against(const Assessment& assessment) {
    return assessment.clean() ? "" : assessment.findings.front().message;
  }

  /// Judges every combination of the ends of tolerance; what speaks against one, or "".
  std::string corners(const Harness& base) {
    if (resistors_.size() > most_resistors) return "more resistors than corners can be judged";
    for (std::size_t mask = 0; mask >> resistors_.size() == 0; ++mask) {
      Harness corner = base;
      for (std::size_t i = 0; i < resistors_.size(); ++i) {
        const Toleranced& r = resistors_[i];
        auto& resistor = std::get<Resistor>(corner.devices[at(r.device)].parts[at(r.part)]);
        resistor.ohms = resistor.ohms * ((mask >> i & 1) != 0 ? 1 + r.tolerance : 1 - r.tolerance);
      }
      if (const std::string words = against(judge(corner)); !words.empty()) return words;
    }
    return "";
  }

  /// The worst finding for which there are remedies.
  std::vector<Remedy> choose(const Fitting& now, const Harness& base, const Assessment& assessment) {
    for (const Finding& finding : assessment.findings) {
      std::vector<Remedy> list = remedies({now, base, finding});
      std::erase_if(list, [&](const Remedy& r) { return done_.contains(key(r)); });
      if (!list.empty()) return list;
    }
    return {};
  }

  /// The same kind of part twice in the same lead is not tried.
  static std::string key(const Remedy& r) {
    return r.cure.kind + " " + (r.cure.components.empty() ? "" : r.cure.components.back().between);
  }

  bool cure(const Harness& base, const Assessment& assessment) {
    if (assessment.clean()) {
      reason_ = corners(base);
      if (reason_.empty()) found_ = base;
      return reason_.empty();
    }
    reason_ = against(assessment);
    if (cures_.size() >= most_cures) return false;
    const Harness now = arranged(base);
    const std::vector<Remedy> list = choose(with(now), base, assessment);
    std::string refused;
    for (std::size_t i = 0; i < list.size() && judgements_ < most_judgements; ++i) {
      const Remedy& remedy = list[i];
      cures_.push_back(remedy.cure);
      if (!refused.empty()) {
        cures_.back().next_best = refused;
      } else if (i + 1 < list.size()) {
        cures_.back().next_best = format("{}: {}", list[i + 1].cure.name, list[i + 1].drawback);
      }
      const std::size_t resistors = resistors_.size();
      resistors_.insert(resistors_.end(), remedy.resistors.begin(), remedy.resistors.end());
      const auto mark = done_.insert(key(remedy)).first;
      if (cure(remedy.harness, judge(remedy.harness))) return true;
      done_.erase(mark);
      resistors_.resize(resistors);
      cures_.pop_back();
      refused = format("{}: judged on the model and refused, because {}", remedy.cure.name, reason_);
    }
    return false;
  }

  const Fitting& fitting_;
  const std::vector<Arrangement>& arrangements_;
  std::vector<Cure> cures_;
  std::vector<Toleranced> resistors_;
  std::set<std::string> done_;
  std::string reason_;
  Harness found_;
  int judgements_ = 0;
};

}  // namespace

std::optional<Cured> find_cures(const Fitting& fitting, const std::vector<Arrangement>& arrangements,
                                const Assessment& assessment) {
  return CureSearch(fitting, arrangements).run(assessment);
}

}  // namespace plugward
