// SPDX-License-Identifier: MIT
// The harms that the program finds in random worlds, one line each, for a judge that shares no code with it.
//
//   hazard_worlds COUNT FIRST    the worlds of the seeds FIRST .. FIRST + COUNT - 1
//   hazard_worlds                the worlds that are read from standard input, line by line
//
// A world is one line of fields parted by tabs: its seed, "plug=header ..." , "jumper=rail ...", how one plug
// sits
// ("plug turned shift row-shift", "" when all are at home), the board file and the harness file, each without
// breaks. After it comes what was found, and "end":
//
//   world   42   p1=J2   JP1=5V   p1 1 0 0   <board ...   <harness ...
//   harm    overvoltage   24 V on J2.1, which withstands 5.5 V   5V at 5.25 V
//   end
//
// Before "end" stands "refused" when the reader does not take the files or the plug does not go on so, and
// "many" when the circuit has more states than the program tries.
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <iostream>
#include <map>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include "base/format.h"
#include "fit/seating.h"
#include "judge/judgement.h"
#include "support/bench.h"
#include "support/random_world.h"

namespace {

using namespace plugward;
using namespace plugward::test;

using Table = std::map<std::string, std::string>;

/// As the fields of its line, the seed first.
struct Case {
  std::string seed, seat, board, harness;
  Table at, jumpers;
};

std::vector<std::string> split(const std::string& text, char by) {
  std::vector<std::string> out;
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find(by, begin), text.size());
    if (by != ' ' || end > begin) out.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
  return out;
}

Table table_of(const std::string& words) {
  Table table;
  for (const std::string& word : split(words, ' ')) {
    const std::size_t sign = word.find('=');
    table[word.substr(0, sign)] = word.substr(sign + 1);
  }
  return table;
}

std::string words_of(const Table& table) {
  std::string words;
  for (const auto& [key, value] : table) words += (words.empty() ? "" : " ") + key + "=" + value;
  return words;
}

std::string on_one_line(std::string text) {
  for (char& c : text) {
    if (c == '\n' || c == '\t') c = ' ';
  }
  return text;
}

std::string seat_words(const std::string& plug, const Seating& s) {
  return format("{} {} {} {}", plug, s.turned ? 1 : 0, s.shift, s.row_shift);
}

/// Every way in which the placed plugs may sit wrong, by the words of `Case::seat`.
std::vector<std::pair<std::string, std::vector<Seating>>> ways_to_sit(const Fitting& fitting) {
  std::vector<Seating> home;
  for (const Placement& p : fitting.placements) {
    home.push_back(
        home_seating(fitting.harness->plugs[static_cast<std::size_t>(p.plug)], p.header, *fitting.board));
  }
  std::vector<std::pair<std::string, std::vector<Seating>>> ways;
  for (std::size_t i = 0; i < fitting.placements.size(); ++i) {
    const Placement& p = fitting.placements[i];
    const Plug& plug = fitting.harness->plugs[static_cast<std::size_t>(p.plug)];
    for (Seating& s : seatings(plug, p.header, *fitting.board, *fitting.catalogue)) {
      if (s.kind == SeatingKind::Home) continue;
      std::string words = seat_words(plug.id, s);
      ways.emplace_back(std::move(words), home);
      ways.back().second[i] = std::move(s);
    }
  }
  return ways;
}

Assessment assess_seated(const Fitting& fitting, const std::string& seat) {
  if (seat.empty()) return assess(fitting);
  for (const auto& [words, seating_of] : ways_to_sit(fitting)) {
    if (words == seat) return assess(fitting, seating_of);
  }
  throw std::runtime_error("no such seating: " + seat);
}

void answer(const Case& one) {
  std::printf("world\t%s\t%s\t%s\t%s\t%s\t%s\n", one.seed.c_str(), words_of(one.at).c_str(),
              words_of(one.jumpers).c_str(), one.seat.c_str(), one.board.c_str(), one.harness.c_str());
  try {
    const Bench bench(one.board, one.harness);
    const Assessment found = assess_seated(bench.fitting(one.at, one.jumpers), one.seat);
    for (const Finding& f : found.findings) {
      if (f.rule == Rule::TooManyStates) std::printf("many\n");
      if (f.weight != Weight::Harm) continue;
      std::printf("harm\t%s\t%s\t%s\n", std::string(rule_info(f.rule).id).c_str(), f.message.c_str(),
                  f.state.c_str());
    }
  } catch (const std::exception& error) {
    std::printf("refused\t%s\n", on_one_line(error.what()).c_str());
  }
  std::printf("end\n");
}

