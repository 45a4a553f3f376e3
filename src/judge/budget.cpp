// SPDX-License-Identifier: MIT
// The flows of the circuit, each put beside its limit. A jumper whose position is not stated is tried in
// every position, and the worst of every figure is kept. Tested in tests/unit/judge/budget_test.cpp.
#include "judge/budget.h"

#include <algorithm>
#include <tuple>

#include "base/format.h"
#include "circuit/flows.h"
#include "fit/match.h"
#include "fit/seating.h"
#include "judge/budget_parts.h"
#include "judge/carrying.h"
#include "judge/doubts.h"
#include "judge/words.h"

namespace plugward {
namespace {

constexpr std::size_t most_positions = 64;  ///< of jumpers that are not stated; beyond it not all are tried
constexpr std::string_view by_board = later("the board file");

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

std::vector<Contact> home_contacts(const Fitting& fitting) {
  std::vector<Contact> contacts;
  for (const Placement& p : fitting.placements) {
    const Plug& plug = plug_of(fitting, p.plug);
    const Seating home = home_seating(plug, p.header, *fitting.board);
    for (std::size_t l = 0; l < plug.leads.size(); ++l) {
      if (plug.leads[l].cavity < 1) continue;
      const int pin = home.pin_of_cavity[at(plug.leads[l].cavity - 1)];
      if (pin != 0) contacts.push_back({p.plug, static_cast<int>(l), p.header, pin});
    }
  }
  return contacts;
}

void keep_worse(MostAmps& kept, const MostAmps& other) {
  if (other.amps > kept.amps) kept = other;
}

/// Keeps the worse of each figure; `key` tells which belong together.
template <class Flow, class Key>
void merge(std::vector<Flow>& into, const std::vector<Flow>& from, Key key) {
  for (const Flow& flow : from) {
    const auto same =
        std::find_if(into.begin(), into.end(), [&](const Flow& known) { return key(known) == key(flow); });
    if (same == into.end()) {
      into.push_back(flow);
    } else {
      keep_worse(same->most, flow.most);
    }
  }
}

void merge(std::vector<PartVolts>& into, const std::vector<PartVolts>& from) {
  for (const PartVolts& volts : from) {
    const auto same = std::find_if(into.begin(), into.end(), [&](const PartVolts& known) {
      return known.device == volts.device && known.part == volts.part;
    });
    if (same == into.end()) {
      into.push_back(volts);
      continue;
    }
    same->least = std::min(same->least, volts.least);
    same->most = std::max(same->most, volts.most);
  }
}

void merge(Flows& into, const Flows& from) {
  merge(into.contacts, from.contacts, [](const ContactFlow& f) { return f.contact; });
  merge(into.pins, from.pins, [](const PinFlow& f) { return std::tuple(f.header, f.pin); });
  merge(into.headers, from.headers, [](const HeaderFlow& f) { return std::tuple(f.header, f.rail); });
  merge(into.jumpers, from.jumpers, [](const JumperFlow& f) { return std::tuple(f.jumper, f.rail); });
  merge(into.rails, from.rails, [](const RailFlow& f) { return f.rail; });
  merge(into.parts, from.parts);
  into.shorted |= from.shorted;
  into.cut_short |= from.cut_short;
}

/// "JP2 at 24V" before every state.
void put_before(Flows& flows, const JumperPositions& positions) {
  std::vector<std::string> words;
  for (const auto& [jumper, rail] : positions) words.push_back(format("{} at {}", jumper, rail));
  const std::string text = format("{}", join(words, ", "));
  const auto put = [&](auto& list) {
    for (auto& flow : list) flow.most.state = text + (flow.most.state.empty() ? "" : ", ") + flow.most.state;
  };
  put(flows.contacts);
  put(flows.pins);
  put(flows.headers);
  put(flows.jumpers);
  put(flows.rails);
}

/// The pin where the board is fed: the strongest supply pin of a header for 'supply'. nullptr: none is
/// described.
struct Inlet {
  int header = -1;
  int rail = -1;
  const Pin* pin = nullptr;
};

Inlet inlet_of(const Board& board) {
  const auto rail_index = [&](std::string_view id) {
    const auto rail =
        std::find_if(board.rails.begin(), board.rails.end(), [&](const Rail& r) { return r.id == id; });
    return rail == board.rails.end() ? -1 : static_cast<int>(rail - board.rails.begin());
  };
  Inlet best;
  for (std::size_t h = 0; h < board.headers.size(); ++h) {
    if (board.headers[h].use != "supply") continue;
    for (const Pin& pin : board.headers[h].pins) {
      const int rail = rail_index(pin.rail);
      if (pin.function != PinFunction::Supply || rail < 0) continue;
      const bool stronger =
          best.pin == nullptr || pin.limit.value_or(Amps{}) > best.pin->limit.value_or(Amps{});
      if (stronger) best = {static_cast<int>(h), rail, &pin};
    }
  }
  if (best.pin != nullptr) return best;
  for (std::size_t r = 0; r < board.rails.size(); ++r) {
    if (best.rail < 0 || board.rails[at(best.rail)].volts.max < board.rails[r].volts.max)
      best.rail = static_cast<int>(r);
  }
  return best;
}

/// Everything together, as taken from the rail that feeds the board. A converter to a lower voltage never
/// takes more current than it gives; one to a higher voltage takes as many times more as it raises the
/// voltage, its losses not counted.
MostAmps supply_current(const Board& board, const std::vector<RailFlow>& rails) {
  MostAmps sum;
  const Inlet inlet = inlet_of(board);
  if (inlet.rail < 0) return sum;
  const double input = board.rails[at(inlet.rail)].volts.min.value;
  for (const RailFlow& flow : rails) {
    const double up = board.rails[at(flow.rail)].volts.max.value / input;
    sum.amps += flow.most.amps * (flow.rail == inlet.rail ? 1.0 : std::max(1.0, up));
  }
  return sum;
}

/// The worst of every figure, in every position of the jumpers that are not stated.
struct Worst {
  Flows flows;
  MostAmps supply;
};

Worst in_all_positions(const Fitting& fitting, std::span<const Contact> contacts) {
  std::vector<JumperPositions> all{{}};
  for (const OpenJumper& open : open_jumpers(fitting, contacts)) {
    std::vector<JumperPositions> more;
    for (const JumperPositions& base : all) {
      for (const std::string& rail : open.jumper->rails) {
        more.push_back(base);
        more.back()[open.jumper->id] = rail;
      }
    }
    if (more.size() > most_positions) break;
    all = std::move(more);
  }
  Worst worst;
  for (const JumperPositions& positions : all) {
    Fitting stated = fitting;
    stated.jumpers.insert(positions.begin(), positions.end());
    Flows one = flows(stated, contacts);
    if (!positions.empty()) put_before(one, positions);
    merge(worst.flows, one);
    keep_worse(worst.supply, supply_current(*fitting.board, one.rails));
  }
  return worst;
}

/// The rows, in the order in which they are added.
struct Rows {
  const Fitting& fitting;
  std::vector<BudgetRow>& rows;

