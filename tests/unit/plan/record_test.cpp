// SPDX-License-Identifier: MIT
// What is recorded is read back and judged as planned.
#include "plan/record.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "base/format.h"
#include "plan/loom_apart.h"
#include "support/refit.h"

using namespace plugward;
using namespace plugward::test;

namespace {

/// Findings that stand against it, without their order; names of inner terminals as in files.
std::vector<std::string> against(const Assessment& assessment) {
  std::vector<std::string> lines;
  for (const Finding& f : assessment.findings) {
    if (f.weight == Weight::Note) continue;
    lines.push_back(format("{} {}", to_word(f.weight), f.message));
    std::replace(lines.back().begin(), lines.back().end(), ' ', '-');
  }
  std::sort(lines.begin(), lines.end());
  return lines;
}

std::map<std::string, std::string> with(std::map<std::string, std::string> texts, const Record& record) {
  for (const RecordFile& file : record.files) {
    const bool fresh = texts.emplace(file.path, file.text).second;
    CHECK_MESSAGE(fresh, file.path);
  }
  return texts;
}

std::string notes(const Assessment& assessment) {
  std::string all;
  for (const Finding& f : assessment.findings) {
    if (f.rule == Rule::Assumed) all += format("{}: {}\n", to_word(f.weight), f.message);
  }
  return all;
}

}  // namespace

TEST_CASE("the small machine on its new board, written whole") {
  const auto texts = small_machine();
  const Machine machine("old.xml", texts);
  CHECK(against(machine.assessment()).empty());
  const NewBoard to(texts.at("b.xml"));
  const Fitting fitting = machine.fitting();
  const auto plan = plan_by_hand(fitting, to.board(), {{0, 0}, {1, 1}}, {{"JP", "24V"}});
  REQUIRE(against(plan->result).empty());
  const Record record = finished_state(*plan, machine.loom(), machine.files(),
                                       {.loom = "refit/loom.xml", .old_loom = "old.xml", .board = "b.xml"});
  REQUIRE(record.files.size() == 2);
  CHECK(record.files[0].path == "refit/limit.xml");
  CHECK(record.files[0].text ==
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        "<harness id=\"limit\" title=\"Sensor\" evidence=\"e\">\n"
        "  <evidence id=\"e\" kind=\"data-sheet\"/>\n"
        "  <device id=\"s\" use=\"limit\" kind=\"proximity\">\n"
        "    <terminal id=\"V\" function=\"supply\"/>\n"
        "    <terminal id=\"G\" function=\"ground\"/>\n"
        "    <terminal id=\"Q\" function=\"output\" signal=\"limit\"/>\n"
        "    <terminal id=\"Q-behind-the-divider\" function=\"output\" signal=\"limit\" inner=\"yes\"/>\n"
        "    <load plus=\"V\" minus=\"G\" needs=\"10..30 V\" draws=\"15 mA\"/>\n"
        "    <driver terminal=\"Q-behind-the-divider\" plus=\"V\" minus=\"G\" kind=\"sourcing\" drop=\"2 V\" "
        "leak=\"100 uA\" limit=\"0.2 A\" rests=\"off\"/>\n"
        "    <resistor a=\"Q-behind-the-divider\" b=\"Q\" ohms=\"47 kohm\" limit=\"0.125 W\"/>\n"
        "    <resistor a=\"Q\" b=\"G\" ohms=\"6.2 kohm\" limit=\"0.125 W\"/>\n"
        "  </device>\n"
        "  <plug id=\"p\" family=\"xh-2.50\" positions=\"3\">\n"
        "    <lead cavity=\"1\" colour=\"BN\" gauge=\"24 AWG\" length=\"300 mm\" to=\"V\"/>\n"
        "    <lead cavity=\"2\" colour=\"BU\" gauge=\"24 AWG\" length=\"300 mm\" to=\"G\"/>\n"
        "    <lead cavity=\"3\" colour=\"BK\" gauge=\"24 AWG\" length=\"300 mm\" to=\"Q\"/>\n"
        "  </plug>\n"
        "</harness>\n");
  CHECK(record.files[1].path == "refit/loom.xml");
  CHECK(record.files[1].text ==
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        "<loom id=\"m-new\" title=\"Machine; on Board new\" board=\"../b.xml\" evidence=\"built\" note=\"no. "
        "3; what sat on J9 of board 'old' (leads of the supply) goes over too: say here which header it "
        "took\">\n"
        "  <evidence id=\"built\" kind=\"plan\" note=\"planned, not yet seen: when the work is done and "
        "every plug and jumper was looked at, write the kind photograph or measurement here, add the day "
        "(date), and say in this note what was looked at\"/>\n"
        "  <fitted jumper=\"JP\" rail=\"24V\"/>\n"
        "  <harness id=\"limit\" file=\"limit.xml\" note=\"built anew from 'sensor.xml'\"/>\n"
        "  <harness id=\"fan\" file=\"../fan.xml\" note=\"spare at hand\"/>\n"
        "  <harness id=\"filament\" file=\"../switch.xml\"/>\n"
        "  <seat plug=\"limit/p\" header=\"J5\"/>\n"
        "  <seat plug=\"fan/fan\" header=\"J6\"/>\n"
        "  <loose plug=\"filament/p\" note=\"no place here: no header takes it\"/>\n"
        "  <free header=\"J7\"/>\n"
        "</loom>\n");
  const Machine back("refit/loom.xml", with(texts, record));
  CHECK(against(back.assessment()).empty());
  CHECK(notes(back.assessment()) ==
        "note: where 4 of the plugs and jumpers sit is a plan ('built'): judged as if it were so, seen by "
        "nobody "
        "yet\n");
  CHECK(advise_loom(back.loom(), back.bench, back.fitting()).verdict == Verdict::Mate);

  // Confirmed by the one line: nothing is left to be said.
  auto confirmed = with(texts, record);
  std::string& text = confirmed.at("refit/loom.xml");
  text.replace(text.find("kind=\"plan\""), 11, "kind=\"photograph\"");
  const Machine seen("refit/loom.xml", confirmed);
  CHECK(against(seen.assessment()).empty());
  CHECK(notes(seen.assessment()).empty());
}