/// Some figures are made smaller or larger, so that they come near limits that round ones keep away from.
void scale_figures(Dice& dice, XmlNode& node) {
  static const std::set<std::string> figures{"amps",   "draws", "drop", "each",      "injection", "leak",
                                             "length", "limit", "ohms", "pull-ohms", "pull",      "watts"};
  static const std::vector<double> factors{0.25, 0.6, 0.9, 1.1, 1.7, 4.0};
  for (auto& [key, value] : node.attributes) {
    if (!figures.contains(key) || !dice.chance(8)) continue;
    const std::size_t space = value.find(' ');
    if (space == std::string::npos) continue;  // pull="up"
    const double figure = std::stod(value.substr(0, space)) * dice.pick(factors);
    value = format("{:.4f}{}", figure, value.substr(space));
  }
  for (XmlNode& child : node.children) scale_figures(dice, child);
}

/// Some heaters are behind a relay, of which the board feeds the control side.
void put_relays(Dice& dice, XmlNode& harness) {
  for (XmlNode& device : harness.children) {
    if (device.name != "heater-element" || !dice.chance(25)) continue;
    XmlNode relay("device", {{"id", device.get("id")}, {"use", "heater"}});
    relay.children = {
        XmlNode("terminal", {{"id", "A"}, {"function", "supply"}}),
        XmlNode("terminal", {{"id", "B"}, {"function", "return"}}),
        XmlNode("load", {{"plus", "A"}, {"minus", "B"}, {"needs", "4..32 V"}, {"draws", "15 mA"}})};
    if (dice.chance(70)) relay.children.back().set("reversed", "blocked");
    device = std::move(relay);
  }
}

/// The random pair of this seed with relays, other figures, every jumper somewhere, and mostly, where it can,
/// one plug turned or shifted.
Case random_case(std::uint64_t seed) {
  RandomWorld world = random_world(seed);
  Dice dice(seed + 0x9e3779b97f4a7c15U);  // other throws than those of the pair
  put_relays(dice, world.harness);
  for (XmlNode* file : {&world.board, &world.harness}) scale_figures(dice, *file);
  Case one{std::to_string(seed),
           "",
           on_one_line(to_text(world.board)),
           on_one_line(to_text(world.harness)),
           world.at,
           world.jumpers};
  for (const XmlNode& node : world.board.children) {
    if (node.name != "jumper" || one.jumpers.contains(node.get("id"))) continue;
    one.jumpers[node.get("id")] = dice.pick(split(node.get("rails"), ' '));
  }
  if (!dice.chance(75)) return one;
  const Bench bench(one.board, one.harness);
  const auto ways = ways_to_sit(bench.fitting(one.at));
  if (!ways.empty()) one.seat = dice.pick(ways).first;
  return one;
}

Case read_case(const std::string& line) {
  const std::vector<std::string> fields = split(line, '\t');
  if (fields.size() != 7) throw std::runtime_error("not a world: " + line);
  return {fields[1], fields[4], fields[5], fields[6], table_of(fields[2]), table_of(fields[3])};
}

}  // namespace

int main(int argc, char** argv) {
  if (argc == 3) {
    const std::uint64_t count = std::strtoull(argv[1], nullptr, 10);
    const std::uint64_t first = std::strtoull(argv[2], nullptr, 10);
    for (std::uint64_t seed = first; seed < first + count; ++seed) answer(random_case(seed));
    return 0;
  }
  if (argc != 1) {
    std::fprintf(stderr, "usage: hazard_worlds [COUNT FIRST]\n");
    return 2;
  }
  for (std::string line; std::getline(std::cin, line);) {
    answer(read_case(line));
    std::fflush(stdout);
  }
  return 0;
}
