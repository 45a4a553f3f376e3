// SPDX-License-Identifier: MIT
// A resistor that holds an input when nothing drives it. To ground there is one place; upwards it goes to a
// supply of the device, or to one of the board over an empty cavity. A supply that the input withstands is
// enough with one resistor, also against a pull-down that is built in. Where there is only a higher one, two
// resistors divide it, so that nothing depends on the pull-down being switched on:
//
//   5 V - 1.5 kohm - input - 2 kohm - ground       an output that sinks pulls the middle to ground
//
// Which value is right is known but for what the judge alone sees; some are offered, from the preferred one
// to both ends of what is possible. Tested in tests/unit/plan/cure_test.cpp, and against every value of the
// series in tests/unit/plan/cure_pull_test.cpp.
#include <algorithm>

#include "base/format.h"
#include "fit/match.h"
#include "judge/words.h"
#include "plan/cure_input.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

/// A supply that a pull-up can go to: a terminal that is fed, or an empty cavity over a supply pin.
struct Feed {
  std::optional<TerminalIndex> terminal;
  EmptySeat seat;
  Range<Volts> volts{};
};

/// What the device has before what takes a new lead; the lower supply first.
std::vector<Feed> feeds(const InputPlace& place) {
  std::vector<Feed> all;
  const Device& device = place.device();
  for (std::size_t t = 0; t < device.terminals.size(); ++t) {
    const auto terminal = static_cast<TerminalIndex>(t);
    const auto volts = volts_at(place.fitting(), {place.giver.device, terminal});
    if (volts && terminal != place.giver.terminal) all.push_back({terminal, {}, *volts});
  }
  for (const EmptySeat& seat :
       empty_seats(place.fitting(), place.complaint.base, place.joint, PinFunction::Supply)) {
    all.push_back({std::nullopt, seat, seat.volts});
  }
  std::stable_sort(all.begin(), all.end(), [](const Feed& a, const Feed& b) {
    return std::pair(!a.terminal, a.volts.max) < std::pair(!b.terminal, b.volts.max);
  });
  return all;
}

/// What the input withstands from a supply: its own one moves with its limit.
Volts most_from(const InputPlace& place, Range<Volts> supply) {
  const Rail* own = rail_of(place.pin, *place.fitting().board, place.fitting().jumpers);
  if (own != nullptr && own->volts == supply && !place.pin.withstands) {
    return std::max(place.side.most, own->volts.max);
  }
  return place.side.most;
}

TerminalIndex connect(const InputPlace& place, const Feed& feed, Remedy& r) {
  if (feed.terminal) return *feed.terminal;
  say_new_lead(r, place.fitting(), feed.seat, tr("red"));
  const TerminalIndex end = add_lead(place.fitting(), r.harness, place.joint, feed.seat, r.seats);
  // It feeds the resistor and nothing else.
  r.harness.devices[at(place.giver.device)].parts.push_back(
      Load{end, end, {Volts(0), feed.volts.max}, std::nullopt, Amps(0), Reversal::Harmless, {}});
  return end;
}

PullNeeds needs_of(const InputPlace& place, Range<Volts> rail) {
  const bool up = rail.max.value > 0;
  const Giver& giver = place.giver;
  PullNeeds n;
  n.rail = rail;
  n.leak = giver.leak;
  n.other = place.side.pull;
  n.threshold = up ? *place.side.high_above : *place.side.low_below;
  n.against = giver.supply.value_or(Range<Volts>{}).max;
  n.tolerance = pull_tolerance;
  if (up) n.most = most_from(place, rail);
  if (giver.driver != nullptr) n.limit = giver.driver->limit;
  return n;
}

/// The preferred value and both ends of what is possible.
std::vector<PullChoice> some_of(const std::vector<PullChoice>& all) {
  std::vector<PullChoice> some;
  const auto take = [&](const PullChoice& c) {
    const bool has =
        std::any_of(some.begin(), some.end(), [&](const PullChoice& other) { return other.ohms == c.ohms; });
    if (!has) some.push_back(c);
  };
  std::vector<PullChoice> by_ohms = all;
  std::sort(by_ohms.begin(), by_ohms.end(),
            [](const PullChoice& a, const PullChoice& b) { return a.ohms < b.ohms; });
  if (all.empty()) return some;
  take(all.front());
  take(by_ohms[by_ohms.size() / 2]);
  take(by_ohms[by_ohms.size() / 4]);
  take(by_ohms[3 * by_ohms.size() / 4]);
  take(by_ohms.back());
  take(by_ohms.front());
  return some;
}

void offer_one(const InputPlace& place, Remedy r, TerminalIndex end, const PullNeeds& needs,
               const PullChoice& choice, Offer& offer) {
  const bool up = needs.rail.max.value > 0;
  const auto rating = power_rating(choice.watts);
  if (!rating) return;
  const Giver& giver = place.giver;
  add_resistor(r, giver.device, giver.terminal, end, choice.ohms, *rating, pull_tolerance);
  const std::string lead = lead_words(place),
                    to =
                        end_words(place, end, up ? tr("the added supply lead") : tr("the added ground lead"));
  const std::string word = up ? "pull-up" : "pull-down";
  r.cure.name = format("a {} of {}", word, to_text(choice.ohms));
  r.drawback = tr("it loads the signal");
  r.cure.next_best = format("a resistor of {}: it takes {} instead of {}, and less is enough",
                            to_text(preferred_at_most(choice.ohms * 0.5, Series::E12)),
                            to_text(Amps(2 * choice.amps.value)), to_text(choice.amps));
  r.cure.what = format("A {} resistor of {} from {} to {}{}.", word, to_text(choice.ohms), lead, to,
                       up ? format(" ({})", to_text(needs.rail)) : "");
  const auto& built_in = needs.other;
  r.cure.why = format(
      "{}. With nothing driving it the input is held at {} in the worst case{}{}; {} flow when it "
      "is driven the other way.",
      limits_words(place), to_text(choice.level),
      built_in ? format(", against the {} of {} that the input has",
                        up == place.side.pulled_up ? "pull"
                        : up                       ? "pull-down"
                                                   : "pull-up",
                        to_text(built_in->ohms))
               : "",
      giver.leak.value > 0 ? format(", with {} leaking", to_text(giver.leak)) : "", to_text(choice.amps));
  r.cure.components.push_back({tr("resistor"), to_text(choice.ohms), format("5 %, {}", rating_words(*rating)),
                               format("between {} and {}", lead, to)});
  r.cure.steps.push_back(format("lead {} from {} to {}, close to the plug", to_text(choice.ohms), lead, to));
  finish(place, r, false,
         format("before the plug goes on the board: power off, measure between the two contacts: {}, or less "
                "through the device",
                to_text(choice.ohms)),
         offer);
}

