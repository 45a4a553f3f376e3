// SPDX-License-Identifier: MIT
// Tested in tests/unit/fit/match_test.cpp.
#include "fit/match.h"

#include <algorithm>
#include <array>

#include "base/format.h"

namespace plugward {
namespace {

TerminalRef ref(int device, TerminalIndex terminal) { return {device, terminal}; }

/// What the loads on a supply terminal need together; nothing when none states it.
std::optional<Range<Volts>> needs_of(const Device& device, TerminalIndex plus) {
  std::optional<Range<Volts>> both;
  for (const Part& part : device.parts) {
    const auto* load = std::get_if<Load>(&part);
    if (load == nullptr || load->plus != plus) continue;
    const Volts top = load->survives.value_or(load->needs.max);
    const Range<Volts> one{load->needs.min, top};
    both = both ? Range<Volts>{std::max(both->min, one.min), std::min(both->max, one.max)} : one;
  }
  return both;
}

End functional_end(const Device& device, int index, TerminalIndex t) {
  const Terminal& terminal = device.terminals[static_cast<std::size_t>(t)];
  End end{ref(index, t), Wish::Any, terminal.signal, std::nullopt, 0, 'A'};
  switch (terminal.function) {
    case TerminalFunction::Supply:
      end.wish = Wish::Supply;
      end.volts = needs_of(device, t);
      break;
    case TerminalFunction::Ground: end.wish = Wish::Ground; break;
    case TerminalFunction::Return: end.wish = Wish::Return; break;
    case TerminalFunction::Input: end.wish = Wish::BoardOutput; break;
    case TerminalFunction::Output: end.wish = Wish::BoardInput; break;
    case TerminalFunction::Spare: end.wish = Wish::Nothing; break;
    case TerminalFunction::Passive:
    case TerminalFunction::Unknown: end.wish = Wish::Any; break;
  }
  return end;
}

End plain(TerminalRef terminal, Wish wish, std::string signal = "") {
  return {terminal, wish, std::move(signal), std::nullopt, 0, 'A'};
}

/// A two-ended part that may be used either way round.
WishGroup either_way(TerminalRef a, TerminalRef b, Wish first, Wish second, const std::string& signal) {
  return {{{{plain(a, first, signal), plain(b, second)}, false}, {{plain(b, first, signal), plain(a, second)}, false}}};
}

WishGroup switch_group(TerminalRef a, TerminalRef b, const std::string& signal) {
  WishGroup group = either_way(a, b, Wish::BoardInput, Wish::Ground, signal);
  // An input with a pull-down wants the switch to its supply; whether it has one, the circuit decides.
  const WishGroup to_supply = either_way(a, b, Wish::BoardInput, Wish::Supply, signal);
  group.alternatives.insert(group.alternatives.end(), to_supply.alternatives.begin(),
                            to_supply.alternatives.end());
  return group;
}

struct Winding {
  TerminalRef a, b;
};

/// The eight ways in which two windings meet two bridges. Swapping the windings and reversing one are each a
/// reflection of the current vector: the motor runs forward when their number is even (the determinant of the
/// signed 2 x 2 permutation is +1). It is not the parity of the four-lead permutation.
WishGroup motor_group(const Winding& one, const Winding& two) {
  WishGroup group;
  for (int turned = 0; turned < 2; ++turned) {
    for (int code = 0; code < 8; ++code) {
      const bool swapped = (code & 4) != 0;
      const bool first_reversed = (code & 2) != 0;
      const bool second_reversed = (code & 1) != 0;
      const bool odd = swapped != (first_reversed != second_reversed);
      if (odd != (turned != 0)) continue;
      Alternative alternative;
      alternative.motor_turned = odd;
      const auto add = [&](const Winding& winding, int bridge, bool reversed) {
        End end = plain(winding.a, Wish::CoilEnd);
        end.coil = bridge;
        end.coil_end = reversed ? 'B' : 'A';
        alternative.ends.push_back(end);
        end.terminal = winding.b;
        end.coil_end = reversed ? 'A' : 'B';
        alternative.ends.push_back(end);
      };
      add(one, swapped ? 2 : 1, first_reversed);
      add(two, swapped ? 1 : 2, second_reversed);
      group.alternatives.push_back(std::move(alternative));
    }
  }
  return group;
}

bool has_lead(const Harness& harness, TerminalRef terminal) {
  return std::any_of(harness.plugs.begin(), harness.plugs.end(), [&](const Plug& plug) {
    return std::any_of(plug.leads.begin(), plug.leads.end(), [&](const Lead& lead) { return lead.to == terminal; });
  });
}

/// The parts in the order of the file, first those with a lead to every end: of a change-over switch the throw
/// that is led out is the one that is meant, wherever it stands.
std::vector<const Part*> led_out_first(const Harness& harness, const Device& device, int index) {
  std::vector<const Part*> parts;
  for (const Part& part : device.parts) parts.push_back(&part);
  std::stable_partition(parts.begin(), parts.end(), [&](const Part* part) {
    const auto* s = std::get_if<Switch>(part);
    return s == nullptr || (has_lead(harness, ref(index, s->a)) && has_lead(harness, ref(index, s->b)));
  });
  return parts;
}

/// Groups of one device's passive parts; marks the terminals they use.
void add_passive_groups(const Harness& harness, const Device& device, int index, std::vector<bool>& used,
                        std::vector<WishGroup>& out) {
  const auto passive = [&](TerminalIndex t) {
    return device.terminals[static_cast<std::size_t>(t)].function == TerminalFunction::Passive &&
           !device.terminals[static_cast<std::size_t>(t)].inner && !used[static_cast<std::size_t>(t)];
  };
  const auto take = [&](TerminalIndex t) { used[static_cast<std::size_t>(t)] = true; };
  const auto signal_of = [&](TerminalIndex a, TerminalIndex b) {
    const std::string& first = device.terminals[static_cast<std::size_t>(a)].signal;
    if (!first.empty()) return first;
    const std::string& second = device.terminals[static_cast<std::size_t>(b)].signal;
    return second.empty() ? device.use : second;
  };

  std::vector<Winding> windings;
  for (const Part* part : led_out_first(harness, device, index)) {
    if (const auto* s = std::get_if<Switch>(part); s != nullptr && passive(s->a) && passive(s->b)) {
      out.push_back(switch_group(ref(index, s->a), ref(index, s->b), signal_of(s->a, s->b)));
      take(s->a), take(s->b);
    } else if (const auto* h = std::get_if<Heater>(part); h != nullptr && passive(h->a) && passive(h->b)) {
      out.push_back(either_way(ref(index, h->a), ref(index, h->b), Wish::Supply, Wish::LowSide, ""));
      take(h->a), take(h->b);
    } else if (const auto* t = std::get_if<TemperatureSensor>(part);
               t != nullptr && passive(t->a) && passive(t->b)) {
      out.push_back(either_way(ref(index, t->a), ref(index, t->b), Wish::BoardInput, Wish::Ground, "temperature"));
      take(t->a), take(t->b);
    } else if (const auto* c = std::get_if<Coil>(part); c != nullptr && passive(c->a) && passive(c->b)) {
      windings.push_back({ref(index, c->a), ref(index, c->b)});
      take(c->a), take(c->b);
    }
  }
  std::size_t i = 0;
  for (; i + 1 < windings.size(); i += 2) out.push_back(motor_group(windings[i], windings[i + 1]));
  // A lone winding (a solenoid, a relay) is a switched load without polarity.
  if (i < windings.size()) {
    out.push_back(either_way(windings[i].a, windings[i].b, Wish::Supply, Wish::Return, ""));
  }
}

}  // namespace

std::vector<WishGroup> groups(const Harness& harness) {
  std::vector<WishGroup> out;
  for (std::size_t d = 0; d < harness.devices.size(); ++d) {
    const Device& device = harness.devices[d];
    const int index = static_cast<int>(d);
    std::vector<bool> used(device.terminals.size(), false);
    add_passive_groups(harness, device, index, used, out);
    for (std::size_t t = 0; t < device.terminals.size(); ++t) {
      if (used[t] || device.terminals[t].inner) continue;
      out.push_back({{{{functional_end(device, index, static_cast<TerminalIndex>(t))}, false}}});
    }
  }
  return out;
}

const Rail* rail_of(const Pin& pin, const Board& board, const JumperPositions& jumpers) {
  if (pin.jumper.empty()) return board.rail(pin.rail);
  const auto stated = jumpers.find(pin.jumper);
  return stated == jumpers.end() ? nullptr : board.rail(stated->second);
}

bool same_signal(std::string_view a, std::string_view b) { return a.empty() || b.empty() || a == b; }

bool volts_suit(const Pin& pin, const Board& board, const JumperPositions& jumpers, const End& end) {
  if (end.wish != Wish::Supply || !end.volts) return true;
  const Rail* rail = rail_of(pin, board, jumpers);
  return rail == nullptr || (rail->volts.max >= end.volts->min && rail->volts.min <= end.volts->max);
}

bool grants(const Pin& pin, const End& end) {
  switch (end.wish) {
    case Wish::Supply: return pin.function == PinFunction::Supply;
    case Wish::Ground: return pin.function == PinFunction::Ground;
    case Wish::Return: return pin.function == PinFunction::Ground || pin.function == PinFunction::Switched;
    case Wish::LowSide: return pin.function == PinFunction::Switched;
    case Wish::BoardOutput: return pin.function == PinFunction::Output && same_signal(pin.signal, end.signal);
    case Wish::BoardInput: return pin.function == PinFunction::Input && same_signal(pin.signal, end.signal);
    case Wish::CoilEnd:
      return pin.function == PinFunction::Coil && pin.coil == end.coil && pin.coil_end == end.coil_end;
    case Wish::Nothing: return pin.function == PinFunction::Unused;
    case Wish::Any: return true;
  }
  return false;
}

std::string to_words(const End& end) {
  const std::string quoted = end.signal.empty() ? "" : format(" for '{}'", end.signal);
  switch (end.wish) {
    case Wish::Supply: return end.volts ? format("a supply of {}", to_text(*end.volts)) : tr("a supply");
    case Wish::Ground: return tr("ground");
    case Wish::Return: return tr("ground or a switched output");
    case Wish::LowSide: return tr("a switched output");
    case Wish::BoardOutput: return format("an output{}", quoted);
    case Wish::BoardInput: return format("an input{}", quoted);
    case Wish::CoilEnd: return format("end {} of bridge {}", end.coil_end, end.coil);
    case Wish::Nothing: return tr("nothing");
    case Wish::Any: return tr("what is not known");
  }
  return "";
}

std::string to_words(const Pin& pin) {
  const std::string quoted = pin.signal.empty() ? "" : format(" '{}'", pin.signal);
  switch (pin.function) {
    case PinFunction::Supply: return pin.jumper.empty() ? format("supply {}", pin.rail) : format("supply by {}", pin.jumper);
    case PinFunction::Ground: return tr("ground");
    case PinFunction::Output: return format("output{}", quoted);
    case PinFunction::Input: return format("input{}", quoted);
    case PinFunction::Switched: return format("switched output{}", quoted);
    case PinFunction::Coil: return format("bridge {} end {}", pin.coil, pin.coil_end);
    case PinFunction::Unused: return tr("connected to nothing");
    case PinFunction::Unknown: return tr("not known");
  }
  return "";
}

}  // namespace plugward
