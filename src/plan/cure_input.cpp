// SPDX-License-Identifier: MIT
// Into the lead of a signal that the board reads: a divider, a series resistor, a diode, a pull, a buffer, an
// optocoupler. Which of them make sense follows from what gives the signal:
//
//   drives high from a supply (push-pull, sourcing, a switch to a supply)   divider, series resistor,
//   optocoupler sinks, with a resistor of its own to its supply                         diode, lower
//   resistor, optocoupler sinks, or a switch to ground                                            pull-up,
//   optocoupler
//
// Tested in tests/unit/plan/cure_test.cpp.
#include <algorithm>

#include "base/format.h"
#include "circuit/defaults.h"
#include "fit/match.h"
#include "judge/words.h"
#include "plan/cure_build.h"

namespace plugward {
namespace {

constexpr double resistor_tolerance = 0.01, pull_tolerance = 0.05;
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

/// What gives the signal, in figures.
struct Giver {
  const Driver* driver = nullptr;
  int device = 0;
  TerminalIndex terminal = 0;
  bool sinks = false, drives_low = false;
  Volts drop{};
  Amps leak{};
  std::optional<Range<Volts>> supply;
};

class InputRemedies {
 public:
  InputRemedies(const Complaint& complaint, const MetLead& joint, const Pin& pin, const InputSide& side)
      : c_(complaint), joint_(joint), pin_(pin), side_(side) {
    const Device& d = device();
    giver_.device = joint.terminal.device;
    giver_.terminal = joint.terminal.terminal;
    const int driver = driver_at(d, giver_.terminal), contact = switch_at(d, giver_.terminal);
    if (driver >= 0) {
      giver_.driver = &std::get<Driver>(d.parts[at(driver)]);
      giver_.sinks = giver_.driver->kind == OutputKind::Sinking;
      giver_.drives_low = giver_.driver->kind != OutputKind::Sourcing;
      giver_.drop = giver_.driver->drop.value_or(CircuitDefaults{}.driver_drop);
      giver_.leak = giver_.driver->leak.value_or(Amps{});
      giver_.supply = volts_at(c_.fitting, {giver_.device, giver_.driver->plus});
    } else if (contact >= 0) {
      const auto& s = std::get<Switch>(d.parts[at(contact)]);
      const TerminalIndex far = s.a == giver_.terminal ? s.b : s.a;
      giver_.supply = volts_at(c_.fitting, {giver_.device, far});
      giver_.sinks = !giver_.supply;
    } else {
      known_ = false;
    }
    known_ = known_ && !is_joined(d, giver_.terminal);
  }

  std::vector<Remedy> run() {
    if (!known_ || pin_.analogue) return {};
    switch (c_.finding.rule) {
      case Rule::Overvoltage:
      case Rule::ClampCurrent:
        if (giver_.sinks) {
          diode(), optocoupler();
        } else {
          divider(), series(), optocoupler();
        }
        break;
      case Rule::FloatingInput:
        if (giver_.sinks) {
          pull_to(true);
        } else {
          pull_to(false), divider();
        }
        break;
      case Rule::LevelHigh:
        if (giver_.sinks) {
          pull_to(true), optocoupler();
        } else if (giver_.drives_low) {
          buffer();
        }
        break;
      case Rule::LevelLow:
        if (!giver_.sinks && !giver_.drives_low) pull_to(false), divider();
        if (giver_.sinks || giver_.drives_low) optocoupler();
        break;
      default:
        break;
    }
    return std::move(out_);
  }

 private:
  const Device& device() const { return c_.fitting.harness->devices[at(joint_.terminal.device)]; }
  std::string pin_words() const { return pin_name(c_.fitting, joint_.header, joint_.pin); }
  std::string lead() const { return lead_words(c_.fitting, joint_); }

  Remedy begin(std::string kind) const {
    Remedy r;
    r.harness = c_.base;
    r.cure.kind = std::move(kind);
    r.cure.steps = {power_off_step()};
    return r;
  }

