// SPDX-License-Identifier: MIT
// Tested in tests/unit/judge/measurement_test.cpp.
#include "judge/measurement.h"

#include <vector>

#include "base/format.h"
#include "fit/match.h"
#include "judge/excess_finding.h"
#include "judge/follow_lead.h"
#include "judge/words.h"

namespace plugward {
namespace {

// What a measurement costs: see Measurement::cost.
constexpr int look = 0;
constexpr int power_off = 1;
constexpr int bare_board = 2;
constexpr int device_fed = 3;

std::string volts_of(const Range<Volts>& range, std::string_view what) {
  return format("{}: {}", to_text(range), what);
}

/// What a voltmeter on this pin of the bare board shows for each rail.
std::string rail_readings(const Board& board) {
  std::vector<std::string> readings;
  for (const Rail& rail : board.rails) readings.push_back(volts_of(rail.volts, format("supply {}", rail.id)));
  return format("{}", join(readings, "; "));
}

Measurement volts_on_pin(const Fitting& fitting, int header, int pin, std::string expect) {
  return {format("board powered alone, nothing plugged in: volts from {} to ground",
                 pin_name(fitting, header, pin)),
          std::move(expect), bare_board, format("what {} is", pin_name(fitting, header, pin))};
}

Measurement continuity_to_ground(const Fitting& fitting, int header, int pin, std::string otherwise) {
  return {format("power off, nothing plugged in: continuity from {} to the supply minus",
                 pin_name(fitting, header, pin)),
          format("a beep: ground; no beep: {}", otherwise), power_off,
          format("what {} is", pin_name(fitting, header, pin))};
}

}  // namespace

Measurement measure_pin(const Fitting& fitting, int header, int pin_number) {
  const Pin& pin = header_of(fitting, header).pin(pin_number);
  const std::string other = pin.contest ? pin.contest->statement : tr("not ground");
  if (pin.function == PinFunction::Ground) return continuity_to_ground(fitting, header, pin_number, other);
  if (pin.contest && pin.contest->statement.starts_with("ground")) {
    return continuity_to_ground(fitting, header, pin_number, to_words(pin));
  }
  if (pin.function == PinFunction::Supply && pin.jumper.empty()) {
    if (const Rail* rail = fitting.board->rail(pin.rail)) {
      return volts_on_pin(fitting, header, pin_number,
                          volts_of(rail->volts, tr("as described; anything else: the description is wrong")));
    }
  }
  if (pin.function == PinFunction::Coil) {
    return {
        format("power off, driver fitted, nothing plugged in: follow {} to the driver's output on the board",
               pin_name(fitting, header, pin_number)),
        format("it is end {} of bridge {}", pin.coil_end, pin.coil), power_off,
        format("what {} is", pin_name(fitting, header, pin_number))};
  }
  if (fitting.board->rails.empty()) {
    return volts_on_pin(fitting, header, pin_number,
                        tr("a supply's volts: declare that rail, and beep from the pin to what makes it with power off; "
                           "0 V: ground, or an output or input at rest (continuity to the supply minus with power off "
                           "tells ground)"));
  }
  return volts_on_pin(
      fitting, header, pin_number,
      format("{}; 0 V: ground, or an output or input at rest (continuity to the supply minus with "
             "power off tells ground)",
             rail_readings(*fitting.board)));
}

Measurement measure_lead(const Fitting& fitting, int plug, int lead) {
  if (std::optional<Measurement> known = follow_lead(fitting, plug, lead)) return std::move(*known);
  std::vector<std::string> names;
  const Harness& harness = *fitting.harness;
  for (std::size_t d = 0; d < harness.devices.size(); ++d) {
    for (std::size_t t = 0; t < harness.devices[d].terminals.size(); ++t) {
      names.push_back(harness.terminal_name({static_cast<int>(d), static_cast<int>(t)}));
    }
  }
  const std::string points =
      names.empty() ? tr("the contacts at the far end") : format("terminals {}", join(names, ", "));
  return {format("plug off the board: continuity from the {} to {}", lead_name(fitting, plug, lead), points),
          tr("the one that beeps is where the lead goes; none: find the far end by eye"), power_off,
          format("where the {} goes", lead_name(fitting, plug, lead))};
}

Measurement look_at_jumper(const Fitting& fitting, const Jumper& jumper, int header, int pin) {
  std::vector<std::string> readings;
  for (const std::string& position : jumper.rails) {
    if (const Rail* rail = fitting.board->rail(position)) {
      readings.push_back(volts_of(rail->volts, format("{} is at {}", jumper.id, position)));
    }
  }
  return {
      format(
          "look where jumper {} sits, then say --jumper {}=POSITION; or board powered alone, nothing plugged "
          "in: volts from {} to ground",
          jumper_name(jumper), jumper.id, pin_name(fitting, header, pin)),
      format("{}", join(readings, "; ")), look, format("where {} sits", jumper.id)};
}

/// ", with 4.7 kohm from it to 3.3 V": what stands in for the board's own pull while the lead is off.
std::string pull_words(const Fitting& fitting, const Locus& at) {
  if (at.pin <= 0) return "";
  const Pin& pin = header_of(fitting, at.header).pin(at.pin);
  if (!pin.pull) return "";
  const Rail* rail = fitting.board->rail(pin.rail);
  const std::string to = !pin.pull->up     ? tr("ground")
                         : rail == nullptr ? tr("its supply")
                                           : to_text(rail->volts.middle());
  const std::string ohms = pin.pull->ohms.value > 0 ? to_text(pin.pull->ohms) : tr("a resistor");
  return format(", with {} from it to {}", ohms, to);
}

Measurement measure_excess(const Fitting& fitting, const Excess& excess) {
  const Locus& at = excess.kind == ExcessKind::ResetUnknown ? excess.from : excess.at;
  const std::string pin = at.pin > 0 ? pin_name(fitting, at.header, at.pin) : "";
  const std::string terminal = at.terminal >= 0 ? terminal_name(fitting, {at.device, at.terminal}) : "";
  const std::string device =
      at.device >= 0
          ? format("'{}'", device_name(fitting.harness->devices[static_cast<std::size_t>(at.device)]))
          : "";
  const std::string where = !pin.empty()        ? pin
                            : !terminal.empty() ? terminal
                            : device.empty()    ? tr("the signal")
                                                : device;
  switch (excess.kind) {
    case ExcessKind::UnknownLimit:
      if (lacks_thresholds(excess)) {
        return {format("look up from which voltages {} reads low and high (data sheet of the part behind it)",
                       where),
                tr("state them as low-below and high-above, then judge again"), look,
                format("how {} reads", where)};
      }
      return {format("look up what {} withstands (data sheet of the part behind it)", where),
              format("it withstands {} as well: safe here; it does not: do not join",
                     to_text(Volts(excess.value))),
              look, format("what {} withstands", where)};
    case ExcessKind::UnknownRating: {
      const std::string who = at.plug >= 0 ? lead_name(fitting, at.plug, at.lead) : where;
      return {format("look up the contact maker's rating for the gauge of the {}", who),
              format("{} or more: safe here; less: use a thicker lead or another contact",
                     to_text(Amps(excess.value))),
              look, format("what the contact of the {} carries", who)};
    }
    case ExcessKind::ResetUnknown:
      return {format("board powered alone, nothing plugged in, firmware held in reset: volts from {} to the "
                     "supply pin of '{}'",
                     where, at.header >= 0 ? header_of(fitting, at.header).id : ""),
              tr("0 V: off at reset; the supply's voltage: on at reset, do not fit a heater"), bare_board,
              format("whether {} is off at reset", where)};
    case ExcessKind::SupplyTooLow:
      return {tr("board powered alone, nothing plugged in: volts on the supply pin of this header"),
              format("{} or more: enough; less: too low", to_text(Volts(excess.limit))), bare_board,
              format("whether the supply of {} is enough", where)};
    case ExcessKind::LevelHigh:
    case ExcessKind::LevelLow: {
      const bool high = excess.kind == ExcessKind::LevelHigh;
      return {
          format("device fed, its signal lead off the board{}: volts from the lead to ground while it is {}",
                 pull_words(fitting, at), high ? tr("high") : tr("low")),
          high ? format("{} or more: read as high; less: not", to_text(Volts(excess.limit)))
               : format("{} or less: read as low; more: not", to_text(Volts(excess.limit))),
          device_fed, format("whether {} reaches its {} level", where, high ? tr("high") : tr("low"))};
    }
    default:
      return {tr("device fed, plug off the board: volts on every lead against its ground, in every position "
                 "of the "
                 "device"),
              tr("each within what the pin that it is to meet withstands: safe; else: do not join"),
              device_fed, tr("what the states do that were not tried")};
  }
}

}  // namespace plugward
