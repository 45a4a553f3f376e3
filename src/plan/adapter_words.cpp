// SPDX-License-Identifier: MIT
// The order of the work and the checks are common practice, no source. Tested in
// tests/cases/adapter-*.
#include "plan/adapter_words.h"

#include <algorithm>

#include "base/format.h"

namespace plugward {
namespace {

std::string family_words(const std::string& id, const Catalogue& catalogue) {
  const Family* family = catalogue.find(id);
  return family == nullptr ? format("'{}'", id) : format("'{}' ({})", id, family->title);
}

std::string size_words(const AdapterEnd& end) {
  return format("{} positions{}", end.positions, end.rows > 1 ? format(" in {} rows", end.rows) : "");
}

bool any_end(const std::vector<Adapter>& adapters, Joint joint) {
  return std::any_of(adapters.begin(), adapters.end(),
                     [joint](const Adapter& a) { return a.a.joint == joint || a.b.joint == joint; });
}

bool any_spliced(const std::vector<Adapter>& adapters) {
  return std::any_of(adapters.begin(), adapters.end(), [](const Adapter& a) { return a.spliced; });
}

void add_unique(std::vector<std::string>& list, std::string line) {
  if (std::find(list.begin(), list.end(), line) == list.end()) list.push_back(std::move(line));
}

}  // namespace

std::string first_position_words(const Family& family) {
  const std::string key = family.profile == Profile::Bare
                              ? "; nothing keys it, so paint position 1 on both halves"
                              : "; it is keyed, and the key goes on the side that the mating half shows";
  if (family.first_cavity) return family.first_cavity->value + key;
  return "how position 1 is marked is not known: find it by mating the two halves and mark it" + key;
}

std::string end_a_words(const AdapterEnd& end, const Catalogue& catalogue) {
  return format("a header or cable-side counterpart of family {}, {}", family_words(end.family, catalogue),
                size_words(end));
}

std::string end_b_words(const AdapterEnd& end, const Catalogue& catalogue) {
  return format("a housing of family {}, {}", family_words(end.family, catalogue), size_words(end));
}

std::string crimp_tool_words(const std::string& family) {
  return format("crimp tool for contacts of family '{}'", family);
}

std::vector<std::string> adapter_tools(const std::vector<Adapter>& adapters) {
  std::vector<std::string> tools{"wire cutter and stripper"};
  for (const Adapter& adapter : adapters) {
    for (const AdapterEnd* end : {&adapter.a, &adapter.b}) {
      if (end->joint == Joint::Crimp) add_unique(tools, crimp_tool_words(end->family));
    }
  }
  if (any_end(adapters, Joint::Screw)) tools.emplace_back("screwdriver that fits the slot");
  if (any_end(adapters, Joint::Displacement)) tools.emplace_back("press or vice for flat cable sockets");
  tools.emplace_back("soldering iron and heat source for the shrink tube");
  tools.emplace_back("tape flags and a pen");
  tools.emplace_back("meter with continuity beeper");
  return tools;
}

std::vector<std::string> adapter_steps(const std::vector<Adapter>& adapters) {
  std::vector<std::string> steps;
  if (any_spliced(adapters)) {
    steps.push_back(
        format("flat cable: press each end on a piece of its own, half of {} long; at the free ends part the "
               "conductors, flag each with its position, slip heat-shrink on and solder them together by the "
               "table",
               to_text(adapters.front().length)));
    steps.emplace_back("shrink the tube over each splice singly; no bare wire may touch another");
  }
  if (any_end(adapters, Joint::Crimp) || any_end(adapters, Joint::Screw) || any_end(adapters, Joint::Other)) {
    steps.push_back(format("cut the leads to {}, strip both ends and flag each with its two positions",
                           to_text(adapters.front().length)));
    steps.emplace_back(
        "end A, by the table: crimp the contacts of a cable-side counterpart, or slip heat-shrink on and "
        "solder the leads to the tails of a header");
    steps.emplace_back("end B, by the table: fasten each lead and tug it lightly: it must not slide");
    steps.emplace_back("positions that the table calls empty get no lead at either end");
  }
  steps.emplace_back("tie a flag to the finished lead: its name, A at the cable's end and B at the board's");
  return steps;
}

std::vector<std::string> adapter_checks(const std::vector<Adapter>& adapters) {
  std::vector<std::string> checks{"lead in the hand, nothing plugged in at either end"};
  for (const Adapter& adapter : adapters) {
    std::vector<std::string> pairs;
    for (const AdapterLead& lead : adapter.leads) pairs.push_back(format("A{}-B{}", lead.a, lead.b));
    checks.push_back(
        format("{}: each of these pairs beeps, while the lead is bent: {}", adapter.id, join(pairs, ", ")));
    checks.push_back(
        format("{}: every other pair stays silent: each A with every other B, each A with every other A, "
               "each B with every other B",
               adapter.id));
  }
  checks.emplace_back("the cable's plug goes into end A, and end B on the header, without force");
  return checks;
}

}  // namespace plugward
