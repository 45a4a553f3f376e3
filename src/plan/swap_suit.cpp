// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/swap_test.cpp.
#include "plan/swap_suit.h"

#include <algorithm>
#include <set>

#include "base/format.h"
#include "judge/budget.h"
#include "judge/words.h"
#include "plan/power_in.h"

namespace plugward {
namespace {

/// The rail behind the header on which the supply lands; nullptr when none is described.
const Rail* supply_rail(const Board& board, std::string* header) {
  const int at = power_header(board);
  if (at < 0) return nullptr;
  const Header& h = board.headers[static_cast<std::size_t>(at)];
  *header = h.id;
  const auto plus = std::find_if(h.pins.begin(), h.pins.end(),
                                 [](const Pin& pin) { return pin.function == PinFunction::Supply; });
  return board.rail(plus->rail);
}

void add_supply(std::vector<Suit>& all, const SwapPlan& plan) {
  std::string old_header, new_header;
  const Rail* old_rail = supply_rail(*plan.machine->board, &old_header);
  const Rail* new_rail = supply_rail(*plan.board, &new_header);
  if (old_rail == nullptr || new_rail == nullptr) return;
  Suit suit;
  suit.what = tr("supply");
  suit.needs = to_text(new_rail->volts);
  suit.gives = to_text(old_rail->volts);
  suit.fine = old_rail->volts.min <= new_rail->volts.max && new_rail->volts.min <= old_rail->volts.max;
  suit.message = suit.fine ? format("{} wants {}; the supply gave {} at {}", new_header, suit.needs,
                                    suit.gives, old_header)
                           : format("{} wants {}, and the supply gave {} at {}: another supply is needed",
                                    new_header, suit.needs, suit.gives, old_header);
  all.push_back(std::move(suit));
}

void add_row(std::vector<Suit>& all, const BudgetRow& row) {
  Suit suit;
  suit.what = row.what;
  suit.needs = to_text(Amps(row.amps));
  suit.fine = !row.limit || row.amps <= *row.limit;
  if (row.limit) suit.gives = to_text(Amps(*row.limit));
  suit.message = row.limit
                     ? format("takes {} of {}{}", suit.needs, suit.gives, suit.fine ? "" : tr(": too much"))
                     : format("takes {}; the board's file states no limit", suit.needs);
  all.push_back(std::move(suit));
}

/// The plug's lead to a terminal, and the pin that it meets; nullptr when there is none.
const Pin* pin_at(const Fitting& fitting, const Placement& placed, TerminalRef terminal) {
  const Header& header = header_of(fitting, placed.header);
  for (const Lead& lead : plug_of(fitting, placed.plug).leads) {
    if (lead.to == terminal && lead.cavity >= 1 && lead.cavity <= static_cast<int>(header.pins.size()))
      return &header.pin(lead.cavity);
  }
  return nullptr;
}

void add_motors(std::vector<Suit>& all, const SwapPlan& plan) {
  const Fitting& fitting = plan.after;
  for (const Placement& placed : fitting.placements) {
    std::optional<Amps> wants, gives;
    for (std::size_t d = 0; d < fitting.harness->devices.size(); ++d) {
      for (const Part& part : fitting.harness->devices[d].parts) {
        const auto* coil = std::get_if<Coil>(&part);
        if (coil == nullptr) continue;
        const Pin* pin = pin_at(fitting, placed, {static_cast<int>(d), coil->a});
        if (pin == nullptr || pin->function != PinFunction::Coil) continue;
        if (coil->amps) wants = std::max(wants.value_or(Amps{}), *coil->amps);
        if (pin->limit) gives = gives ? std::min(*gives, *pin->limit) : *pin->limit;
      }
    }
    if (!wants && !gives) continue;
    Suit suit;
    suit.what =
        format("motor '{}' on {}", plug_of(fitting, placed.plug).id, header_of(fitting, placed.header).id);
    suit.needs = wants ? to_text(*wants) : "";
    suit.gives = gives ? to_text(*gives) : "";
    suit.fine = !wants || !gives || *wants <= *gives;
    if (wants && gives) {
      suit.message = suit.fine
                         ? format("rated {}; the driver gives up to {}: tell the firmware no more than {}",
                                  suit.needs, suit.gives, suit.needs)
                         : format("rated {}; the driver gives up to {}: it runs, with less force", suit.needs,
                                  suit.gives);
    } else if (wants) {
      suit.message = format("rated {}; the board's file does not say what the driver gives", suit.needs);
    } else {
      suit.message = format(
          "the driver gives up to {}; the motor's rated current is not stated: read its plate", suit.gives);
    }
    all.push_back(std::move(suit));
  }
}

/// Plugs on headers that the jumper feeds.
std::vector<int> fed_by(const Fitting& fitting, const std::string& jumper) {
  std::vector<int> plugs;
  for (const Placement& p : fitting.placements) {
    const auto& pins = header_of(fitting, p.header).pins;
    const Plug& plug = plug_of(fitting, p.plug);
    const bool fed = std::any_of(pins.begin(), pins.end(), [&](const Pin& pin) {
      return pin.jumper == jumper && plug.lead_in(pin.number) != nullptr;
    });
    if (fed) plugs.push_back(p.plug);
  }
  return plugs;
}

/// The worst thing that the judge says with the jumper at `rail`; "" when all is well there too.
std::string worst_with(const SwapPlan& plan, const std::vector<int>& plugs, const std::string& jumper,
                       const std::string& rail) {
  Fitting other = plan.after;
  other.jumpers[jumper] = rail;
  std::erase_if(other.placements, [&](const Placement& p) {
    return std::find(plugs.begin(), plugs.end(), p.plug) == plugs.end();
  });
  const Assessment found = assess(other);
  for (const Finding& f : found.findings) {
    if (f.weight == Weight::Harm || f.weight == Weight::Fault) return f.message;
  }
  return "";
}

std::string names_of(const Fitting& fitting, const std::vector<int>& plugs) {
  std::vector<std::string> names;
  for (const int p : plugs) names.push_back(format("'{}'", plug_of(fitting, p).id));
  return format("{}", join(names, tr(" and ")));
}

}  // namespace

std::vector<Suit> suits(const SwapPlan& plan) {
  std::vector<Suit> all;
  add_supply(all, plan);
  for (const BudgetRow& row : budget(plan.after).rows) {
    const bool rail = row.kind == BudgetKind::Rail || row.kind == BudgetKind::Supply;
    const bool beyond = row.limit && row.amps > *row.limit;
    if ((rail && row.amps > 0) || beyond) add_row(all, row);
  }
  add_motors(all, plan);
  return all;
}

std::vector<JumperChoice> jumper_choices(const SwapPlan& plan,
                                         const std::map<std::string, std::string>& chosen,
                                         const std::map<std::string, std::string>& stated) {
  std::vector<JumperChoice> all;
  for (const Jumper& jumper : plan.board->jumpers) {
    JumperChoice choice;
    choice.jumper = jumper.id;
    choice.stated = stated.contains(jumper.id);
    choice.plugs = fed_by(plan.after, jumper.id);
    const auto found = chosen.find(jumper.id);
    if (found == chosen.end()) {
      choice.why = tr("not chosen: the board has too many jumpers to try them all; state it with --jumper");
    } else if (choice.plugs.empty() && !choice.stated) {
      choice.why = tr("no plug of the machine depends on it");
    } else {
      choice.rail = found->second;
      std::vector<std::string> reasons;
      for (const std::string& rail : jumper.rails) {
        if (rail == choice.rail || choice.plugs.empty()) continue;
        const std::string worst = worst_with(plan, choice.plugs, jumper.id, rail);
        reasons.push_back(worst.empty() ? format("{} would do as well", rail)
                                        : format("at {}: {}", rail, worst));
      }
      choice.why = choice.plugs.empty() ? tr("as stated; no plug of the machine depends on it")
                                        : format("feeds {}{}{}", names_of(plan.after, choice.plugs),
                                                 reasons.empty() ? "" : "; ", join(reasons, "; "));
    }
    all.push_back(std::move(choice));
  }
  return all;
}

std::vector<std::string> missing(const SwapPlan& plan) {
  std::vector<std::string> all;
  const Fitting& fitting = plan.after;
  for (const PlugTransfer& t : plan.plugs) {
    const std::string& name = plug_of(fitting, t.plug).id;
    if (t.kind == Transfer::NoPlace && t.from)
      all.push_back(format("a header for '{}', which sits on {} today: {}", name,
                           plan.machine->board->headers[static_cast<std::size_t>(*t.from)].id, t.why));
    if (t.kind == Transfer::Off && !t.measurements.empty())
      all.push_back(format("knowledge for '{}': {}", name, t.measurements.front().action));
    if (t.kind == Transfer::Off && t.measurements.empty() && t.softer.empty())
      all.push_back(format("for '{}': {}", name, t.why));
    if (t.kind == Transfer::Adapt) {
      for (const std::string& part : t.parts) all.push_back(format("for '{}': {}", name, part));
    }
  }
  return all;
}

}  // namespace plugward
