// SPDX-License-Identifier: MIT
// Tested in tests/cases, against the schema too.
#include "report/place_json.h"

#include "report/cost_json.h"
#include "report/json_pieces.h"
#include "report/place_text.h"
#include "report/words.h"

namespace plugward {
namespace {

Json placements_json(const Fitting& fitting, const std::vector<Placement>& placements) {
  Json list = Json::array();
  for (const Placement& p : placements) {
    list.push_back({{"plug", plug_at(fitting, p.plug).id}, {"header", header_at(fitting, p.header).id}});
  }
  return list;
}

Json placed_json(const Fitting& fitting, const PlacedHarness& placed) {
  Json json;
  json["verdict"] = to_word(placed.advice.verdict);
  json["summary"] = placed.advice.summary;
  json["cost"] = cost_json(placed.cost);
  json["placements"] = placements_json(fitting, placed.placements);
  return json;
}

Json rehousing_json(const Fitting& fitting, const Rehousing& one) {
  Json json;
  json["summary"] = one.summary;
  json["plugs"] = Json::array();
  for (const int plug : one.plugs) json["plugs"].push_back(plug_at(fitting, plug).id);
  json["headers"] = Json::array();
  for (const int header : one.headers) json["headers"].push_back(header_at(fitting, header).id);
  json["housings"] = one.housings;
  json["moves"] = one.moves;
  json["crimps"] = one.crimps;
  json["parts"] = array_of(one.parts);
  json["cautions"] = array_of(one.cautions);
  json["steps"] = array_of(one.steps);
  json["checks"] = array_of(one.checks);
  return json;
}

Json option_json(const Fitting& fitting, const PlacementPlan& plan, const PlaceOption& option) {
  Json json;
  json["plug"] = plug_at(fitting, option.plug).id;
  json["header"] = header_at(fitting, option.header).id;
  json["chosen"] = chosen_header(plan, option.plug) == option.header;
  json["verdict"] = to_word(option.verdict);
  json["cost"] = cost_json(option.cost);
  json["reason"] = text_or_null(option.reason);
  return json;
}

}  // namespace

std::string place_json(const Fitting& fitting, const PlacementPlan& plan, const std::string& check_command) {
  Json json;
  json["format"] = "plugward-place";
  json["version"] = 1;
  json["verdict"] = to_word(plan.best ? plan.best->advice.verdict : Verdict::Apart);
  json["board"] = fitting.board->id;
  json["harness"] = fitting.harness->id;
  json["fixed"] = placements_json(fitting, fitting.placements);
  json["jumpers"] = Json::object();
  for (const auto& [jumper, rail] : fitting.jumpers) json["jumpers"][jumper] = rail;
  json["best"] = plan.best ? placed_json(fitting, *plan.best) : Json(nullptr);
  json["runner_up"] = plan.runner_up ? placed_json(fitting, *plan.runner_up) : Json(nullptr);
  json["why_it_lost"] = text_or_null(plan.why_it_lost);
  json["proven"] = plan.proven;
  json["unplaced"] = Json::array();
  for (int plug = 0; plug < static_cast<int>(fitting.harness->plugs.size()); ++plug) {
    if (chosen_header(plan, plug) < 0) json["unplaced"].push_back(plug_at(fitting, plug).id);
  }
  json["equals"] = Json::array();
  for (const std::vector<int>& group : plan.equals) {
    Json names = Json::array();
    for (const int plug : group) names.push_back(plug_at(fitting, plug).id);
    json["equals"].push_back(names);
  }
  json["rehousings"] = Json::array();
  for (const Rehousing& one : plan.rehousings) json["rehousings"].push_back(rehousing_json(fitting, one));
  json["options"] = Json::array();
  for (const PlaceOption& option : plan.options)
    json["options"].push_back(option_json(fitting, plan, option));
  json["check"] = text_or_null(check_command);
  json["limits"] = limits_sentence();
  return json_text(json);
}

}  // namespace plugward
