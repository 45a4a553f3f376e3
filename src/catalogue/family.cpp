// SPDX-License-Identifier: MIT
#include "catalogue/family.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/format.h"
#include "base/words.h"

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

/// A housing of which only the pitch is known, or not even that. What is tried on it meets it at home alone.
Family nameless(std::string id, Millimetres pitch) {
  Family family;
  family.id = std::move(id);
  family.title = pitch.value > 0.0 ? format("a housing not told yet, pitch {}", to_text(pitch))
                                   : std::string(tr("a housing not told yet"));
  family.pitch = pitch;
  family.row_pitch = pitch;
  family.rows = 2;
  family.most_positions = 200;
  family.profile = Profile::Coded;
  return family;
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

bool is_unknown_family(std::string_view id) {
  return id == "unknown" || id.starts_with("unknown-");
}

std::string unknown_family(Millimetres pitch) {
  return verbatim("unknown-{:.2f}", pitch.value);
}

void Catalogue::add(Family family) {
  if (family.pitch.value > 0.0) {
    const std::string id = unknown_family(family.pitch);
    if (std::none_of(unknown_.begin(), unknown_.end(), [&](const Family& f) { return f.id == id; })) {
      unknown_.push_back(nameless(id, family.pitch));
    }
  }
  const auto same = std::find_if(families_.begin(), families_.end(),
                                 [&](const Family& known) { return known.id == family.id; });
  if (same != families_.end()) {
    *same = std::move(family);
  } else {
    families_.push_back(std::move(family));
  }
}

const Family* Catalogue::find(std::string_view id) const {
  static const Family of_no_pitch = nameless("unknown", {});
  const auto named = [&](const Family& family) { return family.id == id; };
  const auto found = std::find_if(families_.begin(), families_.end(), named);
  if (found != families_.end()) return &*found;
  if (id == of_no_pitch.id) return &of_no_pitch;
  const auto unknown = std::find_if(unknown_.begin(), unknown_.end(), named);
  return unknown == unknown_.end() ? nullptr : &*unknown;
}

std::vector<std::string> Catalogue::ids() const {
  std::vector<std::string> result;
  for (const Family& family : families_) result.push_back(family.id);
  return result;
}

std::string_view to_word(Certainty certainty) {
  switch (certainty) {
    case Certainty::Maker:
      return later("maker");
    case Certainty::Quoted:
      return later("quoted");
    case Certainty::Footprint:
      return later("footprint");
    case Certainty::Secondary:
      return later("secondary");
    case Certainty::Derived:
      return later("derived");
    case Certainty::Memory:
      return later("memory");
    case Certainty::User:
      return later("user");
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
    case Profile::Coded:
      return "coded";
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
