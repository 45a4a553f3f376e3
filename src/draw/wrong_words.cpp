// SPDX-License-Identifier: MIT
// Tested in mating_facts_test.cpp.
#include "draw/wrong_words.h"

#include <algorithm>

#include "base/format.h"
#include "judge/words.h"

namespace plugward {
namespace {

std::vector<std::string> seatings_of(const MatingFacts& facts, Weight weight) {
  std::vector<std::string> list;
  if (facts.advice.verdict == Verdict::Apart) return list;
  for (const SeatingJudgement& wrong : facts.advice.wrong) {
    if (wrong.plug == facts.placed.plug && wrong.worst == weight) list.push_back(wrong.seating.words);
  }
  return list;
}

}  // namespace

std::string mind_heading(const MatingFacts& facts) {
  const std::string mind = tr("Mind how it goes on");
  switch (facts.advice.verdict) {
    case Verdict::Repin:
      return mind + tr(", after the moves");
    case Verdict::Adapt:
      return mind + (facts.advice.plan ? tr(", with the parts built in") : tr("; judged as it is now"));
    case Verdict::Measure:
      return mind + tr("; judged as it is now");
    case Verdict::Mate:
    case Verdict::Apart:
      break;
  }
  return mind;
}

std::vector<std::string> harmful_seatings(const MatingFacts& facts) {
  std::vector<std::string> lines;
  for (const std::string& seating : seatings_of(facts, Weight::Harm))
    lines.push_back(format("{}: {}", seating, tr(to_word(Weight::Harm))));
  return lines;
}

std::vector<std::string> other_wrong_seatings(const MatingFacts& facts, std::size_t told) {
  std::vector<std::string> harms = seatings_of(facts, Weight::Harm), lines;
  harms.erase(harms.begin(), harms.begin() + static_cast<std::ptrdiff_t>(std::min(told, harms.size())));
  const auto add = [&](std::string_view says, const std::vector<std::string>& seatings) {
    if (!seatings.empty()) lines.push_back(format("{}: {}", says, join(seatings, "; ")));
  };
  add(tr("harm as well"), harms);
  add(tr("does not work"), seatings_of(facts, Weight::Fault));
  add(tr("not known"), seatings_of(facts, Weight::Doubt));
  return lines;
}

}  // namespace plugward
