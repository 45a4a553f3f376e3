// SPDX-License-Identifier: MIT
#include "catalogue/family.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace plugward {
namespace {

bool same_size(const Gauge& a, const Gauge& b) {
  if (a.awg && b.awg) return *a.awg == *b.awg;
  return b.area.value > 0.0 && std::abs(a.area.value / b.area.value - 1.0) <= 0.02;
}

/// The entry of the smallest current among those that `holds` accepts.
template <class Holds>
const Cited<Rating>* smallest(const std::vector<Cited<Rating>>& ratings, Holds holds) {
  const Cited<Rating>* found = nullptr;
  for (const Cited<Rating>& rating : ratings) {
    if (holds(rating.value) && (found == nullptr || rating.value.amps < found->value.amps)) found = &rating;
  }
  return found;
}

}  // namespace

const Cited<Rating>* Family::rating_at(const Gauge& gauge, int positions) const {
  // A rating for "up to 6 circuits" says nothing about 12; the largest housing's rating holds in every
  // smaller one.
  int tightest = 0;
  const auto fits = [&](const Rating& r) {
    return same_size(gauge, r.gauge) && (r.circuits == 0 || positions <= r.circuits);
  };
  if (positions > 0) {
    for (const Cited<Rating>& rating : ratings) {
      const int circuits = rating.value.circuits;
      if (circuits > 0 && fits(rating.value) && (tightest == 0 || circuits < tightest)) tightest = circuits;
    }
  }
  return smallest(ratings, [&](const Rating& r) {
    return fits(r) && (tightest == 0 || r.circuits == 0 || r.circuits == tightest);
  });
}

const Cited<Rating>* Family::smallest_rating() const {
  return smallest(ratings, [](const Rating&) { return true; });
}

void Catalogue::add(Family family) {
  const auto same = std::find_if(families_.begin(), families_.end(),
                                 [&](const Family& known) { return known.id == family.id; });
  if (same != families_.end()) {
    *same = std::move(family);
  } else {
    families_.push_back(std::move(family));
  }
}

const Family* Catalogue::find(std::string_view id) const {
  const auto found =
      std::find_if(families_.begin(), families_.end(), [&](const Family& family) { return family.id == id; });
  return found == families_.end() ? nullptr : &*found;
}

std::vector<std::string> Catalogue::ids() const {
  std::vector<std::string> result;
  for (const Family& family : families_) result.push_back(family.id);
  return result;
}

std::string_view to_word(Certainty certainty) {
  switch (certainty) {
    case Certainty::Maker:
      return "maker";
    case Certainty::Quoted:
      return "quoted";
    case Certainty::Footprint:
      return "footprint";
    case Certainty::Secondary:
      return "secondary";
    case Certainty::Derived:
      return "derived";
    case Certainty::Memory:
      return "memory";
    case Certainty::User:
      return "user";
  }
  return "";
}

std::string_view to_word(Profile profile) {
  switch (profile) {
    case Profile::Bare:
      return "bare";
    case Profile::BoxShroud:
      return "box-shroud";
    case Profile::OpenWafer:
      return "open-wafer";
    case Profile::FrictionRamp:
      return "friction-ramp";
    case Profile::Screw:
      return "screw";
    case Profile::Circular:
      return "circular";
  }
  return "";
}

std::string_view to_word(Lance lance) {
  switch (lance) {
    case Lance::Contact:
      return "contact";
    case Lance::Housing:
      return "housing";
    case Lance::None:
      return "none";
  }
  return "";
}

}  // namespace plugward
