// SPDX-License-Identifier: MIT
// Function by function: an input that stood low at rest and high when worked and now stands high in both has
// the symptom that its switch seems worked all the time. Nothing here asks what a pin or a plug is called.
//
// While a rail is shorted at rest nothing else can be seen, so nothing else is told. Tested in
// tests/unit/plan/causes_test.cpp.
#include <algorithm>
#include <cmath>

#include "fit/match.h"
#include "plan/symptom.h"

namespace plugward {
namespace {

// An input whose thresholds are not stated: usual of CMOS, as a share of its rail (from memory).
constexpr double low_share = 0.3, high_share = 0.7;
constexpr double running_share = 0.25;  // of the least that a load needs: below it, it does nothing
constexpr double reading_share = 0.01;  // of full scale: a reading is another one
constexpr double end_share = 0.005;     // of full scale: a reading at its end
constexpr double kept_swing = 0.5;      // of the healthy swing: a signal still arrives

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

enum class Level { Low, High, Between };
enum class Feed { None, Weak, Full, Strong };

/// Both machines side by side.
struct Comparison {
  const Fitting& whole;  ///< the healthy one
  const Behaviour& healthy;
  const Behaviour& now;
  std::vector<Showing> shown{};

  void show(Symptom symptom, int plug) { shown.push_back({symptom, plug}); }

  const Device& device(int index) const { return whole.harness->devices[at(index)]; }
  const Part& part(PartRef ref) const { return device(ref.device).parts[at(ref.part)]; }
  const Pin& pin(PinRef ref) const { return whole.board->headers[at(ref.header)].pin(ref.number); }

  int plug_at(PinRef ref) const {
    for (const Placement& p : whole.placements) {
      if (p.header == ref.header) return p.plug;
    }
    return -1;
  }

  /// The placed plug with a lead to one of the terminals.
  int plug_of(int device_index, std::initializer_list<TerminalIndex> terminals) const {
    for (const TerminalIndex t : terminals) {
      for (const Placement& p : whole.placements) {
        for (const Lead& lead : whole.harness->plugs[at(p.plug)].leads) {
          if (lead.cavity > 0 && lead.to == TerminalRef{device_index, t}) return p.plug;
        }
      }
    }
    return -1;
  }

  Level level(const Band& band, const Pin& input) const {
    const Rail* rail = whole.board->rail(input.rail);
    const double supply = rail == nullptr ? 0.0 : rail->volts.min.value;
    const double low = input.low_below ? input.low_below->value : low_share * supply;
    const double high = input.high_above ? input.high_above->value : high_share * supply;
    if (!band.found) return Level::Between;
    return band.most <= low + 1e-9 ? Level::Low : band.least >= high - 1e-9 ? Level::High : Level::Between;
  }

  /// A sensor that gives pulses has no rest: only whether it changes can be seen.
  bool pulses(const InputSight& sight) const {
    return std::all_of(sight.givers.begin(), sight.givers.end(), [&](PartRef giver) {
      const auto* driver = std::get_if<Driver>(&part(giver));
      return driver != nullptr && !driver->rests_on;
    });
  }

  void compare_input(const InputSight& was) {
    const Pin& input = pin(was.pin);
    const Level rest = level(was.rest, input), worked = level(was.worked, input);
    const int plug = plug_at(was.pin);
    if (was.givers.empty() || was.floats || rest == worked || plug < 0 || rest == Level::Between ||
        worked == Level::Between)
      return;
    const auto is = std::find_if(now.inputs.begin(), now.inputs.end(),
                                 [&](const InputSight& s) { return s.pin == was.pin; });
    if (is == now.inputs.end()) return;
    const Level r = level(is->rest, input), w = level(is->worked, input);
    const bool foreign =
        !is->givers.empty() && std::none_of(is->givers.begin(), is->givers.end(), [&](PartRef g) {
          return std::find(was.givers.begin(), was.givers.end(), g) != was.givers.end();
        });
    if (is->floats || r == Level::Between || w == Level::Between) return show(Symptom::Unsteady, plug);
    if (r != w && foreign) return show(Symptom::WrongOne, plug);
    if (r == rest && w == worked) return;
    if (pulses(was)) {
      if (r == w) show(Symptom::ZeroScale, plug);
      return;
    }
    show(r != w ? Symptom::Inverted : r == rest ? Symptom::NeverTriggered : Symptom::AlwaysTriggered, plug);
  }

