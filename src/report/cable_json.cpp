// SPDX-License-Identifier: MIT
// Tested in tests/cases against the schema.
#include "catalogue/lines.h"
#include "report/cable_text.h"
#include "report/json.h"
#include "report/json_pieces.h"

namespace plugward {
namespace {

Json end_json(const Harness& harness, const Plug& plug) {
  Json json;
  json["harness"] = harness.id;
  json["plug"] = plug.id;
  json["family"] = plug.family;
  json["positions"] = plug.positions;
  json["rows"] = plug.rows;
  json["numbering"] = plug.numbering == Numbering::ByRow ? "by-row" : "zigzag";
  json["scheme"] = text_or_null(wiring_scheme(plug));
  return json;
}

Json contacts_json(const Plug& plug, const std::vector<int>& contacts) {
  return list_of(contacts, [&](int k) {
    const PortLine* line = port_line(plug.family, k);
    const Lead* lead = plug.lead_in(k);
    Json json;
    json["contact"] = k;
    json["other_number"] = plug.rows > 1 ? Json(other_number(plug, k)) : Json(nullptr);
    json["line"] = line == nullptr ? Json(nullptr) : Json(line->name);
    json["colour"] = lead == nullptr ? Json(nullptr) : Json(to_code(lead->colour));
    return json;
  });
}

Json group_json(const CableMap& map, const CableGroup& group) {
  Json json;
  json["first"] = contacts_json(*map.a, group.a);
  json["last"] = contacts_json(*map.b, group.b);
  return json;
}

std::string_view handshake_word(Handshake handshake) {
  switch (handshake) {
    case Handshake::Full:
      return "full";
    case Handshake::InPart:
      return "part";
    case Handshake::None:
      return "none";
  }
  return "";
}

}  // namespace

std::string cable_json(const JudgedCable& cable) {
  const CableJudgement& judged = cable.judgement;
  const CableMap& map = cable.map;
  Json json;
  json["format"] = "plugward-cable";
  json["version"] = 1;
  json["kind"] = to_word(judged.kind);
  json["fine"] = cable.fine();
  json["handshake"] =
      judged.kind == CableKind::NullModem ? Json(handshake_word(judged.handshake)) : Json(nullptr);
  json["cables"] = list_of(cable.chain, [](const Harness* one) { return Json(one->id); });
  json["first"] = end_json(*cable.chain.front(), *map.a);
  json["last"] = end_json(*cable.chain.back(), *map.b);
  json["groups"] = list_of(map.groups, [&](const CableGroup& group) { return group_json(map, group); });
  json["open_first"] = judged.open_a;
  json["open_last"] = judged.open_b;
  json["pairs_stated"] = judged.pairs_matter ? Json(judged.pairs_stated) : Json(nullptr);
  json["pairs"] = list_of(judged.pairs, [](const CarriedPair& pair) {
    Json one;
    one["first"] = {pair.a.first, pair.a.second};
    one["last"] = {pair.b.first, pair.b.second};
    return one;
  });
  json["split_pairs"] = list_of(judged.split, [&](const SplitPair& split) {
    const Harness& harness = *cable.chain[static_cast<std::size_t>(split.cable)];
    Json one;
    one["harness"] = harness.id;
    one["plug"] = harness.plugs[split.at_b ? 1 : 0].id;
    one["contacts"] = {split.one, split.other};
    return one;
  });
  const bool ports = map.a->family == "de-9" && map.b->family == "de-9";
  json["output_meets_output"] = nullptr;
  if (ports) {
    json["output_meets_output"] = {{"dte_to_dte", judged.clash_between_dte},
                                   {"dte_to_dce", judged.clash_dte_to_dce}};
  }
  return json_text(json);
}

}  // namespace plugward
