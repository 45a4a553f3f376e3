// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/function_check_test.cpp.
#include "judge/function_check.h"

#include <algorithm>

#include "base/format.h"
#include "judge/words.h"

namespace plugward {
namespace {

/// How an end fares: what it meets is right, not known, or wrong.
enum class Fare { Right, Unknown, Wrong, Missing };

class Checker {
 public:
  Checker(const Fitting& fitting, std::span<const Contact> contacts)
      : fitting_(fitting), contacts_(contacts) {}

  FunctionCheck run() {
    for (const WishGroup& group : groups(*fitting_.harness)) check(group);
    return std::move(result_);
  }

 private:
  std::vector<Contact> contacts_of(TerminalRef terminal) const {
    std::vector<Contact> found;
    for (const Contact& contact : contacts_) {
      if (lead_of(fitting_, contact).to == terminal) found.push_back(contact);
    }
    return found;
  }

  /// Connected inside the device to a terminal that has a contact with a pin that is connected to something.
  bool joined_to_a_contact(TerminalRef terminal) const {
    const Device& device = fitting_.harness->devices[static_cast<std::size_t>(terminal.device)];
    for (const Part& part : device.parts) {
      const auto* join = std::get_if<Join>(&part);
      if (join == nullptr) continue;
      const TerminalIndex other = join->a == terminal.terminal   ? join->b
                                  : join->b == terminal.terminal ? join->a
                                                                 : -1;
      if (other < 0) continue;
      const std::vector<Contact> met = contacts_of({terminal.device, other});
      if (std::any_of(met.begin(), met.end(), [this](const Contact& contact) {
            return pin_of(fitting_, contact).function != PinFunction::Unused;
          }))
        return true;
    }
    return false;
  }

  /// A switch that ties signals to a joined ground counts as its ground's plug does; a terminal whose only
  /// lead is in a plug that is not placed is judged when that plug is.
  bool waits_for_another_plug(TerminalRef terminal) const {
    return leaded(*fitting_.harness, terminal) && !placed(fitting_, terminal);
  }

  /// Some touched lead goes nobody knows where: it may be the one that a terminal seems to lack.
  bool a_lead_is_unknown() const { return brings_unknown(fitting_, contacts_); }

  /// On a pin that is connected to nothing it is as open as without a lead.
  bool open_and_fine(const Pin& pin, TerminalRef terminal) const {
    return pin.function == PinFunction::Unused &&
           (fitting_.harness->terminal(terminal).optional || joined_to_a_contact(terminal));
  }

  Fare fare(const End& end) const {
    const std::vector<Contact> met = contacts_of(end.terminal);
    const Terminal& terminal = fitting_.harness->terminal(end.terminal);
    if (met.empty()) {
      if (a_lead_is_unknown() && end.wish != Wish::Nothing && !terminal.optional) return Fare::Unknown;
      const bool fine = end.wish == Wish::Nothing || end.wish == Wish::Any || terminal.optional ||
                        waits_for_another_plug(end.terminal) || joined_to_a_contact(end.terminal);
      return fine ? Fare::Right : Fare::Missing;
    }
    Fare worst = Fare::Right;
    for (const Contact& contact : met) {
      const Pin& pin = pin_of(fitting_, contact);
      if (pin.function == PinFunction::Unknown) {
        worst = std::max(worst, Fare::Unknown);
      } else if (open_and_fine(pin, end.terminal)) {
        continue;
      } else if (!grants(pin, end)) {
        worst = std::max(worst, Fare::Wrong);
      }
    }
    return worst;
  }

  int misses(const Alternative& alternative) const {
    int sum = 0;
    for (const End& end : alternative.ends) {
      const Fare f = fare(end);
      sum += f == Fare::Right ? 0 : f == Fare::Unknown ? 1 : 100;
    }
    return sum;
  }