  void compare_analogue(const AnalogueSight& was) {
    const int plug = plug_at(was.pin);
    const auto is = std::find_if(now.analogue.begin(), now.analogue.end(),
                                 [&](const AnalogueSight& s) { return s.pin == was.pin; });
    if (plug < 0 || was.sensors.empty() || !was.share.found || is == now.analogue.end() || !is->share.found)
      return;
    const double share = is->share.most;
    if (std::abs(share - was.share.most) > reading_share) {
      return show(share >= 1 - end_share ? Symptom::FullScale
                  : share <= end_share   ? Symptom::ZeroScale
                                         : Symptom::WrongReading,
                  plug);
    }
    const bool foreign =
        !is->sensors.empty() && std::none_of(is->sensors.begin(), is->sensors.end(), [&](PartRef sensor) {
          return std::find(was.sensors.begin(), was.sensors.end(), sensor) != was.sensors.end();
        });
    if (foreign) show(Symptom::WrongOne, plug);
  }

  /// A part whose supply or signal is gone.
  Symptom lifeless(const Device& d) const {
    return d.leds ? Symptom::Dark : d.use == "display" ? Symptom::Blank : Symptom::NeverStarts;
  }

  static Feed feed(const Part& part, const Band& band) {
    double least = 0, most = 0;
    if (const auto* load = std::get_if<Load>(&part)) {
      least = load->needs.min.value;
      most = std::max(load->needs.max.value, load->survives.value_or(load->needs.max).value);
    } else if (const auto* heater = std::get_if<Heater>(&part)) {
      least = heater->volts.value * std::sqrt(CircuitDefaults{}.heater_under);
      most = heater->volts.value * std::sqrt(CircuitDefaults{}.heater_over);
    }
    if (!band.found || band.most < running_share * least) return Feed::None;
    return band.most < least - 0.02 ? Feed::Weak : band.most > most + 0.02 ? Feed::Strong : Feed::Full;
  }

  void compare_load(const LoadSight& was) {
    const auto is = std::find_if(now.loads.begin(), now.loads.end(),
                                 [&](const LoadSight& s) { return s.part == was.part; });
    const Part& p = part(was.part);
    const Device& d = device(was.part.device);
    const auto* load = std::get_if<Load>(&p);
    const auto* heater = std::get_if<Heater>(&p);
    const int plug = load != nullptr ? plug_of(was.part.device, {load->plus, load->minus})
                                     : plug_of(was.part.device, {heater->a, heater->b});
    const Feed on = feed(p, was.on), off = feed(p, was.off);
    if (plug < 0 || on == Feed::None) return;  // the healthy machine does not feed it either
    const Feed on_now = is == now.loads.end() ? Feed::None : feed(p, is->on);
    const Feed off_now = is == now.loads.end() ? Feed::None : feed(p, is->off);
    if (off == Feed::None && off_now != Feed::None) {
      const bool heats = heater != nullptr || d.use == "heater";
      show(heats ? Symptom::HeatsByItself : Symptom::NeverStops, plug);
    }
    if (on_now == Feed::None) return show(lifeless(d), plug);
    if (on_now == Feed::Weak && on != Feed::Weak) {
      show(Symptom::Weak, plug);
      if (lifeless(d) != Symptom::NeverStarts) show(lifeless(d), plug);
    }
    if (on_now == Feed::Strong && on != Feed::Strong) show(Symptom::TooStrong, plug);
    if (off_now == Feed::None && is->switches != was.switches) show(Symptom::WrongOne, plug);
  }

  void compare_receiver(const ReceiverSight& was) {
    const auto is = std::find_if(now.receivers.begin(), now.receivers.end(),
                                 [&](const ReceiverSight& s) { return s.part == was.part; });
    if (was.output.number == 0 || is == now.receivers.end()) return;
    const double swing = was.high.least - was.low.most;
    const auto& receiver = std::get<Receiver>(part(was.part));
    const int plug = plug_of(was.part.device, {receiver.terminal});
    if (plug < 0 || swing <= 0.0) return;
    const bool arrives = is->output.number != 0 && is->high.least - is->low.most >= kept_swing * swing;
    if (!arrives) return show(lifeless(device(was.part.device)), plug);
    if (is->output == was.output) return;
    const bool alike = same_signal(pin(is->output).signal, pin(was.output).signal);
    show(alike ? Symptom::WrongOne : lifeless(device(was.part.device)), plug);
  }

  void compare_motor(const MotorSight& was) {
    const auto is = std::find_if(now.motors.begin(), now.motors.end(),
                                 [&](const MotorSight& s) { return s.device == was.device; });
    if (was.header < 0 || is == now.motors.end()) return;
    const int plug = plug_at({was.header, 1});
    if (plug < 0 || was.turning == Turning::Still || was.turning == Turning::Judders) return;
    if (is->turning == Turning::Still) return show(Symptom::NeverStarts, plug);
    if (is->turning == Turning::Judders) return show(Symptom::Judders, plug);
    if (is->turning != was.turning) show(Symptom::RunsBackwards, plug);
    if (is->header != was.header) show(Symptom::WrongOne, plug);
  }

