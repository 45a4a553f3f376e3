// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/work_test.cpp.
#include "plan/firmware.h"

#include <algorithm>
#include <optional>
#include <set>

#include "base/format.h"
#include "judge/sense.h"
#include "judge/words.h"
#include "plan/firmware_checks.h"
#include "plan/meter.h"

namespace plugward {
namespace {

/// Two directions in words, rated current, what the driver gives.
std::string motor_words(const Device& device, const Pin& pin) {
  std::optional<Amps> rated;
  for (const Part& part : device.parts) {
    const auto* coil = std::get_if<Coil>(&part);
    if (coil != nullptr && coil->amps) rated = rated ? std::min(*rated, *coil->amps) : *coil->amps;
  }
  if (!rated) {
    return format("current: the motor's rating is not stated{}; read its plate",
                  pin.limit ? format(", the driver gives up to {}", to_text(*pin.limit)) : "");
  }
  const bool weaker = pin.limit && *pin.limit < *rated;
  return format("current no more than {}{}", to_text(weaker ? *pin.limit : *rated),
                weaker      ? format(" (the motor is rated {})", to_text(*rated))
                : pin.limit ? format(" (the driver gives up to {})", to_text(*pin.limit))
                            : "");
}

std::string pull_words(const Board& board, const Pin& pin) {
  if (!pin.pull)
    return tr("no pull on the board: switch the pin's own on, unless the device drives both ways");
  const Rail* rail = board.rail(pin.rail);
  const std::string ohms = pin.pull->ohms.value > 0 ? to_text(pin.pull->ohms) : tr("a resistor");
  const std::string where = pin.pull->up
                                ? format("{} to {}", ohms, rail != nullptr ? rail->id : tr("its supply"))
                                : format("{} to ground", ohms);
  if (pin.withstands_pulled)
    return format("pulled by {}, switchable: on only up to {}", where, to_text(*pin.withstands_pulled));
  return format("pulled by {}", where);
}

std::string sensor_words(const TemperatureSensor& s, const Board& board, const Pin& pin) {
  if (!(s.nominal.value > 0.0)) return format("its ohms are not stated; {}", pull_words(board, pin));
  const std::string kind =
      s.beta ? format("thermistor, {} at 25 C, beta {}", to_text(s.nominal), to_text(*s.beta))
             : format("platinum sensor, {} at 0 C", to_text(s.nominal));
  return format("{}; {}", kind, pull_words(board, pin));
}

/// "nozzle" of "nozzle-heater/heater": what plugs of one place on the machine share.
std::string place_word(const std::string& plug) {
  return plug.substr(0, plug.find_first_of("-_./"));
}

bool heats(const Device& device) {
  return device.use == "heater" ||
         std::any_of(device.parts.begin(), device.parts.end(),
                     [](const Part& part) { return std::holds_alternative<Heater>(part); });
}

const TemperatureSensor* sensor_of(const Device& device) {
  for (const Part& part : device.parts) {
    if (const auto* s = std::get_if<TemperatureSensor>(&part)) return s;
  }
  return nullptr;
}

bool rotates(const Device& device) {
  return std::any_of(device.parts.begin(), device.parts.end(),
                     [](const Part& part) { return std::holds_alternative<Coil>(part); });
}

/// Does anything that takes current end at this terminal?
bool carries_load(const Device& device, TerminalIndex terminal) {
  const std::vector<TerminalIndex> net = joined_to(device, terminal);
  return std::any_of(device.parts.begin(), device.parts.end(), [&](const Part& part) {
    const auto* load = std::get_if<Load>(&part);
    return load != nullptr && std::find(net.begin(), net.end(), load->minus) != net.end();
  });
}

class SettingsWriter {
 public:
  explicit SettingsWriter(const Fitting& fitting)
      : fitting_(fitting),
        contacts_(as_described(fitting).contacts),
        senses_(input_senses(fitting, contacts_)) {}

