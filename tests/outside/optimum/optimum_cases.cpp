// SPDX-License-Identifier: MIT
// Random target and placement problems with our answers, one JSON object a line, for optimum_test.py. The
// problems are stated in levels (one number a level of preference), never in weights.
//
//   optimum_cases SEED COUNT
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "base/format.h"
#include "fit/match.h"
#include "judge/words.h"
#include "plan/place_search.h"
#include "plan/target.h"

using namespace plugward;

namespace {

using Clock = std::chrono::steady_clock;
using Levels = std::vector<long>;

struct TargetWorld {
  Board board;
  Harness harness;
  Catalogue catalogue;
  Fitting fitting() const {
    Fitting f{&board, &harness, &catalogue, {}, {}};
    for (int i = 0; i < static_cast<int>(harness.plugs.size()); ++i) f.placements.push_back({i, i});
    return f;
  }
};

class TargetMaker {
 public:
  explicit TargetMaker(std::mt19937& random) : random_(random) {}

  TargetWorld make() {
    Family family;
    family.id = "bare";
    world_.catalogue.add(family);
    world_.board.rails.push_back({"5V", {Volts(5), Volts(5)}, {}, {}, {}});
    world_.board.rails.push_back({"24V", {Volts(24), Volts(24)}, {}, {}, {}});
    const int plugs = 1 + pick(1);
    for (int p = 0; p < plugs; ++p) add_plug(p);
    return std::move(world_);
  }

 private:
  int pick(int most) { return std::uniform_int_distribution(0, most)(random_); }

  TerminalIndex add_terminal(TerminalFunction function, bool optional) {
    auto& terminals = world_.harness.devices.back().terminals;
    Terminal terminal;
    terminal.id = format("t{}", terminals.size());
    terminal.function = function;
    terminal.optional = optional;
    terminals.push_back(terminal);
    return static_cast<TerminalIndex>(terminals.size()) - 1;
  }

  /// Pins that suit the terminals, most of them; then leads in random cavities.
  void add_plug(int index) {
    world_.harness.devices.emplace_back().id = format("d{}", index);
    Header header;
    header.id = format("J{}", index);
    header.family = "bare";
    std::vector<Pin> pins;
    std::vector<TerminalIndex> leads;
    const auto pin = [&](PinFunction function) -> Pin& {
      pins.emplace_back().function = function;
      if (function == PinFunction::Supply) pins.back().rail = pick(3) == 0 ? "24V" : "5V";
      return pins.back();
    };
    const auto passive = [&] {
      leads.push_back(add_terminal(TerminalFunction::Passive, false));
      return leads.back();
    };
    const int parts = 1 + pick(3);
    for (int i = 0; i < parts; ++i) {
      auto& device_parts = world_.harness.devices.back().parts;
      switch (pick(3)) {
        case 0: {
          const TerminalIndex a = passive();
          const TerminalIndex b = passive();
          device_parts.emplace_back(Switch{a, b, false, {}});
          pin(PinFunction::Input);
          pin(pick(3) == 0 ? PinFunction::Supply : PinFunction::Ground);
          break;
        }
        case 1: {
          const TerminalIndex a = passive();
          const TerminalIndex b = passive();
          device_parts.emplace_back(Heater{a, b, Volts(24), Watts(40), {}});
          pin(PinFunction::Supply);
          pin(PinFunction::Switched);
          break;
        }
        case 2:
          for (int coil = 1; coil <= 2; ++coil) {
            const TerminalIndex a = passive();
            const TerminalIndex b = passive();
            device_parts.emplace_back(Coil{a, b, Ohms(2), {}, {}});
            for (const char end : {'A', 'B'}) {
              Pin& p = pin(PinFunction::Coil);
              p.coil = coil;
              p.coil_end = end;
            }
          }
          break;
        default: {
          const bool optional = pick(2) == 0;
          const TerminalIndex plus = add_terminal(TerminalFunction::Supply, false);
          const TerminalIndex minus = add_terminal(TerminalFunction::Ground, optional);
          Load load;
          load.plus = plus;
          load.minus = minus;
          load.needs = {Volts(4.5), Volts(5.5)};
          device_parts.emplace_back(load);
          leads.push_back(plus);
          leads.push_back(minus);
          pin(PinFunction::Supply);
          if (pick(3) > 0) pin(PinFunction::Ground);
        }
      }
    }
    const int spare = pick(2);
    const std::vector<PinFunction> more{PinFunction::Ground, PinFunction::Input, PinFunction::Supply,
                                        PinFunction::Unused};
    for (int i = 0; i < spare; ++i) pin(more[static_cast<std::size_t>(pick(3))]);
    while (pins.size() < leads.size()) pin(PinFunction::Ground);
    std::shuffle(pins.begin(), pins.end(), random_);
    for (std::size_t i = 0; i < pins.size(); ++i) pins[i].number = static_cast<int>(i) + 1;
    header.positions = static_cast<int>(pins.size());
    header.pins = pins;
    Plug plug;
    plug.id = format("p{}", index);
    plug.family = "bare";
    plug.positions = header.positions;
    std::vector<int> cavities;
    for (int c = 1; c <= plug.positions; ++c) cavities.push_back(c);
    std::shuffle(cavities.begin(), cavities.end(), random_);
    for (std::size_t l = 0; l < leads.size(); ++l) {
      Lead lead;
      lead.cavity = cavities[l];
      // One lead in ten goes to a device of the plug before: the two plugs then hang together.
      const int device = index > 0 && pick(9) == 0 ? index - 1 : index;
      const auto size = world_.harness.devices[static_cast<std::size_t>(device)].terminals.size();
      lead.to = TerminalRef{
          device, device == index ? leads[l] : static_cast<TerminalIndex>(pick(static_cast<int>(size) - 1))};
      plug.leads.push_back(lead);
    }
    world_.board.headers.push_back(header);
    world_.harness.plugs.push_back(plug);
  }

