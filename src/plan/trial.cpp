// SPDX-License-Identifier: MIT
// Looks first, then ohms at the plug in the hand and at the empty header, then volts at the empty header,
// then volts with the plug on. Tested in tests/unit/plan/causes_test.cpp.
#include "plan/trial.h"

#include <algorithm>
#include <memory>
#include <set>

#include "base/format.h"
#include "plan/fault_words.h"

namespace plugward {
namespace {

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

// Efforts. A meter at the device's own end means opening something there.
constexpr double look = 0.0, look_closely = 0.2, watch = 0.3, beep = 1.0, beep_along = 1.3, bare_volts = 2.0,
                 live_volts = 2.5, change_over = 2.2;

/// From a pin to ground, below it something behind the pin is destroyed or conducts (common practice).
constexpr double held_ohms = 100.0;

bool on_the_board(const MachineFault& fault) {
  return fault.kind == FaultKind::SwitchOn || fault.kind == FaultKind::OutputDead ||
         fault.kind == FaultKind::InputHeld || fault.kind == FaultKind::Setting ||
         fault.kind == FaultKind::RailMissing || fault.kind == FaultKind::WrongJumper;
}

/// The machines with each cause in them, the healthy one last.
struct Machines {
  const Observer& observer;
  const Fitting& whole;
  const std::vector<Cause>& causes;
  std::vector<std::unique_ptr<FaultyMachine>> list{};
  std::vector<int> groups{};
  std::vector<Trial> found{};

  Machines(const Observer& o, const std::vector<Cause>& c) : observer(o), whole(o.fitting()), causes(c) {
    for (const Cause& cause : causes) list.push_back(std::make_unique<FaultyMachine>(whole, cause.fault));
    list.push_back(std::make_unique<FaultyMachine>(whole));
    groups = plug_groups(*whole.harness);
  }

  const Plug& plug(int index) const { return whole.harness->plugs[at(index)]; }
  int header_of(int index) const {
    const int placed = placement_of_plug(whole, index);
    return placed < 0 ? -1 : whole.placements[at(placed)].header;
  }

  /// Keeps a trial that tells something.
  void keep(Trial trial, std::vector<std::string> says) {
    trial.healthy = says.back();
    says.pop_back();
    const bool same = std::all_of(says.begin(), says.end(), [&](const auto& s) { return s == says.front(); });
    if (same && (causes.size() > 1 || says.front() == trial.healthy)) return;
    trial.says = std::move(says);
    found.push_back(std::move(trial));
  }

  template <class Says>
  void keep_each(Trial trial, Says says) {
    std::vector<std::string> texts;
    for (const Cause& cause : causes) texts.push_back(says(cause.fault));
    MachineFault none;
    none.kind = FaultKind::Setting;
    texts.push_back(says(none));
    keep(std::move(trial), std::move(texts));
  }

  void look_at_plug(int index) {
    const int header = header_of(index);
    keep_each({MeterPower::None,
               format("look where and how '{}' sits; it belongs on {}", plug(index).id,
                      header_words(whole, header)),
               look},
              [&](const MachineFault& f) { return seat_words(whole, index, f); });
    std::vector<std::string> orders;
    for (const auto& machine : list) {
      std::vector<std::string> cells;
      for (int cavity = 1; cavity <= plug(index).positions; ++cavity) {
        // A whisker is listed last and cannot be seen: the first lead in a cavity counts.
        std::string cell = "empty";
        for (const Lead& lead : plug(index).leads) {
          const auto i = static_cast<int>(&lead - plug(index).leads.data());
          const auto& held = machine->held[at(index)];
          const auto here =
              std::find_if(held.begin(), held.end(), [&](const HeldContact& h) { return h.lead == i; });
          const bool open = here == held.end();
          if ((open ? lead.cavity : here->cavity) == cavity) cell = colour_words(lead);
        }
        cells.push_back(format("{} {}", cavity, cell));
      }
      orders.push_back(format("{}", join(cells, ", ")));
    }
    keep(
        {MeterPower::None,
         format("read the leads of '{}' from the wire side, cavity by cavity", plug(index).id), look_closely},
        std::move(orders));
  }

  void look_at_jumpers() {
    std::set<std::string> jumpers;
    for (const Cause& cause : causes) {
      if (cause.fault.kind == FaultKind::WrongJumper) jumpers.insert(cause.fault.jumper);
    }
    for (const std::string& jumper : jumpers) {
      keep_each({MeterPower::None, format("look where jumper {} sits", jumper), look},
                [&](const MachineFault& f) {
                  return format("at {}", f.jumper == jumper ? f.rail : whole.jumpers.at(jumper));
                });
    }
  }

