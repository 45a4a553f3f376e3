// SPDX-License-Identifier: MIT
// Tested in words_test.cpp.
#include "draw/words.h"

#include <algorithm>

#include "base/format.h"
#include "fit/match.h"
#include "judge/words.h"

namespace plugward {
namespace {

/// What a passive terminal belongs to: "winding", "switch" ...; "" when several parts or none.
std::string passive_word(const Device& device, TerminalIndex terminal) {
  for (const Part& part : device.parts) {
    const std::string word = std::visit(
        [&](const auto& p) -> std::string {
          if constexpr (requires {
                          p.a;
                          p.b;
                        }) {
            if (p.a != terminal && p.b != terminal) return {};
            if constexpr (std::is_same_v<std::decay_t<decltype(p)>, Coil>) return tr("winding");
            if constexpr (std::is_same_v<std::decay_t<decltype(p)>, Switch>) return tr("switch");
            if constexpr (std::is_same_v<std::decay_t<decltype(p)>, Heater>) return tr("heater");
            if constexpr (std::is_same_v<std::decay_t<decltype(p)>, TemperatureSensor>) return tr("sensor");
            if constexpr (std::is_same_v<std::decay_t<decltype(p)>, Resistor>) return tr("resistor");
          }
          return {};
        },
        part);
    if (!word.empty()) return word;
  }
  return {};
}

std::string with(const std::string& signal, std::string_view word) {
  return signal.empty() ? std::string(word) : signal + " " + std::string(word);
}

}  // namespace

std::vector<std::string> pin_phrases(const Pin& pin, const Fitting& fitting) {
  std::vector<std::string> phrases;
  switch (pin.function) {
    case PinFunction::Supply: {
      const Rail* rail = rail_of(pin, *fitting.board, fitting.jumpers);
      if (rail != nullptr) {
        phrases = {format("supply {}", rail->id), to_text(rail->volts)};
      } else if (const Jumper* jumper = fitting.board->jumper(pin.jumper)) {
        phrases = {tr("supply"), format("{} or not: {} decides",
                                        jumper->rails.empty() ? "?" : jumper->rails.front(), jumper->id)};
        if (jumper->rails.size() > 1)
          phrases[1] = format("{}: {} decides", join(jumper->rails, tr(" or ")), jumper->id);
      } else {
        phrases = {tr("supply"), tr("volts not known")};
      }
      break;
    }
    case PinFunction::Ground:
      phrases = {tr("ground")};
      break;
    case PinFunction::Output:
      phrases = {with(pin.signal, tr("out"))};
      if (pin.high) phrases.push_back(to_text(*pin.high));
      break;
    case PinFunction::Input:
      phrases = {with(pin.signal, tr("in"))};
      if (pin.withstands) phrases.push_back(format("stands {}", to_text(pin.withstands->max)));
      break;
    case PinFunction::Switched:
      phrases = {with(pin.signal, tr("switched to ground"))};
      break;
    case PinFunction::Coil:
      phrases = {format("motor {}{}", pin.coil, pin.coil_end)};
      break;
    case PinFunction::Unused:
      phrases = {tr("not connected")};
      break;
    case PinFunction::Unknown:
      phrases = {tr("not known")};
      break;
  }
  if (pin.contest) phrases.emplace_back(tr("disputed"));
  if (!pin.label.empty()) phrases.push_back(format("print: {}", pin.label));
  return phrases;
}

std::vector<std::string> lead_phrases(const Lead& lead, const Harness& harness) {
  if (!lead.to) return {tr("goes to: not known")};
  const Terminal& terminal = harness.terminal(*lead.to);
  std::string role;
  switch (terminal.function) {
    case TerminalFunction::Supply:
      role = tr("supply");
      break;
    case TerminalFunction::Ground:
      role = tr("ground");
      break;
    case TerminalFunction::Return:
      role = tr("return (minus)");
      break;
    case TerminalFunction::Input:
      role = with(terminal.signal, tr("in"));
      break;
    case TerminalFunction::Output:
      role = with(terminal.signal, tr("out"));
      break;
    case TerminalFunction::Passive:
      role = passive_word(harness.devices[static_cast<std::size_t>(lead.to->device)], lead.to->terminal);
      break;
    case TerminalFunction::Spare:
      role = tr("of no use here");
      break;
    case TerminalFunction::Unknown:
      role = tr("not known");
      break;
  }
  std::vector<std::string> phrases{harness.terminal_name(*lead.to)};
  if (!role.empty()) phrases.push_back(role);
  return phrases;
}

std::string lead_name(const Lead& lead, const Harness& harness) {
  return format("{} ({})", to_code(lead.colour), lead.to ? harness.terminal_name(*lead.to) : tr("not known"));
}

std::string step_words(const Step& step, const Plug& plug, const Harness& harness) {
  const std::string lead = lead_name(plug.leads[static_cast<std::size_t>(step.lead)], harness);
  switch (step.kind) {
    case StepKind::Move:
      return format("move {} from cavity {} to cavity {}", lead, step.from, step.to);
    case StepKind::Park:
      return format("park {}: from cavity {} to the empty cavity {}", lead, step.from, step.to);
    case StepKind::Hold:
      return format("take {} out of cavity {} and hold it beside the housing", lead, step.from);
    case StepKind::Insert:
      return format("seat {}, the one held, in cavity {}", lead, step.to);
    case StepKind::Insulate:
      break;
  }
  return format("take {} out of cavity {}, insulate it and tag it", lead, step.from);
}

std::string header_name(const Header& header) {
  return header.label.empty() || header.label == header.id ? header.id : header.id + " " + header.label;
}

std::string plug_title(const Harness& harness, const Plug& plug) {
  std::string text = format("plug {}", plug.id);
  if (!plug.label.empty() && plug.label != plug.id) text += format(" ({})", plug.label);
  std::vector<std::string> devices;
  for (const Lead& lead : plug.leads) {
    if (!lead.to) continue;
    const std::string name = device_name(harness.devices[static_cast<std::size_t>(lead.to->device)]);
    if (std::find(devices.begin(), devices.end(), name) == devices.end()) devices.push_back(name);
  }
  return devices.empty() ? text : format("{}: {}", text, join(devices, ", "));
}

std::string view_words(bool wire_side) {
  return wire_side ? tr("seen from the wire side, wires towards you")
                   : tr("seen into the mating face, wires away from you");
}

}  // namespace plugward