  /// The firmware takes it the other way round: every input and motor of the plug.
  void set_wrongly(int plug) {
    for (const InputSight& input : healthy.inputs) {
      if (plug_at(input.pin) != plug || input.givers.empty() || pulses(input)) continue;
      const Level rest = level(input.rest, pin(input.pin)), worked = level(input.worked, pin(input.pin));
      if (rest != worked && rest != Level::Between && worked != Level::Between) show(Symptom::Inverted, plug);
    }
    for (const MotorSight& motor : healthy.motors) {
      const bool turns = motor.turning == Turning::Forwards || motor.turning == Turning::Backwards;
      if (turns && plug_at({motor.header, 1}) == plug) show(Symptom::RunsBackwards, plug);
    }
  }

  /// A rail without which the board's own outputs are dead.
  bool feeds_the_logic(const std::string& rail) const {
    for (const Header& header : whole.board->headers) {
      for (const Pin& p : header.pins) {
        if (p.function == PinFunction::Output && p.rail == rail) return true;
      }
    }
    return false;
  }
};

/// The sights that stand for some plugs or devices alone.
template <class Compare, class Sights, class Within>
void each(const Sights& sights, Within within, Compare compare) {
  for (const auto& sight : sights) {
    if (within(sight)) compare(sight);
  }
}

}  // namespace

Observer::Observer(const Fitting& whole) : whole_(&whole), groups_(plug_groups(*whole.harness)) {
  const FaultyMachine healthy(whole);
  healthy_ = behaviour(healthy.fitting, healthy.contacts);
  for (const InputSight& s : healthy_.inputs) inputs_.push_back(s.pin);
  for (const AnalogueSight& s : healthy_.analogue) inputs_.push_back(s.pin);
}

std::vector<int> Observer::reach(const MachineFault& fault) const {
  std::vector<int> wanted;
  for (const int plug : {fault.plug, fault.other_plug}) {
    if (plug >= 0) wanted.push_back(groups_[at(plug)]);
  }
  return wanted;
}

std::vector<Showing> Observer::showing(const MachineFault& fault, const FaultyMachine& machine) const {
  const std::vector<int> wanted = reach(fault);
  const auto has_plug = [&](int plug) {
    return plug >= 0 &&
           (wanted.empty() || std::find(wanted.begin(), wanted.end(), groups_[at(plug)]) != wanted.end());
  };
  const GroupView view(machine, groups_, wanted);
  const auto on_header = [&](int header) {
    return std::any_of(whole_->placements.begin(), whole_->placements.end(),
                       [&](const Placement& p) { return p.header == header && has_plug(p.plug); });
  };
  std::vector<bool> device(whole_->harness->devices.size(), false);
  for (std::size_t p = 0; p < groups_.size(); ++p) {
    if (!has_plug(static_cast<int>(p))) continue;
    for (const Lead& lead : whole_->harness->plugs[p].leads) {
      if (lead.to) device[at(lead.to->device)] = true;
    }
  }
  std::vector<PinRef> watched;
  std::copy_if(inputs_.begin(), inputs_.end(), std::back_inserter(watched),
               [&](PinRef pin) { return on_header(pin.header); });
  const Behaviour now = behaviour(view.fitting, view.contacts, watched);

  Comparison c{*whole_, healthy_, now};
  if (now.shorted && !healthy_.shorted) c.show(Symptom::Dies, -1);
  const bool dead = fault.kind == FaultKind::RailMissing && c.feeds_the_logic(fault.rail);
  if (dead) c.show(Symptom::Dies, -1);
  if (!dead && (!now.shorted_at_rest || healthy_.shorted_at_rest)) {
    const auto here = [&](const auto& sight) { return on_header(sight.pin.header); };
    const auto of_part = [&](const auto& sight) { return device[at(sight.part.device)]; };
    const auto of_device = [&](const auto& sight) { return device[at(sight.device)]; };
    each(healthy_.inputs, here, [&](const InputSight& s) { c.compare_input(s); });
    each(healthy_.analogue, here, [&](const AnalogueSight& s) { c.compare_analogue(s); });
    each(healthy_.loads, of_part, [&](const LoadSight& s) { c.compare_load(s); });
    each(healthy_.receivers, of_part, [&](const ReceiverSight& s) { c.compare_receiver(s); });
    each(healthy_.motors, of_device, [&](const MotorSight& s) { c.compare_motor(s); });
    if (fault.kind == FaultKind::Setting && fault.plug >= 0) c.set_wrongly(fault.plug);
  }
  std::sort(c.shown.begin(), c.shown.end());
  c.shown.erase(std::unique(c.shown.begin(), c.shown.end()), c.shown.end());
  return std::move(c.shown);
}

}  // namespace plugward