  void watch_others(Symptom asked) {
    std::set<Showing> others;
    for (const Cause& cause : causes) others.insert(cause.shows.begin(), cause.shows.end());
    for (const Showing& other : others) {
      if (other.symptom == asked) continue;
      std::vector<std::string> texts;
      for (const Cause& cause : causes) {
        const bool shows = std::find(cause.shows.begin(), cause.shows.end(), other) != cause.shows.end();
        texts.emplace_back(shows ? "yes" : "no");
      }
      texts.emplace_back("no");
      const std::string who =
          other.plug < 0 ? "the board" : format("what hangs on '{}'", plug(other.plug).id);
      keep({MeterPower::On, format("watch {}: does this hold too? {}", who, words_of(other.symptom).sees),
            watch, true},
           std::move(texts));
    }
  }

  std::string cavity_words(int index, int cavity) const {
    const Lead* lead = plug(index).lead_in(cavity);
    return lead == nullptr ? format("{} (empty)", cavity) : format("{} ({})", cavity, colour_words(*lead));
  }

  std::vector<int> cavities(int index) const {
    std::set<int> used;
    for (const auto& machine : list) {
      for (const HeldContact& h : machine->held[at(index)]) used.insert(h.cavity);
    }
    return {used.begin(), used.end()};
  }

  template <class Ohms>
  void keep_ohms(Trial trial, Ohms ohms) {
    std::vector<HandOhms> figures;
    for (const auto& machine : list) figures.push_back(ohms(*machine));
    keep(std::move(trial), ohm_readings(figures));
  }

  bool has_switch(int index) const {
    for (const Lead& lead : plug(index).leads) {
      if (!lead.to) continue;
      for (const Part& part : whole.harness->devices[at(lead.to->device)].parts) {
        if (std::holds_alternative<Switch>(part)) return true;
      }
    }
    return false;
  }

  void beep_plug(int index) {
    const std::vector<int> used = cavities(index);
    for (std::size_t a = 0; a < used.size(); ++a) {
      for (std::size_t b = a + 1; b < used.size(); ++b) {
        for (const Hand hand : {Hand::Rest, Hand::Worked}) {
          if (hand == Hand::Worked && !has_switch(index)) continue;
          const std::string_view held = !has_switch(index)   ? ""
                                        : hand == Hand::Rest ? ", nothing touched"
                                                             : ", its switch worked by hand";
          keep_ohms(
              {MeterPower::Off,
               format("take '{}' off; ohms between its cavities {} and {}, red meter lead at the first{}",
                      plug(index).id, cavity_words(index, used[a]), cavity_words(index, used[b]), held),
               beep},
              [&](const FaultyMachine& m) {
                return ohms_in_hand(m.fitting, index, m.held[at(index)], used[a], used[b], hand);
              });
        }
      }
    }
    for (const Lead& lead : plug(index).leads) {
      if (!lead.to || lead.cavity < 1) continue;
      keep_ohms(
          {MeterPower::Off,
           format("take '{}' off; ohms along the {} lead, from cavity {} to {}, wiggling it", plug(index).id,
                  colour_words(lead), lead.cavity, whole.harness->terminal_name(*lead.to)),
           beep_along},
          [&](const FaultyMachine& m) {
            const double ohms = ohms_along(m.fitting, index, m.held[at(index)], lead.cavity, *lead.to);
            return HandOhms{ohms, ohms >= open_ohms};
          });
    }
  }

  /// The header's own ground, else the supply's minus, and its first supply pin.
  PinRef of_function(int header, PinFunction function) const {
    for (const Pin& pin : whole.board->headers[at(header)].pins) {
      if (pin.function == function) return {header, pin.number};
    }
    return {};
  }

  template <class Contacts>
  void keep_volts(Trial trial, PinRef red, PinRef black, Hand hand, int index, Contacts contacts) {
    std::vector<Band> figures;
    for (const auto& machine : list) {
      const GroupView view(*machine, groups, {groups[at(index)]});
      figures.push_back(volts_at(view.fitting, contacts(view), red, black, hand));
    }
    keep(std::move(trial), volt_readings(figures));
  }

