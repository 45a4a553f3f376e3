// SPDX-License-Identifier: MIT
// Tested in tests/unit/sheet/documents_test.cpp.
#include "sheet/pieces.h"

#include <algorithm>
#include <set>

#include "base/format.h"
#include "sheet/budget_words.h"
#include "sheet/parts_words.h"
#include "sheet/picture_words.h"
#include "sheet/seating_words.h"
#include "sheet/step_words.h"
#include "sheet/words.h"

namespace plugward::sheet {
namespace {

std::string file_place(const SheetFacts& facts, const Finding& finding) {
  if (facts.sources == nullptr) return "";
  const std::string first = place_name(*facts.sources, finding.first);
  std::string second = place_name(*facts.sources, finding.second);
  if (second.empty()) return first;
  if (!finding.second_says.empty()) second += ", " + finding.second_says;
  return first.empty() ? second : format("{}; {}", first, second);
}

}  // namespace

Mood mood_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::Mate:
      return Mood::Good;
    case Verdict::Repin:
    case Verdict::Adapt:
      return Mood::Caution;
    case Verdict::Measure:
      return Mood::Doubtful;
    case Verdict::Apart:
      return Mood::Bad;
  }
  return Mood::Plain;
}

Mood mood_of(Weight weight) {
  switch (weight) {
    case Weight::Harm:
      return Mood::Bad;
    case Weight::Fault:
      return Mood::Caution;
    case Weight::Doubt:
      return Mood::Doubtful;
    case Weight::Note:
      return Mood::Plain;
  }
  return Mood::Plain;
}

Section titled(std::string id, std::string title, bool own_page) {
  return {.id = std::move(id), .title = std::move(title), .blocks = {}, .own_page = own_page};
}

Cell cell(std::string text, Mood mood, std::string picture) {
  return {.text = std::move(text), .mood = mood, .picture = std::move(picture)};
}

void add(Document& document, Section section) {
  if (!section.blocks.empty()) document.sections.push_back(std::move(section));
}

void add_list(Section& section, const std::vector<std::string>& items, bool boxes) {
  if (!items.empty()) section.blocks.emplace_back(List{items, boxes, false});
}

void add_list(Section& section, const std::string& heading, const std::vector<std::string>& items,
              bool boxes) {
  if (items.empty()) return;
  section.blocks.emplace_back(Text{heading, true});
  add_list(section, items, boxes);
}

void add_table(Section& section, Table table) {
  if (table.rows.empty()) return;
  for (std::size_t column = table.head.size(); column-- > 0;) {
    const bool empty = std::all_of(table.rows.begin(), table.rows.end(), [column](const auto& row) {
      return column >= row.size() || row[column].text.empty();
    });
    if (!empty) continue;
    table.head.erase(table.head.begin() + static_cast<std::ptrdiff_t>(column));
    for (auto& row : table.rows) {
      if (column < row.size()) row.erase(row.begin() + static_cast<std::ptrdiff_t>(column));
    }
  }
  section.blocks.emplace_back(std::move(table));
}

std::string board_title(const Board& board) {
  return board.revision.empty() ? board.title : format("{}, revision {}", board.title, board.revision);
}

Section cautions_section(const std::vector<std::string>& cautions) {
  Section section = titled("cautions", tr("Before anything is touched"));
  section.blocks.emplace_back(Warning{std::string(power_sentence())});
  std::set<std::string> told;
  for (const std::string& caution : cautions) {
    if (told.insert(caution).second) section.blocks.emplace_back(Warning{caution});
  }
  return section;
}

Section findings_section(const std::vector<Finding>& findings, const SheetFacts& facts) {
  Section section = titled("findings", tr("As it is wired now"));
  if (findings.empty()) section.blocks.emplace_back(Text{tr("Nothing speaks against it.")});
  Table table{{"", tr("finding"), tr("when"), tr("path"), tr("measure"), tr("place")}, {}};
  for (const Weight weight : {Weight::Harm, Weight::Fault, Weight::Doubt, Weight::Note}) {
    for (const Finding& f : findings) {
      if (f.weight != weight) continue;
      const std::string measure = f.measurement ? f.measurement->action : "";
      table.rows.push_back({cell(std::string(tr(to_word(weight))), mood_of(weight)),
                            cell(format("{} [{}]", f.message, rule_info(f.rule).id)), cell(f.state),
                            cell(f.path), cell(measure), cell(file_place(facts, f))});
    }
  }
  add_table(section, std::move(table));
  return section;
}

