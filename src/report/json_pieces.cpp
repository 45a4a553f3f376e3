// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/advice_json_test.cpp.
#include "report/json_pieces.h"

#include "report/words.h"

namespace plugward {

Json array_of(const std::vector<std::string>& texts) {
  Json list = Json::array();
  for (const std::string& text : texts) list.push_back(text);
  return list;
}

Json measurement_json(const Measurement& m) {
  Json json;
  json["action"] = m.action;
  json["expect"] = m.expect;
  json["settles"] = m.settles;
  json["cost"] = m.cost;
  return json;
}

Json settings_json(const std::vector<Setting>& settings) {
  return list_of(settings, [](const Setting& setting) {
    Json json;
    json["what"] = setting.what;
    json["why"] = setting.why;
    return json;
  });
}

Json lead_json(const Harness& harness, const Lead* lead) {
  if (lead == nullptr) return nullptr;
  Json json;
  json["colour"] = to_code(lead->colour);
  json["mark"] = text_or_null(lead->mark);
  json["terminal"] = lead->to ? Json(harness.terminal_name(*lead->to)) : Json(nullptr);
  return json;
}

Json step_json(const Harness& harness, const Plug& plug, const Step& step) {
  const auto cavity = [](int number) { return number > 0 ? Json(number) : Json(nullptr); };
  Json json;
  json["kind"] = to_word(step.kind);
  json["lead"] = lead_json(harness, &plug.leads[static_cast<std::size_t>(step.lead)]);
  json["from"] = cavity(step.from);
  json["to"] = cavity(step.to);
  json["why"] = step.why;
  return json;
}

Json cure_json(const Cure& cure) {
  Json json;
  json["kind"] = cure.kind;
  json["name"] = cure.name;
  json["what"] = cure.what;
  json["why"] = cure.why;
  json["next_best"] = text_or_null(cure.next_best);
  json["components"] = list_of(cure.components, [](const Component& c) {
    Json one;
    one["kind"] = c.kind;
    one["value"] = text_or_null(c.value);
    one["demands"] = text_or_null(c.demands);
    one["between"] = text_or_null(c.between);
    return one;
  });
  json["steps"] = array_of(cure.steps);
  return json;
}

}  // namespace plugward
