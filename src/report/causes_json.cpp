// SPDX-License-Identifier: MIT
// Tested in tests/cases, against the schema too.
#include "report/causes_json.h"

#include "report/json.h"
#include "report/words.h"

namespace plugward {
namespace {

Json plug_json(const Fitting& fitting, int plug) {
  return plug < 0 ? Json(nullptr) : Json(plug_at(fitting, plug).id);
}

Json header_json(const Fitting& fitting, int plug) {
  const int placed = plug < 0 ? -1 : placement_of_plug(fitting, plug);
  if (placed < 0) return nullptr;
  return header_at(fitting, fitting.placements[static_cast<std::size_t>(placed)].header).id;
}

Json showing_json(const Fitting& fitting, const Showing& showing) {
  Json json;
  json["symptom"] = words_of(showing.symptom).word;
  json["plug"] = plug_json(fitting, showing.plug);
  return json;
}

Json cause_json(const Fitting& fitting, const Cause& cause) {
  Json json;
  json["kind"] = to_word(cause.fault.kind);
  json["what"] = cause.what;
  json["how"] = cause.how;
  json["cure"] = cause.cure;
  json["harms"] = cause.harms;
  json["shows"] = Json::array();
  for (const Showing& s : cause.shows) json["shows"].push_back(showing_json(fitting, s));
  return json;
}

/// Causes and steps are counted from 1, as in the text.
Json step_json(const TellingStep& step) {
  Json json;
  json["power"] = step.power == MeterPower::On ? "on" : step.power == MeterPower::Off ? "off" : "look";
  json["action"] = step.action;
  json["readings"] = Json::array();
  for (const TellingReading& reading : step.readings) {
    Json one;
    one["reading"] = text_or_null(reading.words);
    one["as_it_should_be"] = reading.healthy;
    one["causes"] = Json::array();
    for (const int cause : reading.causes) one["causes"].push_back(cause + 1);
    one["next"] = reading.next < 0 ? Json(nullptr) : Json(reading.next + 1);
    json["readings"].push_back(std::move(one));
  }
  return json;
}

}  // namespace

std::string causes_json(const Fitting& fitting, std::optional<Symptom> symptom,
                        const std::vector<PossibleSymptom>& possible, const std::vector<PlugCauses>& all,
                        int errors) {
  Json json;
  json["format"] = "plugward-causes";
  json["version"] = 1;
  json["board"] = fitting.board->id;
  json["harness"] = fitting.harness->id;
  json["errors_tried"] = errors;
  json["symptom"] = symptom ? Json(words_of(*symptom).word) : Json(nullptr);
  json["possible"] = Json::array();
  for (const PossibleSymptom& one : possible) {
    Json row = showing_json(fitting, one.showing);
    row["sees"] = words_of(one.showing.symptom).sees;
    row["causes"] = one.causes;
    json["possible"].push_back(std::move(row));
  }
  json["found"] = Json::array();
  for (const PlugCauses& seen : all) {
    Json one;
    one["plug"] = plug_json(fitting, seen.plug);
    one["header"] = header_json(fitting, seen.plug);
    one["cautions"] = seen.cautions;
    one["causes"] = Json::array();
    for (const Cause& cause : seen.causes) one["causes"].push_back(cause_json(fitting, cause));
    one["steps"] = Json::array();
    for (const TellingStep& step : seen.steps) one["steps"].push_back(step_json(step));
    json["found"].push_back(std::move(one));
  }
  json["limits"] = limits_sentence();
  return json_text(json);
}

}  // namespace plugward