void add_measurements(Section& section, const std::vector<Measurement>& measurements, Numbering& numbers) {
  if (measurements.empty()) return;
  section.blocks.emplace_back(Text{tr("Measure, the cheapest first"), true});
  Steps steps;
  for (const Measurement& m : measurements) {
    Step step = numbers.step(m.settles.empty() ? m.action : format("{} (settles: {})", m.action, m.settles));
    step.see = m.expect;
    step.power = m.cost >= 2;
    steps.steps.push_back(std::move(step));
  }
  section.blocks.emplace_back(std::move(steps));
}

void add_cures(Section& section, const std::vector<Cure>& cures) {
  if (cures.empty()) return;
  section.blocks.emplace_back(Text{std::string(cures_sentence())});
  for (const Cure& cure : cures) {
    section.blocks.emplace_back(Text{cure.what, true});
    section.blocks.emplace_back(Text{format("Why: {}", cure.why)});
    if (!cure.next_best.empty()) section.blocks.emplace_back(Text{format("Not: {}", cure.next_best)});
    std::vector<std::string> components;
    for (const Component& c : cure.components) components.push_back(component_words(c));
    add_list(section, components);
    add_list(section, tr("Building it in"), cure.steps, true);
  }
}

Step moves_step(const Fitting& fitting, const PlugPlan& plan, Numbering& numbers,
                const std::string& picture) {
  Step step = numbers.step(
      format("move the contacts of plug '{}', by its cavity numbers", plug_at(fitting, plan.plug).id));
  for (const plugward::Step& move : plan.steps) {
    const std::string words = step_words(*fitting.harness, move);
    step.parts.push_back(move.why.empty() ? words : format("{} ({})", words, move.why));
  }
  step.picture = picture;
  return step;
}

Section test_card(const Fitting& fitting, Numbering& numbers) {
  Section section = titled("test-card", tr("Test card"));
  Steps off, bare;
  for (const Placement& p : fitting.placements) {
    Step plug = numbers.step(format("plug '{}' in the hand, its device connected, no power anywhere",
                                    plug_at(fitting, p.plug).id));
    std::vector<ExpectedReading> readings{colours_in_hand(fitting, p.plug)};
    for (ExpectedReading& r : plug_readings(fitting, p.plug)) readings.push_back(std::move(r));
    Numbering::add_blanks(plug, readings);
    off.steps.push_back(std::move(plug));
  }
  for (const Placement& p : fitting.placements) {
    const std::vector<ExpectedReading> dead = power_off_readings(fitting, p.header);
    if (!dead.empty()) {
      Step step = numbers.step(
          format("header {}, no power anywhere, its plug off", header_title(header_at(fitting, p.header))));
      Numbering::add_blanks(step, dead);
      off.steps.push_back(std::move(step));
    }
  }
  for (const Placement& p : fitting.placements) {
    const std::vector<ExpectedReading> live = bare_board_readings(fitting, p.header);
    if (live.empty()) continue;
    Step step = numbers.step(format("header {}, board powered alone, nothing plugged in",
                                    header_title(header_at(fitting, p.header))));
    step.power = true;
    Numbering::add_blanks(step, live);
    bare.steps.push_back(std::move(step));
  }
  if (!off.steps.empty()) {
    section.blocks.emplace_back(Text{
        tr("Ohms with the leads of the meter taken off, at 20 to 25 C. A reading that is not as expected "
           "stops the work until it is explained. Plugs are measured once all contacts and parts are where "
           "they shall be.")});
    section.blocks.emplace_back(std::move(off));
  }
  if (!bare.steps.empty()) {
    section.blocks.emplace_back(
        Warning{tr("Power is on for these readings: one hand, no bare tip near two pins")});
    section.blocks.emplace_back(std::move(bare));
  }
  return section;
}