  void check(const WishGroup& group) {
    const auto best = std::min_element(
        group.alternatives.begin(), group.alternatives.end(),
        [this](const Alternative& a, const Alternative& b) { return misses(a) < misses(b); });
    if (misses(*best) >= 100 && report_split_coil(*best)) return;
    for (const End& end : best->ends) report(end);
    if (best->motor_turned && misses(*best) == 0) report_turned_motor(*best);
  }

  void report(const End& end) {
    const Fare f = fare(end);
    const std::string name = terminal_name(fitting_, end.terminal);
    if (f == Fare::Missing) {
      Finding finding;
      finding.rule = Rule::NotConnected;
      finding.weight = Weight::Fault;
      finding.message = format("terminal {} meets no pin; it wants {}", name, to_words(end));
      finding.first = fitting_.harness->terminal(end.terminal).span;
      finding.at.device = end.terminal.device;
      finding.at.terminal = end.terminal.terminal;
      if (!leaded(*fitting_.harness, end.terminal)) finding.part = "lead";
      result_.findings.push_back(std::move(finding));
      return;
    }
    if (end.wish == Wish::Any) report_unknown_terminal(end);
    if (end.wish == Wish::Return && f == Fare::Right) report_always_on(end);
    if (end.wish == Wish::Return && f == Fare::Right) report_other_channel(end);
    if (f != Fare::Wrong) return;
    for (const Contact& contact : contacts_of(end.terminal)) {
      const Pin& pin = pin_of(fitting_, contact);
      if (pin.function == PinFunction::Unknown || grants(pin, end)) continue;
      if (open_and_fine(pin, end.terminal)) continue;
      Finding finding;
      finding.rule = Rule::WrongFunction;
      finding.weight = Weight::Fault;
      finding.message = format("terminal {} ({}) wants {} and meets {}, {}", name,
                               to_code(lead_of(fitting_, contact).colour), to_words(end),
                               pin_name(fitting_, contact), to_words(pin));
      finding.at = locus_of(fitting_, contact);
      finding.first = lead_of(fitting_, contact).span;
      finding.second = pin.span;
      finding.second_says = format("{} is declared here", pin_name(fitting_, contact));
      result_.findings.push_back(std::move(finding));
    }
  }

  /// Is it the minus of a load that switches a heater, and is its plus on a rail?
  bool feeds_a_heater(TerminalRef minus) const {
    const Device& device = fitting_.harness->devices[static_cast<std::size_t>(minus.device)];
    if (device.use != "heater") return false;
    return std::any_of(device.parts.begin(), device.parts.end(), [&](const Part& part) {
      const auto* load = std::get_if<Load>(&part);
      if (load == nullptr || load->minus != minus.terminal) return false;
      const std::vector<Contact> plus = contacts_of({minus.device, load->plus});
      return std::any_of(plus.begin(), plus.end(), [&](const Contact& contact) {
        return pin_of(fitting_, contact).function == PinFunction::Supply;
      });
    });
  }

  /// A load whose minus is ground itself: the firmware has no say, which is harmless but where the load
  /// switches a heater (a relay, an amplifier). There an output that is on at reset is no better.
  void report_always_on(const End& end) {
    const bool heats = feeds_a_heater(end.terminal);
    for (const Contact& contact : contacts_of(end.terminal)) {
      const Pin& pin = pin_of(fitting_, contact);
      const bool at_reset = heats && pin.function == PinFunction::Switched && pin.on_at_reset.value_or(false);
      if (pin.function != PinFunction::Ground && !at_reset) continue;
      Finding finding;
      finding.rule = Rule::AlwaysOn;
      finding.weight = heats ? Weight::Harm : Weight::Note;
      finding.message =
          at_reset
              ? format("{} is on at reset: what hangs on {} heats before the firmware runs",
                       pin_name(fitting_, contact), terminal_name(fitting_, end.terminal))
              : format("{} is ground, not a switched output: what hangs on {} {} whenever the board has power",
                       pin_name(fitting_, contact), terminal_name(fitting_, end.terminal),
                       heats ? tr("heats") : tr("runs"));
      finding.at = locus_of(fitting_, contact);
      finding.first = lead_of(fitting_, contact).span;
      finding.second = pin_of(fitting_, contact).span;
      finding.second_says = format("{} is declared here", pin_name(fitting_, contact));
      result_.findings.push_back(std::move(finding));
    }
  }

