// SPDX-License-Identifier: MIT
// Every harness that is read, and every harness with cures built in, is written so that it is read back equal
// in all that is judged, and written again the same. Equality is told in support/said.h, field by field, and
// not by the writer.
#include "model/harness_text.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>
#include <vector>

#include "base/file.h"
#include "plan/repin.h"
#include "support/bench.h"
#include "support/findings.h"
#include "support/random_world.h"
#include "support/said.h"

using namespace plugward;
using namespace plugward::test;

namespace {

/// The harness as read from a text of its own.
struct ReadBack {
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  Description description;

  ReadBack(const std::string& text, const Catalogue& families) : catalogue(families) {
    description = read_description(sources, sources.add("h.xml", text), catalogue, diagnostics);
  }
  std::string faults() const {
    std::string all;
    for (const Diagnostic& d : diagnostics.all())
      all += place_name(sources, d.span) + ": " + d.message + "\n";
    return all;
  }
};

void comes_back(const Harness& harness, const Catalogue& families) {
  const std::string text = harness_text(harness);
  CAPTURE(text);
  const ReadBack read(text, families);
  REQUIRE_MESSAGE(read.description.harness, read.faults());
  CHECK(same(*read.description.harness, harness));
  CHECK(harness_text(*read.description.harness) == text);
}

/// The harness with the cures of the advice built in; nothing when there are none.
std::optional<Harness> cured(const Fitting& fitting) {
  Advice advice = advise(fitting, {.wrong_seatings = false, .softer = false});
  return std::move(advice.cured);
}

}  // namespace

TEST_CASE("a harness as text, whole") {
  const Bench bench(board_of(header_of_pins("limit", 2, "<pin n='1' function='ground'/>")),
                    harness_of("<dry-switch id='s' use='limit' rests='open'/>"
                               "<led-string id='l' count='8' brightness='40 %' loop='0.6 ohm'/>"
                               "<plug id='p' label='A &amp; B' family='xh-2.50' positions='3'>"
                               "<lead cavity='2' colour='RDBK' gauge='0.14 mm2' to='s.A' mark='1'/>"
                               "<lead cavity='1' colour='?'/></plug>"));
  Harness harness = *bench.harness;
  Device& device = harness.devices[0];
  Terminal inner = device.terminals[0];
  inner.id = "A behind the divider";
  inner.inner = true;
  device.terminals.push_back(inner);
  inner.id = "A-behind-the-divider";
  device.terminals.push_back(inner);
  device.parts.push_back(Resistor{2, 0, Ohms(6800), Watts(0.25), {}});
  device.parts.push_back(
      Regulator{0, 3, 1, {Volts(4.75), Volts(5.25)}, Amps(1), {Volts(7.25), Volts(36)}, {}});
  device.parts.push_back(Load{0, 0, {Volts(0), Volts(5.25)}, std::nullopt, Amps(0), Reversal::Harmless, {}});
  harness.plugs[0].leads.push_back(harness.plugs[0].leads[0]);
  harness.plugs[0].leads.back().cavity = 0;  // out of the housing
  const std::string expected =
      "  <device id=\"s\" use=\"limit\" kind=\"dry-switch\">\n"
      "    <terminal id=\"A\" signal=\"limit\"/>\n"
      "    <terminal id=\"B\" signal=\"limit\"/>\n"
      "    <terminal id=\"A-behind-the-divider-2\" signal=\"limit\" inner=\"yes\"/>\n"
      "    <terminal id=\"A-behind-the-divider\" signal=\"limit\" inner=\"yes\"/>\n"
      "    <switch a=\"A\" b=\"B\" rests=\"open\"/>\n"
      "    <resistor a=\"A-behind-the-divider-2\" b=\"A\" ohms=\"6.8 kohm\" limit=\"0.25 W\"/>\n"
      "    <regulator in=\"A\" out=\"A-behind-the-divider\" minus=\"B\" volts=\"4.75..5.25 V\" "
      "needs=\"7.25..36 V\" limit=\"1 A\"/>\n"
      "    <feed terminal=\"A\" volts=\"0..5.25 V\"/>\n"
      "  </device>\n"
      "  <device id=\"l\" use=\"led\" kind=\"led-string\">\n"
      "    <terminal id=\"V\" function=\"supply\"/>\n"
      "    <terminal id=\"D\" function=\"input\" signal=\"led-data\"/>\n"
      "    <terminal id=\"G\" function=\"ground\"/>\n"
      "    <load plus=\"V\" minus=\"G\" needs=\"3.5..5.3 V\" draws=\"0.192 A\" reversed=\"destroyed\"/>\n"
      "    <receiver terminal=\"D\" plus=\"V\" minus=\"G\" low-below-share=\"0.3\" high-above-share=\"0.7\" "
      "above-supply=\"0.5 V\"/>\n"
      "    <leds count=\"8\" each=\"60 mA\" brightness=\"40 %\" loop=\"0.6 ohm\"/>\n"
      "  </device>\n"
      "  <plug id=\"p\" label=\"A &amp; B\" family=\"xh-2.50\" positions=\"3\">\n"
      "    <lead cavity=\"1\" colour=\"?\"/>\n"
      "    <lead cavity=\"2\" colour=\"RDBK\" gauge=\"0.14 mm2\" to=\"s.A\" mark=\"1\"/>\n"
      "  </plug>\n"
      "</harness>\n";
  const std::string text = harness_text(harness);
  CHECK(text.substr(text.find("  <device")) == expected);
  comes_back(harness, bench.catalogue);
}

