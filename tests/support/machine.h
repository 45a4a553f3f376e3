// SPDX-License-Identifier: MIT
// A loom and the board that its machine may move to, read from files.
//
//   Machine machine = Machine::shipped("wren-a4", "heron-m7");
//   const auto plan = plan_swap(machine.fitting(), *machine.to, {});
#pragma once

#include <memory>
#include <string>

#include "plan/loom_bench.h"
#include "reader/descriptions.h"

namespace plugward::test {

struct Machine {
  Sources sources;
  Diagnostics diagnostics;
  Catalogue catalogue;
  std::unique_ptr<Loom> loom;
  std::unique_ptr<LoomFiles> files;
  LoomBench bench;
  std::unique_ptr<Board> to;

  /// Paths of a loom file and a board file. Throws std::runtime_error when one has errors.
  Machine(const std::string& loom_path, const std::string& board_path);
  /// The same, the loom as text that stands in the folder of the shipped harnesses.
  static std::unique_ptr<Machine> of_text(const std::string& loom_text, const std::string& board_path);
  /// The shipped files of these names: "wren-a4", "heron-m7".
  static std::unique_ptr<Machine> shipped(const std::string& loom_name, const std::string& board_name);

  /// As it stands; points into this.
  Fitting fitting() const { return loom_fitting(*files, bench, catalogue); }
  int plug(const std::string& name) const;  ///< by "HARNESS/PLUG"
  int header(const std::string& id) const;  ///< of the new board
  const std::string& name(int plug) const { return bench.names[static_cast<std::size_t>(plug)]; }

 private:
  Machine();
  void read_loom(FileId);
  void read_to(const std::string& board_path);
};

/// Path of a shipped file.
std::string shipped_loom(const std::string& name);
std::string shipped_board(const std::string& name);

}  // namespace plugward::test