  void add(BudgetKind kind, const Locus& place, std::string what, const MostAmps& most,
           const CarryingLimit& limit) {
    BudgetRow row{kind,         place,       std::move(what), most.amps,
                  std::nullopt, limit.basis, limit.source,    most.state};
    if (limit.amps) row.limit = limit.amps->value;
    rows.push_back(std::move(row));
  }

  static CarryingLimit stated(std::optional<Amps> amps, std::string_view basis) {
    if (!amps) return {std::nullopt, format("{} not stated", basis), ""};
    return {amps, std::string(basis), std::string(by_board)};
  }

  void rail(const RailFlow& flow) {
    const Rail& rail = fitting.board->rails[at(flow.rail)];
    Locus place;
    place.rail = flow.rail;
    add(BudgetKind::Rail, place, format("rail '{}'", rail.id), flow.most, stated(rail.limit, tr("rail limit")));
  }

  void jumper(const JumperFlow& flow) {
    const Rail& rail = fitting.board->rails[at(flow.rail)];
    Locus place;
    place.rail = flow.rail;
    const Jumper& jumper = fitting.board->jumpers[at(flow.jumper)];
    add(BudgetKind::Jumper, place, format("all pins on jumper {} at {}", jumper_name(jumper), rail.id),
        flow.most, stated(rail.limit, tr("limit of its rail")));
  }

  /// The limit of a header is what its pins may give together.
  void header(const HeaderFlow& flow) {
    const Header& header = header_of(fitting, flow.header);
    std::optional<Amps> limit = Amps(0.0);
    for (const int number : flow.pins) {
      const auto& own = header.pin(number).limit;
      limit = limit && own ? std::optional(*limit + *own) : std::nullopt;
    }
    Locus place;
    place.header = flow.header;
    place.rail = flow.rail;
    add(BudgetKind::Header, place,
        format("header '{}' from '{}'", header.id, fitting.board->rails[at(flow.rail)].id), flow.most,
        stated(limit, flow.pins.size() == 1 ? tr("pin limit") : tr("pin limits together")));
  }

  void pin(const PinFlow& flow) {
    const CircuitDefaults defaults;
    const Pin& pin = header_of(fitting, flow.header).pin(flow.pin);
    CarryingLimit limit = stated(pin.limit, tr("pin limit"));
    if (!pin.limit && pin.function == PinFunction::Output)
      limit = {defaults.output_limit, tr("logic output, limit not stated"), tr("ATmega640 data sheet, test current")};
    if (!pin.limit && pin.function == PinFunction::Coil)
      limit = {defaults.coil_limit, tr("motor driver, limit not stated"), tr("taken for granted")};
    Locus place;
    place.header = flow.header;
    place.pin = flow.pin;
    add(BudgetKind::Pin, place, pin_name(fitting, flow.header, flow.pin), flow.most, limit);
  }

