// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/advice_json_test.cpp and against the schema in tests/cases.
#include "report/advice_json.h"

#include "report/budget_json.h"
#include "report/cure_text.h"
#include "report/json.h"
#include "report/json_pieces.h"
#include "report/repin_text.h"
#include "report/words.h"

namespace plugward {
namespace {

Json finding_json(const Sources& sources, const Finding& finding) {
  Json json;
  json["rule"] = rule_info(finding.rule).id;
  json["weight"] = to_word(finding.weight);
  json["message"] = finding.message;
  json["state"] = text_or_null(finding.state);
  json["path"] = text_or_null(finding.path);
  json["figure"] = number_or_null(finding.figure);
  json["limit"] = number_or_null(finding.limit);
  json["unit"] = text_or_null(finding.unit);
  json["first"] = place(sources, finding.first);
  json["second"] = place(sources, finding.second);
  json["second_says"] = text_or_null(finding.second_says);
  json["measurement"] = finding.measurement ? measurement_json(*finding.measurement) : Json(nullptr);
  return json;
}

Json findings_json(const Sources& sources, const std::vector<Finding>& findings) {
  return list_of(findings, [&](const Finding& finding) { return finding_json(sources, finding); });
}

Json cavities_json(const Fitting& fitting, const PlugPlan& plan) {
  Json list = Json::array();
  for (const Placement& placement : fitting.placements) {
    if (placement.plug != plan.plug) continue;
    for (const CavityRow& row : cavity_rows(fitting, placement, plan)) {
      Json json;
      json["cavity"] = row.cavity;
      json["now"] = lead_json(*fitting.harness, row.now);
      json["then"] = lead_json(*fitting.harness, row.then);
      json["pin"] = row.pin > 0 ? Json(row.pin) : Json(nullptr);
      list.push_back(json);
    }
  }
  return list;
}

Json plan_json(const Sources& sources, const Fitting& fitting, const RepinPlan& plan) {
  Json json;
  json["plugs"] = list_of(plan.plugs, [&](const PlugPlan& part) {
    const Plug& plug = plug_at(fitting, part.plug);
    Json one;
    one["plug"] = plug.id;
    one["extractions"] = part.extractions;
    one["cavities"] = cavities_json(fitting, part);
    one["steps"] =
        list_of(part.steps, [&](const Step& step) { return step_json(*fitting.harness, plug, step); });
    return one;
  });
  json["cautions"] = array_of(plan.cautions);
  json["technique"] = array_of(plan.technique);
  json["checks"] = array_of(plan.checks);
  json["tools"] = array_of(plan.tools);
  json["findings_after"] = findings_json(sources, plan.after.findings);
  return json;
}

Json seating_json(const Sources& sources, const Fitting& fitting, const SeatingJudgement& wrong) {
  Json json;
  json["plug"] = plug_at(fitting, wrong.plug).id;
  json["header"] = header_at(fitting, wrong.seating.header).id;
  json["kind"] = to_word(wrong.seating.kind);
  json["words"] = wrong.seating.words;
  json["overhanging"] = wrong.seating.overhanging;
  json["pin_of_cavity"] = wrong.seating.pin_of_cavity;
  json["worst"] = to_word(wrong.worst);
  json["findings"] = findings_json(sources, wrong.findings);
  return json;
}

void put_subject(Json& json, const Sources& sources, const Fitting& fitting) {
  const auto file_of = [&](Span span) {
    return span.known() ? Json(sources.file(span.file).path) : Json(nullptr);
  };
  const Board& board = *fitting.board;
  const Harness& harness = *fitting.harness;
  json["board"] = {{"id", board.id},
                   {"title", board.title},
                   {"revision", text_or_null(board.revision)},
                   {"file", file_of(board.span)}};
  json["harness"] = {{"id", harness.id}, {"title", harness.title}, {"file", file_of(harness.span)}};
  json["placements"] = list_of(fitting.placements, [&](const Placement& placement) {
    Json one;
    one["plug"] = plug_at(fitting, placement.plug).id;
    one["header"] = header_at(fitting, placement.header).id;
    return one;
  });
  json["unplaced"] = list_of(unplaced_plugs(fitting), [&](int plug) { return plug_at(fitting, plug).id; });
  json["jumpers"] = Json::object();
  for (const auto& [jumper, rail] : fitting.jumpers) json["jumpers"][jumper] = rail;
}

/// The fitting after the verdict was followed, of which the budget speaks: contacts moved, leads added.
Fitting followed(const Fitting& fitting, const Advice& advice) {
  Fitting after = fitting;
  if (advice.cured) {
    after.harness = &*advice.cured;
  } else if (advice.plan) {
    after.harness = &advice.plan->harness;
  }
  return after;
}

}  // namespace

std::string advice_json(const Sources& sources, const Fitting& fitting, const Advice& advice) {
  Json json;
  json["format"] = "plugward-advice";
  json["version"] = 1;
  json["verdict"] = to_word(advice.verdict);
  json["summary"] = advice.summary;
  put_subject(json, sources, fitting);
  json["findings"] = findings_json(sources, advice.now.findings);
  json["measurements"] = list_of(advice.measurements, measurement_json);
  json["softer"] = array_of(advice.softer);
  json["parts"] = array_of(advice.parts);
  json["cures"] = list_of(advice.cures, cure_json);
  json["uncured"] = array_of(advice.uncured);
  json["plan"] =
      advice.plan ? plan_json(sources, planned_fitting(fitting, advice), *advice.plan) : Json(nullptr);
  json["settings"] = settings_json(advice.settings);
  put_budget(json, followed(fitting, advice), advice.budget);
  json["wrong_seatings"] = list_of(
      advice.wrong, [&](const SeatingJudgement& wrong) { return seating_json(sources, fitting, wrong); });
  json["limits"] = limits_sentence();
  return json_text(json);
}

}  // namespace plugward