  /// A terminal tied to ground; a new lead when the device has none.
  std::optional<TerminalIndex> ground(Remedy& r) const {
    if (const auto has = ground_of(c_.fitting, giver_.device)) return has;
    const auto added = add_lead(c_.fitting, r.harness, joint_, PinFunction::Ground, {});
    if (!added) return std::nullopt;
    say_new_lead(r, *added, "black");
    return added->terminal;
  }

  void say_new_lead(Remedy& r, const NewLead& lead, std::string_view colour) const {
    const Plug& plug = plug_of(c_.fitting, lead.plug);
    r.cure.components.push_back({"lead", "", format("{}, with a contact of family '{}'", colour, plug.family),
                                 format("cavity {} of '{}', which meets {}", lead.cavity, plug.id,
                                        pin_name(c_.fitting, lead.header, lead.pin))});
    r.cure.steps.push_back(format("crimp a {} lead and seat it in cavity {} of '{}': it meets {}", colour,
                                  lead.cavity, plug.id, pin_name(c_.fitting, lead.header, lead.pin)));
  }

  std::string ground_words(TerminalIndex ground) const {
    const auto joint = joint_of(c_.fitting, {giver_.device, ground});
    return joint ? lead_words(c_.fitting, *joint) : "the added ground lead";
  }

  void finish(Remedy& r, std::string test) {
    r.cure.steps.push_back(sleeve_step());
    r.cure.steps.push_back(std::move(test));
    out_.push_back(std::move(r));
  }

  std::string limits_words() const {
    std::string words = format("{} withstands {}", pin_words(), to_text(side_.most));
    if (side_.low_below && side_.high_above) {
      words += format(", reads low below {} and high from {}", to_text(*side_.low_below),
                      to_text(*side_.high_above));
    }
    return words;
  }

  std::string supply_test(Volts most) const {
    return format(
        "before the plug goes on the board: feed the device alone, trigger it, and measure the signal "
        "contact "
        "against ground: never more than {}",
        to_text(most));
  }

  DividerNeeds divider_needs() const {
    DividerNeeds n;
    n.high = {giver_.supply->min - giver_.drop, giver_.supply->max};
    if (giver_.drives_low) n.low = Range<Volts>{Volts(0), giver_.drop};
    n.leak = giver_.leak;
    n.pull = side_.pull;
    n.most = side_.most;
    n.high_above = *side_.high_above;
    n.low_below = side_.low_below;
    n.tolerance = resistor_tolerance;
    return n;
  }

  void divider() {
    if (!giver_.supply || !side_.high_above) return;
    const DividerNeeds needs = divider_needs();
    const auto d = choose_divider(needs);
    if (!d) return;
    const auto upper = power_rating(d->upper_watts), lower = power_rating(d->lower_watts);
    if (!upper || !lower) return;
    Remedy r = begin("divider");
    const auto bottom = ground(r);
    if (!bottom) return;
    const TerminalIndex inner = split(r.harness.devices[at(giver_.device)], giver_.terminal, "divider");
    add_resistor(r, giver_.device, inner, giver_.terminal, d->upper, *upper, resistor_tolerance);
    add_resistor(r, giver_.device, giver_.terminal, *bottom, d->lower, *lower, resistor_tolerance);
    r.cure.name = format("a voltage divider of {} and {}", to_text(d->upper), to_text(d->lower));
    r.drawback = "it takes two resistors";
    r.cure.what = format("A voltage divider in {}: {} in the lead, {} from its board side to ground.", lead(),
                         to_text(d->upper), to_text(d->lower));
    r.cure.why = format(
        "{}. Behind the divider it gets {} when the device gives {}, and at most {} when low, with both "
        "resistors "
        "anywhere within 1 %; the device gives {} at most.",
        limits_words(), to_text(d->high), to_text(needs.high), to_text(d->low), to_text(d->amps));
    r.cure.components.push_back(
        {"resistor", to_text(d->upper), format("1 %, {}", rating_words(*upper)), format("in {}", lead())});
    r.cure.components.push_back({"resistor", to_text(d->lower), format("1 %, {}", rating_words(*lower)),
                                 format("from the board side of it to {}", ground_words(*bottom))});
    r.cure.steps.push_back(
        format("cut {} at an easily reached place and join the ends through {}", lead(), to_text(d->upper)));
    r.cure.steps.push_back(
        format("from its end on the board's side lead {} to {}", to_text(d->lower), ground_words(*bottom)));
    finish(r, supply_test(needs.most));
  }