  std::vector<FirmwareSetting> run() {
    std::sort(contacts_.begin(), contacts_.end(), [](const Contact& a, const Contact& b) {
      return std::pair(a.plug, a.pin) < std::pair(b.plug, b.pin);
    });
    for (const Contact& contact : contacts_) {
      const Lead& lead = lead_of(fitting_, contact);
      if (lead.to) add(contact, *lead.to, pin_of(fitting_, contact));
    }
    return std::move(rows_);
  }

 private:
  const Device& device(TerminalRef ref) const {
    return fitting_.harness->devices[static_cast<std::size_t>(ref.device)];
  }

  void put(FirmwareRole role, const Contact& contact, std::string_view thing, std::string tell,
           bool whole_header = false) {
    const Pin& pin = pin_of(fitting_, contact);
    FirmwareSetting s;
    s.role = role;
    s.plug = contact.plug;
    s.header = contact.header;
    s.pin = whole_header ? 0 : contact.pin;
    s.net = whole_header ? "" : pin.net;
    const Header& header = header_of(fitting_, contact.header);
    const std::string where =
        whole_header ? format("{}{}", header.id, header.label.empty() ? "" : format(" ({})", header.label))
                     : format("{}{}", pin_name(fitting_, contact),
                              pin.net.empty() ? tr(" (net not stated)") : format(" (net {})", pin.net));
    s.what = format("{} {}, '{}'", thing, where, plug_of(fitting_, contact.plug).id);
    s.tell = std::move(tell);
    add_check(s, pin.signal);
    rows_.push_back(std::move(s));
  }

  void add(const Contact& contact, TerminalRef to, const Pin& pin) {
    switch (pin.function) {
      case PinFunction::Input:
        add_input(contact, to, pin);
        return;
      case PinFunction::Output:
        add_output(contact, to, pin);
        return;
      case PinFunction::Switched:
        add_switched(contact, to);
        return;
      case PinFunction::Coil:
        if (rotates(device(to)) && motors_.insert(contact.plug).second)
          put(FirmwareRole::Motor, contact, tr("driver of"), motor_words(device(to), pin), true);
        return;
      case PinFunction::Ground:
        if (fitting_.harness->terminal(to).function == TerminalFunction::Return &&
            carries_load(device(to), to.terminal)) {
          put(FirmwareRole::AlwaysOn, contact, tr("always on:"),
              tr("runs whenever the board has power; do not give its old output another use"), true);
        }
        return;
      default:
        return;
    }
  }

  void add_input(const Contact& contact, TerminalRef to, const Pin& pin) {
    if (pin.analogue) {
      const TemperatureSensor* sensor = sensor_of(device(to));
      if (sensor != nullptr)
        put(FirmwareRole::Sensor, contact, tr("temperature on"), sensor_words(*sensor, *fitting_.board, pin));
      return;
    }
    const auto sense = std::find_if(senses_.begin(), senses_.end(), [&](const Setting& s) {
      return s.header == contact.header && s.pin == contact.pin;
    });
    std::string level = tr("its level at rest is not stated: see what M119 tells");
    if (sense != senses_.end()) level = sense->level;
    if (pin.signal == "tach")
      level = tr("two pulses a turn are usual (4-Wire PWM Controlled Fans Specification)");
    put(FirmwareRole::Sense, contact, tr("input"), format("{}; {}", level, pull_words(*fitting_.board, pin)));
  }

  void add_output(const Contact& contact, TerminalRef to, const Pin& pin) {
    const Device& d = device(to);
    if (pin.signal == "servo") {
      put(FirmwareRole::Servo, contact, tr("output"),
          tr("servo pulses for the probe; which probe mode (it drives its trigger, or only pulls it low) its "
             "own "
             "page tells"));
    } else if (pin.signal == "led-data" || d.leds) {
      std::string tell =
          d.leds ? format("LED data, {} LEDs; the order of the colours is not known here", d.leds->count)
                 : tr("LED data; count and order of the colours are not known here");
      if (d.leds && d.leds->brightness && *d.leds->brightness < 1.0)
        tell += format("; no more than {:.3g} % bright", 100.0 * *d.leds->brightness);
      put(FirmwareRole::Leds, contact, tr("output"), std::move(tell));
    } else {
      put(FirmwareRole::Line, contact, tr("output"),
          pin.signal.empty() ? tr("its use is not stated") : pin.signal);
    }
  }