TEST_CASE("names that are taken, and files that only an absolute path names") {
  auto texts = small_machine();
  const Machine machine("old.xml", texts);
  const NewBoard to(texts.at("b.xml"));
  const Fitting fitting = machine.fitting();
  const auto plan = plan_by_hand(fitting, to.board(), {{0, 0}, {1, 1}}, {{"JP", "24V"}});
  const auto record = [&](const std::string& loom) {
    return finished_state(*plan, machine.loom(), machine.files(),
                          {.loom = loom, .old_loom = "old.xml", .board = "b.xml"});
  };
  CHECK(record("limit.xml").files[0].path == "limit-harness.xml");
  CHECK(record("limit.xml").loom.harnesses[0].file == "limit-harness.xml");
  const Loom far = record("/elsewhere/loom.xml").loom;
  CHECK(far.board.front() == '/');
  CHECK(far.board.ends_with("/b.xml"));
  CHECK(far.harnesses[0].file == "limit.xml");
  CHECK(far.harnesses[1].file.ends_with("/fan.xml"));
}

TEST_CASE("the shipped machine moves to the other shipped board") {
  const Machine wren("harnesses/wren-a4.xml");
  const NewBoard to(read_file(std::string(PLUGWARD_SOURCE_DIR) + "/boards/heron-m7.xml"));
  const Fitting fitting = wren.fitting();
  const auto plan = plan_swap(fitting, to.board(), {});
  REQUIRE(plan->result.clean());
  const Record record = finished_state(
      *plan, wren.loom(), wren.files(),
      {.loom = "refit/loom.xml", .old_loom = "harnesses/wren-a4.xml", .board = "boards/heron-m7.xml"});
  const Machine back("refit/loom.xml", with({}, record));
  CHECK(against(back.assessment()).empty());
  CHECK(back.bench.placements.size() == plan->after.placements.size());
  CHECK(back.bench.jumpers == [&] {
    std::map<std::string, std::string> chosen;
    for (const JumperChoice& j : plan->jumpers) {
      if (!j.rail.empty()) chosen[j.jumper] = j.rail;
    }
    return chosen;
  }());
  // The leads sit where the plan has them.
  for (std::size_t p = 0; p < back.bench.harness.plugs.size(); ++p) {
    CAPTURE(back.bench.names[p]);
    for (const Lead& lead : plan->harness.plugs[p].leads) {
      if (lead.cavity == 0) continue;
      const Lead* read = back.bench.harness.plugs[p].lead_in(lead.cavity);
      REQUIRE(read != nullptr);
      CHECK(read->colour == lead.colour);
      CHECK(read->to == lead.to);
    }
  }
}

TEST_CASE("leads that are moved and moved again are told by their cavity in the file") {
  Plug file;
  file.positions = 4;
  for (const int cavity : {1, 2, 4}) {
    file.leads.emplace_back();
    file.leads.back().cavity = cavity;
  }
  Seat seat;
  seat.leads = {4, 0, 1, 0};  // the lead of cavity 2 is out
  CHECK(file_cavities(file, nullptr) == std::vector{1, 2, 4});
  CHECK(file_cavities(file, &seat) == std::vector{4, 1});
  Plug now = file;
  now.leads.resize(2);
  now.leads[0].cavity = 2;
  now.leads[1].cavity = 0;
  CHECK(leads_now(now, file, &seat) == std::vector{0, 4, 0, 0});
  now = file;
  CHECK(leads_now(now, file, nullptr).empty());
  now.leads[1].cavity = 3;
  CHECK(leads_now(now, file, nullptr) == std::vector{1, 0, 2, 4});
  now.leads[0].cavity = now.leads[1].cavity = now.leads[2].cavity = 0;
  CHECK(leads_now(now, file, nullptr) == std::vector{0, 0, 0, 0});
}