  void measure_header(int index) {
    const int header = header_of(index);
    if (header < 0) return;
    const PinRef ground = of_function(header, PinFunction::Ground);
    const PinRef supply = of_function(header, PinFunction::Supply);
    const std::string minus = ground.header < 0 ? "the supply's minus" : pin_words(whole, ground);
    const auto nothing = [](const GroupView&) { return std::vector<Contact>{}; };
    const auto plugged = [](const GroupView& view) { return view.contacts; };
    const Seating home = home_seating(plug(index), header, *whole.board);
    for (const Lead& lead : plug(index).leads) {
      const int number = lead.cavity < 1 ? 0 : home.pin_of_cavity[at(lead.cavity) - 1];
      if (number == 0) continue;
      const PinRef pin{header, number};
      const PinFunction function = whole.board->headers[at(header)].pin(number).function;
      if (function == PinFunction::Ground || function == PinFunction::Coil) continue;
      const bool input = function == PinFunction::Input, switched = function == PinFunction::Switched;
      if (input || switched) {
        std::vector<std::string> texts;
        for (const auto& machine : list) {
          const bool held = ohms_to_ground(machine->fitting, {}, pin, Hand::Rest) < held_ohms;
          texts.push_back(format("{} {} ohm", held ? "below" : "more than", held_ohms));
        }
        keep({MeterPower::Off,
              format("take '{}' off; ohms from {} to {}, red meter lead at the first", plug(index).id,
                     pin_words(whole, pin), minus),
              beep},
             std::move(texts));
      }
      const PinRef red = switched && supply.header >= 0 ? supply : pin;
      const PinRef black = switched && supply.header >= 0 ? pin : ground;
      const std::string between =
          format("{} and {}", pin_words(whole, red), black == ground ? minus : pin_words(whole, black));
      keep_volts({MeterPower::On,
                  format("'{}' off the board, power on, nothing commanded: volts between {}", plug(index).id,
                         between),
                  bare_volts},
                 red, black, Hand::Rest, index, nothing);
      if (function == PinFunction::Output) continue;
      for (const Hand hand : {Hand::Rest, Hand::Worked}) {
        if (hand == Hand::Worked && !input) continue;
        keep_volts(
            {MeterPower::On,
             format("'{}' as it is, power on, nothing commanded: volts between {}{}", plug(index).id, between,
                    !input               ? ""
                    : hand == Hand::Rest ? ", nothing touched"
                                         : ", the switch or sensor worked by hand"),
             live_volts, true},
            red, black, hand, index, plugged);
      }
    }
  }

  /// On the header of a plug that does the same, an error of the cable goes along and one of the board stays.
  void change_headers(int index) {
    const int home = header_of(index);
    for (const Placement& other : whole.placements) {
      MachineFault exchange;
      exchange.kind = FaultKind::PlugsExchanged;
      exchange.plug = index;
      exchange.other_plug = other.plug;
      const auto fits = [&](int a, int header) {
        return mate(plug(a), whole.board->headers[at(header)], *whole.catalogue).kind == MateKind::Fits;
      };
      if (other.plug == index || !fits(index, other.header) || !fits(other.plug, home)) continue;
      const auto shown = observer.showing(exchange, FaultyMachine(whole, exchange));
      const bool harmless = !shown.empty() && std::all_of(shown.begin(), shown.end(), [](const Showing& s) {
        return s.symptom == Symptom::WrongOne;
      });
      if (!harmless) continue;
      keep_each({MeterPower::On,
                 format("power off, exchange '{}' and '{}', power on: what you saw", plug(index).id,
                        plug(other.plug).id),
                 change_over, true},
                [&](const MachineFault& f) -> std::string {
                  if (f.plug < 0) return "is the same on both";
                  if (f.kind == FaultKind::Setting && f.plug != index) return "";
                  return on_the_board(f) ? format("stays with {}", header_words(whole, home))
                                         : format("goes along to {}", header_words(whole, other.header));
                });
      return;
    }
  }

  /// Which plug shorts a rail: the safe way round, from the bare board on.
  void plug_by_plug() {
    std::vector<std::string> texts;
    for (const Cause& cause : causes) {
      texts.push_back(cause.shorts_by_hand && cause.fault.plug >= 0
                          ? format("it falls with '{}'", plug(cause.fault.plug).id)
                          : "it never falls");
    }
    texts.emplace_back("it never falls");
    keep({MeterPower::Off,
          "take every plug off; ohms from each rail to ground; then put the plugs on one at a time, each as "
          "it was "
          "before, measuring after each, also with its switch worked by hand: with which one does the "
          "reading fall "
          "below 2 ohm?",
          beep},
         std::move(texts));
  }
};

}  // namespace

std::vector<Trial> trials(const Observer& observer, const std::vector<Cause>& causes, Symptom asked) {
  Machines machines(observer, causes);
  std::set<int> plugs;
  for (const Cause& cause : causes) {
    for (const int plug : {cause.fault.plug, cause.fault.other_plug}) {
      if (plug >= 0) plugs.insert(plug);
    }
  }
  if (asked == Symptom::Dies && plugs.size() > 1) machines.plug_by_plug();
  if (plugs.size() > 6) return std::move(machines.found);
  machines.look_at_jumpers();
  machines.watch_others(asked);
  for (const int plug : plugs) {
    machines.look_at_plug(plug);
    machines.beep_plug(plug);
    machines.measure_header(plug);
    if (asked != Symptom::Dies) machines.change_headers(plug);
  }
  return std::move(machines.found);
}

}  // namespace plugward