  /// The smaller of the ratings of plug and header.
  CarryingLimit rating(const Contact& contact) const {
    const Plug& plug = plug_of(fitting, contact.plug);
    const Lead& lead = lead_of(fitting, contact);
    const std::string& other = header_of(fitting, contact.header).family;
    CarryingLimit least{std::nullopt, tr("contact rating not known: no such family"), ""};
    for (const std::string& id : {plug.family, other}) {
      const Family* family = fitting.catalogue->find(id);
      if (family == nullptr) continue;
      CarryingLimit own = contact_limit(*family, lead.gauge, plug.positions);
      if (!least.amps || (own.amps && *own.amps < *least.amps)) least = std::move(own);
    }
    return least;
  }

  void contact(const ContactFlow& flow) {
    const Contact& c = flow.contact;
    const Lead& lead = lead_of(fitting, c);
    const Locus place = locus_of(fitting, c);
    add(BudgetKind::Contact, place, format("contact at {}", pin_name(fitting, c)), flow.most, rating(c));
    if (!lead.gauge) return;
    const std::string name = lead_name(fitting, c.plug, c.lead);
    add(BudgetKind::Wire, place, name, flow.most, wire_limit(*lead.gauge));
    const auto& leads = plug_of(fitting, c.plug).leads;
    const auto wires =
        std::count_if(leads.begin(), leads.end(), [](const Lead& l) { return l.cavity >= 1 && l.to; });
    if (wires >= 2) {
      add(BudgetKind::Bundle, place, name, flow.most, bundle_limit(*lead.gauge, static_cast<int>(wires)));
    }
  }
};

/// Everything together, beside what the pin takes where the board is fed.
void add_supply(Rows& rows, const MostAmps& most) {
  const Inlet inlet = inlet_of(*rows.fitting.board);
  if (inlet.rail < 0) return;
  Locus place;
  place.rail = inlet.rail;
  CarryingLimit limit{std::nullopt, tr("where the board is fed is not described"), ""};
  if (inlet.pin != nullptr) {
    place.header = inlet.header;
    place.pin = inlet.pin->number;
    limit = Rows::stated(inlet.pin->limit,
                         format("limit of {}", pin_name(rows.fitting, inlet.header, inlet.pin->number)));
  }
  rows.add(BudgetKind::Supply, place,
           format("all rails, from '{}'", rows.fitting.board->rails[at(inlet.rail)].id), most,
           limit);
}

}  // namespace

std::optional<double> BudgetRow::share() const {
  if (!limit || !(*limit > 0.0)) return std::nullopt;
  return amps / *limit;
}

std::optional<double> LeadLoss::share_both_ways() const {
  if (!supply || !(supply->value > 0.0)) return std::nullopt;
  return 2.0 * cold.value / supply->value;
}

Budget budget(const Fitting& fitting, const BudgetOptions& options) {
  const std::vector<Contact> contacts = home_contacts(fitting);
  const auto [flowing, supply] = in_all_positions(fitting, contacts);
  Budget budget;
  budget.warm = options.warm;
  budget.shorted = flowing.shorted;
  budget.cut_short = flowing.cut_short;
  Rows rows{fitting, budget.rows};
  add_supply(rows, supply);
  for (const RailFlow& flow : flowing.rails) rows.rail(flow);
  for (const JumperFlow& flow : flowing.jumpers) rows.jumper(flow);
  for (const HeaderFlow& flow : flowing.headers) rows.header(flow);
  for (const PinFlow& flow : flowing.pins) rows.pin(flow);
  for (const ContactFlow& flow : flowing.contacts) rows.contact(flow);
  budget.losses = lead_losses(fitting, flowing, options.warm);
  budget.heaters = heater_budgets(fitting, flowing);
  budget.strings = string_budgets(fitting, flowing);
  budget.fuses = fuse_budgets(fitting, budget.rows);
  return budget;
}

std::string_view to_word(BudgetKind kind) {
  switch (kind) {
    case BudgetKind::Supply:
      return "supply";
    case BudgetKind::Rail:
      return "rail";
    case BudgetKind::Jumper:
      return "jumper";
    case BudgetKind::Header:
      return "header";
    case BudgetKind::Pin:
      return "pin";
    case BudgetKind::Contact:
      return "contact";
    case BudgetKind::Wire:
      return "wire";
    case BudgetKind::Bundle:
      return "bundle";
  }
  return "";
}

}  // namespace plugward
