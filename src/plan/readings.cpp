// SPDX-License-Identifier: MIT
// Figures are sorted and cut wherever the gap to the next is wide enough for a meter and a hand; each cluster
// has one text, made from its ends. Tested in tests/unit/plan/causes_test.cpp.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/format.h"
#include "plan/trial.h"

namespace plugward {
namespace {

constexpr double near_zero_ohms = 2.0;  // two meter leads, two contacts and a long thin lead
constexpr double apart_factor = 1.5;
constexpr double apart_volts = 0.4, apart_share = 0.1;

std::string ohms_text(double ohms) {
  return ohms >= 1e6   ? format("{:.2g} Mohm", ohms / 1e6)
         : ohms >= 1e3 ? format("{:.3g} kohm", ohms / 1e3)
                       : format("{:.3g} ohm", ohms);
}

std::string volts_text(double volts) {
  return format("{:.1f}", std::abs(volts) < 0.05 ? 0.0 : volts);
}

template <class Figures, class Key>
std::vector<std::size_t> sorted(const Figures& figures, Key key) {
  std::vector<std::size_t> order(figures.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return key(figures[a]) < key(figures[b]); });
  return order;
}

}  // namespace

std::vector<std::string> ohm_readings(const std::vector<HandOhms>& hand) {
  std::vector<std::string> texts(hand.size());
  std::vector<double> figures;
  bool sure = true;
  for (const HandOhms& h : hand) {
    figures.push_back(h.ohms);
    sure &= h.sure || h.ohms < near_zero_ohms;
  }
  if (!sure) {
    for (std::size_t i = 0; i < texts.size(); ++i)
      texts[i] = figures[i] < near_zero_ohms ? format("below {} ohm", near_zero_ohms)
                                             : format("more than {} ohm", near_zero_ohms);
    return texts;
  }
  const auto order = sorted(figures, [](double ohms) { return ohms; });
  for (std::size_t first = 0; first < order.size();) {
    const double low = figures[order[first]];
    std::size_t end = first + 1;
    const auto joins = [&](double a, double b) {
      if (a >= open_ohms || b < near_zero_ohms) return true;
      return b < open_ohms && a >= near_zero_ohms && b <= a * apart_factor;
    };
    while (end < order.size() && joins(figures[order[end - 1]], figures[order[end]])) ++end;
    const double high = figures[order[end - 1]];
    std::string text = high < near_zero_ohms ? format("below {} ohm", near_zero_ohms)
                       : low >= open_ohms    ? tr("open")
                       : high < low * 1.05   ? format("about {}", ohms_text(low))
                                             : format("{} to {}", ohms_text(low), ohms_text(high));
    for (; first < end; ++first) texts[order[first]] = text;
  }
  return texts;
}

std::vector<std::string> volt_readings(const std::vector<Band>& figures) {
  std::vector<std::string> texts(figures.size());
  const auto order = sorted(figures, [](const Band& b) { return b.found ? b.least : 1e9; });
  for (std::size_t first = 0; first < order.size();) {
    const Band& lowest = figures[order[first]];
    if (!lowest.found) {
      texts[order[first++]] = tr("no steady reading");
      continue;
    }
    double high = lowest.most;
    std::size_t end = first + 1;
    for (; end < order.size() && figures[order[end]].found; ++end) {
      const Band& next = figures[order[end]];
      if (next.least - high > std::max(apart_volts, apart_share * std::abs(high))) break;
      high = std::max(high, next.most);
    }
    const std::string low_text = volts_text(lowest.least), high_text = volts_text(high);
    const std::string text =
        low_text == high_text ? format("about {} V", low_text) : format("{}..{} V", low_text, high_text);
    for (; first < end; ++first) texts[order[first]] = text;
  }
  return texts;
}

}  // namespace plugward
