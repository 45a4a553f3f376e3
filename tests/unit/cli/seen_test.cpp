// SPDX-License-Identifier: MIT
#include "cli/seen.h"

#include <doctest/doctest.h>

#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "base/format.h"
#include "quantity/colour.h"

namespace plugward {
namespace {

Lead lead(int cavity, const char* colour, std::optional<TerminalRef> to, int gauge = 26) {
  Lead l;
  l.cavity = cavity;
  l.colour = std::get<WireColour>(parse_colour(colour));
  l.gauge = awg(gauge);
  l.to = to;
  return l;
}

Device with_terminals(std::string id, std::initializer_list<const char*> names) {
  Device d;
  d.id = std::move(id);
  for (const char* name : names) {
    Terminal t;
    t.id = name;
    d.terminals.push_back(t);
  }
  return d;
}

/// Device 0: probe G V P. Device 1: a switch A B and nothing else. Device 2: a fan V G.
Harness harness_with(std::vector<Lead> leads, int positions) {
  Harness h;
  h.id = "h";
  h.devices = {with_terminals("probe", {"G", "V", "P"}), with_terminals("stop", {"A", "B"}),
               with_terminals("fan", {"V", "G"})};
  h.devices[1].parts = {Switch{0, 1, false, {}}};
  h.devices[2].parts = {Load{}};
  Plug plug;
  plug.id = "control";
  plug.positions = positions;
  plug.leads = std::move(leads);
  h.plugs = {plug};
  return h;
}

/// "1:RD>probe.V 2:BN>?" and the notes, or "! fault".
std::string words(const Harness& harness, std::string_view seen, const std::string& plug = "control") {
  const Parsed<SeenResult> result = rearrange_as_seen(harness, plug, seen);
  if (const Fault* fault = std::get_if<Fault>(&result)) return "! " + fault->message;
  const Harness& h = std::get<SeenResult>(result).harness;
  std::string text;
  for (const Lead& l : h.plugs[0].leads) {
    text += format("{}{}:{}>{}", text.empty() ? "" : " ", l.cavity, to_code(l.colour),
                   l.to ? h.terminal_name(*l.to) : "?");
    if (!l.gauge) text += "(no gauge)";
  }
  return text;
}

constexpr TerminalRef probe_g{0, 0}, probe_v{0, 1}, probe_p{0, 2}, stop_a{1, 0}, stop_b{1, 1}, fan_v{2, 0},
    fan_g{2, 1};

}  // namespace

TEST_CASE("seen: leads are known by their colour, and only as far as it tells them apart") {
  const std::vector<Lead> probe = {lead(1, "BN", probe_g), lead(2, "RD", probe_v), lead(3, "OG", probe_p)};
  struct Row {
    const char* name;
    std::vector<Lead> leads;
    const char* seen;
    std::string expected;
  };
  const Row rows[] = {
      {"as in the file", probe, "BN,RD,OG", "1:BN>probe.G 2:RD>probe.V 3:OG>probe.P"},
      {"moved round", probe, "OG,BN,RD", "1:OG>probe.P 2:BN>probe.G 3:RD>probe.V"},
      {"one is gone", probe, "OG,-,RD", "1:OG>probe.P 3:RD>probe.V"},
      {"nothing is there", probe, "-,-,-", ""},
      {"a colour that the file does not have", probe, "BN,RD,WH",
       "1:BN>probe.G 2:RD>probe.V 3:WH>?(no gauge)"},
      {"a colour that cannot be told", probe, "BN,RD,?", "1:BN>probe.G 2:RD>probe.V 3:?>?(no gauge)"},
      {"one more red than the file has", probe, "RD,RD,OG", "1:RD>?(no gauge) 2:RD>?(no gauge) 3:OG>probe.P"},
      {"two-colour leads in the other order",
       {lead(1, "WHGN", probe_v), lead(2, "BN", probe_g)},
       "BN,GNWH,-",
       "1:BN>probe.G 2:WHGN>probe.V"},
      {"same colour, other terminals",
       {lead(1, "BK", fan_v), lead(2, "BK", fan_g)},
       "BK,BK,-",
       "1:BK>? 2:BK>?"},
      {"same colour, other terminals, one seen",
       {lead(1, "BK", fan_v), lead(2, "BK", fan_g)},
       "-,BK,-",
       "2:BK>?"},
      {"same colour, the two ends of a bare switch",
       {lead(1, "BK", stop_a), lead(3, "BK", stop_b)},
       "BK,BK,-",
       "1:BK>stop.A 2:BK>stop.B"},
      {"same colour, one terminal",
       {lead(1, "BK", probe_g), lead(2, "BK", probe_g), lead(3, "RD", probe_v)},
       "RD,BK,BK",
       "1:RD>probe.V 2:BK>probe.G 3:BK>probe.G"},
      {"same colour, one terminal, other gauges",
       {lead(1, "BK", probe_g, 26), lead(2, "BK", probe_g, 20), lead(3, "RD", probe_v)},
       "RD,BK,BK",
       "1:RD>probe.V 2:BK>?(no gauge) 3:BK>?(no gauge)"},
      {"too few entries", probe, "BN,RD",
       "! plug 'control' has 3 cavities, but 2 are listed: write '-' for an empty one and '?' for a colour "
       "that "
       "cannot be told"},
      {"too many entries", probe, "BN,RD,OG,BK",
       "! plug 'control' has 3 cavities, but 4 are listed: write '-' for an empty one and '?' for a colour "
       "that "
       "cannot be told"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(words(harness_with(row.leads, 3), row.seen) == row.expected);
  }
  CHECK(words(harness_with(probe, 3), "BN,RD,OG", "controll") ==
        "! harness 'h' has no plug 'controll'; did you mean 'control'?");
}

TEST_CASE("seen: a word that is no colour is answered in the words of the colour reader") {
  const Harness harness = harness_with({lead(1, "BN", probe_g)}, 2);
  const Parsed<WireColour> fault = parse_colour("BR");
  REQUIRE(std::holds_alternative<Fault>(fault));
  CHECK(words(harness, "BN,BR") == "! cavity 2 of plug 'control': " + std::get<Fault>(fault).message);
}

TEST_CASE("seen: leads of which nothing sure remains are named") {
  const Harness harness = harness_with({lead(1, "BN", probe_g)}, 3);
  const auto result = std::get<SeenResult>(rearrange_as_seen(harness, "control", "BN,?,WH"));
  CHECK(result.notes == std::vector<std::string>{
                            "plug 'control', cavity 2: where a lead of unknown colour goes is not known",
                            "plug 'control', cavity 3: the colour WH does not tell where this lead goes"});
}

}  // namespace plugward
