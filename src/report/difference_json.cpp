// SPDX-License-Identifier: MIT
// Tested against the schema in tests/cases.
#include "report/difference_json.h"

#include "report/difference_text.h"
#include "report/json.h"

namespace plugward {
namespace {

Json side(const std::string& loom, const std::string& board) {
  Json json;
  json["loom"] = loom;
  json["board"] = board;
  return json;
}

Json jumper_json(const JumperDifference& jumper) {
  Json json;
  json["jumper"] = jumper.jumper;
  json["in_first"] = jumper.in_a;
  json["in_second"] = jumper.in_b;
  json["was"] = text_or_null(jumper.rail_a);
  json["is"] = text_or_null(jumper.rail_b);
  return json;
}

std::string_view state_word(const std::optional<SeatState>& state) {
  if (!state) return "absent";
  return *state == SeatState::OnHeader ? "on-header" : *state == SeatState::Loose ? "loose" : "unknown";
}

Json plug_json(const PlugDifference& plug) {
  Json json;
  json["plug"] = plug.name;
  json["change"] = to_word(plug.change);
  json["was"] = state_word(plug.state_a);
  json["is"] = state_word(plug.state_b);
  json["was_on"] = text_or_null(plug.header_a);
  json["is_on"] = text_or_null(plug.header_b);
  json["housing_was"] = text_or_null(plug.housing_a);
  json["housing_is"] = text_or_null(plug.housing_b);
  json["moves"] = Json::array();
  for (const LeadMove& move : plug.moves) {
    Json one;
    one["lead"] = move.lead;
    one["from"] = move.from == 0 ? Json(nullptr) : Json(move.from);
    one["to"] = move.to == 0 ? Json(nullptr) : Json(move.to);
    json["moves"].push_back(one);
  }
  json["leads_added"] = plug.leads_in;
  json["leads_gone"] = plug.leads_out;
  json["parts_added"] = plug.parts_in;
  json["parts_gone"] = plug.parts_out;
  return json;
}

}  // namespace

std::string difference_json(const LoomDifference& d) {
  Json json;
  json["format"] = "plugward-compare";
  json["version"] = 1;
  json["first"] = side(d.loom_a, d.board_a);
  json["second"] = side(d.loom_b, d.board_b);
  json["summary"] = difference_summary(d);
  json["jumpers"] = Json::array();
  for (const JumperDifference& jumper : d.jumpers) json["jumpers"].push_back(jumper_json(jumper));
  json["plugs"] = Json::array();
  for (const PlugDifference& plug : d.plugs) json["plugs"].push_back(plug_json(plug));
  return json_text(json);
}

}  // namespace plugward
