// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/budget_text_test.cpp.
#include "sheet/budget_words.h"

#include <algorithm>
#include <cmath>

#include "base/format.h"
#include "sheet/words.h"

namespace plugward {
namespace {

constexpr double worth_a_line = 0.25;  ///< share of the limit
constexpr double worth_without = 0.1;  ///< A, where no limit is known
constexpr double no_amps = 0.001;      ///< what pulls and leaks bring about
constexpr double over = 1.01;          ///< as the judge counts: beyond the limit by more than 1 %
constexpr double lossy = 0.03;         ///< of the supply, there and back (common practice, no source)

/// What stands in one line: rows that say the same of several pins.
struct SameRows {
  std::vector<std::string> names;
  const BudgetRow* row = nullptr;
};

bool close(double a, double b) {
  return std::abs(a - b) <= 0.005 * std::max(std::abs(a), std::abs(b));
}

bool of_contact(BudgetKind kind) {
  return kind == BudgetKind::Pin || kind == BudgetKind::Contact || kind == BudgetKind::Wire ||
         kind == BudgetKind::Bundle;
}

/// Does `a` come nearer to its limit? One without a limit comes last.
bool worse(const BudgetRow& a, const BudgetRow& b) {
  if (a.share().has_value() != b.share().has_value()) return a.share().has_value();
  if (!a.share()) return a.amps > b.amps;
  return *a.share() > *b.share();
}

/// Says nothing that the row of a single pin does not say: a header or jumper that feeds one pin only.
bool repeats_another(const BudgetRow& row, const std::vector<BudgetRow>& rows) {
  return std::any_of(rows.begin(), rows.end(), [&](const BudgetRow& other) {
    if (row.kind == BudgetKind::Header)
      return other.kind == BudgetKind::Pin && other.at.header == row.at.header && close(other.amps, row.amps);
    if (row.kind == BudgetKind::Jumper)
      return other.kind == BudgetKind::Header && other.at.rail == row.at.rail && close(other.amps, row.amps);
    return false;
  });
}

std::string plug_name(const Fitting& fitting, const std::vector<BudgetRow>& rows, const BudgetRow& pin) {
  for (const BudgetRow& row : rows) {
    if (row.at.plug >= 0 && row.at.header == pin.at.header && row.at.pin == pin.at.pin)
      return format("'{}'", plug_at(fitting, row.at.plug).id);
  }
  return "";
}

/// One line for each pin, by the narrowest place on its way; then those that say the same together.
std::vector<SameRows> contact_lines(const std::vector<BudgetRow>& rows) {
  std::vector<SameRows> lines;
  for (const BudgetRow& pin : rows) {
    if (pin.kind != BudgetKind::Pin || pin.amps < no_amps) continue;
    const BudgetRow* worst = &pin;
    for (const BudgetRow& row : rows) {
      if (of_contact(row.kind) && row.at.header == pin.at.header && row.at.pin == pin.at.pin &&
          worse(row, *worst))
        worst = &row;
    }
    const auto same = std::find_if(lines.begin(), lines.end(), [&](const SameRows& line) {
      return line.row->at.header == pin.at.header && close(line.row->amps, worst->amps) &&
             line.row->limit == worst->limit && line.row->basis == worst->basis;
    });
    if (same == lines.end()) {
      lines.push_back({{pin.what}, worst});
    } else {
      same->names.push_back(pin.what);
    }
  }
  return lines;
}

bool worth_saying(const BudgetRow& row) {
  if (row.kind == BudgetKind::Rail) return true;
  if (const auto share = row.share()) return *share >= worth_a_line;
  return row.amps > worth_without;
}

/// Three digits: a worst case is not known to a fourth.
std::string short_amps(double amps) {
  const double step = std::pow(10.0, std::floor(std::log10(amps)) - 2.0);
  return to_text(Amps(std::round(amps / step) * step));
}

std::string loss_words(const LeadLoss& loss, Celsius warm) {
  return format(
      "{}: 2 x {} of {}, there and back, lose {} at 20 C and {} at {} with {}: {:.0f} % of the supply",
      loss.what, to_text(loss.length), to_text(loss.gauge), to_text(loss.cold * 2.0),
      to_text(loss.warm * 2.0), to_text(warm), short_amps(loss.amps), 100.0 * *loss.share_both_ways());
}

std::string heater_words(const HeaterBudget& heater) {
  return format("'{}': {} over the rail's tolerance; rated {} at {}", heater.what,
                to_text(Range<Watts>{heater.least, heater.most}), to_text(heater.rated),
                to_text(heater.rated_at));
}

std::string string_words(const StringBudget& string) {
  const std::string share =
      string.brightness < 1.0 ? format(" at {:.3g} % brightness", 100.0 * string.brightness) : "";
  const std::string far = string.far ? format(", {} at the far end", to_text(*string.far)) : "";
  return format("'{}': {} LEDs{} count with {}; no less than {} at the near end{}", string.what, string.count,
                share, to_text(string.draws), to_text(string.near), far);
}

/// More than a wire in a bundle should carry, though not more than a single one may.
std::string bundle_words(const Fitting& fitting, const BudgetRow& row) {
  return format("plug '{}': {} is more than the {} of {}; lay the leads apart, or take thicker ones",
                plug_at(fitting, row.at.plug).id, short_amps(row.amps), to_text(Amps(*row.limit)), row.basis);
}

std::vector<std::string> remarks(const Fitting& fitting, const Budget& budget) {
  std::vector<std::string> list;
  const auto add = [&](std::string words) {
    if (std::find(list.begin(), list.end(), words) == list.end()) list.push_back(std::move(words));
  };
  if (budget.shorted) add(tr("states with a short circuit are left out: the figures hold once it is gone"));
  if (budget.cut_short) add(tr("there are more states than were looked at: the figures may be too low"));
  for (const BudgetRow& row : budget.rows) {
    if (row.kind == BudgetKind::Bundle && row.share().value_or(0.0) > over) add(bundle_words(fitting, row));
  }
  for (const LeadLoss& loss : budget.losses) {
    if (loss.share_both_ways().value_or(0.0) >= lossy) add(loss_words(loss, budget.warm));
  }
  for (const HeaterBudget& heater : budget.heaters) {
    if (heater.most.value > 0.01 * heater.rated.value) add(heater_words(heater));
  }
  for (const StringBudget& string : budget.strings) {
    if (string.brightness < 1.0 || string.far) add(string_words(string));
  }
  for (const FuseBudget& fuse : budget.fuses) add(fuse.words);
  for (const BudgetRow& row : budget.rows) {
    const bool wire = row.kind == BudgetKind::Wire || row.kind == BudgetKind::Bundle;
    if (wire && row.share().value_or(0.0) >= worth_a_line) add(format("wire: {}", row.source));
  }
  return list;
}

/// REQUIRES: the row has a current.
BudgetLine line_of(const Fitting& fitting, const Budget& budget, const SameRows& same) {
  const BudgetRow& row = *same.row;
  BudgetLine line;
  line.what = format("{}", join(same.names, ", "));
  if (of_contact(row.kind)) line.what += format(" ({})", plug_name(fitting, budget.rows, row));
  line.amps = short_amps(row.amps);
  if (row.limit) line.limit = to_text(Amps(*row.limit));
  const auto share = row.share();
  if (share) line.share = format("{:.0f} %", 100.0 * *share);
  line.over = share && *share > over;
  line.basis = row.basis;
  return line;
}

}  // namespace

BudgetWords budget_words(const Fitting& fitting, const Budget& budget) {
  BudgetWords words;
  if (std::none_of(budget.rows.begin(), budget.rows.end(),
                   [](const BudgetRow& row) { return row.amps >= no_amps; }))
    return words;
  std::vector<SameRows> lines = contact_lines(budget.rows);
  for (const BudgetRow& row : budget.rows) {
    if (of_contact(row.kind) || row.amps < no_amps || repeats_another(row, budget.rows)) continue;
    lines.push_back({{row.what}, &row});
  }
  std::stable_sort(lines.begin(), lines.end(),
                   [](const SameRows& a, const SameRows& b) { return worse(*a.row, *b.row); });
  for (const SameRows& line : lines) {
    if (worth_saying(*line.row)) words.lines.push_back(line_of(fitting, budget, line));
  }
  const std::size_t left_out = lines.size() - words.lines.size();
  words.any = true;
  if (left_out > 0)
    words.left_out = count_of(left_out, "{} smaller one is left out: below a quarter of the limit",
                              "{} smaller ones are left out: below a quarter of the limit", left_out);
  words.remarks = remarks(fitting, budget);
  return words;
}

}  // namespace plugward
