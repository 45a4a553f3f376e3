// SPDX-License-Identifier: MIT
#include "report/find_text.h"

#include <doctest/doctest.h>

#include <string>
#include <utility>
#include <vector>

#include "report/find_json.h"

using namespace plugward;

namespace {

struct Sample {
  Board board;
  Harness harness;
  BoardFit fit;

  Sample() {
    board.id = "heron-m7";
    board.title = "Heron M7 motion board";
    board.revision = "B";
    board.headers.resize(2);
    board.headers[0].id = "J9", board.headers[0].label = "PROBE";
    board.headers[1].id = "J10";
    harness.plugs.resize(2);
    harness.plugs[0].id = "control";
    harness.plugs[1].id = "trigger";
    fit.options = {{0, 0, Verdict::Repin, {0, 0, 0, 0, 2, 0, 0}, "move 2 contacts first"}};
    fit.best = JointFit{{{0, 0}}, Verdict::Repin, {1, 0, 0, 0, 2, 0, 0}, "move 2 contacts"};
  }
};

}  // namespace

TEST_CASE("find text: a block of a board with several plugs, one without a header") {
  const Sample s;
  CHECK(find_block("b/m7.xml", s.board, s.harness, s.fit, {}) ==
        "b/m7.xml: Heron M7 motion board, revision B\n"
        "  control  J9 (PROBE)  REPIN  move 2 contacts first\n"
        "  trigger  -                  no header for it\n"
        "  together: control on J9, trigger on no header: REPIN: move 2 contacts\n"
        "\n");
  CHECK(find_block("b/m7.xml", s.board, s.harness, {}, {}) == "");
}

TEST_CASE("find text: the ranking goes by cost, equals stay in the order of the files") {
  Sample s;
  FindSummary summary;
  s.fit.best->cost.moves = 3;
  summary.add("c.xml", s.board, s.harness, s.fit);
  s.fit.best->cost.moves = 2;
  summary.add("a.xml", s.board, s.harness, s.fit);
  summary.add("b.xml", s.board, s.harness, s.fit);
  for (int i = 0; i < 11; ++i) summary.add("n" + std::to_string(i), s.board, s.harness, {});
  summary.rank();
  CHECK(find_ranking(summary, "plugward check a.xml h.xml", {}) ==
        "Best first, of 14 boards\n"
        "  1.  REPIN  a.xml  control on J9, trigger on no header\n"
        "  2.  REPIN  b.xml  control on J9, trigger on no header\n"
        "  3.  REPIN  c.xml  control on J9, trigger on no header\n"
        "No header for it: n0, n1, n2, n3, n4, n5, n6, n7, n8, n9 and 1 more\n"
        "\n"
        "The best one, judged at length:\n"
        "  plugward check a.xml h.xml\n");
}

TEST_CASE("find text: a long ranking comes in pieces with the same columns") {
  Sample s;
  FindSummary summary;
  for (int i = 0; i < 2500; ++i) {
    s.fit.best->cost.moves = i % 3 == 0 ? 1 : 2;
    summary.add(std::to_string(i) + ".xml", s.board, s.harness, s.fit);
  }
  summary.rank();
  std::vector<std::string> pieces;
  find_ranking(summary, "next", {}, [&](const std::string& piece) { pieces.push_back(piece); });
  REQUIRE(pieces.size() == 5);  // heading, three times rows, what is next
  const auto line = [](const std::string& text) { return text.substr(0, text.find('\n')); };
  CHECK(line(pieces[1]) == "  1.     REPIN  0.xml     control on J9, trigger on no header");
  CHECK(line(pieces[2]) == "  1001.  REPIN  250.xml   control on J9, trigger on no header");
  CHECK(line(pieces[3]) == "  2001.  REPIN  1750.xml  control on J9, trigger on no header");
  std::string whole;
  for (const std::string& piece : pieces) whole += piece;
  CHECK(whole == find_ranking(summary, "next", {}));
  CHECK(summary.best_at == std::vector<std::pair<std::string, std::string>>{{"control", "J9"}});
}

TEST_CASE("find JSON: the pieces make one document") {
  const Sample s;
  FindSummary summary;
  summary.add("b/m7.xml", s.board, s.harness, s.fit);
  summary.left_out.push_back({"x.xml", "errors"});
  summary.rank();
  CHECK(find_json_head(s.harness, {"h.xml"}) + find_json_between(0) +
            find_json_board("b/m7.xml", s.board, s.harness, {}) + find_json_tail(summary) ==
        "{\n"
        "  \"format\": \"plugward-find\",\n"
        "  \"version\": 1,\n"
        "  \"harness_files\": [\n"
        "    \"h.xml\"\n"
        "  ],\n"
        "  \"plugs\": [\n"
        "    \"control\",\n"
        "    \"trigger\"\n"
        "  ],\n"
        "  \"boards\": [\n"
        "    {\n"
        "      \"file\": \"b/m7.xml\",\n"
        "      \"board\": \"heron-m7\",\n"
        "      \"title\": \"Heron M7 motion board\",\n"
        "      \"revision\": \"B\",\n"
        "      \"options\": [],\n"
        "      \"best\": null\n"
        "    }\n"
        "  ],\n"
        "  \"left_out\": [\n"
        "    {\n"
        "      \"file\": \"x.xml\",\n"
        "      \"why\": \"errors\"\n"
        "    }\n"
        "  ],\n"
        "  \"ranking\": [\n"
        "    \"b/m7.xml\"\n"
        "  ]\n"
        "}\n");
}
