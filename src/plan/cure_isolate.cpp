// SPDX-License-Identifier: MIT
// Parts that keep the device's own supply from the input, or lift a level: a diode, a level buffer, an
// optocoupler. Tested in tests/unit/plan/cure_test.cpp.
#include <algorithm>

#include "base/format.h"
#include "plan/cure_input.h"

namespace plugward {
namespace {

/// A Schottky diode of the small-signal kind at a milliampere (common practice, no source).
constexpr Volts schottky_drop{0.3};
/// 10 mA: "24V input optocoupler selection"; the least: common practice, no source.
constexpr Amps opto_amps{0.010}, opto_least{0.005};
/// A phototransistor that is driven into saturation, its dark current, and the least transfer ratio that is
/// asked of the part to be bought (common practice, no source).
constexpr Volts opto_saturation{0.4};
constexpr Amps opto_dark{1e-7};
constexpr double opto_transfer = 0.5;

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

std::string supply_test(const InputPlace& place) {
  return format(
      "before the plug goes on the board: feed the device alone, trigger it, and measure the signal contact "
      "against ground: never more than {}",
      to_text(place.side.most));
}

/// What keeps an optocoupler from being offered; "" when nothing does.
std::string no_optocoupler(const InputPlace& place, const OptoChoice& choice) {
  const Giver& giver = place.giver;
  if (!place.side.pull || !place.side.pulled_up) return tr("the input has no pull-up for its transistor");
  const Amps pull_amps = place.side.pull->to.max / place.side.pull->ohms;
  if (choice.least < opto_least || !power_rating(choice.watts)) {
    return format("its LED would get {} at the lowest supply", to_text(choice.least));
  }
  // What leaks must not light it, and what lights it must saturate the other side twice over.
  if (giver.leak > choice.least / 10.0) return format("the {} that leak could light it", to_text(giver.leak));
  if (choice.least * opto_transfer < pull_amps * 2.0) return tr("the input's pull-up is too strong for it");
  return "";
}

}  // namespace

void offer_diode(const InputPlace& place, Offer& offer) {
  const Giver& giver = place.giver;
  const bool own_pull = giver.driver != nullptr && giver.driver->pull.has_value();
  if (!own_pull || !place.side.pulled_up) {
    offer.passed.push_back(format("a Schottky diode in the lead: {}",
                                  own_pull ? tr("the input has no pull-up that would give its high level")
                                           : tr("no resistor of the device brings the voltage")));
    return;
  }
  Remedy r = begin(place, "series-diode");
  Device& d = r.harness.devices[at(giver.device)];
  const TerminalIndex inner = split(d, giver.terminal, "diode");
  d.parts.push_back(Diode{giver.terminal, inner, schottky_drop, {}});
  const std::string lead = lead_words(place);
  r.cure.name = tr("a Schottky diode in the lead");
  r.drawback = format("it adds {} to the low level", to_text(schottky_drop));
  r.cure.what = format("A Schottky diode in {}, band (cathode) toward the device.", lead);
  r.cure.why = format(
      "The device has a resistor of {} from its output to its own supply and idles at {}; {}. The diode "
      "keeps that from the board and lets the output pull the input low: {} of the output and {} of the "
      "diode.",
      to_text(*giver.driver->pull), giver.supply ? to_text(giver.supply->max) : tr("that"),
      limits_words(place), to_text(giver.drop), to_text(schottky_drop));
  r.cure.components.push_back({tr("diode"), "Schottky",
                               format("40 V or more, at most {} at 1 mA", to_text(schottky_drop)),
                               format("in {}, band toward the device", lead)});
  r.cure.steps.push_back(
      format("cut {} and join the ends through the diode; its band points to the device", lead));
  finish(place, r, false,
         tr("before the plug goes on the board: feed the device alone and measure the signal contact against "
            "ground: no voltage of the device may stand there while its output is off"),
         offer);
}

/// A device's logic output that does not reach the input's high level: lifted to 5 V.
void offer_buffer(const InputPlace& place, Offer& offer) {
  const Giver& giver = place.giver;
  if (giver.driver == nullptr) return;
  const Range<Volts> may{hct_supply.min, std::min(hct_supply.max, place.side.most)};
  const auto plus = supply_of(place.fitting(), giver.device, may);
  const auto minus = ground_of(place.fitting(), giver.device);
  if (!plus || !minus) {
    offer.passed.push_back(
        format("a level buffer: no supply of {} and ground are within reach", to_text(may)));
    return;
  }
  Remedy r = begin(place, "level-buffer");
  Device& d = r.harness.devices[at(giver.device)];
  const auto rests = giver.driver->rests_on;
  const TerminalIndex inner = split(d, giver.terminal, tr("level buffer"));
  add_buffer(d, inner, giver.terminal, *plus, *minus, rests);
  r.cure.name = tr("a level buffer of the 74HCT family");
  r.drawback = tr("it takes a supply of 5 V");
  r.cure.next_best = format(
      "a pull-up: the output drives both ways, and would still hold {} at its own level", pin_words(place));
  say_buffer(r, place.fitting(), place.joint, *plus, *minus);
  r.cure.why =
      format("{}. The buffer reads high from 2 V whatever its supply and gives that supply less 0.1 V.",
             limits_words(place));
  finish(place, r, true, "", offer);
}

void offer_optocoupler(const InputPlace& place, Offer& offer) {
  const Giver& giver = place.giver;
  const auto pass = [&](const std::string& why) {
    offer.passed.push_back(format("an optocoupler: {}", why));
  };
  if (giver.driver == nullptr) return pass(tr("a switch does not feed its LED"));
  if (giver.driver->kind == OutputKind::PushPull)
    return pass(tr("a logic output is not made to feed its LED"));
  if (!giver.supply) return pass(tr("what feeds its LED is not known"));
  const OptoChoice choice = opto_resistor(*giver.supply, giver.drop, opto_amps, pull_tolerance);
  if (const std::string why = no_optocoupler(place, choice); !why.empty()) return pass(why);
  Remedy r = begin(place, "optocoupler");
  const auto minus = ground_for(place, r);
  if (!minus) return pass(tr("no ground is within reach"));
  const Watts rating = *power_rating(choice.watts);
  Device& d = r.harness.devices[at(giver.device)];
  const Driver given = *giver.driver;
  const TerminalIndex inner = split(d, giver.terminal, "optocoupler");
  const TerminalIndex middle = add_inner(d, format("{} LED", d.terminals[at(giver.terminal)].id));
  d.parts.push_back(giver.sinks ? Diode{middle, inner, opto_drop, {}}
                                : Diode{middle, given.minus, opto_drop, {}});
  Driver out;
  out.terminal = giver.terminal;
  out.plus = given.plus;
  out.minus = *minus;
  out.kind = OutputKind::Sinking;
  out.drop = opto_saturation;
  out.leak = opto_dark;
  out.pull_stated = true;
  out.rests_on = given.rests_on;
  d.parts.push_back(out);
  add_resistor(r, giver.device, giver.sinks ? given.plus : inner, middle, choice.ohms, rating,
               pull_tolerance);
  const std::string lead = lead_words(place), ohms = to_text(choice.ohms);
  r.cure.name = format("an optocoupler with {}", ohms);
  r.drawback = giver.sinks ? tr("it takes an optocoupler and its resistor")
                           : tr("it takes an optocoupler and its resistor, and turns the sense round");
  r.cure.what = format(
      "An optocoupler: its LED with {} {}, its transistor from {} of the board to ground.", ohms,
      giver.sinks ? tr("from the device's plus to its output") : tr("from the device's output to its minus"),
      pin_words(place));
  r.cure.why = format(
      "Nothing of the device's supply reaches the board. (supply - {}) / {} lights the LED with {}; the "
      "input falls to {} at most while it is lit and is pulled to {} when it is dark{}.",
      to_text(opto_drop), ohms, to_text(choice.amps), to_text(opto_saturation), to_text(place.side.pull->to),
      giver.sinks ? "" : tr("; the sense is turned round: lit reads low"));
  r.cure.components.push_back({tr("optocoupler"), "",
                               format("transfer ratio {:.0f} % or more at {}, {} V or more at the output",
                                      100 * opto_transfer, to_text(opto_amps), 30),
                               format("in {}", lead)});
  r.cure.components.push_back({tr("resistor"), ohms, format("5 %, {}", rating_words(rating)),
                               tr("in series with the optocoupler's LED")});
  r.cure.steps.push_back(
      format("cut {}; on the device's side wire {} and the LED of the optocoupler {}", lead, ohms,
             giver.sinks ? tr("from the supply lead to it, the LED's cathode at the device's output")
                         : tr("from it to the device's ground lead, the LED's anode at the resistor")));
  r.cure.steps.push_back(
      format("on the board's side wire the transistor's collector to the lead, its emitter to {}",
             end_words(place, *minus, tr("the added ground lead"))));
  finish(place, r, false, supply_test(place), offer);
}

}  // namespace plugward
