// SPDX-License-Identifier: MIT
// Idea of the divider: the input's level is (g1 Vs + gp Vp) / (g1 + g2 + gp) with g1 the upper, g2 the lower
// and gp the pull's conductance. For a given lower resistor each demand is one linear inequality in g1, so
// the uppers that meet all demands form an interval; its members are looked at, not all pairs.
//
//   high at most L: g1 (Vs - L) <= L (g2 + gp) - gp Vp        high at least H: g1 (Vs - H) >= H (g2 + gp) -
//   gp Vp
//
// Each inequality is taken in its own corner of the tolerances. E24 over four decades: 96 lowers, a few
// uppers each. Not taken: all pairs, which for E96 is 40 times the work; a test does just that and must
// agree. Tested in tests/unit/plan/cure_values_test.cpp; published values in tests/outside/cure_test.cpp.
#include "plan/cure_values.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <tuple>
#include <utility>

namespace plugward {
namespace {

constexpr double least_ohms = 100, most_ohms = 1e6;
constexpr double slack = 1e-9;
constexpr Amps preferred_amps{0.005};
constexpr double thevenin_low = 1e3, thevenin_high = 10e3;
constexpr Volts pull_room{0.1};
constexpr double preferred_pull = 10e3;
constexpr auto ratings = std::to_array({0.125, 0.25, 0.5, 1.0});
constexpr auto limits = std::to_array({0.5, 1.0, 2.0, 3.0, 5.0, 10.0});

struct Interval {
  double low = 0, high = std::numeric_limits<double>::infinity();
  /// Keeps the x with a x <= b.
  void at_most(double a, double b) {
    if (a > 0) {
      high = std::min(high, b / a);
    } else if (a < 0) {
      low = std::max(low, b / a);
    } else if (b < 0) {
      high = -1;
    }
  }
};

/// Conductances of the uppers, at their nominal value, that meet all demands with this lower.
Interval uppers(const DividerNeeds& n, double lower) {
  const double t = n.tolerance;
  const double g2_small = 1 / (lower * (1 + t)), g2_large = 1 / (lower * (1 - t));
  const double gp = n.pull ? 1 / n.pull->ohms.value : 0.0;
  const double vp_low = n.pull ? n.pull->to.min.value : 0.0, vp_high = n.pull ? n.pull->to.max.value : 0.0;
  Interval g;  // at nominal; the real one lies between g / (1 + t) and g / (1 - t)
  const auto never_above = [&](double source, double limit) {
    const double scale = source > limit ? 1 / (1 - t) : 1 / (1 + t);
    g.at_most((source - limit) * scale, limit * (g2_small + gp) - gp * vp_high);
  };
  const auto never_below = [&](double source, double limit) {
    const double scale = source > limit ? 1 / (1 + t) : 1 / (1 - t);
    g.at_most(-(source - limit) * scale, -(limit * (g2_large + gp) - gp * vp_low + n.taken.value));
  };
  never_above(n.high.max.value, n.most.value);
  never_below(n.high.min.value, n.high_above.value);
  if (n.low && n.low_below) {
    never_above(n.low->max.value, n.low_below->value);
  } else if (n.low_below) {
    const double level = (n.leak.value + gp * vp_high) / (g2_small + gp);
    if (level > n.low_below->value + slack) g.high = -1;
  }
  return g;
}

std::vector<double> values(Series series) {
  std::vector<double> all;
  for (double ohms = least_ohms; ohms <= most_ohms * (1 + slack);) {
    all.push_back(ohms);
    ohms = preferred_at_least(Ohms(ohms * 1.001), series).value;
  }
  return all;
}

/// Smallest of what is left to each limit, as a share of it.
double room(const DividerNeeds& n, const Divider& d) {
  double least = (n.most - d.high.max).value / n.most.value;
  least = std::min(least, (d.high.min - n.high_above).value / n.high_above.value);
  if (n.low_below) least = std::min(least, (*n.low_below - d.low).value / n.low_below->value);
  return least;
}

/// Smaller is better: far from the preferred resistance and current, little room.
double badness(const DividerNeeds& n, const Divider& d) {
  constexpr double enough_room = 0.2;
  const double seen = 1 / (1 / d.upper.value + 1 / d.lower.value);
  const double apart = std::abs(std::log(seen / std::clamp(seen, thevenin_low, thevenin_high)));
  const double thirst = std::max(0.0, std::log(d.amps.value / preferred_amps.value));
  const double wanting = std::max(0.0, enough_room - room(n, d)) / enough_room;
  return apart + thirst + 2 * wanting + 0.1 * d.amps.value / preferred_amps.value;
}

/// What an input comes to between sources of given conductance.
double node(std::initializer_list<std::pair<double, double>> volts_and_siemens, double amps_in = 0) {
  double sum = amps_in, siemens = 0;
  for (const auto& [v, g] : volts_and_siemens) sum += v * g, siemens += g;
  return sum / siemens;
}

}  // namespace

Divider divider(const DividerNeeds& n, Ohms upper, Ohms lower) {
  const double t = n.tolerance;
  const double gp = n.pull ? 1 / n.pull->ohms.value : 0.0;
  const Range<Volts> to = n.pull ? n.pull->to : Range<Volts>{};
  Divider d{upper, lower, {}, {}, {}, {}, {}};
  double low = -1e9, least = 1e9, most = -1e9;
  for (const double u : {upper.value * (1 - t), upper.value * (1 + t)}) {
    for (const double l : {lower.value * (1 - t), lower.value * (1 + t)}) {
      for (const Volts vp : {to.min, to.max}) {
        const double g1 = 1 / u, g2 = 1 / l;
        const double high = node({{n.high.max.value, g1}, {0, g2}, {vp.value, gp}});
        most = std::max(most, high);
        least = std::min(least, node({{n.high.min.value, g1}, {0, g2}, {vp.value, gp}}, -n.taken.value));
        low = std::max(low, n.low ? node({{n.low->max.value, g1}, {0, g2}, {vp.value, gp}})
                                  : node({{0, g2}, {vp.value, gp}}, n.leak.value));
        const double across = n.high.max.value - high;
        d.amps = std::max(d.amps, Amps(across / u));
        d.upper_watts = std::max(d.upper_watts, Watts(across * across / u));
        d.lower_watts = std::max(d.lower_watts, Watts(high * high / l));
      }
    }
  }
  d.high = {Volts(least), Volts(most)};
  d.low = Volts(low);
  return d;
}

bool meets(const DividerNeeds& n, const Divider& d) {
  return d.high.max.value <= n.most.value + slack && d.high.min.value >= n.high_above.value - slack &&
         (!n.low_below || d.low.value <= n.low_below->value + slack);
}

std::optional<Divider> choose_divider(const DividerNeeds& n, Series series) {
  const std::vector<double> all = values(series);
  std::optional<Divider> best;
  double least = 0;
  for (const double lower : all) {
    const Interval g = uppers(n, lower);
    if (g.high <= 0 || g.low > g.high) continue;
    const double smallest = 1 / g.high, largest = g.low > 0 ? 1 / g.low : most_ohms;
    const auto first = std::lower_bound(all.begin(), all.end(), smallest * (1 - slack));
    for (auto upper = first; upper != all.end() && *upper <= largest * (1 + slack); ++upper) {
      const Divider d = divider(n, Ohms(*upper), Ohms(lower));
      if (!meets(n, d)) continue;
      const double bad = badness(n, d);
      if (best && bad >= least) continue;
      best = d;
      least = bad;
    }
  }
  return best;
}

std::optional<Divider> choose_divider(const DividerNeeds& n) {
  if (auto found = choose_divider(n, Series::E24)) return found;
  return choose_divider(n, Series::E96);
}

PullChoice pull(const PullNeeds& n, Ohms ohms) {
  const bool up = n.rail.max.value > 0;
  const double weakest = ohms.value * (1 + n.tolerance), strongest = ohms.value * (1 - n.tolerance);
  const double other = n.other ? 1 / n.other->ohms.value : 0.0;
  const Range<Volts> to = n.other ? n.other->to : Range<Volts>{};
  PullChoice choice;
  choice.ohms = ohms;
  choice.level = Volts(up ? node({{n.rail.min.value, 1 / weakest}, {to.min.value, other}}, -n.leak.value)
                          : node({{0, 1 / weakest}, {to.max.value, other}}, n.leak.value));
  if (up) choice.highest = Volts(node({{n.rail.max.value, 1 / strongest}, {to.max.value, other}}));
  const double across = up ? n.rail.max.value : n.against.value;
  choice.amps = Amps(across / strongest);
  choice.watts = Watts(across * across / strongest);
  return choice;
}

bool meets(const PullNeeds& n, const PullChoice& choice) {
  const bool up = n.rail.max.value > 0;
  const double left = up ? (choice.level - n.threshold).value : (n.threshold - choice.level).value;
  return left >= -slack && (!n.most || choice.highest.value <= n.most->value + slack) &&
         (!n.limit || choice.amps.value <= n.limit->value * (1 + slack));
}

std::vector<PullChoice> pulls(const PullNeeds& n) {
  const bool up = n.rail.max.value > 0;
  std::vector<PullChoice> all;
  for (const double ohms : values(Series::E24)) {
    const PullChoice choice = pull(n, Ohms(ohms));
    if (meets(n, choice)) all.push_back(choice);
  }
  // Of equal standing, the one that is nearest to 10 kohm.
  const auto badness = [&](const PullChoice& c) {
    const Volts left = up ? c.level - n.threshold : n.threshold - c.level;
    return std::tuple(left.value<pull_room.value - slack, c.amps> preferred_amps,
                      c.ohms.value > preferred_pull, std::abs(std::log(c.ohms.value / preferred_pull)));
  };
  std::stable_sort(all.begin(), all.end(),
                   [&](const PullChoice& a, const PullChoice& b) { return badness(a) < badness(b); });
  return all;
}

std::optional<PullChoice> choose_pull(const PullNeeds& n) {
  const std::vector<PullChoice> all = pulls(n);
  return all.empty() ? std::nullopt : std::optional(all.front());
}

OptoChoice opto_resistor(Range<Volts> supply, Volts drop, Amps amps, double tolerance) {
  OptoChoice choice;
  choice.ohms = nearest_preferred((supply.middle() - opto_drop) / amps, Series::E24);
  choice.amps = (supply.middle() - opto_drop) / choice.ohms;
  choice.least = (supply.min - opto_drop - drop) / (choice.ohms * (1 + tolerance));
  const Volts across = supply.max - opto_drop;
  choice.watts = across * (across / (choice.ohms * (1 - tolerance)));
  return choice;
}

std::optional<Ohms> clamp_resistor(Volts in, Volts supply, Volts drop, Amps limit) {
  if (!(limit.value > 0)) return std::nullopt;
  return Ohms(std::max(0.0, (in - supply - drop).value / limit.value));
}

std::optional<Watts> power_rating(Watts watts) {
  for (const double rating : ratings) {
    if (rating >= 2 * watts.value * (1 - slack)) return Watts(rating);
  }
  return std::nullopt;
}

std::optional<Range<Volts>> usual_volts(Range<Volts> needs, std::span<const double> sizes) {
  constexpr double tolerance = 0.05;
  std::optional<Range<Volts>> best;
  for (const double size : sizes) {
    const Range<Volts> range{Volts(size * (1 - tolerance)), Volts(size * (1 + tolerance))};
    if (range.min < needs.min || range.max > needs.max) continue;
    const auto off = [&](const Range<Volts>& r) { return std::abs((r.middle() - needs.middle()).value); };
    if (!best || off(range) < off(*best)) best = range;
  }
  return best;
}

std::optional<Amps> usual_limit(Amps amps) {
  constexpr double reserve = 1.5;
  for (const double limit : limits) {
    if (limit >= reserve * amps.value * (1 - slack)) return Amps(limit);
  }
  return std::nullopt;
}

}  // namespace plugward