  /// Where the pin has protection diodes of a stated limit, a resistance may be all it needs.
  void series() {
    if (!giver_.supply || !pin_.clamp || !pin_.clamp->limit) return;
    const Rail* rail = c_.fitting.board->rail(pin_.clamp->rail);
    if (rail == nullptr) return;
    const auto least =
        clamp_resistor(giver_.supply->max, rail->volts.min, pin_.clamp->drop, *pin_.clamp->limit * 0.5);
    if (!least || !(least->value > 0)) return;
    const Ohms ohms = preferred_at_least(*least / (1 - pull_tolerance), Series::E24);
    const Volts across = giver_.supply->max - rail->volts.min - pin_.clamp->drop;
    const auto rating = power_rating(across * (across / ohms));
    if (!rating) return;
    Remedy r = begin("series-resistor");
    const TerminalIndex inner =
        split(r.harness.devices[at(giver_.device)], giver_.terminal, "series resistor");
    add_resistor(r, giver_.device, inner, giver_.terminal, ohms, *rating, pull_tolerance);
    r.cure.name = format("a series resistor of {}", to_text(ohms));
    r.drawback =
        format("it leaves {} flowing into the board's protection diode for as long as the signal is high",
               to_text(across / ohms));
    r.cure.what = format("A resistor of {} in {}.", to_text(ohms), lead());
    r.cure.why = format(
        "The protection diode of {} stands {}. With (volts in - supply - drop) / ohms no more than half of "
        "it flows: {}.",
        pin_words(), to_text(*pin_.clamp->limit), to_text(across / ohms));
    r.cure.components.push_back(
        {"resistor", to_text(ohms), format("5 %, {}", rating_words(*rating)), format("in {}", lead())});
    r.cure.steps.push_back(
        format("cut {} at an easily reached place and join the ends through {}", lead(), to_text(ohms)));
    finish(r,
           "before the plug goes on the board: power off, measure the resistance from the signal contact to "
           "the device's output: it is that of the resistor");
  }

  void diode() {
    const bool own_pull = giver_.driver != nullptr && giver_.driver->pull.has_value();
    if (!own_pull || !side_.pulled_up) return;
    Remedy r = begin("series-diode");
    Device& d = r.harness.devices[at(giver_.device)];
    const TerminalIndex inner = split(d, giver_.terminal, "diode");
    d.parts.push_back(Diode{giver_.terminal, inner, schottky_drop, {}});
    r.cure.name = "a Schottky diode in the lead";
    r.drawback = format("it adds {} to the low level", to_text(schottky_drop));
    r.cure.what = format("A Schottky diode in {}, band (cathode) toward the device.", lead());
    r.cure.why = format(
        "The device has a resistor of {} from its output to its own supply and idles at {}; {}. The diode "
        "keeps "
        "that from the board and lets the output pull the input low: {} of the output and {} of the diode.",
        to_text(*giver_.driver->pull), giver_.supply ? to_text(giver_.supply->max) : "that", limits_words(),
        to_text(giver_.drop), to_text(schottky_drop));
    r.cure.components.push_back({"diode", "Schottky",
                                 format("40 V or more, at most {} at 1 mA", to_text(schottky_drop)),
                                 format("in {}, band toward the device", lead())});
    r.cure.steps.push_back(
        format("cut {} and join the ends through the diode; its band points to the device", lead()));
    finish(r,
           "before the plug goes on the board: feed the device alone and measure the signal contact against "
           "ground: no voltage of the device may stand there while its output is off");
  }