  std::mt19937& random_;
  TargetWorld world_;
};

std::string list(const Levels& levels) {
  return format("[{}]", join(levels, ","));
}

/// Wrong volts, terminals left out, contacts moved; nothing when the lead must not be there. `cavity` 0:
/// outside.
std::optional<Levels> levels_of(const Fitting& f, const Plug& plug, int header, const Lead& lead,
                                const End& end, int cavity) {
  const long moved = lead.cavity == cavity ? 0 : 1;
  if (cavity == 0) {
    if (end.wish == Wish::Nothing) return Levels{0, 0, 1, 0};
    if (f.harness->terminal(*lead.to).optional) return Levels{0, 1, 1, 0};
    return std::nullopt;
  }
  if (end.wish == Wish::Any) return moved == 0 ? std::optional(Levels{0, 0, 0, 0}) : std::nullopt;
  const int number = home_seating(plug, header, *f.board).pin_of_cavity[static_cast<std::size_t>(cavity) - 1];
  const Pin& pin = header_of(f, header).pin(number);
  const bool idle = pin.function == PinFunction::Unused && f.harness->terminal(*lead.to).optional;
  if (idle && end.wish != Wish::Nothing) return Levels{0, 1, moved, 0};
  if (!grants(pin, end)) return std::nullopt;
  return Levels{volts_suit(pin, *f.board, f.jumpers, end) ? 0 : 1, 0, moved, 0};
}

void print_target(std::mt19937& random) {
  const TargetWorld world = TargetMaker(random).make();
  const Fitting f = world.fitting();
  const auto begin = Clock::now();
  const auto target = cheapest_target(f);
  const double micros = std::chrono::duration<double, std::micro>(Clock::now() - begin).count();

  Levels ours(4, 0);
  std::string groups_text;
  int rows = 0;
  const auto all = groups(world.harness);
  for (std::size_t g = 0; g < all.size(); ++g) {
    std::string choices;
    int rows_here = 0;
    for (const Alternative& alternative : all[g].alternatives) {
      std::string lines;
      rows_here = 0;
      // The same order of rows in every choice: that of the first alternative's ends.
      for (const End& first : all[g].alternatives.front().ends) {
        const End& end = *std::find_if(alternative.ends.begin(), alternative.ends.end(),
                                       [&](const End& e) { return e.terminal == first.terminal; });
        for (std::size_t p = 0; p < world.harness.plugs.size(); ++p) {
          const Plug& plug = world.harness.plugs[p];
          for (std::size_t l = 0; l < plug.leads.size(); ++l) {
            if (plug.leads[l].to != end.terminal) continue;
            std::string line;
            for (int cavity = 0; cavity <= plug.positions; ++cavity) {
              const auto levels = levels_of(f, plug, static_cast<int>(p), plug.leads[l], end, cavity);
              if (!levels) continue;
              const std::string name =
                  cavity == 0 ? format("\"out{}_{}\"", p, l) : format("\"c{}_{}\"", p, cavity);
              line += format("{}[{},{}]", line.empty() ? "" : ",", name, list(*levels));
            }
            lines += format("{}[{}]", lines.empty() ? "" : ",", line);
            ++rows_here;
          }
        }
      }
      choices += format("{}{{\"levels\":{},\"lines\":[{}]}}", choices.empty() ? "" : ",",
                        list({0, 0, 0, alternative.motor_turned ? 1 : 0}), lines);
    }
    if (rows_here == 0) continue;
    rows += rows_here;
    groups_text += format("{}[{}]", groups_text.empty() ? "" : ",", choices);
    if (!target) continue;
    if (target->chosen[g].motor_turned) ++ours[3];
  }
  if (target) {
    for (std::size_t p = 0; p < world.harness.plugs.size(); ++p) {
      const Plug& plug = world.harness.plugs[p];
      for (std::size_t l = 0; l < plug.leads.size(); ++l) {
        for (const Alternative& alternative : target->chosen) {
          for (const End& end : alternative.ends) {
            if (end.terminal != *plug.leads[l].to) continue;
            const auto levels = levels_of(f, plug, static_cast<int>(p), plug.leads[l], end,
                                          target->arrangements[p].cavity[l]);
            if (!levels) {
              std::fprintf(stderr,
                           "our answer puts lead %zu of plug %zu in cavity %d, where it must not be (%s)\n",
                           l, p, target->arrangements[p].cavity[l], to_words(end).c_str());
              std::exit(1);
            }
            for (std::size_t i = 0; i < 3; ++i) ours[i] += (*levels)[i];
          }
        }
      }
    }
  }
  std::printf("{\"kind\":\"target\",\"rows\":%d,\"groups\":[%s],\"ours\":%s,\"micros\":%.1f}\n", rows,
              groups_text.c_str(), target ? list(ours).c_str() : "null", micros);
}

Levels levels_of(const PlaceCost& c) {
  return {c.unplaced, c.unknown, c.parts, c.housings, c.renamed, c.moves, c.settings, c.distance};
}

void print_place(std::mt19937& random) {
  const auto pick = [&](int most) { return std::uniform_int_distribution(0, most)(random); };
  const int headers = 2 + pick(8);
  const int rows = 1 + pick(std::min(headers, 7));
  PlacingProblem problem;
  std::vector<std::pair<int, int>> at;
  for (int h = 0; h < headers; ++h) at.emplace_back(pick(20) * 10, pick(10) * 10);
  for (int a = 0; a < headers; ++a) {
    std::vector<int> line;
    for (int b = 0; b < headers; ++b) {
      const auto [ax, ay] = at[static_cast<std::size_t>(a)];
      const auto [bx, by] = at[static_cast<std::size_t>(b)];
      line.push_back(std::abs(ax - bx) + std::abs(ay - by));
    }
    problem.distance.push_back(line);
  }
  std::string costs;
  for (int row = 0; row < rows; ++row) {
    std::vector<std::optional<PlaceCost>> line;
    std::string text;
    for (int h = 0; h < headers; ++h) {
      if (pick(2) == 0) {
        line.emplace_back();
        continue;
      }
      const PlaceCost cost{
          0, pick(3) == 0 ? 1 : 0, pick(2) == 0 ? 1 : 0, pick(2) == 0 ? 1 : 0, pick(2), pick(4), pick(1), 0};
      line.emplace_back(cost);
      text += format("{}[{},{}]", text.empty() ? "" : ",", h, list(levels_of(cost)));
    }
    costs += format("{}[{}]", costs.empty() ? "" : ",", text);
    problem.cost.push_back(line);
    const int anchor = row % 3 == 0 ? row : row - row % 3;
    problem.anchor.push_back(pick(3) == 0 ? row : anchor);
    problem.fixed_anchor.push_back(-1);
  }
  std::string distances;
  for (const auto& line : problem.distance) {
    distances += format("{}[{}]", distances.empty() ? "" : ",", join(line, ","));
  }
  const auto anchors = problem.anchor;
  const auto begin = Clock::now();
  const auto found = RankedPlacings(std::move(problem)).next();
  const double micros = std::chrono::duration<double, std::micro>(Clock::now() - begin).count();
  std::printf(
      "{\"kind\":\"place\",\"headers\":%d,\"cost\":[%s],\"distance\":[%s],\"anchor\":[%s],\"ours\":%s,"
      "\"micros\":%.1f}\n",
      headers, costs.c_str(), distances.c_str(), format("{}", join(anchors, ",")).c_str(),
      found ? list(levels_of(found->cost)).c_str() : "null", micros);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) {
    std::fprintf(stderr, "usage: optimum_cases SEED COUNT\n");
    return 2;
  }
  std::mt19937 random(static_cast<unsigned>(std::atoi(argv[1])));
  const int count = std::atoi(argv[2]);
  for (int i = 0; i < count; ++i) {
    if (i % 2 == 0)
      print_target(random);
    else
      print_place(random);
  }
  return 0;
}
