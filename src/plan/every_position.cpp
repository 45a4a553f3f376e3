// SPDX-License-Identifier: MIT
// Tested in tests/unit/plan/every_position_test.cpp.
#include "plan/every_position.h"

#include <algorithm>
#include <vector>

#include "base/format.h"
#include "judge/words.h"

namespace plugward {
namespace {

constexpr std::size_t most_positions = 16;  ///< each is a verdict of its own

std::vector<const Jumper*> open_jumpers(const Fitting& fitting) {
  std::vector<const Jumper*> open;
  for (const Placement& placement : fitting.placements) {
    for (const Pin& pin : header_of(fitting, placement.header).pins) {
      const Jumper* jumper = fitting.board->jumper(pin.jumper);
      if (jumper == nullptr || fitting.jumpers.contains(jumper->id)) continue;
      if (std::find(open.begin(), open.end(), jumper) == open.end()) open.push_back(jumper);
    }
  }
  return open;
}

std::vector<Fitting> every_position(const Fitting& fitting, const std::vector<const Jumper*>& open) {
  std::vector<Fitting> all{fitting};
  for (const Jumper* jumper : open) {
    std::vector<Fitting> more;
    for (const Fitting& base : all) {
      for (const std::string& rail : jumper->rails) {
        more.push_back(base);
        more.back().jumpers[jumper->id] = rail;
      }
    }
    all = std::move(more);
    if (all.size() > most_positions) return {};
  }
  return all;
}

}  // namespace

std::optional<std::string> apart_in_every_position(const Fitting& fitting, const std::string& names,
                                                   const AdviseOptions& options) {
  const std::vector<const Jumper*> open = open_jumpers(fitting);
  if (open.empty()) return std::nullopt;
  const std::vector<Fitting> positions = every_position(fitting, open);
  if (positions.empty()) return std::nullopt;
  AdviseOptions in_short{.wrong_seatings = false, .softer = false, .cures = false};
  in_short.now = options.now;
  in_short.wirings = options.wirings;
  bool harm = false;
  for (const Fitting& stated : positions) {
    const Advice advice = advise(stated, in_short);
    if (advice.verdict != Verdict::Apart) return std::nullopt;
    harm = harm || advice.now.has(Weight::Harm);
  }
  std::vector<std::string> jumpers;
  for (const Jumper* jumper : open) jumpers.push_back(jumper_name(*jumper));
  return format("{}: do not join these; {}, wherever {} sits, and no move of contacts or added part cures it",
                names, harm ? tr("it can damage or hurt") : tr("it will not work"),
                join(jumpers, tr(" and ")));
}

}  // namespace plugward