/// From a supply that is too high for the input: two resistors, the device's output at their middle.
void offer_divided(const InputPlace& place, const Feed& feed, Offer& offer) {
  const Giver& giver = place.giver;
  DividerNeeds n;
  n.high = feed.volts;
  n.taken = giver.leak;
  n.pull = place.side.pull;
  n.most = place.side.most;
  n.high_above = *place.side.high_above;
  n.tolerance = divider_tolerance;
  const auto d = choose_divider(n);
  const std::string from = to_text(feed.volts);
  if (!d) {
    offer.passed.push_back(
        format("a pull-up divided from {}: no pair of the E24 or E96 series does it", from));
    return;
  }
  // With the output on, all of the supply is across the upper one.
  const Volts across = feed.volts.max;
  const Ohms least = d->upper * (1 - divider_tolerance);
  const auto upper = power_rating(across * (across / least)), lower = power_rating(d->lower_watts);
  Remedy r = begin(place, "pull-up");
  const auto bottom = ground_for(place, r);
  if (!upper || !lower || !bottom) return;
  const TerminalIndex top = connect(place, feed, r);
  add_resistor(r, giver.device, giver.terminal, top, d->upper, *upper, divider_tolerance);
  add_resistor(r, giver.device, giver.terminal, *bottom, d->lower, *lower, divider_tolerance);
  const std::string lead = lead_words(place), to = end_words(place, top, tr("the added supply lead")),
                    down = end_words(place, *bottom, tr("the added ground lead"));
  r.cure.name = format("a pull-up of {} with {} to ground", to_text(d->upper), to_text(d->lower));
  r.drawback = tr("it takes two resistors");
  r.cure.next_best = format("a pull-up of {} alone: it would bring the input to {}{}", to_text(d->upper),
                            from, place.side.pull ? tr(" as soon as the built-in pull is off") : "");
  r.cure.what = format("A pull-up resistor of {} from {} to {} ({}), and {} from it to ground.",
                       to_text(d->upper), lead, to, from, to_text(d->lower));
  r.cure.why = format(
      "{}; no lower supply is within reach. With nothing driving it the two hold the input at {}, with both "
      "resistors anywhere within 1 %{}; {} flow when it is driven low.",
      limits_words(place), to_text(d->high),
      giver.leak.value > 0 ? format(" and {} leaking", to_text(giver.leak)) : "", to_text(across / least));
  r.cure.components.push_back({tr("resistor"), to_text(d->upper), format("1 %, {}", rating_words(*upper)),
                               format("between {} and {}", lead, to)});
  r.cure.components.push_back({tr("resistor"), to_text(d->lower), format("1 %, {}", rating_words(*lower)),
                               format("between {} and {}", lead, down)});
  r.cure.steps.push_back(format("lead {} from {} to {}, and {} from it to {}, close to the plug",
                                to_text(d->upper), lead, to, to_text(d->lower), down));
  finish(
      place, r, false,
      format("before the plug goes on the board: power off, measure from the signal contact to ground: {}, "
             "or less through the device; to the supply contact: {}, or less",
             to_text(d->lower), to_text(d->upper)),
      offer);
}

void offer_pull_up(const InputPlace& place, Offer& offer) {
  const std::vector<Feed> all = feeds(place);
  const std::size_t before = offer.remedies.size();
  for (const Feed& feed : all) {
    const PullNeeds needs = needs_of(place, feed.volts);
    if (feed.volts.max > *needs.most) continue;
    for (const PullChoice& choice : some_of(pulls(needs))) {
      Remedy r = begin(place, "pull-up");
      const TerminalIndex end = connect(place, feed, r);
      offer_one(place, std::move(r), end, needs, choice, offer);
    }
    if (offer.remedies.size() > before) return;
  }
  for (const Feed& feed : all) {
    if (feed.volts.max <= place.side.most) continue;
    offer_divided(place, feed, offer);
    if (offer.remedies.size() > before) return;
  }
  offer.passed.push_back(tr("a pull-up: no supply from which one could go to the input is within reach"));
}

}  // namespace

void offer_pull(const InputPlace& place, bool up, Offer& offer) {
  if (up ? !place.side.high_above : !place.side.low_below) return;
  if (up) return offer_pull_up(place, offer);
  const PullNeeds needs = needs_of(place, {});
  const std::vector<PullChoice> some = some_of(pulls(needs));
  if (some.empty())
    offer.passed.push_back(tr("a pull-down: no value of the E24 series brings the input low"));
  for (const PullChoice& choice : some) {
    Remedy r = begin(place, "pull-down");
    const auto end = ground_for(place, r);
    if (!end) return;
    offer_one(place, std::move(r), *end, needs, choice, offer);
  }
}

}  // namespace plugward
