// SPDX-License-Identifier: MIT
// Resistors that let less of a high level through: a divider, or one resistor before protection diodes of a
// stated limit. Tested in tests/unit/plan/cure_test.cpp.
#include "base/format.h"
#include "plan/cure_input.h"

namespace plugward {
namespace {

DividerNeeds needs_of(const InputPlace& place) {
  const Giver& giver = place.giver;
  const InputSide& side = place.side;
  DividerNeeds n;
  n.high = {giver.supply->min - giver.drop, giver.supply->max};
  if (giver.drives_low) n.low = Range<Volts>{Volts(0), giver.drop};
  n.leak = giver.leak;
  n.pull = side.pull;
  n.most = side.most;
  n.high_above = *side.high_above;
  n.low_below = side.low_below;
  n.tolerance = divider_tolerance;
  return n;
}

/// What keeps a divider from being offered; "" when nothing does.
std::string no_divider(const InputPlace& place) {
  if (!place.giver.supply) return tr("what the device gives when high is not known");
  if (!place.side.high_above) return tr("from which voltage the input reads high is not stated");
  return "";
}

}  // namespace

void offer_divider(const InputPlace& place, Offer& offer) {
  const auto pass = [&](const std::string& why) {
    offer.passed.push_back(format("a voltage divider: {}", why));
  };
  if (const std::string why = no_divider(place); !why.empty()) return pass(why);
  const DividerNeeds needs = needs_of(place);
  const auto d = choose_divider(needs);
  if (!d) return pass(tr("no pair of the E24 or E96 series does it in every corner of the tolerances"));
  const auto upper = power_rating(d->upper_watts), lower = power_rating(d->lower_watts);
  if (!upper || !lower) return pass(tr("its resistors would need more than 1 W"));
  Remedy r = begin(place, "divider");
  const auto bottom = ground_for(place, r);
  if (!bottom) return pass(tr("no ground is within reach"));
  const Giver& giver = place.giver;
  const TerminalIndex inner = split_signal(place, r, "divider");
  add_resistor(r, giver.device, inner, giver.terminal, d->upper, *upper, divider_tolerance);
  add_resistor(r, giver.device, giver.terminal, *bottom, d->lower, *lower, divider_tolerance);
  const std::string lead = lead_words(place), to = end_words(place, *bottom, tr("the added ground lead"));
  r.cure.name = format("a voltage divider of {} and {}", to_text(d->upper), to_text(d->lower));
  r.drawback = tr("it takes two resistors");
  r.cure.what = format("A voltage divider in {}: {} in the lead, {} from its board side to ground.", lead,
                       to_text(d->upper), to_text(d->lower));
  r.cure.why = format(
      "{}. Behind the divider it gets {} when the device gives {}, and at most {} when low, with both "
      "resistors anywhere within 1 %; the device gives {} at most.",
      limits_words(place), to_text(d->high), to_text(needs.high), to_text(d->low), to_text(d->amps));
  r.cure.components.push_back(
      {tr("resistor"), to_text(d->upper), format("1 %, {}", rating_words(*upper)), format("in {}", lead)});
  r.cure.components.push_back({tr("resistor"), to_text(d->lower), format("1 %, {}", rating_words(*lower)),
                               format("from the board side of it to {}", to)});
  r.cure.steps.push_back(
      format("cut {} at an easily reached place and join the ends through {}", lead, to_text(d->upper)));
  r.cure.steps.push_back(format("from its end on the board's side lead {} to {}", to_text(d->lower), to));
  finish(place, r, true, "", offer);
}

void offer_series_resistor(const InputPlace& place, Offer& offer) {
  const auto pass = [&](const std::string& why) {
    offer.passed.push_back(format("a series resistor alone: {}", why));
  };
  const Giver& giver = place.giver;
  const auto& clamp = place.pin.clamp;
  if (!giver.supply) return pass(tr("what the device gives when high is not known"));
  if (!clamp || !clamp->limit) {
    return pass(format("what the protection diode of {} stands is not stated", pin_words(place)));
  }
  const Rail* rail = place.fitting().board->rail(clamp->rail);
  if (rail == nullptr) return;
  const auto least = clamp_resistor(giver.supply->max, rail->volts.min, clamp->drop, *clamp->limit * 0.5);
  if (!least) {
    return pass(format("the protection diode of {} stands no current at all", pin_words(place)));
  }
  if (!(least->value > 0)) return;
  const Ohms ohms = preferred_at_least(*least / (1 - pull_tolerance), Series::E24);
  const Volts across = giver.supply->max - rail->volts.min - clamp->drop;
  const auto rating = power_rating(across * (across / ohms));
  if (!rating) return pass(tr("it would need more than 1 W"));
  Remedy r = begin(place, "series-resistor");
  const TerminalIndex inner = split_signal(place, r, tr("series resistor"));
  add_resistor(r, giver.device, inner, giver.terminal, ohms, *rating, pull_tolerance);
  const std::string lead = lead_words(place);
  r.cure.name = format("a series resistor of {}", to_text(ohms));
  r.drawback =
      format("it leaves {} flowing into the board's protection diode for as long as the signal is high",
             to_text(across / ohms));
  r.cure.what = format("A resistor of {} in {}.", to_text(ohms), lead);
  r.cure.why = format(
      "The protection diode of {} stands {}. With (volts in - supply - drop) / ohms no more than half of "
      "it flows: {}.",
      pin_words(place), to_text(*clamp->limit), to_text(across / ohms));
  r.cure.components.push_back(
      {tr("resistor"), to_text(ohms), format("5 %, {}", rating_words(*rating)), format("in {}", lead)});
  r.cure.steps.push_back(
      format("cut {} at an easily reached place and join the ends through {}", lead, to_text(ohms)));
  finish(
      place, r, false,
      format("before the plug goes on the board: power off, measure the resistance from the signal contact "
             "to the device's output: {}",
             to_text(Range<Ohms>{ohms * (1 - pull_tolerance), ohms * (1 + pull_tolerance)})),
      offer);
}

}  // namespace plugward
