// SPDX-License-Identifier: MIT
// One machine as it stands: its board, fitted jumpers, harnesses, and which plug sits on which header.
//
//   <loom id="wren" title="..." board="../boards/heron-a4.xml">
//     <harness id="motor-x" file="x-motor.xml"/> <seat plug="motor-x/motor" header="J2"/> ...
//
//   write_file(path, loom_text(loom));   // reads back equal
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diag/source.h"
#include "model/board.h"
#include "model/evidence.h"
#include "model/harness.h"

namespace plugward {

/// Where a jumper of the board sits.
struct FittedJumper {
  std::string jumper;
  std::string rail;  ///< "": nobody has looked
  std::string evidence;
  std::string note;
  Span span{};
  Span jumper_span{};
  Span rail_span{};
};

/// A harness of the machine: a file, and the name that it has here. One file may serve several.
struct LoomHarness {
  std::string id;
  std::string file;  ///< as written, from the loom's folder
  std::string note;
  Span span{};
  Span file_span{};
};

/// Where a plug is.
enum class SeatState {
  OnHeader,
  Loose,   ///< on no header
  Unknown  ///< nobody has looked
};

struct Seat {
  std::string harness;  ///< LoomHarness::id
  std::string plug;     ///< Plug::id
  SeatState state = SeatState::Unknown;
  std::string header;  ///< OnHeader
  /// The contacts were moved since the harness file was written: leads[i] is the cavity in the file of the
  /// lead that sits in cavity i + 1 now; 0: that cavity is empty. Leads not named are out of the housing,
  /// insulated. Empty: as the file says.
  std::vector<int> leads;
  std::string evidence;
  std::string note;
  Span span{};
  Span plug_span{};
  Span header_span{};
  Span leads_span{};

  std::string plug_name() const { return harness + "/" + plug; }  ///< "motor-x/motor"
};

/// A header on which no plug of the loom sits.
struct LoomHeader {
  std::string header;
  bool taken = false;  ///< something sits on it that no file describes; false: it is free
  std::string evidence;
  std::string note;
  Span span{};
  Span header_span{};
};

struct Loom {
  std::string id;
  std::string title;
  std::string board;     ///< file as written, from the loom's folder
  std::string evidence;  ///< default
  std::string note;
  std::vector<Evidence> evidences;
  std::vector<FittedJumper> jumpers;
  std::vector<LoomHarness> harnesses;
  std::vector<Seat> seats;          ///< at most one a plug; a plug without one is where nobody has looked
  std::vector<LoomHeader> headers;  ///< at most one a header
  Span span{};
  Span id_span{};
  Span board_span{};

  const LoomHarness* harness(std::string_view id) const;
  const Seat* seat(std::string_view harness, std::string_view plug) const;
  /// The evidence called `own`, or the loom's default when `own` is ""; nullptr when there is none.
  const Evidence* evidence_of(std::string_view own) const;
};

/// What the files of a loom hold.
struct LoomFiles {
  Board board;
  /// harnesses[i] is loom.harnesses[i], as its file says but with the id that it has in the loom.
  std::vector<Harness> harnesses;
};

/// The file that a loom in `loom_path` names: "harnesses/wren.xml", "../boards/a.xml" -> "boards/a.xml".
/// Only the texts of the paths are used, not the disk.
std::string file_of_loom(std::string_view loom_path, std::string_view file);

/// The way back: how a loom in `loom_path` names the file `path`. "" when the texts do not tell: an absolute
/// loom and a relative file, or a loom in a folder above the working folder.
std::string file_for_loom(std::string_view loom_path, std::string_view path);

/// The loom as XML that reads back equal. REQUIRES: ids are ids and texts hold no control characters, as in
/// every loom that was read.
std::string loom_text(const Loom&);

}  // namespace plugward
