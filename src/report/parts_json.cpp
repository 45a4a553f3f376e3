// SPDX-License-Identifier: MIT
// Tested against the schema in tests/cases.
#include "report/parts_json.h"

#include "report/json.h"
#include "report/parts_text.h"
#include "report/words.h"

namespace plugward {
namespace {

Json item_json(const PartItem& item) {
  Json json;
  json["kind"] = to_word(item.kind);
  json["item"] = item.what;
  json["family"] = text_or_null(item.family);
  json["positions"] = item.positions > 0 ? Json(item.positions) : Json(nullptr);
  json["gauge"] = item.gauge ? Json(to_text(*item.gauge)) : Json(nullptr);
  json["colour"] = item.colour.known() ? Json(to_code(item.colour)) : Json(nullptr);
  json["length_mm"] = item.length ? number_or_null(item.length->value) : Json(nullptr);
  json["value"] = text_or_null(item.value);
  json["demands"] = text_or_null(item.demands);
  json["needed"] = item.needed;
  json["spares"] = item.spares;
  json["buy"] = item.buy();
  json["purpose"] = text_or_null(item.purpose);
  return json;
}

}  // namespace

std::string parts_json(const Fitting& fitting, const PartsList& list) {
  Json json;
  json["format"] = "plugward-parts";
  json["version"] = 1;
  json["board"] = fitting.board->id;
  json["harness"] = fitting.harness->id;
  json["planned"] = list.planned;
  json["summary"] = list.summary;
  json["items"] = Json::array();
  for (const PartItem& item : list.items) json["items"].push_back(item_json(item));
  return json_text(json);
}

}  // namespace plugward
