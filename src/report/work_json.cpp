// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/work_text_test.cpp.
#include "report/work_json.h"

namespace plugward {
namespace {

std::string_view kind_word(ReadingKind kind) {
  switch (kind) {
    case ReadingKind::Look:
      return "look";
    case ReadingKind::Continuity:
      return "beep";
    case ReadingKind::Resistance:
      return "ohms";
    case ReadingKind::Voltage:
      return "volts";
  }
  return "";
}

Json header_id(const Board& board, int header) {
  return header < 0 ? Json(nullptr) : Json(board.headers[static_cast<std::size_t>(header)].id);
}

Json plug_id(const SwapPlan& plan, int plug) {
  return plug < 0 ? Json(nullptr) : Json(plan.machine->harness->plugs[static_cast<std::size_t>(plug)].id);
}

/// An infinite `high` is null: up to an open circuit.
Json reading_json(const SwapPlan& plan, const ExpectedReading& r) {
  Json json;
  json["kind"] = kind_word(r.kind);
  json["header"] = header_id(*plan.board, r.at.header);
  json["plug"] = plug_id(plan, r.at.plug);
  json["red"] = r.at.red > 0 ? Json(r.at.red) : Json(nullptr);
  json["black"] = r.at.black > 0 ? Json(r.at.black) : Json(nullptr);
  json["worked"] = r.at.hand == Hand::Worked;
  json["points"] = r.points;
  json["low"] = number_or_null(r.low);
  json["high"] = number_or_null(r.high);
  json["unit"] = text_or_null(r.unit);
  json["expect"] = r.expect;
  json["too_low"] = text_or_null(r.too_low);
  json["too_high"] = text_or_null(r.too_high);
  return json;
}

Json rows_json(const std::vector<TimeRow>& rows) {
  Json list = Json::array();
  for (const TimeRow& row : rows)
    list.push_back({{"what", row.what},
                    {"practised", number_or_null(row.practised)},
                    {"first_time", number_or_null(row.first_time)}});
  return list;
}

}  // namespace

Json work_json(const SwapPlan& plan, const std::vector<WorkStep>& steps) {
  Json list = Json::array();
  for (const WorkStep& step : steps) {
    Json json;
    json["stage"] = to_word(step.stage);
    json["plug_stage"] = step.plug_stage ? Json(to_word(*step.plug_stage)) : Json(nullptr);
    json["act"] = step.act;
    json["see"] = text_or_null(step.see);
    json["wrong"] = text_or_null(step.wrong);
    json["cautions"] = Json::array();
    for (const std::string& caution : step.cautions) json["cautions"].push_back(caution);
    json["readings"] = Json::array();
    for (const ExpectedReading& r : step.readings) json["readings"].push_back(reading_json(plan, r));
    json["plugs"] = Json::array();
    for (const int plug : step.plugs) json["plugs"].push_back(plug_id(plan, plug));
    json["header"] = header_id(*plan.board, step.header.value_or(-1));
    json["power"] = step.power;
    json["code"] = text_or_null(step.code);
    json["not_proved"] = text_or_null(step.not_proved);
    list.push_back(std::move(json));
  }
  return list;
}

Json firmware_json(const SwapPlan& plan, const std::vector<FirmwareSetting>& settings) {
  Json list = Json::array();
  for (const FirmwareSetting& s : settings) {
    list.push_back({{"role", to_word(s.role)},
                    {"plug", plug_id(plan, s.plug)},
                    {"header", header_id(*plan.board, s.header)},
                    {"pin", s.pin > 0 ? Json(s.pin) : Json(nullptr)},
                    {"net", text_or_null(s.net)},
                    {"what", s.what},
                    {"tell", s.tell},
                    {"was", text_or_null(s.was)},
                    {"changed", s.changed},
                    {"code", text_or_null(s.code)},
                    {"check", text_or_null(s.check)},
                    {"not_proved", text_or_null(s.not_proved)}});
  }
  return list;
}

Json work_time_json(const WorkTime& time) {
  Json json;
  json["practised"] = time.practised;
  json["first_time"] = time.first_time;
  json["practised_checks"] = time.practised_checks;
  json["first_time_checks"] = time.first_time_checks;
  json["rows"] = rows_json(time.rows);
  json["check_rows"] = rows_json(time.check_rows);
  return json;
}

}  // namespace plugward