  /// A switched load on the switch of another name: it works, and the firmware must know.
  void report_other_channel(const End& end) {
    for (const Contact& contact : contacts_of(end.terminal)) {
      const Pin& pin = pin_of(fitting_, contact);
      if (pin.function != PinFunction::Switched || same_signal(pin.signal, end.signal)) continue;
      const std::string name = terminal_name(fitting_, end.terminal);
      Finding finding;
      finding.rule = Rule::WrongFunction;
      finding.weight = Weight::Note;
      finding.message = format("terminal {} is for '{}' and meets {}, {}", name, end.signal,
                               pin_name(fitting_, contact), to_words(pin));
      finding.at = locus_of(fitting_, contact);
      finding.first = lead_of(fitting_, contact).span;
      finding.second = pin.span;
      finding.second_says = format("{} is declared here", pin_name(fitting_, contact));
      result_.findings.push_back(std::move(finding));
      result_.settings.push_back(
          {format("the output on {} drives {} ('{}')", pin_name(fitting_, contact), name, end.signal),
           format("its own name is '{}'", pin.signal), false, contact.header, contact.pin});
    }
  }

  /// A terminal of no stated use that a part drives or reads, or that no part touches: not a node inside.
  bool leads_out(TerminalRef ref) const {
    const Device& device = fitting_.harness->devices[static_cast<std::size_t>(ref.device)];
    if (fitting_.harness->terminal(ref).function == TerminalFunction::Unknown) return true;
    bool touched = false;
    for (const Part& part : device.parts) {
      const std::vector<TerminalIndex> ends = ends_of(part);
      if (std::find(ends.begin(), ends.end(), ref.terminal) == ends.end()) continue;
      const auto* driver = std::get_if<Driver>(&part);
      const auto* receiver = std::get_if<Receiver>(&part);
      if ((driver != nullptr && driver->terminal == ref.terminal) ||
          (receiver != nullptr && receiver->terminal == ref.terminal)) {
        return true;
      }
      touched = true;
    }
    return !touched;
  }

  /// It meets nothing, and whether it needs to is not known.
  void report_idle_terminal(const End& end) {
    const Terminal& terminal = fitting_.harness->terminal(end.terminal);
    if (terminal.optional || !leads_out(end.terminal) || waits_for_another_plug(end.terminal) ||
        joined_to_a_contact(end.terminal)) {
      return;
    }
    Finding finding;
    finding.rule = Rule::UnknownLead;
    finding.weight = Weight::Doubt;
    finding.message = format("what terminal {} is for is not known, and it meets no pin",
                             terminal_name(fitting_, end.terminal));
    finding.at.device = end.terminal.device;
    finding.at.terminal = end.terminal.terminal;
    finding.first = terminal.span;
    finding.measurement = what_for(end);
    result_.findings.push_back(std::move(finding));
  }

  Measurement what_for(const End& end) const {
    return {format("read the device's type plate or data sheet for terminal {}",
                   terminal_name(fitting_, end.terminal)),
            tr("its function; then state it in the harness file"), 0,
            format("what terminal {} is for", terminal_name(fitting_, end.terminal))};
  }