Section firmware_section(const Board& board, const std::vector<FirmwareSetting>& settings,
                         Numbering& numbers) {
  Section section = titled("firmware", tr("What the firmware must be told"));
  if (settings.empty()) return section;
  section.blocks.emplace_back(
      Text{format("For {}. Neutral words: where they are entered is told by the firmware's own pages.",
                  board_title(board))});
  Steps steps;
  std::set<std::string> codes;
  for (const FirmwareSetting& s : settings) {
    std::string act = format("{}: {}", s.what, s.tell);
    if (s.changed && !s.was.empty()) act = format("{}: {} (was {})", s.what, s.tell, s.was);
    if (!s.changed) act = format("{}: {} (as it was)", s.what, s.tell);
    Step step = numbers.step(std::move(act));
    step.code = s.code;
    step.see = s.check;
    step.not_proved = s.not_proved;
    codes.insert(s.code);
    steps.steps.push_back(std::move(step));
  }
  section.blocks.emplace_back(std::move(steps));
  Table table{{tr("code"), tr("meaning")}, {}};
  for (const GcodeMeaning& g : gcode_meanings()) {
    const bool used = std::any_of(codes.begin(), codes.end(), [&](const std::string& code) {
      return code.find(g.code) != std::string::npos;
    });
    if (used) table.rows.push_back({cell(std::string(g.code)), cell(std::string(tr(g.meaning)))});
  }
  if (table.rows.empty()) return section;
  section.blocks.emplace_back(Text{tr(
      "Codes of RepRap-flavour G-code (RepRap wiki, \"G-code\"); other firmware has its own, and not every "
      "one has all of these.")});
  add_table(section, std::move(table));
  return section;
}

Section seatings_section(const Fitting& fitting, const Advice& advice) {
  Section section = titled("wrong-seatings", std::string(wrong_seatings_heading(advice)));
  Table table{{"", tr("what it would do")}, {}};
  for (const SeatingLine& line : seating_lines(fitting, advice.wrong))
    table.rows.push_back(
        {cell(std::string(tr(to_word(line.weight))), mood_of(line.weight)), cell(line.text)});
  add_table(section, std::move(table));
  return section;
}

Section currents_section(const Fitting& fitting, const Budget& budget, bool planned) {
  Section section = titled("currents", planned ? tr("Currents once that is mended, each at its worst")
                                               : tr("Currents, each at its worst"));
  const BudgetWords words = budget_words(fitting, budget);
  Table table{{tr("where"), tr("current"), tr("limit"), tr("share"), tr("what the limit is")}, {}};
  for (const BudgetLine& line : words.lines) {
    const Mood mood = line.over ? Mood::Bad : Mood::Plain;
    table.rows.push_back({cell(line.what), cell(line.amps), cell(line.limit),
                          cell(line.over ? format("{} over", line.share) : line.share, mood),
                          cell(line.basis)});
  }
  add_table(section, std::move(table));
  std::vector<std::string> remarks = words.remarks;
  if (!words.left_out.empty()) remarks.insert(remarks.begin(), words.left_out);
  add_list(section, remarks);
  return section;
}

Section parts_section(const PartsList& list) {
  Section section = titled("parts", tr("Parts and tools"));
  if (!list.planned || list.items.empty()) return section;
  std::vector<std::string> buy, ready;
  bool contacts = false;
  for (const PartItem& item : list.items) {
    (item.kind == PartKind::Tool ? ready : buy).push_back(format("{} x {}", item.buy(), part_words(item)));
    contacts = contacts || item.kind == PartKind::Contact;
  }
  add_list(section, tr("To buy"), buy, true);
  add_list(section, tr("To lay ready"), ready, true);
  if (contacts) section.blocks.emplace_back(Text{std::string(spares_sentence())});
  return section;
}

Section true_size_section(const Fitting& fitting) {
  Section section = titled("true-size", tr("At true size"), true);
  if (!fitting.placements.empty()) section.blocks.emplace_back(true_size_picture(fitting));
  return section;
}

}  // namespace plugward::sheet
