// SPDX-License-Identifier: MIT
#include "cli/draft.h"

#include <doctest/doctest.h>

#include <map>

#include "base/format.h"
#include "cli/dialogue.h"
#include "cli/draft_board.h"
#include "reader/descriptions.h"

using namespace plugward;

namespace {

struct ReadBack {
  Sources sources;
  Catalogue catalogue;
  Diagnostics diagnostics;
  Description description;

  explicit ReadBack(const std::string& text) {
    add_builtin_families(catalogue);
    description = read_description(sources, sources.add_words("--seen", text), catalogue, diagnostics);
  }
};

std::string refusal(const auto& act) {
  try {
    act();
  } catch (const UsageError& error) {
    return error.what();
  }
  return "";
}

}  // namespace

TEST_CASE("every kind reads back without a fault, with nothing known and with each lead told") {
  for (const DeviceKind& kind : all_kinds()) {
    CAPTURE(kind.word);
    const std::size_t count = kind.terminals.empty() ? 3 : kind.terminals.size();
    for (const bool told : {false, true}) {
      std::string list;
      for (std::size_t i = 0; i < count; ++i) {
        list += format("{}?{}", i == 0 ? "" : ",",
                       told && !kind.terminals.empty() ? format("={}", kind.terminals[i].id) : "");
      }
      for (const DraftView view : {DraftView::Wire, DraftView::Mating, DraftView::Unknown}) {
        CableDraft draft = read_draft(kind.word, list);
        draft.view = view;
        draft.date = "2026-11-25";
        const ReadBack read(draft_text(draft));
        CHECK(read.diagnostics.all().empty());
        REQUIRE(read.description.harness);
        const Plug& plug = read.description.harness->plugs[0];
        CHECK(plug.leads.size() == count);
        CHECK(plug.family == "unknown");
        for (std::size_t i = 0; i < count && told && !kind.terminals.empty(); ++i) {
          const std::size_t cavity = view == DraftView::Mating ? count - i : i + 1;
          const Lead* lead = plug.lead_in(static_cast<int>(cavity));
          REQUIRE(lead != nullptr);
          CHECK(read.description.harness->terminal(*lead->to).id == kind.terminals[i].id);
        }
        CHECK((plug.evidence == "side") == (view == DraftView::Unknown));
      }
    }
  }
}

TEST_CASE("every figure of every kind is taken by its line") {
  for (const DeviceKind& kind : all_kinds()) {
    CAPTURE(kind.word);
    if (kind.terminals.empty()) continue;
    CableDraft draft = read_draft(kind.word, "?,?");
    for (const KindFigure& figure : kind.figures)
      draft.known.push_back(read_known(kind, {std::string(figure.attribute), std::string(figure.example)}));
    CHECK(ReadBack(draft_text(draft)).diagnostics.all().empty());
  }
}

TEST_CASE("what is seen: colours, empty cavities, proved ends") {
  const std::vector<SeenCavity> leads = read_seen(*find_kind("fan"), "BK=minus,-,RDWH,?=plus");
  REQUIRE(leads.size() == 4);
  CHECK(leads[0].to == "G");
  CHECK_FALSE(leads[1].lead);
  CHECK(to_code(leads[2].colour) == "RDWH");
  CHECK(leads[2].to.empty());
  CHECK(leads[3].to == "V");
  const std::vector<SeenCavity> alike = read_seen(*find_kind("thermistor"), "WH,-,WH");
  CHECK(alike[0].to == "A");
  CHECK(alike[2].to == "B");
  CHECK(read_seen(*find_kind("switch"), "BK,RD=A")[0].to == "B");
}

TEST_CASE("a label's volts stand for a tenth either way; a range stays") {
  const DeviceKind& fan = *find_kind("fan");
  CHECK(read_known(fan, {"needs", "24V"}).value == "21.6..26.4 V");
  CHECK(read_known(fan, {"needs", "10..30 V"}).value == "10..30 V");
  CHECK(
      refusal([&] {
        read_known(fan, {"ohms", "3 ohm"});
      }) ==
      "--known: of 'fan' there is no 'ohms'; there is needs (volts on its label), draws (amps on its label)");
}

TEST_CASE("a housing by its family or its pitch") {
  CHECK(read_housing("xh-2.50") == "xh-2.50");
  CHECK(read_housing("2.54") == "unknown-2.54");
  CHECK(read_housing("2 mm") == "unknown-2.00");
  CHECK(read_housing("?") == "unknown");
  CHECK(refusal([] { read_housing("7.5"); }) ==
        "'7.5' is neither a family nor the pitch of one; 'plugward list families' shows both");
}

TEST_CASE("a board by its headers") {
  const HeaderDraft header = read_header_word("J5:2.5:3:limit");
  CHECK(header.id == "J5");
  CHECK(header.family == "unknown-2.50");
  CHECK(header.positions == 3);
  CHECK(header.use == "limit");
  const ReadBack read(board_draft_text({"x", "X & Y", "2026-11-25", {header, read_header_word("J6:?:2")}}));
  CHECK(read.diagnostics.all().empty());
  REQUIRE(read.description.board);
  CHECK(read.description.board->headers[1].use == "spare");
  CHECK(read.description.board->headers[0].pins[2].function == PinFunction::Unknown);
}

TEST_CASE("the dialogue asks only what was not said, and asks again what cannot be understood") {
  const std::vector<std::string> answers{"", "many", "3", "mating", "", "", "x", "data", ""};
  std::vector<std::string> asked;
  const CableDraft draft =
      ask_draft({"leds", "", "xh-2.50", "", {{"count", "8"}}}, [&](const std::string& question) {
        asked.push_back(question);
        REQUIRE(asked.size() <= answers.size());
        return answers[asked.size() - 1];
      });
  REQUIRE(asked.size() == answers.size());
  CHECK(asked[2] ==
        "'many' is no count from 1 to 200\n"
        "How many leads has it? 1 to 200. Enter: not known, 4 are taken");
  CHECK(asked[7] ==
        "'x' is none of its terminals\n"
        "Was it proved (print, beep, drawing; not colour) where lead 3 (?) goes? V plus, D data in, G "
        "ground, Q data out. Enter: not known");
  CHECK(draft.family == "xh-2.50");
  CHECK(draft.view == DraftView::Mating);
  REQUIRE(draft.leads.size() == 3);
  CHECK(draft.leads[0].to.empty());
  CHECK(draft.leads[1].to.empty());
  CHECK(draft.leads[2].to == "D");
  CHECK(draft.known.size() == 1);
}