TEST_CASE("every shipped harness") {
  Catalogue families;
  add_builtin_families(families);
  int count = 0;
  for (const char* folder : {"/harnesses", "/harnesses/standard", "/tests/unit/reader/whole"}) {
    const std::filesystem::path path = std::string(PLUGWARD_SOURCE_DIR) + folder;
    if (!std::filesystem::exists(path)) continue;
    for (const auto& entry : std::filesystem::directory_iterator(path)) {
      if (entry.path().extension() != ".xml") continue;
      CAPTURE(entry.path().filename().string());
      const ReadBack read(read_file(entry.path().string()), families);
      if (!read.description.harness) continue;
      ++count;
      comes_back(*read.description.harness, families);
    }
  }
  CHECK(count >= 19);
}

TEST_CASE("cures of every kind: shipped harnesses, sensors, switches, fans and strings on all headers") {
  const auto sensor = [](std::string_view attributes) {
    return harness_of(format("<proximity id='s' use='limit' signal='limit' draws='15 mA' {}/>", attributes) +
                      plug_of_leads("V G Q"));
  };
  std::vector<std::string> harnesses = {
      sensor("kind='sourcing' needs='10..30 V' drop='2 V' leak='0.1 mA' limit='0.2 A' rests='off'"),
      sensor("kind='sinking' needs='10..30 V' drop='0.3 V' leak='0.01 mA' pull='10 kohm' limit='0.2 A'"),
      sensor("kind='sinking' needs='10..30 V' drop='2 V' leak='0.1 mA' pull='10 kohm' limit='0.2 A'"),
      sensor("kind='sinking' needs='4.5..5.5 V' drop='0.4 V' leak='0.01 mA' pull='none' limit='0.2 A'"),
      harness_of("<dry-switch id='s' use='limit' rests='open'/>" + plug_of_leads("A B")),
      harness_of("<dry-switch id='s' use='limit' rests='open'/>" + plug_of_leads("- A B")),
      harness_of("<fan id='f' needs='10.2..13.8 V' draws='0.15 A' reversed='blocked'/>" +
                 plug_of_leads("V G")),
      harness_of("<led-string id='l' count='16' brightness='30 %'/>" + plug_of_leads("V D G"))};
  for (const char* name : {"kite-probe", "inductive-sensor", "hall-sensor", "optical-switch", "fan-12v",
                           "firefly-led-bar", "limit-switch", "filament-switch"}) {
    harnesses.push_back(read_file(format("{}/harnesses/{}.xml", PLUGWARD_SOURCE_DIR, name)));
  }
  std::map<std::string, int> kinds;
  std::vector<std::string> boards = {board_of(
      header_of_pins("limit", 3,
                     "<pin n='1' function='supply' rail='3V3'/><pin n='2' function='ground'/>"
                     "<pin n='3' function='input' signal='limit' rail='3V3' withstands='-0.3..3.6 V' "
                     "low-below='0.8 V' high-above='2 V'/>"))};
  for (const char* name : {"heron-a4", "heron-m7"}) {
    boards.push_back(read_file(format("{}/boards/{}.xml", PLUGWARD_SOURCE_DIR, name)));
  }
  for (const std::string& board : boards) {
    for (const std::string& harness : harnesses) {
      const Bench bench(board, harness);
      for (std::size_t h = 0; h < bench.board->headers.size(); ++h) {
        for (const char* rail : {"5V", "24V"}) {
          Fitting fitting{bench.board.get(), bench.harness.get(), &bench.catalogue, {}, {}};
          for (const Jumper& jumper : bench.board->jumpers) {
            const auto& rails = jumper.rails;
            if (std::find(rails.begin(), rails.end(), rail) != rails.end()) fitting.jumpers[jumper.id] = rail;
          }
          fitting.placements = {{0, static_cast<int>(h)}};
          const Advice advice = advise(fitting, {.wrong_seatings = false, .softer = false});
          if (!advice.cured) continue;
          for (const Cure& cure : advice.cures) ++kinds[cure.kind];
          CAPTURE(harness);
          CAPTURE(h);
          comes_back(*advice.cured, bench.catalogue);
        }
      }
    }
  }
  std::string missed;
  for (const char* kind :
       {"divider", "level-buffer", "optocoupler", "pull-up", "regulator", "series-diode"}) {
    if (!kinds.contains(kind)) missed += format("{} ", kind);
  }
  CHECK(missed == "");
}

