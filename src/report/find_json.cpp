// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/find_text_test.cpp and against the schema in tests/cases.
#include "report/find_json.h"

#include "base/format.h"
#include "report/cost_json.h"
#include "report/json.h"
#include "report/words.h"

namespace plugward {
namespace {

/// Shifted by as many blanks as its depth in the document.
std::string indented(const Json& json, std::size_t blanks) {
  const std::string text = json_text(json);
  const std::string margin(blanks, ' ');
  std::string moved;
  std::size_t begin = 0;
  while (begin < text.size()) {
    const std::size_t end = text.find('\n', begin);
    moved += (begin == 0 ? "" : "\n" + margin);
    moved += text.substr(begin, end - begin);
    begin = end + 1;
  }
  return moved;
}

Json placement_json(const Board& board, const Harness& harness, int plug, int header_index) {
  const Header& header = board.headers[static_cast<std::size_t>(header_index)];
  Json json;
  json["plug"] = harness.plugs[static_cast<std::size_t>(plug)].id;
  json["header"] = header.id;
  json["label"] = text_or_null(header.label);
  return json;
}

Json option_json(const Board& board, const Harness& harness, const PlaceOption& option) {
  Json json = placement_json(board, harness, option.plug, option.header);
  json["verdict"] = to_word(option.verdict);
  json["reason"] = option.reason;
  json["cost"] = cost_json(option.cost);
  return json;
}

Json best_json(const Board& board, const Harness& harness, const JointFit& fit) {
  Json json;
  json["verdict"] = to_word(fit.verdict);
  json["reason"] = fit.reason;
  json["cost"] = cost_json(fit.cost);
  json["placements"] = Json::array();
  for (const Placement& p : fit.placements)
    json["placements"].push_back(placement_json(board, harness, p.plug, p.header));
  return json;
}

}  // namespace

std::string find_json_head(const Harness& harness, const std::vector<std::string>& harness_files) {
  Json plugs = Json::array();
  for (const Plug& plug : harness.plugs) plugs.push_back(plug.id);
  return format(
      "{{\n  \"format\": \"plugward-find\",\n  \"version\": 1,\n  \"harness_files\": {},\n  \"plugs\": {},\n"
      "  \"boards\": [",
      indented(Json(harness_files), 2), indented(plugs, 2));
}

std::string find_json_between(std::size_t index) {
  return index == 0 ? "\n    " : ",\n    ";
}

std::string find_json_board(const std::string& file, const Board& board, const Harness& harness,
                            const BoardFit& fit) {
  Json json;
  json["file"] = file;
  json["board"] = board.id;
  json["title"] = board.title;
  json["revision"] = text_or_null(board.revision);
  json["options"] = Json::array();
  for (const PlaceOption& option : fit.options)
    json["options"].push_back(option_json(board, harness, option));
  json["best"] = fit.best ? best_json(board, harness, *fit.best) : Json(nullptr);
  return indented(json, 4);
}

std::string find_json_tail(const FindSummary& summary) {
  Json left_out = Json::array();
  for (const LeftOut& one : summary.left_out) {
    Json json;
    json["file"] = one.file;
    json["why"] = one.why;
    left_out.push_back(std::move(json));
  }
  Json ranking = Json::array();
  for (const FoundBoard& board : summary.found) ranking.push_back(board.file);
  return format("{}],\n  \"left_out\": {},\n  \"ranking\": {}\n}}\n", summary.boards() == 0 ? "" : "\n  ",
                indented(left_out, 2), indented(ranking, 2));
}

}  // namespace plugward