  void pull_to(bool up) {
    if (up ? !side_.high_above : !side_.low_below) return;
    Remedy r = begin(up ? "pull-up" : "pull-down");
    std::optional<TerminalIndex> end;
    Range<Volts> rail{};
    if (up) {
      const Range<Volts> may{*side_.high_above, side_.most};
      end = supply_of(c_.fitting, giver_.device, may);
      if (end) {
        rail = *volts_at(c_.fitting, {giver_.device, *end});
      } else if (const auto added = add_lead(c_.fitting, r.harness, joint_, PinFunction::Supply, may)) {
        const Pin& met = header_of(c_.fitting, added->header).pin(added->pin);
        rail = rail_of_pin(met);
        end = added->terminal;
        // It feeds the resistor and nothing else.
        r.harness.devices[at(giver_.device)].parts.push_back(
            Load{*end, *end, {Volts(0), rail.max}, std::nullopt, Amps(0), Reversal::Harmless, {}});
        say_new_lead(r, *added, "red");
      }
    } else {
      end = ground(r);
    }
    if (!end) return;
    PullNeeds needs{rail,
                    giver_.leak,
                    side_.pull,
                    up ? *side_.high_above : *side_.low_below,
                    giver_.supply.value_or(Range<Volts>{}).max,
                    pull_tolerance};
    const auto choice = choose_pull(needs);
    const auto rating = choice ? power_rating(choice->watts) : std::nullopt;
    if (!rating) return;
    add_resistor(r, giver_.device, giver_.terminal, *end, choice->ohms, *rating, pull_tolerance);
    const auto joint = joint_of(c_.fitting, {giver_.device, *end});
    const std::string to = !up     ? ground_words(*end)
                           : joint ? lead_words(c_.fitting, *joint)
                                   : "the added supply lead";
    r.cure.name = format("a {} of {}", up ? "pull-up" : "pull-down", to_text(choice->ohms));
    r.drawback = "it loads the signal";
    r.cure.next_best = format("a resistor of {}: it takes {} instead of {}, and less is enough",
                              to_text(preferred_at_most(choice->ohms * 0.5, Series::E12)),
                              to_text(Amps(2 * choice->amps.value)), to_text(choice->amps));
    r.cure.what = format("A {} resistor of {} from {} to {}{}.", up ? "pull-up" : "pull-down",
                         to_text(choice->ohms), lead(), to, up ? format(" ({})", to_text(rail)) : "");
    r.cure.why = format(
        "{}. With nothing driving it the input is held at {} in the worst case{}; {} flow when it "
        "is driven the other way.",
        limits_words(), to_text(choice->level),
        giver_.leak.value > 0 ? format(", with {} leaking", to_text(giver_.leak)) : "",
        to_text(choice->amps));
    r.cure.components.push_back({"resistor", to_text(choice->ohms), format("5 %, {}", rating_words(*rating)),
                                 format("between {} and {}", lead(), to)});
    r.cure.steps.push_back(
        format("lead {} from {} to {}, close to the plug", to_text(choice->ohms), lead(), to));
    finish(
        r,
        format("before the plug goes on the board: power off, measure between the two contacts: {}, or less "
               "through the device",
               to_text(choice->ohms)));
  }

  Range<Volts> rail_of_pin(const Pin& pin) const {
    const Rail* rail = rail_of(pin, *c_.fitting.board, c_.fitting.jumpers);
    return rail == nullptr ? Range<Volts>{} : rail->volts;
  }

  /// A device's logic output that does not reach the input's high level: lifted to 5 V.
  void buffer() {
    if (giver_.driver == nullptr) return;
    const Range<Volts> may{hct_supply.min, std::min(hct_supply.max, side_.most)};
    const auto plus = supply_of(c_.fitting, giver_.device, may);
    const auto minus = ground_of(c_.fitting, giver_.device);
    if (!plus || !minus) return;
    Remedy r = begin("level-buffer");
    Device& d = r.harness.devices[at(giver_.device)];
    const auto rests = giver_.driver->rests_on;
    const TerminalIndex inner = split(d, giver_.terminal, "level buffer");
    add_buffer(d, inner, giver_.terminal, *plus, *minus, rests);
    r.cure.name = "a level buffer of the 74HCT family";
    r.drawback = "it takes a supply of 5 V";
    say_buffer(r, c_.fitting, joint_, *plus, *minus);
    r.cure.why =
        format("{}. The buffer reads high from 2 V whatever its supply and gives that supply less 0.1 V.",
               limits_words());
    finish(r, supply_test(side_.most));
  }

