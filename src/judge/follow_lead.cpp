// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/follow_lead_test.cpp.
#include "judge/follow_lead.h"

#include <set>
#include <string>

#include "base/format.h"
#include "judge/words.h"

namespace plugward {
namespace {

// What a measurement costs: see Measurement::cost.
constexpr int look = 0;
constexpr int power_off = 1;

/// The one device with a terminal that no lead is known to come from; nullptr: none, or several.
const Device* open_device(const Harness& harness) {
  std::set<TerminalRef> met;
  for (const Plug& plug : harness.plugs) {
    for (const Lead& lead : plug.leads) {
      if (lead.to) met.insert(*lead.to);
    }
  }
  const Device* open = nullptr;
  for (std::size_t d = 0; d < harness.devices.size(); ++d) {
    const Device& device = harness.devices[d];
    for (std::size_t t = 0; t < device.terminals.size(); ++t) {
      if (device.terminals[t].inner || met.contains({static_cast<int>(d), static_cast<int>(t)})) continue;
      if (open != nullptr && open != &device) return nullptr;
      open = &device;
    }
  }
  return open;
}

}  // namespace

std::optional<Measurement> follow_lead(const Fitting& fitting, int plug, int lead) {
  const Device* device = open_device(*fitting.harness);
  if (device == nullptr) return std::nullopt;
  const std::string& kind = device->kind;
  const std::string name = device_name(*device);
  const std::string& housing = plug_of(fitting, plug).id;
  const std::string wire = lead_name(fitting, plug, lead);
  const std::string where = format("where the {} goes", wire);
  const std::string all = format("where the leads of '{}' go", housing);
  if (kind == "led-string") {
    return Measurement{format("plug off the board: continuity from the {} to the pads at the first LED of "
                              "'{}', where the arrows "
                              "on the strip begin",
                              wire, name),
                       tr("a beep at 5V, + or VCC: terminal V; at DI or DIN: D; at GND or -: G; at the far "
                          "end's DO: this is "
                          "the string's output"),
                       power_off, where};
  }
  if (kind == "rgb-strip") {
    return Measurement{
        format("plug off the board: continuity from the {} to the pads at the end of '{}'", wire, name),
        tr("a beep at +, 12V or 24V: terminal V; at R, G or B: the terminal of that letter"), power_off,
        where};
  }
  if (kind == "motor") {
    return Measurement{format("plug off the board: ohms between every two leads of '{}'", housing),
                       tr("a few ohms: both ends of one winding, A1 and B1 or A2 and B2 (which winding is "
                          "the first, and which "
                          "end is A, only sets the direction); open: two windings"),
                       power_off, all};
  }
  if (kind == "servo-probe") {
    return Measurement{
        format("plug off the board: continuity between every two leads of '{}', its pin in and its pin out",
               name),
        tr("always a beep: G and H; a beep to these in one of the two positions: T; the two others are V and "
           "P: "
           "read them off the print where they are soldered, or off its drawing"),
        power_off, all};
  }
  if (kind == "fan") {
    return Measurement{
        format("look under the label on the hub of '{}' where the {} is soldered, or look up its type", name,
               wire),
        tr("+ or V: terminal V; - or G: G; S, FG or a frequency: S; PWM or C: C; neither: no meter tells a "
           "fan's "
           "leads apart for sure, ask its maker"),
        look, where};
  }
  if (kind == "proximity") {
    return Measurement{format("look at the drawing on the label of '{}', or look up its type", name),
                       tr("+ or L+: terminal V; -, 0 V or L-: G; the lead to which the load is drawn: Q"),
                       look, all};
  }
  if (kind == "optical-switch") {
    return Measurement{format("look at the print where the {} is soldered on the board of '{}'", wire, name),
                       tr("VCC, V or +: terminal V; GND, G or -: G; OUT, S or SIG: S"), look, where};
  }
  if (kind == "thermistor" || kind == "heater-element" || kind == "dry-switch") {
    return Measurement{
        kind == "dry-switch"
            ? format("plug off the board: continuity between the leads of '{}', '{}' worked and not", housing,
                     name)
            : format("plug off the board: ohms between the leads of '{}'", housing),
        kind == "dry-switch"
            ? tr("the two between which the beep comes and goes are A and B; which is which does "
                 "not matter")
            : tr("the two that are not open are A and B; which is which does not matter"),
        power_off, all};
  }
  return std::nullopt;
}

}  // namespace plugward
