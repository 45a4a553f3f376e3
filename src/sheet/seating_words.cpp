// SPDX-License-Identifier: MIT
// Tested in tests/unit/report/advice_text_test.cpp.
#include "sheet/seating_words.h"

#include <utility>

#include "base/format.h"
#include "sheet/words.h"

namespace plugward {
namespace {

/// REQUIRES: the seating does harm.
std::string seating_line(const Fitting& fitting, const SeatingJudgement& wrong) {
  const std::string line = format("plug '{}' {}", plug_at(fitting, wrong.plug).id, wrong.seating.words);
  return format("{}: {} [{}]", line, wrong.findings.front().message,
                rule_info(wrong.findings.front().rule).id);
}

/// The seatings of one weight in one row, without their findings.
std::string seatings_in_short(const Fitting& fitting, const std::vector<SeatingJudgement>& wrong,
                              Weight weight) {
  std::vector<std::string> words;
  for (const SeatingJudgement& one : wrong) {
    if (one.worst != weight) continue;
    words.push_back(format("'{}' {}", plug_at(fitting, one.plug).id, one.seating.words));
  }
  return format("{}", join(words, "; "));
}

}  // namespace

std::string_view wrong_seatings_heading(const Advice& advice) {
  return advice.plan ? tr("If it then goes on wrong") : tr("If it goes on wrong");
}

std::vector<SeatingLine> seating_lines(const Fitting& fitting, const std::vector<SeatingJudgement>& wrong) {
  std::vector<SeatingLine> lines;
  for (const SeatingJudgement& one : wrong) {
    if (one.worst == Weight::Harm) lines.push_back({one.worst, seating_line(fitting, one)});
  }
  for (const auto& [weight, says] : {std::pair(Weight::Fault, later("does not work: {}")),
                                     std::pair(Weight::Doubt, later("not known: {}")),
                                     std::pair(Weight::Note, later("no harm that the files tell of: {}"))}) {
    const std::string words = seatings_in_short(fitting, wrong, weight);
    if (!words.empty()) lines.push_back({weight, format_later(says, words)});
  }
  return lines;
}

}  // namespace plugward
