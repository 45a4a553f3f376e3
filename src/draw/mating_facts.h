// SPDX-License-Identifier: MIT
// What a picture of one placement is about, gathered before anything is laid out.
#pragma once

#include <string>
#include <vector>

#include "draw/grid.h"
#include "draw/panel.h"
#include "plan/repin.h"

namespace plugward {

/// A finding that is told beside the picture, and where its flag stands.
struct Flagged {
  const Finding* finding = nullptr;
  int number = 0;          ///< 0: it belongs to no lead or pin of this picture
  std::vector<int> leads;  ///< indices into Plug::leads
  std::vector<int> pins;   ///< pin numbers
};

struct MatingFacts {
  const Fitting& fitting;
  const Advice& advice;
  const Plug& plug;
  const Header& header;
  Placement placed;
  const Family* plug_family = nullptr;  ///< nullptr: not in the catalogue
  const Family* header_family = nullptr;
  const PlugPlan* plan = nullptr;  ///< with steps; nullptr: nothing is moved in this plug
  Arrangement now, then;           ///< `then` equals `now` without a plan
  std::vector<Flagged> flagged;    ///< in the order of Advice::now.findings: worst first

  const Lead& lead(int index) const { return plug.leads[static_cast<std::size_t>(index)]; }
  /// Index of the lead in a cavity, or -1.
  static int lead_in(const Arrangement&, int cavity);
};

/// REQUIRES: 0 <= placement < fitting.placements.size().
MatingFacts gather(const Fitting&, const Advice&, int placement);

/// Signs of the flags at a lead or pin: "1", "1,3"; "" when none.
std::string flags_of_lead(const MatingFacts&, int lead);
std::string flags_of_pin(const MatingFacts&, int pin);

std::string title_of(const MatingFacts&);
/// The whole picture in words, for those who cannot see it.
std::string describe(const MatingFacts&, View);
/// Takes the flags away from findings that stand in none of the first `listed` paragraphs: a flag that
/// nothing explains is not drawn.
void lower_unlisted_flags(MatingFacts&, const std::vector<Paragraph>&, std::size_t listed);

/// "✓ suits J9.2", "stands on J9.2", "✗ wrong on J9.2", "? in doubt on J9.2", "meets no pin".
std::string meeting_words(const MatingFacts&, int lead, int cavity, bool after);

}  // namespace plugward
