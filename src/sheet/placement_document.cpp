// SPDX-License-Identifier: MIT
// Tested in tests/unit/sheet/documents_test.cpp.
#include "base/format.h"
#include "sheet/check_document.h"
#include "sheet/picture_words.h"
#include "sheet/pieces.h"
#include "sheet/place_words.h"
#include "sheet/words.h"

namespace plugward::sheet {
namespace {

Section choice_section(const Fitting& fitting, const PlacementPlan& plan) {
  Section section = titled("placement", tr("Which header takes which plug"));
  Table table{{tr("plug"), tr("header"), tr("verdict"), tr("why")}, {}};
  for (int plug = 0; plug < static_cast<int>(fitting.harness->plugs.size()); ++plug) {
    const int header = chosen_header(plan, plug);
    const PlaceOption* option = chosen_option(plan, plug);
    const Cell name = cell(plug_at(fitting, plug).id);
    if (header < 0) {
      table.rows.push_back(
          {name, cell(tr("none"), Mood::Bad), cell(""), cell(tr("no header of this board is left for it"))});
      continue;
    }
    const Cell where = cell(header_title(header_at(fitting, header)));
    if (option == nullptr) {
      table.rows.push_back({name, where, cell(""), cell(tr("as stated"))});
    } else {
      table.rows.push_back({name, where,
                            cell(std::string(to_word(option->verdict)), mood_of(option->verdict)),
                            cell(option->reason)});
    }
  }
  add_table(section, std::move(table));
  std::vector<std::string> equals;
  for (const std::vector<int>& group : plan.equals) equals.push_back(equals_words(fitting, plan, group));
  add_list(section, tr("Equal plugs"), equals);
  if (plan.runner_up && plan.best) add_list(section, tr("The next best"), runner_up_words(fitting, plan));
  if (!plan.proven) section.blocks.emplace_back(Text{std::string(unproven_sentence())});
  return section;
}

Section rehousing_section(const PlacementPlan& plan, Numbering& numbers) {
  Section section = titled("housings", tr("Other housings"));
  for (const Rehousing& one : plan.rehousings) {
    section.blocks.emplace_back(Text{one.summary, true});
    for (const std::string& caution : one.cautions) section.blocks.emplace_back(Warning{caution});
    add_list(section, one.parts, true);
    Steps steps;
    for (const std::string& act : one.steps) steps.steps.push_back(numbers.step(act));
    section.blocks.emplace_back(std::move(steps));
    add_list(section, tr("Then"), one.checks, true);
  }
  return section;
}

}  // namespace

Fitting placed_fitting(const Fitting& fitting, const PlacedHarness& placed) {
  Fitting result = fitting;
  result.placements = placed.placements;
  return result;
}

Document placement_document(const Fitting& fitting, const PlacementPlan& plan, const SheetFacts& facts) {
  Document document;
  begin(document, fitting, facts);
  document.heading = format("Where {} goes on {}", fitting.harness->title, fitting.board->title);
  Numbering numbers;
  if (!plan.best) {
    document.verdict = to_word(Verdict::Apart);
    document.mood = mood_of(Verdict::Apart);
    document.summary = format("no plug of this harness finds a header on board '{}'", fitting.board->id);
    add(document, cautions_section({}));
    add(document, choice_section(fitting, plan));
    add(document, rehousing_section(plan, numbers));
    return document;
  }
  const Advice& advice = plan.best->advice;
  const Fitting placed = placed_fitting(fitting, *plan.best);
  document.verdict = to_word(advice.verdict);
  document.mood = mood_of(advice.verdict);
  document.summary = advice.summary.empty() ? std::string(meaning(advice.verdict)) : advice.summary;
  add(document, cautions_section(advice.plan ? advice.plan->cautions : std::vector<std::string>{}));
  add(document, choice_section(fitting, plan));
  add_advice(document, placed, advice, facts, numbers);
  add(document, rehousing_section(plan, numbers));
  add(document, true_size_section(placed));
  return document;
}

}  // namespace plugward::sheet