  void report_unknown_terminal(const End& end) {
    if (contacts_of(end.terminal).empty()) report_idle_terminal(end);
    for (const Contact& contact : contacts_of(end.terminal)) {
      Finding finding;
      finding.rule = Rule::UnknownLead;
      finding.weight = Weight::Doubt;
      finding.message =
          format("what terminal {} ({}) is for is not known, and it meets {}, {}",
                 terminal_name(fitting_, end.terminal), to_code(lead_of(fitting_, contact).colour),
                 pin_name(fitting_, contact), to_words(pin_of(fitting_, contact)));
      finding.at = locus_of(fitting_, contact);
      finding.first = fitting_.harness->terminal(end.terminal).span;
      finding.second = pin_of(fitting_, contact).span;
      finding.second_says = format("{} is declared here", pin_name(fitting_, contact));
      finding.measurement = what_for(end);
      result_.findings.push_back(std::move(finding));
    }
  }

  /// All four ends on bridge pins, yet no order of the eight: each winding lies across two bridges.
  bool report_split_coil(const Alternative& alternative) {
    if (alternative.ends.size() != 4 || alternative.ends.front().wish != Wish::CoilEnd) return false;
    std::vector<std::string> met;
    Span first;
    Span second;
    for (const End& end : alternative.ends) {
      const auto contacts = contacts_of(end.terminal);
      if (contacts.size() != 1) return false;
      const Pin& pin = pin_of(fitting_, contacts.front());
      if (pin.function != PinFunction::Coil) return false;
      met.push_back(
          format("{} meets bridge {} end {}", terminal_name(fitting_, end.terminal), pin.coil, pin.coil_end));
      if (!first.known()) first = lead_of(fitting_, contacts.front()).span;
      if (!second.known()) second = pin.span;
    }
    Finding finding;
    finding.rule = Rule::SplitCoil;
    finding.weight = Weight::Fault;
    finding.message =
        format("each winding of the motor lies across two bridges, so it shakes and does not turn: {}",
               join(met, ", "));
    finding.first = first;
    finding.second = second;
    finding.second_says = tr("the header's bridges are declared here");
    result_.findings.push_back(std::move(finding));
    return true;
  }

  void report_turned_motor(const Alternative& alternative) {
    const auto contacts = contacts_of(alternative.ends.front().terminal);
    if (contacts.empty()) return;
    const Contact& contact = contacts.front();
    const std::string header = header_of(fitting_, contact.header).id;
    Finding finding;
    finding.rule = Rule::TurnedMotor;
    finding.weight = Weight::Note;
    finding.message = format("the motor runs, but the other way round than its labels say on '{}'", header);
    finding.first = lead_of(fitting_, contact).span;
    finding.second = pin_of(fitting_, contact).span;
    finding.second_says = tr("the header's bridges are declared here");
    result_.findings.push_back(std::move(finding));
    result_.settings.push_back({format("invert the direction of the motor on '{}'", header),
                                tr("a setting does here what moving contacts would do"), true,
                                contact.header});
  }

  const Fitting& fitting_;
  std::span<const Contact> contacts_;
  FunctionCheck result_;
};

bool has_lead(const Plug& plug, TerminalRef terminal) {
  return std::any_of(plug.leads.begin(), plug.leads.end(),
                     [&](const Lead& lead) { return lead.to == terminal; });
}

}  // namespace

bool placed(const Fitting& fitting, TerminalRef terminal) {
  return std::any_of(fitting.placements.begin(), fitting.placements.end(),
                     [&](const Placement& p) { return has_lead(plug_of(fitting, p.plug), terminal); });
}

bool leaded(const Harness& harness, TerminalRef terminal) {
  return std::any_of(harness.plugs.begin(), harness.plugs.end(),
                     [&](const Plug& plug) { return has_lead(plug, terminal); });
}

bool brings_unknown(const Fitting& fitting, std::span<const Contact> contacts) {
  return std::any_of(contacts.begin(), contacts.end(), [&](const Contact& contact) {
    return !lead_of(fitting, contact).to && pin_of(fitting, contact).function != PinFunction::Unused;
  });
}

FunctionCheck check_functions(const Fitting& fitting, std::span<const Contact> contacts) {
  return Checker(fitting, contacts).run();
}

}  // namespace plugward
