// SPDX-License-Identifier: MIT
#include "judge/words.h"

#include <algorithm>
#include <variant>

#include "base/format.h"

namespace plugward {

const Header& header_of(const Fitting& fitting, int header) {
  return fitting.board->headers[static_cast<std::size_t>(header)];
}

const Plug& plug_of(const Fitting& fitting, int plug) {
  return fitting.harness->plugs[static_cast<std::size_t>(plug)];
}

const Lead& lead_of(const Fitting& fitting, const Contact& contact) {
  return plug_of(fitting, contact.plug).leads[static_cast<std::size_t>(contact.lead)];
}

const Pin& pin_of(const Fitting& fitting, const Contact& contact) {
  return header_of(fitting, contact.header).pin(contact.pin);
}

std::string pin_name(const Fitting& fitting, int header, int pin) {
  return format("{}.{}", header_of(fitting, header).id, pin);
}

std::string pin_name(const Fitting& fitting, const Contact& contact) {
  return pin_name(fitting, contact.header, contact.pin);
}

std::string lead_name(const Fitting& fitting, int plug, int lead) {
  const Plug& p = plug_of(fitting, plug);
  const Lead& l = p.leads[static_cast<std::size_t>(lead)];
  return format("{} lead in cavity {} of '{}'", to_code(l.colour), l.cavity, p.id);
}

std::string terminal_name(const Fitting& fitting, TerminalRef terminal) {
  return format("'{}'", fitting.harness->terminal_name(terminal));
}

Locus locus_of(const Fitting& fitting, const Contact& contact) {
  Locus at;
  at.header = contact.header;
  at.pin = contact.pin;
  at.plug = contact.plug;
  at.lead = contact.lead;
  if (const auto& to = lead_of(fitting, contact).to) {
    at.device = to->device;
    at.terminal = to->terminal;
  }
  return at;
}

std::string jumper_name(const Jumper& jumper) {
  return jumper.label.empty() ? jumper.id : format("{} ({})", jumper.id, jumper.label);
}

std::string device_name(const Device& device) {
  return device.title.empty() ? device.id : device.title;
}

std::vector<TerminalIndex> ends_of(const Part& part) {
  return std::visit(
      [](const auto& p) {
        std::vector<TerminalIndex> ends;
        if constexpr (requires { p.terminal; }) ends.push_back(p.terminal);
        if constexpr (requires { p.plus; }) ends.insert(ends.end(), {p.plus, p.minus});
        if constexpr (requires { p.a; }) ends.insert(ends.end(), {p.a, p.b});
        if constexpr (requires { p.anode; }) ends.insert(ends.end(), {p.anode, p.cathode});
        if constexpr (requires { p.in; }) ends.insert(ends.end(), {p.in, p.out, p.minus});
        return ends;
      },
      part);
}

std::vector<TerminalIndex> joined_to(const Device& device, TerminalIndex terminal) {
  std::vector<TerminalIndex> same{terminal};
  for (std::size_t i = 0; i < same.size(); ++i) {
    for (const Part& part : device.parts) {
      const auto* join = std::get_if<Join>(&part);
      if (join == nullptr || (join->a != same[i] && join->b != same[i])) continue;
      const TerminalIndex other = join->a == same[i] ? join->b : join->a;
      if (std::find(same.begin(), same.end(), other) == same.end()) same.push_back(other);
    }
  }
  return same;
}

}  // namespace plugward
