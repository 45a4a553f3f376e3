// SPDX-License-Identifier: MIT
#include "plan/loom_bench.h"

#include <doctest/doctest.h>

#include "base/file.h"
#include "base/format.h"
#include "reader/descriptions.h"

namespace plugward {
namespace {

/// A loom on the shipped board and harnesses; `inside` stands behind its evidence 'photo' (default) and
/// 'guess'.
struct Machine {
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  Description description;
  LoomBench bench;

  explicit Machine(std::string_view inside, std::string_view board = "heron-m7") {
    add_builtin_families(catalogue);
    const std::string text = format(
        "<loom id=\"w\" title=\"W\" board=\"../boards/{}.xml\" evidence=\"photo\"><evidence id=\"photo\" "
        "kind=\"photograph\"/><evidence id=\"guess\" kind=\"assumption\"/>{}</loom>",
        board, inside);
    read(sources.add(PLUGWARD_SOURCE_DIR "/harnesses/w.xml", text));
  }
  struct Shipped {
    std::string path;
  };
  explicit Machine(const Shipped& shipped) {
    add_builtin_families(catalogue);
    read(sources.add(shipped.path, read_file(shipped.path)));
  }
  void read(FileId file) {
    description = read_description(sources, file, catalogue, diagnostics, {},
                                   [&](const std::string& path, std::size_t) {
                                     return OpenedFile{sources.add(path, read_file(path)), ""};
                                   });
    REQUIRE(description.loom_files);
    bench = loom_bench(*description.loom, *description.loom_files);
  }
  Fitting fitting() const { return loom_fitting(*description.loom_files, bench, catalogue); }
  Advice advice() const { return advise_loom(*description.loom, bench, fitting()); }
  /// "weight message at TEXT OF ITS FIRST PLACE; " of what the loom leaves open.
  std::string doubts() const {
    std::string text;
    for (const Finding& finding : loom_doubts(*description.loom, bench, fitting())) {
      text += format("{} {} at {}; ", to_word(finding.weight), finding.message, sources.text(finding.first));
    }
    return text;
  }
};

constexpr std::string_view fans =
    "<harness id=\"one\" file=\"fan-24v.xml\"/><harness id=\"two\" file=\"fan-24v.xml\"/>";

}  // namespace

TEST_CASE("the shipped machine may stay as it is, whole") {
  const Machine wren(Machine::Shipped{PLUGWARD_SOURCE_DIR "/harnesses/wren-a4.xml"});
  CHECK(wren.bench.placements.size() == 19);
  CHECK(wren.bench.loose.size() == 1);
  CHECK(wren.bench.unknown.empty());
  CHECK(wren.doubts().empty());
  const Advice advice = wren.advice();
  CHECK(advice.verdict == Verdict::Mate);
  CHECK(advice.summary == "loom 'wren-a4': 19 plugs may stay on the headers they are on");
  CHECK(advice.wrong.empty());
}

TEST_CASE("one file serves two harnesses, under the names of the loom") {
  const Machine machine(
      format("{}<fitted jumper=\"JP4\" rail=\"24V\"/><seat plug=\"two/fan\" header=\"J12\"/><seat "
             "plug=\"one/fan\" header=\"J11\"/>",
             fans));
  REQUIRE(machine.bench.harness.plugs.size() == 2);
  CHECK(machine.bench.harness.id == "w");
  CHECK(machine.bench.harness.title == "W");
  CHECK(machine.bench.harness.plugs[0].id == "one/fan");
  CHECK(machine.bench.harness.plugs[1].id == "two/fan");
  CHECK(machine.bench.names == std::vector<std::string>{"one/fan", "two/fan"});
  const Fitting fitting = machine.fitting();
  REQUIRE(fitting.placements.size() == 2);
  CHECK(fitting.board->headers[static_cast<std::size_t>(fitting.placements[0].header)].id == "J11");
  CHECK(fitting.board->headers[static_cast<std::size_t>(fitting.placements[1].header)].id == "J12");
  CHECK(fitting.jumpers == std::map<std::string, std::string>{{"JP4", "24V"}});
  CHECK(machine.advice().verdict == Verdict::Mate);
}

TEST_CASE("leads are where the loom says; those that it does not name are gone") {
  const Machine machine(
      "<harness id=\"k\" file=\"kite-probe.xml\"/><seat plug=\"k/control\" header=\"J9\" leads=\"3 - 1\"/>"
      "<loose plug=\"k/trigger\"/>");
  const Plug& plug = machine.bench.harness.plugs[0];
  REQUIRE(plug.leads.size() == 2);
  CHECK(plug.leads[0].cavity == 1);
  CHECK(to_code(plug.leads[0].colour) == "OG");
  CHECK(plug.leads[1].cavity == 3);
  CHECK(to_code(plug.leads[1].colour) == "BN");
  // The file itself is left as it is.
  CHECK(machine.description.loom_files->harnesses[0].plugs[0].leads.size() == 3);
}

TEST_CASE("what a loom leaves open is a doubt at its place in the loom") {
  struct Row {
    const char* name;
    const char* inside;
    const char* doubts;
  };
  const Row rows[] = {
      {"nothing open", "<seat plug=\"one/fan\" header=\"J11\"/><loose plug=\"two/fan\"/>", ""},
      {"a plug that is not mentioned", "<seat plug=\"one/fan\" header=\"J11\"/>",
       "doubt where plug 'two/fan' sits is not known at <harness id=\"two\" file=\"fan-24v.xml\"/>; "},
      {"a plug nobody looked at", "<seat plug=\"one/fan\"/><loose plug=\"two/fan\"/>",
       "doubt where plug 'one/fan' sits is not known at one/fan; "},
      {"assumed places",
       "<seat plug=\"one/fan\" header=\"J11\" evidence=\"guess\"/><loose plug=\"two/fan\" "
       "evidence=\"guess\"/>",
       "doubt that plug 'one/fan' sits on 'J11' is an assumption ('guess') at one/fan; "
       "doubt that plug 'two/fan' sits on no header is an assumption ('guess') at two/fan; "},
      {"an assumed jumper that feeds a plug",
       "<fitted jumper=\"JP4\" rail=\"24V\" evidence=\"guess\"/><seat plug=\"one/fan\" "
       "header=\"J11\"/><loose "
       "plug=\"two/fan\"/>",
       "doubt that jumper JP4 (FAN V) is at 24V is an assumption ('guess') at JP4; "},
      {"an assumed jumper that feeds none",
       "<fitted jumper=\"JP2\" rail=\"5V\" evidence=\"guess\"/><seat plug=\"one/fan\" header=\"J11\"/><loose "
       "plug=\"two/fan\"/>",
       ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    const Machine machine(format("{}{}", fans, row.inside));
    CHECK(machine.doubts() == row.doubts);
  }
}

TEST_CASE("a doubt of the loom is measured before anything else; its plan is not shown") {
  const Machine machine(
      "<harness id=\"x\" file=\"limit-switch.xml\"/><seat plug=\"x/limit\" header=\"J5\" "
      "evidence=\"guess\"/>");
  const Advice advice = machine.advice();
  CHECK(advice.verdict == Verdict::Measure);
  CHECK(!advice.plan);
  REQUIRE(advice.measurements.size() == 1);
  CHECK(advice.measurements[0].action == "look which header plug 'x/limit' sits on");
  CHECK(advice.measurements[0].expect ==
        "it sits on 'J5': as the loom says; anything else: correct the loom");
  CHECK(advice.now.has(Weight::Harm));
  CHECK(advice.summary ==
        "loom 'w': as it stands, it can damage or hurt, and before a cure can be told something must be "
        "known; one measurement settles it");
}

TEST_CASE("harm as the machine stands") {
  const Machine machine(
      "<harness id=\"x\" file=\"limit-switch.xml\"/><seat plug=\"x/limit\" header=\"J5\"/>");
  const Advice advice = machine.advice();
  CHECK(advice.verdict == Verdict::Repin);
  CHECK(advice.summary == "loom 'w': as it stands it is not right; 1 contact would have to move");
  const Fitting fitting = machine.fitting();
  REQUIRE(!advice.now.findings.empty());
  CHECK(plug_of_finding(fitting, advice.now.findings[0]) == 0);
}

}  // namespace plugward
