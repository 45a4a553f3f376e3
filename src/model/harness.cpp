// SPDX-License-Identifier: MIT
#include "model/harness.h"

#include <algorithm>

#include "base/format.h"

namespace plugward {

std::optional<TerminalIndex> Device::terminal(std::string_view wanted) const {
  for (std::size_t i = 0; i < terminals.size(); ++i) {
    if (terminals[i].id == wanted) return static_cast<TerminalIndex>(i);
  }
  return std::nullopt;
}

const Lead* Plug::lead_in(int cavity) const {
  const auto found =
      std::find_if(leads.begin(), leads.end(), [&](const Lead& lead) { return lead.cavity == cavity; });
  return found == leads.end() ? nullptr : &*found;
}

const Plug* Harness::plug(std::string_view wanted) const {
  const auto found = std::find_if(plugs.begin(), plugs.end(), [&](const Plug& p) { return p.id == wanted; });
  return found == plugs.end() ? nullptr : &*found;
}

const Evidence* Harness::find_evidence(std::string_view wanted) const {
  const auto found =
      std::find_if(evidences.begin(), evidences.end(), [&](const Evidence& e) { return e.id == wanted; });
  return found == evidences.end() ? nullptr : &*found;
}

const Terminal& Harness::terminal(TerminalRef ref) const {
  return devices[static_cast<std::size_t>(ref.device)].terminals[static_cast<std::size_t>(ref.terminal)];
}

std::string Harness::terminal_name(TerminalRef ref) const {
  const std::string& name = terminal(ref).id;
  if (devices.size() == 1) return name;
  return format("{}.{}", devices[static_cast<std::size_t>(ref.device)].id, name);
}

std::vector<TerminalRef> Harness::terminals_named(std::string_view name) const {
  std::vector<TerminalRef> found;
  for (std::size_t d = 0; d < devices.size(); ++d) {
    const Device& device = devices[d];
    const int index = static_cast<int>(d);
    if (const auto t = device.terminal(name)) found.push_back({index, *t});
    const bool named =
        name.size() > device.id.size() && name.starts_with(device.id) && name[device.id.size()] == '.';
    if (!named) continue;
    if (const auto t = device.terminal(name.substr(device.id.size() + 1))) found.push_back({index, *t});
  }
  return found;
}

Span part_span(const Part& part) {
  return std::visit([](const auto& p) { return p.span; }, part);
}

std::string_view part_word(const Part& part) {
  struct Word {
    std::string_view operator()(const Load&) const { return later("load"); }
    std::string_view operator()(const Heater&) const { return later("heater"); }
    std::string_view operator()(const Resistor&) const { return later("resistor"); }
    std::string_view operator()(const Switch&) const { return later("switch"); }
    std::string_view operator()(const Coil&) const { return later("coil"); }
    std::string_view operator()(const TemperatureSensor&) const { return later("temperature-sensor"); }
    std::string_view operator()(const Driver&) const { return later("driver"); }
    std::string_view operator()(const Receiver&) const { return later("receiver"); }
    std::string_view operator()(const Diode&) const { return later("diode"); }
    std::string_view operator()(const Join&) const { return later("join"); }
    std::string_view operator()(const Source&) const { return later("source"); }
    std::string_view operator()(const Regulator&) const { return later("regulator"); }
  };
  return std::visit(Word{}, part);
}

std::string_view to_word(TerminalFunction function) {
  switch (function) {
    case TerminalFunction::Supply:
      return later("supply");
    case TerminalFunction::Ground:
      return later("ground");
    case TerminalFunction::Return:
      return later("return");
    case TerminalFunction::Input:
      return later("input");
    case TerminalFunction::Output:
      return later("output");
    case TerminalFunction::Passive:
      return later("passive");
    case TerminalFunction::Spare:
      return later("spare");
    case TerminalFunction::Unknown:
      return later("unknown");
  }
  return "";
}

}  // namespace plugward
