// SPDX-License-Identifier: MIT
// The answer of `check` for people. The verdict stands first; what to do before what else there is to know.
#pragma once

#include <string>

#include "diag/source.h"
#include "plan/repin.h"
#include "report/layout.h"

namespace plugward {

struct AdviceTextOptions {
  TextOptions text{};
  std::string repin_command;  ///< what prints the whole procedure: "plugward repin heron-m7.xml ..."
};

std::string advice_text(const Sources&, const Fitting&, const Advice&, const AdviceTextOptions& = {});

/// "MATE: " and the summary in one sentence: the first lines of every answer.
void write_verdict(Paper&, const Advice&);
/// Which harness on which board, which plug on which header, which jumpers were stated.
void write_subject(Paper&, const Fitting&);
/// Settings for the firmware; nothing when there are none.
void write_settings(Paper&, const std::vector<Setting>&);
/// What the other ways to sit on a header would do, one line each; or the harmful ones and how many others.
void write_wrong_seatings(Paper&, const Fitting&, const Advice&, bool harmful_only);
/// What to add before the two may meet; nothing when there is nothing.
void write_softer(Paper&, const std::vector<std::string>&);
void write_parts(Paper&, const std::vector<std::string>&);
/// Measurements, cheapest first.
void write_measurements(Paper&, const std::vector<Measurement>&);
/// Power off, and what plugward cannot see: the last lines of every answer.
void write_limits(Paper&);

}  // namespace plugward
