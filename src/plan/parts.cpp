// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/parts_test.cpp.
#include "plan/parts.h"

#include <algorithm>

#include "base/format.h"
#include "fit/match.h"
#include "fit/seating.h"
#include "judge/words.h"
#include "plan/contact_wire.h"

namespace plugward {
namespace {

bool blocks(const Finding& finding) {
  return finding.weight == Weight::Harm || finding.weight == Weight::Fault;
}

/// A load on too high a supply also takes too much: that goes when the supply is right.
bool is_current(Rule rule) {
  return rule == Rule::PinOvercurrent || rule == Rule::ContactOvercurrent || rule == Rule::WireOvercurrent ||
         rule == Rule::RailOverload;
}

std::string place(const Fitting& fitting, const Finding& finding) {
  const Locus& at = finding.at;
  if (at.pin > 0 && at.header >= 0) return pin_name(fitting, at.header, at.pin);
  if (at.terminal >= 0) return format("terminal {}", terminal_name(fitting, {at.device, at.terminal}));
  if (at.device >= 0) return format("'{}'", fitting.harness->devices[static_cast<std::size_t>(at.device)].id);
  return tr("the signal");
}

/// The housing that the header wants, when a plug is of another family or size.
std::string housing_words(const Fitting& fitting, const Finding& finding) {
  for (const Placement& p : fitting.placements) {
    const Plug& plug = plug_of(fitting, p.plug);
    if (!(finding.first == plug.family_span) && !(finding.first == plug.span)) continue;
    const Header& header = header_of(fitting, p.header);
    const Family* family = fitting.catalogue->find(header.family);
    const std::string misfit = family == nullptr ? std::string() : misfit_words(*family, plug);
    return format(
        "another housing for plug '{}': family '{}', {} positions, with its own contacts, crimped anew{}",
        plug.id, header.family, header.positions, misfit.empty() ? "" : "; " + misfit);
  }
  return tr("another housing");
}

/// Where a lead is to be seated that the housing lacks: the first empty cavity whose pin grants the wish.
std::string lead_words(const Fitting& fitting, const Finding& finding) {
  const TerminalRef terminal{finding.at.device, finding.at.terminal};
  const std::string lead = format("a lead from terminal {}", terminal_name(fitting, terminal));
  for (const WishGroup& group : groups(*fitting.harness)) {
    for (const End& end : group.alternatives.front().ends) {
      if (end.terminal != terminal) continue;
      for (const Placement& p : fitting.placements) {
        const Plug& plug = plug_of(fitting, p.plug);
        const Seating home = home_seating(plug, p.header, *fitting.board);
        for (int cavity = 1; cavity <= plug.positions; ++cavity) {
          const int pin = home.pin_of_cavity[static_cast<std::size_t>(cavity) - 1];
          if (pin == 0 || plug.lead_in(cavity) != nullptr) continue;
          if (!grants(header_of(fitting, p.header).pin(pin), end)) continue;
          return format("{}, with a contact of family '{}', seated in cavity {} of '{}'; it meets {}", lead,
                        plug.family, cavity, plug.id, pin_name(fitting, p.header, pin));
        }
      }
      return format("{} to a pin that is {}", lead, to_words(end));
    }
  }
  return lead;
}

}  // namespace

bool curable(const Assessment& assessment) {
  return incurable(assessment) == 0;
}

int incurable(const Assessment& assessment) {
  const auto& all = assessment.findings;
  const bool too_high =
      std::any_of(all.begin(), all.end(), [](const Finding& f) { return f.rule == Rule::SupplyTooHigh; });
  return static_cast<int>(std::count_if(all.begin(), all.end(), [&](const Finding& f) {
    return blocks(f) && f.part.empty() && !(too_high && is_current(f.rule));
  }));
}

std::string part_words(const Fitting& fitting, const Finding& finding) {
  const std::string where = place(fitting, finding);
  const auto volts = [](std::optional<double> v) {
    return v ? to_text(Volts(*v)) : std::string(tr("what it needs"));
  };
  if (finding.part == "housing") return housing_words(fitting, finding);
  if (finding.part == "lead") return lead_words(fitting, finding);
  if (finding.part == "divider") {
    return format("a voltage divider or level shifter that keeps {} at {} or less", where,
                  volts(finding.limit));
  }
  if (finding.part == "regulator") {
    return format("a step-down regulator that gives {} no more than {}", where, volts(finding.limit));
  }
  if (finding.part == "supply") {
    return format("a supply that gives {} at least {}, with its ground joined to the board's", where,
                  volts(finding.limit));
  }
  if (finding.part == "far-end-feed")
    return format("a second pair of supply leads, to the far end of {}", where);
  if (finding.part == "level-buffer") {
    return finding.rule == Rule::LevelHigh
               ? format(
                     "a level buffer before {} whose output reaches {} or more (74HCT type, fed by the "
                     "supply "
                     "of the receiving side)",
                     where, volts(finding.limit))
               : format("a level buffer or transistor before {} whose output falls below {}", where,
                        volts(finding.limit));
  }
  if (finding.part == "pull-up")
    return format("a pull-up resistor from {} to the supply of the board's input", where);
  if (finding.part == "pull-down") return format("a pull-down resistor from {} to ground", where);
  return format("a part that cures '{}'", finding.message);
}

}  // namespace plugward
