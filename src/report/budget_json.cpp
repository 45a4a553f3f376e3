// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/budget_text_test.cpp and against the schema in tests/cases.
#include "report/budget_json.h"

#include "report/json_pieces.h"
#include "report/words.h"

namespace plugward {
namespace {

Json place_json(const Fitting& fitting, const Locus& at) {
  Json json;
  json["rail"] =
      at.rail >= 0 ? Json(fitting.board->rails[static_cast<std::size_t>(at.rail)].id) : Json(nullptr);
  json["header"] = at.header >= 0 ? Json(header_at(fitting, at.header).id) : Json(nullptr);
  json["pin"] = at.pin > 0 ? Json(at.pin) : Json(nullptr);
  json["plug"] = at.plug >= 0 ? Json(plug_at(fitting, at.plug).id) : Json(nullptr);
  const bool lead = at.plug >= 0 && at.lead >= 0;
  json["cavity"] =
      lead ? Json(plug_at(fitting, at.plug).leads[static_cast<std::size_t>(at.lead)].cavity) : Json(nullptr);
  return json;
}

Json row_json(const Fitting& fitting, const BudgetRow& row) {
  Json json;
  json["kind"] = to_word(row.kind);
  json["what"] = row.what;
  json["at"] = place_json(fitting, row.at);
  json["amps"] = number_or_null(row.amps);
  json["limit"] = number_or_null(row.limit);
  json["share"] = number_or_null(row.share());
  json["basis"] = row.basis;
  json["source"] = text_or_null(row.source);
  json["state"] = text_or_null(row.state);
  return json;
}

Json loss_json(const Fitting& fitting, const LeadLoss& loss, Celsius warm) {
  Json json;
  json["what"] = loss.what;
  json["at"] = place_json(fitting, loss.at);
  json["amps"] = number_or_null(loss.amps);
  json["length_mm"] = number_or_null(loss.length.value);
  json["gauge"] = to_text(loss.gauge);
  json["volts_at_20_c"] = number_or_null(loss.cold.value);
  json["volts_warm"] = number_or_null(loss.warm.value);
  json["warm_c"] = number_or_null(warm.value);
  json["share_both_ways"] = number_or_null(loss.share_both_ways());
  return json;
}

Json heater_json(const HeaterBudget& heater) {
  Json json;
  json["device"] = heater.what;
  json["rated_volts"] = number_or_null(heater.rated_at.value);
  json["rated_watts"] = number_or_null(heater.rated.value);
  json["least_watts"] = number_or_null(heater.least.value);
  json["most_watts"] = number_or_null(heater.most.value);
  return json;
}

Json string_json(const StringBudget& string) {
  Json json;
  json["device"] = string.what;
  json["count"] = string.count;
  json["brightness"] = number_or_null(string.brightness);
  json["amps"] = number_or_null(string.draws.value);
  json["near_volts"] = number_or_null(string.near.value);
  json["far_volts"] = string.far ? number_or_null(string.far->value) : Json(nullptr);
  return json;
}

Json fuse_json(const Fitting& fitting, const FuseBudget& fuse) {
  Json json;
  json["at"] = place_json(fitting, fuse.at);
  json["load"] = number_or_null(fuse.load.value);
  json["weakest"] = fuse.weakest ? number_or_null(fuse.weakest->value) : Json(nullptr);
  json["fuse"] = fuse.fuse ? number_or_null(fuse.fuse->value) : Json(nullptr);
  json["words"] = fuse.words;
  return json;
}

}  // namespace

void put_budget(Json& json, const Fitting& fitting, const Budget& budget) {
  json["budget"] = list_of(budget.rows, [&](const BudgetRow& row) { return row_json(fitting, row); });
  json["lead_losses"] =
      list_of(budget.losses, [&](const LeadLoss& loss) { return loss_json(fitting, loss, budget.warm); });
  json["heaters"] = list_of(budget.heaters, heater_json);
  json["led_strings"] = list_of(budget.strings, string_json);
  json["fuses"] = list_of(budget.fuses, [&](const FuseBudget& fuse) { return fuse_json(fitting, fuse); });
}

}  // namespace plugward