  void add_switched(const Contact& contact, TerminalRef to) {
    const Device& d = device(to);
    if (!heats(d)) {
      put(FirmwareRole::Fan, contact, tr("switched output"),
          tr("switched by the firmware; a fan that must never stand "
             "still gets a role that says so"));
      return;
    }
    const std::string sensor = sensor_beside(contact.plug);
    put(FirmwareRole::Heater, contact, tr("heater output"),
        format("heats; its sensor is {}; runaway protection stays on", sensor));
  }

  /// By name: the only thing that tells which sensor sits in which heater.
  std::string sensor_beside(int heater) const {
    const std::string place = place_word(plug_of(fitting_, heater).id);
    for (const Contact& c : contacts_) {
      const Lead& lead = lead_of(fitting_, c);
      const Pin& pin = pin_of(fitting_, c);
      if (!lead.to || !pin.analogue || sensor_of(device(*lead.to)) == nullptr) continue;
      const std::string& id = plug_of(fitting_, c.plug).id;
      if (place_word(id) == place)
        return format("'{}' on {}, by its name: make sure", id, pin_name(fitting_, c));
    }
    return tr("not told by any name: follow its lead");
  }

  const Fitting& fitting_;
  std::vector<Contact> contacts_;
  std::vector<Setting> senses_;
  std::set<int> motors_;
  std::vector<FirmwareSetting> rows_;
};

/// The nth row of this plug and role.
const FirmwareSetting* counterpart(const std::vector<FirmwareSetting>& rows, const FirmwareSetting& of,
                                   int nth) {
  for (const FirmwareSetting& row : rows) {
    if (row.plug == of.plug && row.role == of.role && nth-- == 0) return &row;
  }
  return nullptr;
}

/// Headers whose motor runs the other way than its labels say.
std::set<int> turned_headers(const Fitting& fitting) {
  std::set<int> headers;
  for (const Setting& s : assess(fitting).settings) {
    if (s.inverts && s.header >= 0) headers.insert(s.header);
  }
  return headers;
}

}  // namespace

std::vector<FirmwareSetting> firmware_settings(const Fitting& fitting, const Fitting* before) {
  std::vector<FirmwareSetting> rows = SettingsWriter(fitting).run();
  const std::vector<FirmwareSetting> old =
      before != nullptr ? SettingsWriter(*before).run() : std::vector<FirmwareSetting>{};
  const std::set<int> turned = turned_headers(fitting);
  const std::set<int> was_turned = before != nullptr ? turned_headers(*before) : std::set<int>{};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    FirmwareSetting& row = rows[i];
    const auto earlier =
        std::count_if(rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(i),
                      [&](const FirmwareSetting& r) { return r.plug == row.plug && r.role == row.role; });
    const FirmwareSetting* was = counterpart(old, row, static_cast<int>(earlier));
    bool other_way = false;
    if (row.role == FirmwareRole::Motor) {
      other_way = was != nullptr && turned.contains(row.header) != was_turned.contains(was->header);
      const std::string direction = was == nullptr ? turned.contains(row.header)
                                                         ? tr("direction inverted against its labels")
                                                         : tr("direction as its labels say")
                                    : other_way ? tr("direction the other way round than on the old board")
                                                   : tr("direction as on the old board");
      row.tell = format("{}; {}", direction, row.tell);
    }
    const bool motor = row.role == FirmwareRole::Motor;
    row.changed = was == nullptr || other_way || row.net != was->net || (!motor && row.tell != was->tell) ||
                  (motor && header_of(fitting, row.header).id != header_of(*before, was->header).id);
    if (was == nullptr) continue;
    const std::string& old_header = header_of(*before, was->header).id;
    row.was = motor || was->net.empty() ? old_header
              : row.tell == was->tell   ? was->net
                                        : format("{}: {}", was->net, was->tell);
  }
  return rows;
}

}  // namespace plugward
