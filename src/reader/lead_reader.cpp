// SPDX-License-Identifier: MIT
// A lead goes to TERMINAL, when only one device has it, or to DEVICE.TERMINAL. Tested in
// tests/unit/reader/harness_reader_test.cpp.
#include <algorithm>
#include <array>

#include "base/format.h"
#include "reader/harness_reader.h"

namespace plugward {
namespace {

/// All that 'to' may say; with the device in front when there are several, or when `like` has it so.
std::vector<std::string> all_terminals(const Harness& harness, std::string_view like) {
  const bool bare = harness.devices.size() == 1 && like.find('.') == like.npos;
  std::vector<std::string> names;
  for (const Device& device : harness.devices) {
    for (const Terminal& terminal : device.terminals) {
      if (!terminal.inner) names.push_back(bare ? terminal.id : format("{}.{}", device.id, terminal.id));
    }
  }
  return names;
}

/// True when the terminal may belong to a device that could not be read whole.
bool may_be_elsewhere(const Harness& harness, const DeviceNames& devices, std::string_view name) {
  if (devices.all_complete) return false;
  for (std::size_t d = 0; d < harness.devices.size(); ++d) {
    if (devices.complete[d] && name.starts_with(harness.devices[d].id + ".")) return false;
  }
  return true;
}

std::optional<TerminalRef> read_to(const Reading& reading, const Attributes& a, const Harness& harness,
                                   const DeviceNames& devices) {
  const std::string_view name = a.text(Key::To);
  if (name.empty()) return std::nullopt;
  const std::vector<TerminalRef> found = harness.terminals_named(name);
  if (found.size() == 1) {
    const Terminal& terminal = harness.terminal(found.front());
    if (!terminal.inner) return found.front();
    a.conflict(Key::To, format("terminal '{}' is inside the device: no lead goes there", terminal.id))
        .note(terminal.span, "it is declared here")
        .help("lead to the terminal in front of it, or delete 'inner' there");
    return std::nullopt;
  }
  if (found.size() > 1) {
    std::vector<std::string> ways;
    for (const TerminalRef& ref : found) ways.push_back(format("'{}'", harness.terminal_name(ref)));
    a.conflict(Key::To, format("terminal '{}' stands in more than one device", name))
        .help(format("say which: {}", join(ways, " or ")));
  } else if (!may_be_elsewhere(harness, devices, name)) {
    Diagnostic& diagnostic = reading.fault(Rule::UndeclaredReference, a.span(Key::To),
                                           format("terminal '{}' is not declared", name));
    const std::vector<std::string> names = all_terminals(harness, name);
    const std::vector<std::string_view> views(names.begin(), names.end());
    if (views.empty()) {
      diagnostic.help("no device is declared here: describe one, or leave 'to' out when it is not known");
    } else {
      suggest(diagnostic, name, views, "declared are");
    }
  }
  return std::nullopt;
}

Lead read_lead(const Reading& reading, XmlTree::Index index, const Harness& harness,
               const DeviceNames& devices, const Plug& plug) {
  const Attributes a(reading, reading.tree.node(index), {Key::Cavity, Key::Colour},
                     {Key::Gauge, Key::Length, Key::To, Key::Mark});
  refuse_children(reading, index);
  Lead lead;
  lead.cavity = a.number(Key::Cavity, 1, reading.limits.positions).value_or(0);
  if (lead.cavity > plug.positions && plug.positions > 0) {
    reading
        .fault(Rule::PositionRange, a.span(Key::Cavity),
               format("plug '{}' has cavities 1 to {}, not {}", plug.id, plug.positions, lead.cavity))
        .note(plug.positions_span, "the number of positions is stated here")
        .help(format("correct the cavity, or write positions=\"{}\" at the plug", lead.cavity));
    lead.cavity = 0;
  }
  lead.colour = a.colour(Key::Colour).value_or(WireColour{});
  lead.gauge = a.gauge(Key::Gauge);
  lead.length = a.quantity<Millimetres>(Key::Length, Sign::Positive);
  lead.to = read_to(reading, a, harness, devices);
  lead.mark = a.text(Key::Mark);
  lead.span = a.element_span();
  if (a.has(Key::To)) lead.to_span = a.span(Key::To);
  return lead;
}

}  // namespace

void read_leads(const Reading& reading, XmlTree::Index element, const Harness& harness,
                const DeviceNames& devices, Plug& plug) {
  constexpr std::array<std::string_view, 1> known{"lead"};
  for (const XmlTree::Index child : reading.tree.children(element)) {
    const XmlNode& node = reading.tree.node(child);
    if (node.name != "lead") {
      refuse_child(reading, reading.tree.node(element), node, known);
      continue;
    }
    Lead lead = read_lead(reading, child, harness, devices, plug);
    if (lead.cavity == 0) continue;
    if (const Lead* earlier = plug.lead_in(lead.cavity)) {
      reading.fault(Rule::DoubledPosition, lead.span, format("cavity {} has two leads", lead.cavity))
          .note(earlier->span, "first here")
          .help("one cavity holds one contact: give one of the two its own cavity");
      continue;
    }
    plug.leads.push_back(std::move(lead));
  }
  std::sort(plug.leads.begin(), plug.leads.end(),
            [](const Lead& a, const Lead& b) { return a.cavity < b.cavity; });
}

}  // namespace plugward
