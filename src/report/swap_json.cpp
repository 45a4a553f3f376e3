// SPDX-License-Identifier: MIT
// Tested in tests/cases (swap-json), against the schema too.
#include "report/swap_json.h"

#include "report/json_pieces.h"
#include "report/words.h"
#include "report/work_json.h"
#include "sheet/swap_words.h"

namespace plugward {
namespace {

Json header_or_null(const Board& board, std::optional<int> header) {
  return header ? Json(board.headers[static_cast<std::size_t>(*header)].id) : Json(nullptr);
}

Json plug_json(const SwapPlan& plan, const PlugTransfer& t) {
  const Plug& plug = plug_at(plan.before_moves, t.plug);
  Json json;
  json["plug"] = plug.id;
  json["from"] = header_or_null(*plan.machine->board, t.from);
  json["to"] = header_or_null(*plan.board, t.to);
  json["transfer"] = to_word(t.kind);
  json["turned"] = t.turned;
  json["why"] = t.why;
  json["extractions"] = t.moves.extractions;
  json["steps"] =
      list_of(t.moves.steps, [&](const Step& step) { return step_json(plan.housed, plug, step); });
  json["parts"] = array_of(t.parts);
  json["cures"] = list_of(t.cures, cure_json);
  json["softer"] = array_of(t.softer);
  json["measurements"] = list_of(t.measurements, measurement_json);
  json["settings"] = settings_json(t.settings);
  return json;
}

Json jumper_json(const SwapPlan& plan, const JumperChoice& choice) {
  Json json;
  json["jumper"] = choice.jumper;
  json["position"] = text_or_null(choice.rail);
  json["stated"] = choice.stated;
  json["plugs"] = list_of(choice.plugs, [&](int plug) { return plug_at(plan.after, plug).id; });
  json["why"] = choice.why;
  return json;
}

Json suit_json(const Suit& suit) {
  Json json;
  json["what"] = suit.what;
  json["needs"] = text_or_null(suit.needs);
  json["gives"] = text_or_null(suit.gives);
  json["fine"] = suit.fine;
  json["message"] = suit.message;
  return json;
}

Json alike_json(const SwapPlan& plan, const LookAlike& one) {
  Json json;
  json["plug"] = plug_at(plan.after, one.plug).id;
  json["meant"] = header_at(plan.after, one.meant).id;
  json["mistaken"] = header_at(plan.after, one.mistaken).id;
  json["reasons"] = array_of(one.reasons);
  json["weight"] = to_word(one.weight);
  json["same_circuit"] = one.same_circuit;
  json["happens"] = one.happens;
  return json;
}

Json runner_up_json(const SwapPlan& plan) {
  if (!plan.runner_up) return nullptr;
  Json json;
  json["placements"] = list_of(plan.runner_up->placements, [&](const Placement& p) {
    return Json{{"plug", plug_at(plan.after, p.plug).id}, {"header", header_at(plan.after, p.header).id}};
  });
  json["why_it_lost"] = text_or_null(plan.why_it_lost);
  return json;
}

}  // namespace

std::string swap_json(const SwapPapers& papers) {
  const SwapPlan& plan = *papers.plan;
  Json json;
  json["format"] = "plugward-swap";
  json["version"] = 1;
  json["summary"] = swap_summary(plan);
  json["whole"] = swap_is_whole(plan);
  json["clean"] = plan.result.clean();
  json["proven_best"] = plan.proven;
  json["machine"] = plan.machine->harness->id;
  json["from"] = plan.machine->board->id;
  json["to"] = plan.board->id;
  json["plugs"] = list_of(plan.plugs, [&](const PlugTransfer& t) { return plug_json(plan, t); });
  json["jumpers"] =
      list_of(plan.jumpers, [&](const JumperChoice& choice) { return jumper_json(plan, choice); });
  json["suits"] = list_of(plan.suits, suit_json);
  json["missing"] = array_of(plan.missing);
  json["free_headers"] = list_of(plan.free_headers, [&](int h) { return header_at(plan.after, h).id; });
  json["runner_up"] = runner_up_json(plan);
  json["look_alikes"] = list_of(papers.alike, [&](const LookAlike& one) { return alike_json(plan, one); });
  json["firmware"] = firmware_json(plan, papers.firmware);
  json["time"] = work_time_json(papers.time);
  json["work"] = work_json(plan, papers.work);
  json["limits"] = limits_sentence();
  return json_text(json);
}

}  // namespace plugward
