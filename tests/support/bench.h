// SPDX-License-Identifier: MIT
// A board and a harness read from text, ready to be judged.
//
//   Bench bench(board_xml, harness_xml);
//   const Advice advice = advise(bench.fitting({{"control", "J9"}}, {{"JP2", "5V"}}));
#pragma once

#include <map>
#include <memory>
#include <string>

#include "model/fitting.h"
#include "reader/descriptions.h"

namespace plugward::test {

struct Bench {
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  std::unique_ptr<Board> board;
  std::unique_ptr<Harness> harness;

  /// Texts of descriptions. Throws std::runtime_error with the diagnostics when one has errors.
  Bench(const std::string& board_text, const std::string& harness_text);
  /// The shipped files of these names: "heron-m7", "kite-probe".
  static Bench shipped(const std::string& board_name, const std::string& harness_name);

  /// plug id -> header id. Throws std::runtime_error when one does not exist.
  Fitting fitting(const std::map<std::string, std::string>& at,
                  const std::map<std::string, std::string>& jumpers = {}) const;
};

}  // namespace plugward::test