TEST_CASE("2000 random worlds, as they are and with their cures") {
  int count = 0;
  for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
    CAPTURE(seed);
    const RandomWorld world = random_world(seed);
    const Bench bench(to_text(world.board), to_text(world.harness));
    comes_back(*bench.harness, bench.catalogue);
    const std::optional<Harness> made = cured(bench.fitting(world.at, world.jumpers));
    if (!made) continue;
    ++count;
    comes_back(*made, bench.catalogue);
  }
  CHECK(count > 20);
}

TEST_CASE("what belongs to files with parts built in, misused") {
  Catalogue families;
  add_builtin_families(families);
  const auto faults = [&](std::string_view inside, std::string_view lead) {
    const ReadBack read(harness_of(format("<device id='d' use='limit'><terminal id='a'/><terminal id='b' "
                                          "inner='yes'/>{}</device><plug id='p' family='xh-2.50' "
                                          "positions='2'><lead cavity='1' colour='RD' to='{}'/></plug>",
                                          inside, lead)),
                        families);
    std::string all;
    for (const Diagnostic& d : read.diagnostics.all()) {
      all += format("{} [{}]\n", d.message, rule_info(d.rule).id);
      for (const std::string& help : d.helps) all += format("  help: {}\n", help);
    }
    return all;
  };
  CHECK(faults("", "a").empty());
  CHECK(faults("", "b") ==
        "terminal 'b' is inside the device: no lead goes there [conflict]\n"
        "  help: lead to the terminal in front of it, or delete 'inner' there\n");
  CHECK(faults("", "c") ==
        "terminal 'c' is not declared [undeclared-reference]\n"
        "  help: declared are: a\n");
  CHECK(faults("<leds count='8' each='60 mA'/><leds count='8' each='60 mA'/>", "a") ==
        "'leds' stands twice in one 'device' [conflict]\n"
        "  help: describe each string as a device of its own\n");
  CHECK(faults("<regulator in='a' out='b' minus='a' volts='5 V' needs='7..36 V'/>", "a") ==
        "'in' and 'minus' of one 'regulator' are the same terminal [conflict]\n");
}

TEST_CASE("only a loom tells of what is planned") {
  Catalogue families;
  add_builtin_families(families);
  const ReadBack read(
      "<harness id='h' title='H' evidence='e'><evidence id='e' kind='plan'/><dry-switch id='s' use='limit' "
      "rests='open'/><plug id='p' family='xh-2.50' positions='2'/></harness>",
      families);
  REQUIRE(read.diagnostics.all().size() == 1);
  const Diagnostic& found = read.diagnostics.all().front();
  CHECK(found.message == "'plan' is no value of 'kind'");
  CHECK(found.helps ==
        std::vector<std::string>{"'kind' is one of: board-print, makers-drawing, schematic, measurement, "
                                 "photograph, data-sheet, standard, assumption"});
}
