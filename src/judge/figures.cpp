// SPDX-License-Identifier: MIT
// Tested in tests/cases: figures-unknown.
#include "judge/figures.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/format.h"
#include "judge/words.h"

namespace plugward {
namespace {

constexpr int look = 0;  // see Measurement::cost
constexpr int power_off = 1;

/// A figure that a part lacks: what it is, and how it is found.
struct Lack {
  std::string what;
  std::string action;
  std::string expect;
  int cost = look;
};

/// What each kind of part may leave open.
class LackOf {
 public:
  explicit LackOf(const Device& device) : name_(device_name(device)), kind_(device.kind) {}

  std::optional<Lack> operator()(const Load& load) const {
    if (load.draws_stated) return std::nullopt;
    if (kind_ == "led-string") {
      return Lack{format("how many LEDs '{}' has", name_), format("count the LEDs of '{}'", name_),
                  tr("state them as 'count'; at full white each draws up to 60 mA"), look};
    }
    return Lack{format("what '{}' draws", name_),
                format("read the amps of '{}' off its label or data sheet", name_),
                tr("state them as 'draws'"), look};
  }
  std::optional<Lack> operator()(const Heater& heater) const {
    if (heater.volts.value > 0.0 && heater.watts.value > 0.0) return std::nullopt;
    return Lack{
        format("the volts and watts of '{}'", name_),
        format("read the volts of '{}' off its label; plug off the board: ohms between its two leads", name_),
        tr("watts are volts x volts / ohms: 24 V and 14.4 ohm are 40 W; state 'volts' and 'watts'"),
        power_off};
  }
  std::optional<Lack> operator()(const Coil& coil) const {
    if (coil.ohms.value > 0.0) return std::nullopt;
    return Lack{format("the ohms of a winding of '{}'", name_),
                format("plug off the board: ohms between both ends of a winding of '{}'", name_),
                tr("state the reading as 'ohms'"), power_off};
  }
  /// 100 kohm, B 3950 K is 125 kohm at 20 C; platinum is 107.8..109.7 % of its ohms over 20..25 C (IEC
  /// 60751).
  std::optional<Lack> operator()(const TemperatureSensor& sensor) const {
    if (sensor.nominal.value > 0.0) return std::nullopt;
    return Lack{
        format("the ohms of '{}'", name_),
        format("plug off the board, all at 20..25 C: ohms between the two leads of '{}'", name_),
        tr("95..132 kohm: 100 kohm, and 9.5..13.2 kohm: 10 kohm, each with the 'beta' of its data sheet; "
           "107..110 ohm: platinum of 100 ohm, 1070..1100 ohm: of 1 kohm, without 'beta'"),
        power_off};
  }
  std::optional<Lack> operator()(const Switch& contact) const {
    if (contact.rests_stated) return std::nullopt;
    return Lack{
        format("whether '{}' rests open or closed", name_),
        format("plug off the board: continuity between the two leads of '{}' while nothing works it", name_),
        tr("a beep: rests closed; no beep: rests open"), power_off};
  }
  template <class Other>
  std::optional<Lack> operator()(const Other&) const {
    return std::nullopt;
  }

 private:
  std::string name_;
  std::string kind_;
};

Finding doubt(Rule rule, std::string message, Measurement settles, Span first) {
  Finding finding;
  finding.rule = rule;
  finding.weight = Weight::Doubt;
  finding.message = std::move(message);
  finding.measurement = std::move(settles);
  finding.first = first;
  return finding;
}

void doubt_device(const Device& device, std::vector<Finding>& out) {
  std::vector<std::string> said;
  for (const Part& part : device.parts) {
    const std::optional<Lack> lack = std::visit(LackOf(device), part);
    if (!lack || std::find(said.begin(), said.end(), lack->what) != said.end()) continue;
    said.push_back(lack->what);
    out.push_back(doubt(Rule::UnknownFigure, format("not stated: {}", lack->what),
                        {lack->action, lack->expect, lack->cost, lack->what}, part_span(part)));
  }
}

constexpr double caliper_mm = 0.1;  // what a caliper over a few contacts may be off

/// The families of this pitch; all that have one when it is not known.
std::string families_of(const Fitting& fitting, Millimetres pitch) {
  std::vector<std::string> ids;
  for (const Family& family : fitting.catalogue->all()) {
    if (!(family.pitch.value > 0.0)) continue;
    if (pitch.value > 0.0 && std::abs(family.pitch.value - pitch.value) > caliper_mm) continue;
    ids.push_back(format("{} ({})", family.id, to_text(family.pitch)));
  }
  return format("{}", join(ids, ", "));
}

/// One side of a mating whose family may not be known, and the family of the other side.
struct Side {
  std::string what;
  const std::string& family;
  const std::string& other;
  int columns;
  Span at;
};

void doubt_housing(const Fitting& fitting, const Side& side, std::vector<Finding>& out) {
  if (!is_unknown_family(side.family)) return;
  const Family* unknown = fitting.catalogue->find(side.family);
  const Family* other = fitting.catalogue->find(side.other);
  if (unknown == nullptr || other == nullptr) return;
  const bool by_other = !(unknown->pitch.value > 0.0) && other->pitch.value > 0.0;
  const std::string families = families_of(fitting, by_other ? other->pitch : unknown->pitch);
  out.push_back(doubt(
      Rule::UnknownHousing, format("not stated: which housing {} has", side.what),
      {side.columns > 1
           ? format(
                 "measure over the contacts of {} with a caliper, from the first to the last of a row, and "
                 "divide by one less than their count; look for ramp, latch and shroud",
                 side.what)
           : format("look at {}: ramp, latch, shroud", side.what),
       by_other
           ? format("one of {}: state it as 'family'; any other pitch: it is not for this place", families)
           : format("one of {}; state it as 'family'", families),
       look, format("which housing {} has", side.what)},
      side.at));
}

}  // namespace

std::vector<Finding> unknown_figures(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<Finding> out;
  const Harness& harness = *fitting.harness;
  for (std::size_t d = 0; d < harness.devices.size(); ++d) {
    const bool touched = std::any_of(contacts.begin(), contacts.end(), [&](const Contact& contact) {
      const auto& to = lead_of(fitting, contact).to;
      return to && to->device == static_cast<int>(d);
    });
    if (touched) doubt_device(harness.devices[d], out);
  }
  for (const Placement& p : fitting.placements) {
    const Plug& plug = plug_of(fitting, p.plug);
    const Header& header = header_of(fitting, p.header);
    doubt_housing(fitting,
                  {format("plug '{}'", plug.id), plug.family, header.family, plug.positions / plug.rows,
                   plug.family_span},
                  out);
    doubt_housing(fitting,
                  {format("header '{}'", header.id), header.family, plug.family,
                   header.positions / header.rows, header.family_span},
                  out);
  }
  return out;
}

}  // namespace plugward
