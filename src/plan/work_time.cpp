// SPDX-License-Identifier: MIT
// Idea: minutes per thing, summed. The figures are judgement; one is known of the trade (common practice, no
// source): a dozen plugs that all go straight over take a practised person less than 10 minutes and a
// beginner 15 to 20. So a plug takes 0.6 and 1.4 minutes, off and on with its tag. All else is set beside
// that, and waiting (for lamps, for heat, for a firmware to load) and calibration are not counted.
//
//   12 plugs straight over      7 min practised, 17 for the first time
//   ... 4 contacts to move      plus 8, 20
//
// Tested in tests/unit/plan/work_test.cpp.
#include <cmath>
#include <set>

#include "base/counted.h"
#include "plan/work.h"

namespace plugward {
namespace {

struct Each {
  double practised, first_time;
};
constexpr Each plug_over{0.6, 1.4};
constexpr Each jumper_set{0.3, 1.0};
constexpr Each contact_moved{2.0, 5.0};
constexpr Each part_built_in{10.0, 25.0};
constexpr Each board_changed{10.0, 20.0};  ///< old one out, new one in, supply's leads
constexpr Each reading_taken{0.15, 0.4};
constexpr Each look_taken{0.1, 0.2};
constexpr Each power_check{0.5, 1.5};

void add(std::vector<TimeRow>& rows, std::size_t count, std::string what, Each each) {
  if (count == 0) return;
  const double n = static_cast<double>(count);
  rows.push_back({std::move(what), n * each.practised, n * each.first_time});
}

void sum(const std::vector<TimeRow>& rows, int& practised, int& first_time) {
  double a = 0, b = 0;
  for (const TimeRow& row : rows) {
    a += row.practised;
    b += row.first_time;
  }
  practised = static_cast<int>(std::lround(a));
  first_time = static_cast<int>(std::lround(b));
}

}  // namespace

WorkTime work_time(const SwapPlan& plan, const std::vector<WorkStep>& steps) {
  std::size_t over = 0, contacts = 0, parts = 0, jumpers = 0, readings = 0, looks = 0, checks = 0;
  for (const PlugTransfer& t : plan.plugs) {
    if (!t.goes_over()) continue;
    ++over;
    contacts += static_cast<std::size_t>(t.moves.extractions);
    parts += t.parts.size();
  }
  for (const JumperChoice& choice : plan.jumpers) jumpers += choice.rail.empty() ? 0u : 1u;
  for (const WorkStep& step : steps) {
    for (const ExpectedReading& r : step.readings) ++(r.kind == ReadingKind::Look ? looks : readings);
    if (step.stage == WorkStage::PowerOn) ++checks;
  }
  WorkTime time;
  add(time.rows, over, counted(over, "{} plug over", "{} plugs over"), plug_over);
  add(time.rows, jumpers, counted(jumpers, "{} jumper", "{} jumpers"), jumper_set);
  add(time.rows, contacts, counted(contacts, "{} contact to move", "{} contacts to move"), contact_moved);
  add(time.rows, parts, counted(parts, "{} part to add", "{} parts to add"), part_built_in);
  time.check_rows.push_back(
      {tr("board out, the other one in"), board_changed.practised, board_changed.first_time});
  add(time.check_rows, looks, counted(looks, "{} look at colours", "{} looks at colours"), look_taken);
  add(time.check_rows, readings, counted(readings, "{} reading of the meter", "{} readings of the meter"),
      reading_taken);
  add(time.check_rows, checks, counted(checks, "{} check with power", "{} checks with power"), power_check);
  sum(time.rows, time.practised, time.first_time);
  sum(time.check_rows, time.practised_checks, time.first_time_checks);
  return time;
}

}  // namespace plugward