  void optocoupler() {
    if (giver_.driver == nullptr || !giver_.supply || !side_.pull || !side_.pulled_up) return;
    if (giver_.driver->kind == OutputKind::PushPull) return;
    const OptoChoice choice = opto_resistor(*giver_.supply, giver_.drop, opto_amps, pull_tolerance);
    const auto rating = power_rating(choice.watts);
    const Amps pull_amps = side_.pull->to.max / side_.pull->ohms;
    if (!rating || choice.least < opto_least) return;
    // What leaks must not light it, and what lights it must saturate the other side twice over.
    if (giver_.leak > choice.least / 10.0 || choice.least * opto_transfer < pull_amps * 2.0) return;
    Remedy r = begin("optocoupler");
    const auto minus = ground(r);
    if (!minus) return;
    Device& d = r.harness.devices[at(giver_.device)];
    const Driver given = *giver_.driver;
    const TerminalIndex inner = split(d, giver_.terminal, "optocoupler");
    const TerminalIndex middle = add_inner(d, format("{} LED", d.terminals[at(giver_.terminal)].id));
    const TerminalIndex near_plus = given.plus, near_minus = given.minus;
    d.parts.push_back(giver_.sinks ? Diode{middle, inner, opto_drop, {}}
                                   : Diode{middle, near_minus, opto_drop, {}});
    Driver out;
    out.terminal = giver_.terminal;
    out.plus = near_plus;
    out.minus = *minus;
    out.kind = OutputKind::Sinking;
    out.drop = opto_saturation;
    out.leak = opto_dark;
    out.pull_stated = true;
    out.rests_on = given.rests_on;
    d.parts.push_back(out);
    add_resistor(r, giver_.device, giver_.sinks ? near_plus : inner, middle, choice.ohms, *rating,
                 pull_tolerance);
    r.cure.name = format("an optocoupler with {}", to_text(choice.ohms));
    r.drawback = giver_.sinks ? "it takes an optocoupler and its resistor"
                              : "it takes an optocoupler and its resistor, and turns the sense round";
    r.cure.what = format(
        "An optocoupler: its LED with {} {}, its transistor from {} of the board to ground.",
        to_text(choice.ohms),
        giver_.sinks ? "from the device's plus to its output" : "from the device's output to its minus",
        pin_words());
    r.cure.why = format(
        "Nothing of the device's supply reaches the board. (supply - {}) / {} lights the LED with {}; the "
        "input "
        "falls to {} at most while it is lit and is pulled to {} when it is dark{}.",
        to_text(opto_drop), to_text(choice.ohms), to_text(choice.amps), to_text(opto_saturation),
        to_text(side_.pull->to), giver_.sinks ? "" : "; the sense is turned round: lit reads low");
    r.cure.components.push_back({"optocoupler", "",
                                 format("transfer ratio {:.0f} % or more at {}, {} V or more at the output",
                                        100 * opto_transfer, to_text(opto_amps), 30),
                                 format("in {}", lead())});
    r.cure.components.push_back({"resistor", to_text(choice.ohms), format("5 %, {}", rating_words(*rating)),
                                 "in series with the optocoupler's LED"});
    r.cure.steps.push_back(
        format("cut {}; on the device's side wire {} and the LED of the optocoupler {}", lead(),
               to_text(choice.ohms),
               giver_.sinks ? "from the supply lead to it, the LED's cathode at the device's output"
                            : "from it to the device's ground lead, the LED's anode at the resistor"));
    r.cure.steps.push_back(
        format("on the board's side wire the transistor's collector to the lead, its emitter to {}",
               ground_words(*minus)));
    finish(r, supply_test(side_.most));
  }

  const Complaint& c_;
  const MetLead joint_;
  const Pin& pin_;
  const InputSide side_;
  Giver giver_;
  bool known_ = true;
  std::vector<Remedy> out_;
};

}  // namespace

std::vector<Remedy> input_remedies(const Complaint& c) {
  const auto joint = joint_at_pin(c.fitting, c.finding.at.header, c.finding.at.pin);
  if (!joint) return {};
  const Pin& pin = header_of(c.fitting, joint->header).pin(joint->pin);
  const auto side = input_side(c.fitting, pin);
  if (!side) return {};
  return InputRemedies(c, *joint, pin, *side).run();
}

}  // namespace plugward
