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
    say_readings();
    std::vector<Arrangement> where = arrangements_of(found_);
    return Cured{std::move(found_), std::move(where), std::move(cures_)};
  }

 private:
  /// Where the contacts will be: leads that a cure added stay where it put them, or come to their late seats;
  /// those it took out stay out.
  std::vector<Arrangement> arrangements_of(const Harness& base) const {
    std::vector<Arrangement> all = arrangements_;
    for (std::size_t p = 0; p < all.size(); ++p) {
      const auto& leads = base.plugs[at(fitting_.placements[p].plug)].leads;
      auto& cavity = all[p].cavity;
      for (std::size_t l = 0; l < cavity.size(); ++l) {
        if (leads[l].cavity == 0) cavity[l] = 0;
      }
      for (std::size_t l = cavity.size(); l < leads.size(); ++l) cavity.push_back(leads[l].cavity);
      for (const LateSeat& seat : seats_) {
        if (seat.plug == fitting_.placements[p].plug) cavity[at(seat.lead)] = seat.cavity;
      }
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

  /// The harness with the resistors at the ends of their tolerance that the bits of `mask` say.
  Harness corner_of(const Harness& base, std::size_t mask) const {
    Harness corner = base;
    for (std::size_t i = 0; i < resistors_.size(); ++i) {
      const Toleranced& r = resistors_[i];
      auto& resistor = std::get<Resistor>(corner.devices[at(r.device)].parts[at(r.part)]);
      resistor.ohms = resistor.ohms * ((mask >> i & 1) != 0 ? 1 + r.tolerance : 1 - r.tolerance);
    }
    return corner;
  }

  /// Judges every combination of the ends of tolerance; what speaks against one, or "".
  std::string corners(const Harness& base) {
    if (resistors_.size() > most_resistors) return tr("more resistors than corners can be judged");
    for (std::size_t mask = 0; mask >> resistors_.size() == 0; ++mask) {
      if (const std::string words = against(judge(corner_of(base, mask))); !words.empty()) return words;
    }
    return "";
  }

  /// Each cure of a signal ends with what a meter reads once all of them are built in.
  void say_readings() {
    for (std::size_t i = 0; i < cures_.size(); ++i) {
      if (!places_[i]) continue;
      const ReadingPlace& place = *places_[i];
      Readings alone, together;
      for (std::size_t mask = 0; mask >> resistors_.size() == 0; ++mask) {
        const Harness corner = arranged(corner_of(found_, mask));
        if (place.alone) add_readings_alone(with(corner), place, alone);
        add_readings(with(corner), place, together);
      }
      auto& steps = cures_[i].steps;
      if (place.alone) {
        steps.push_back(format(
            "before the plug goes on the board: feed the device alone, let it work and rest, and measure "
            "the signal contact against ground: {}; never more than {}",
            to_words(alone), to_text(place.most)));
      }
      steps.push_back(
          format("with the plug on and power on, measure {} in both states: {}; anything else is a "
                 "wrong value or a bad joint",
                 place.where, to_words(together)));
    }
  }

  /// What is offered for the worst finding for which there are remedies.
  static Offer choose(const Fitting& now, const Harness& base, const Assessment& assessment,
                      const std::set<std::string>& done) {
    for (const Finding& finding : assessment.findings) {
      Offer offer = remedies({now, base, finding});
      std::erase_if(offer.remedies, [&](const Remedy& r) { return done.contains(key(r)); });
      if (!offer.remedies.empty()) return offer;
    }
    return {};
  }

  /// What else was looked at for the i-th remedy of an offer and why it was not chosen. `refused`: by the
  /// judge.
  static std::string next_best(const Offer& offer, std::size_t i, const std::string& refused) {
    const Remedy& chosen = offer.remedies[i];
    if (!refused.empty()) return refused;
    for (std::size_t j = i + 1; j < offer.remedies.size(); ++j) {
      const Remedy& other = offer.remedies[j];
      if (other.cure.kind != chosen.cure.kind) return format("{}: {}", other.cure.name, other.drawback);
    }
    if (!chosen.cure.next_best.empty()) return chosen.cure.next_best;
    return format("{}", join(offer.passed, "; "));
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
    const Offer offer = choose(with(now), base, assessment, done_);
    std::string refused;
    for (std::size_t i = 0; i < offer.remedies.size() && judgements_ < most_judgements; ++i) {
      const Remedy& remedy = offer.remedies[i];
      cures_.push_back(remedy.cure);
      cures_.back().next_best = next_best(offer, i, refused);
      places_.push_back(remedy.reading);
      const std::size_t resistors = resistors_.size(), seats = seats_.size();
      resistors_.insert(resistors_.end(), remedy.resistors.begin(), remedy.resistors.end());
      seats_.insert(seats_.end(), remedy.seats.begin(), remedy.seats.end());
      const auto mark = done_.insert(key(remedy)).first;
      if (cure(remedy.harness, judge(remedy.harness))) return true;
      done_.erase(mark);
      resistors_.resize(resistors);
      seats_.resize(seats);
      places_.pop_back();
      cures_.pop_back();
      refused = format("{}: judged on the model and refused, because {}", remedy.cure.name, reason_);
    }
    return false;
  }

  const Fitting& fitting_;
  const std::vector<Arrangement>& arrangements_;
  std::vector<Cure> cures_;
  std::vector<std::optional<ReadingPlace>> places_;  ///< of cures_
  std::vector<Toleranced> resistors_;
  std::vector<LateSeat> seats_;
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
