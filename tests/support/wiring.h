// SPDX-License-Identifier: MIT
// A board with one header "J1" and a harness with one device, put together pin by pin in a test, and its
// excesses as lines of text.
//
//   Wiring w;
//   w.rail("5V", 4.75, 5.25);
//   const int pin = w.pin(PinFunction::Supply, "5V");
//   const int v = w.terminal("V", TerminalFunction::Supply);
//   w.wire(pin, v, "RD");
//   CHECK(w.judge() == Lines{"supply-too-high 5.25 > 5.1 at part 0 from 5V | 5V at 5.25 V | 5V - J1.1 - RD -
//   V"});
#pragma once

#include <initializer_list>
#include <map>
#include <ostream>
#include <string>
#include <string_view>
#include <vector>

#include "base/format.h"
#include "circuit/circuit.h"

namespace plugward::test {

/// Lines of text that a failed check prints one below the other.
struct Lines {
  std::vector<std::string> all;
  Lines() = default;
  Lines(std::initializer_list<std::string> list) : all(list) {}
  friend bool operator==(const Lines&, const Lines&) = default;
  friend std::ostream& operator<<(std::ostream& out, const Lines& lines) {
    for (const std::string& line : lines.all) out << "\n  " << line;
    return out << '\n';
  }
};

inline std::string_view kind_word(ExcessKind kind) {
  switch (kind) {
    case ExcessKind::Overvoltage:
      return "overvoltage";
    case ExcessKind::UnknownLimit:
      return "unknown-limit";
    case ExcessKind::ReversedSupply:
      return "reversed-supply";
    case ExcessKind::SupplyTooHigh:
      return "supply-too-high";
    case ExcessKind::SupplyTooLow:
      return "supply-too-low";
    case ExcessKind::HeaterTooStrong:
      return "heater-too-strong";
    case ExcessKind::HeaterTooWeak:
      return "heater-too-weak";
    case ExcessKind::AlwaysOn:
      return "always-on";
    case ExcessKind::ClampCurrent:
      return "clamp-current";
    case ExcessKind::BackFeed:
      return "back-feed";
    case ExcessKind::PinOvercurrent:
      return "pin-overcurrent";
    case ExcessKind::ContactOvercurrent:
      return "contact-overcurrent";
    case ExcessKind::UnknownRating:
      return "unknown-rating";
    case ExcessKind::WireOvercurrent:
      return "wire-overcurrent";
    case ExcessKind::RailOverload:
      return "rail-overload";
    case ExcessKind::ShortCircuit:
      return "short-circuit";
    case ExcessKind::LevelHigh:
      return "level-high";
    case ExcessKind::LevelLow:
      return "level-low";
    case ExcessKind::Stuck:
      return "stuck";
    case ExcessKind::Floating:
      return "floating";
    case ExcessKind::ResistorPower:
      return "resistor-power";
    case ExcessKind::ResetUnknown:
      return "reset-unknown";
    case ExcessKind::TooManyStates:
      return "too-many-states";
  }
  return "";
}

struct Wiring {
  Board board;
  Harness harness;
  Catalogue catalogue;
  std::vector<Contact> contacts;
  CircuitDefaults defaults;
  std::map<std::string, std::string> jumpers;

  Wiring() {
    board.headers.emplace_back().id = "J1";
    board.headers[0].family = harness_family;
    harness.devices.emplace_back().id = "device";
    harness.plugs.emplace_back().id = "plug";
    harness.plugs[0].family = harness_family;
    // A family whose contacts never limit a test that is about something else.
    Family family;
    family.id = harness_family;
    family.ratings.push_back({{Amps(100.0), awg(10), ""}, Certainty::User, "the test"});
    catalogue.add(family);
  }

  Rail& rail(std::string id, double min, double max) {
    Rail& r = board.rails.emplace_back();
    r.id = std::move(id);
    r.volts = {Volts(min), Volts(max)};
    return r;
  }
  /// The number of the new pin, from 1.
  int pin(PinFunction function, std::string rail = "") {
    Pin& p = board.headers[0].pins.emplace_back();
    p.number = static_cast<int>(board.headers[0].pins.size());
    p.function = function;
    p.rail = std::move(rail);
    board.headers[0].positions = p.number;
    return p.number;
  }
  Pin& at(int number) { return board.headers[0].pins[static_cast<std::size_t>(number) - 1]; }

  TerminalIndex terminal(std::string id, TerminalFunction function = TerminalFunction::Passive) {
    Terminal& t = device().terminals.emplace_back();
    t.id = std::move(id);
    t.function = function;
    return static_cast<TerminalIndex>(device().terminals.size()) - 1;
  }
  Terminal& terminal_at(TerminalIndex t) { return device().terminals[static_cast<std::size_t>(t)]; }
  Device& device() { return harness.devices[0]; }
  void part(Part p) { device().parts.push_back(std::move(p)); }

  Lead& wire(int pin_number, TerminalIndex t, const char* colour = "BK") {
    Plug& plug = harness.plugs[0];
    Lead& lead = plug.leads.emplace_back();
    lead.cavity = static_cast<int>(plug.leads.size());
    lead.colour = std::get<WireColour>(parse_colour(colour));
    lead.to = TerminalRef{0, t};
    plug.positions = lead.cavity;
    contacts.push_back({0, lead.cavity - 1, 0, pin_number});
    return lead;
  }

  Fitting fitting() const { return {&board, &harness, &catalogue, {{0, 0}}, jumpers}; }

  std::string name(const Locus& l) const {
    std::string text;
    const auto add = [&](const std::string& word) { text += text.empty() ? word : " " + word; };
    if (l.pin >= 0) add(format("J1.{}", l.pin));
    if (l.lead >= 0) add(to_code(harness.plugs[0].leads[static_cast<std::size_t>(l.lead)].colour));
    if (l.terminal >= 0) add(device().terminals[static_cast<std::size_t>(l.terminal)].id);
    if (l.part >= 0) add(std::string(part_word(device().parts[static_cast<std::size_t>(l.part)])));
    if (l.rail >= 0) add(board.rails[static_cast<std::size_t>(l.rail)].id);
    return text.empty() ? "nothing" : text;
  }
  const Device& device() const { return harness.devices[0]; }

  std::string line(const Excess& e) const {
    return format("{} {:.4g} limit {:.4g}{} at {} from {} | {} | {}", kind_word(e.kind), e.value, e.limit,
                  e.always ? "" : " sometimes", name(e.at), name(e.from), e.state, e.path);
  }

  std::vector<Excess> found() const { return excesses(fitting(), contacts, defaults); }
  Lines judge() const {
    Lines lines;
    for (const Excess& e : found()) lines.all.push_back(line(e));
    return lines;
  }

  static constexpr const char* harness_family = "test";
};

}  // namespace plugward::test
