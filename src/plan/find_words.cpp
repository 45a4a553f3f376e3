// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/find_test.cpp.
#include "plan/find_words.h"

#include <algorithm>
#include <functional>
#include <vector>

#include "base/counted.h"
#include "base/format.h"
#include "judge/words.h"
#include "plan/place_judge.h"

namespace plugward {
namespace {

constexpr std::size_t most_positions = 64;  ///< combinations of jumper positions that are tried
constexpr std::size_t most_told = 4;        ///< of which so many are told

std::string with_more_parts(const std::string& first, std::size_t all) {
  return all < 2 ? first : count_of(all - 1, "{}, and {} part more", "{}, and {} parts more", first, all - 1);
}

std::string with_more_things(const std::string& first, std::size_t all) {
  return all < 2 ? first
                 : count_of(all - 1, "{}, and {} thing more", "{}, and {} things more", first, all - 1);
}

using Positions = std::map<std::string, std::string>;

/// Every combination of positions of the jumpers that feed these headers and are not stated; nothing when
/// there is none to choose, or too many.
std::vector<Positions> positions_of(const Fitting& fitting) {
  std::vector<const Jumper*> jumpers;
  for (const Placement& p : fitting.placements) {
    for (const Pin& pin : header_of(fitting, p.header).pins) {
      const Jumper* jumper = pin.jumper.empty() ? nullptr : fitting.board->jumper(pin.jumper);
      if (jumper != nullptr && !fitting.jumpers.contains(jumper->id) &&
          std::find(jumpers.begin(), jumpers.end(), jumper) == jumpers.end())
        jumpers.push_back(jumper);
    }
  }
  if (jumpers.empty()) return {};
  std::vector<Positions> all{{}};
  for (const Jumper* jumper : jumpers) {
    if (all.size() * jumper->rails.size() > most_positions) return {};
    std::vector<Positions> more;
    for (const Positions& base : all) {
      for (const std::string& rail : jumper->rails) {
        more.push_back(base);
        more.back()[jumper->id] = rail;
      }
    }
    all = std::move(more);
  }
  return all;
}

/// "JP2 at 5V", "JP2 at 5V and JP4 at 12V".
std::string say(const Positions& positions) {
  std::vector<std::string> words;
  for (const auto& [jumper, rail] : positions) words.push_back(format("{} at {}", jumper, rail));
  return format("{}", join(words, " and "));
}

}  // namespace

std::string say(const Advice& advice) {
  const PlaceCost cost = cost_of(advice);
  const std::string setting =
      cost.settings == 0
          ? ""
          : format("; then {} in the firmware", counted(cost.settings, "{} setting", "{} settings"));
  switch (advice.verdict) {
    case Verdict::Mate:
      return "plug it in as it is" + setting;
    case Verdict::Repin:
      return format("move {} first{}", counted(advice.moved, "{} contact", "{} contacts"), setting);
    case Verdict::Adapt: {
      const std::string part =
          advice.parts.empty() ? "a part" : with_more_parts(advice.parts.front(), advice.parts.size());
      return format(
          "add {}{}", part,
          advice.moved == 0 ? "" : format("; move {}", counted(advice.moved, "{} contact", "{} contacts")));
    }
    case Verdict::Measure:
      if (advice.measurements.empty()) return "something must be known first";
      return "find out first " +
             with_more_things(advice.measurements.front().settles, advice.measurements.size());
    case Verdict::Apart:
      break;
  }
  return "not at all";
}

std::string say_in_numbers(Verdict verdict, const PlaceCost& cost) {
  if (verdict == Verdict::Measure)
    return format("find out first {}", counted(cost.unknown, "{} thing", "{} things"));
  std::vector<std::string> what;
  if (cost.parts > 0) what.push_back("add " + counted(cost.parts, "{} part", "{} parts"));
  if (cost.housings > 0) what.push_back("fit " + counted(cost.housings, "{} new housing", "{} new housings"));
  if (cost.moves > 0) what.push_back("move " + counted(cost.moves, "{} contact", "{} contacts"));
  if (cost.settings > 0)
    what.push_back(counted(cost.settings, "{} setting", "{} settings") + " in the firmware");
  return what.empty() ? "plug them in as they are" : format("{}", join(what, ", "));
}

std::string find_out(const Header& header, const std::vector<int>& pins) {
  return with_more_things(format("find out first what {}.{} is", header.id, pins.front()), pins.size());
}

std::string outcomes_by_position(Fitting fitting, const AdviseOptions& how) {
  const std::vector<Positions> positions = positions_of(fitting);
  const Positions stated = fitting.jumpers;
  std::vector<std::string> outcomes;
  for (const Positions& one : positions) {
    fitting.jumpers = stated;
    fitting.jumpers.insert(one.begin(), one.end());
    outcomes.push_back(say(advise(fitting, how)));
  }
  if (std::adjacent_find(outcomes.begin(), outcomes.end(), std::not_equal_to<>()) == outcomes.end())
    return "";
  std::vector<std::string> told;
  for (std::size_t i = 0; i < positions.size() && told.size() < most_told; ++i) {
    if (positions.size() > 2 && outcomes[i] == "not at all") continue;
    told.push_back(format("{}: {}", say(positions[i]), outcomes[i]));
  }
  return format("{}", join(told, "; "));
}

}  // namespace plugward
