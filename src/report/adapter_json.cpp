// SPDX-License-Identifier: MIT
// Tested against the schema in tests/cases.
#include "report/adapter_json.h"

#include "report/json_pieces.h"
#include "report/words.h"

namespace plugward {
namespace {

std::string_view to_word(Joint joint) {
  switch (joint) {
    case Joint::Crimp:
      return "crimp";
    case Joint::Screw:
      return "screw";
    case Joint::Displacement:
      return "displacement";
    case Joint::Other:
      return "other";
  }
  return "";
}

Json end_json(const AdapterEnd& end) {
  Json json;
  json["family"] = end.family;
  json["positions"] = end.positions;
  json["rows"] = end.rows;
  json["joint"] = to_word(end.joint);
  json["empty"] = end.empty;
  json["position_1"] = end.first;
  return json;
}

Json lead_json(const Fitting& fitting, const Adapter& adapter, const AdapterLead& lead) {
  const Lead& cable = plug_at(fitting, adapter.plug).leads[static_cast<std::size_t>(lead.lead)];
  Json json;
  json["a"] = lead.a;
  json["b"] = lead.b;
  json["colour"] = to_code(lead.colour);
  json["gauge"] = to_text(lead.gauge);
  json["length_mm"] = number_or_null(adapter.length.value);
  json["cable_colour"] = to_code(cable.colour);
  json["terminal"] = cable.to ? Json(fitting.harness->terminal_name(*cable.to)) : Json(nullptr);
  return json;
}

Json adapter_object(const Fitting& fitting, const Adapter& adapter) {
  Json json;
  json["id"] = adapter.id;
  json["plug"] = plug_at(fitting, adapter.plug).id;
  json["header"] = header_at(fitting, adapter.header).id;
  json["end_a"] = end_json(adapter.a);
  json["end_b"] = end_json(adapter.b);
  json["spliced"] = adapter.spliced;
  json["leads"] = Json::array();
  for (const AdapterLead& lead : adapter.leads) json["leads"].push_back(lead_json(fitting, adapter, lead));
  json["notes"] = array_of(adapter.notes);
  return json;
}

Json wrong_json(const Harness& harness, const Board& board, const SeatingJudgement& wrong) {
  Json json;
  json["plug"] = harness.plugs[static_cast<std::size_t>(wrong.plug)].id;
  json["header"] = board.headers[static_cast<std::size_t>(wrong.seating.header)].id;
  json["words"] = wrong.seating.words;
  json["worst"] = to_word(wrong.worst);
  json["message"] = wrong.findings.empty() ? Json(nullptr) : Json(wrong.findings.front().message);
  return json;
}

Json wrongs_json(const Harness& harness, const Board& board, const std::vector<SeatingJudgement>& all) {
  Json list = Json::array();
  for (const SeatingJudgement& wrong : all) list.push_back(wrong_json(harness, board, wrong));
  return list;
}

Json plan_json(const Fitting& fitting, const AdapterPlan& plan) {
  Json json;
  json["adapters"] = Json::array();
  for (const Adapter& adapter : plan.adapters) json["adapters"].push_back(adapter_object(fitting, adapter));
  json["cures"] = Json::array();
  for (const Cure& cure : plan.cures) json["cures"].push_back(cure.what);
  json["tools"] = array_of(plan.tools);
  json["steps"] = array_of(plan.steps);
  json["checks"] = array_of(plan.checks);
  json["settings"] = Json::array();
  for (const Setting& setting : plan.settings) json["settings"].push_back(setting.what);
  json["wrong_in_end_a"] = wrongs_json(*fitting.harness, plan.board, plan.wrong_a);
  json["wrong_on_board"] = wrongs_json(plan.harness, *fitting.board, plan.wrong_b);
  json["not_judged"] = text_or_null(plan.not_judged);
  return json;
}

}  // namespace

std::string adapter_json(const Fitting& fitting, const AdapterAdvice& advice) {
  Json json;
  json["format"] = "plugward-adapter";
  json["version"] = 1;
  json["board"] = fitting.board->id;
  json["harness"] = fitting.harness->id;
  json["summary"] = advice.summary;
  json["nothing_to_do"] = advice.nothing_to_do;
  json["plan"] = advice.plan ? plan_json(fitting, *advice.plan) : Json(nullptr);
  json["measurements"] = Json::array();
  for (const Measurement& m : advice.measurements) {
    json["measurements"].push_back({{"action", m.action}, {"expect", m.expect}});
  }
  json["limits"] = limits_sentence();
  return json_text(json);
}

}  // namespace plugward
