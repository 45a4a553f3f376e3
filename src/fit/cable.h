// SPDX-License-Identifier: MIT
// What a cable with two ends is: which contact of one end meets which of the other, and what the trade calls
// that. Cables may be joined end to end; the chain is judged as one.
//
//   const CableMap map = cable_map({&null_modem, &null_modem}, catalogue);
//   map.groups      {{1, 6}, {1, 6}}, {{2}, {2}}, ...   contacts of the first end, of the last
//   judge(map).kind == CableKind::Straight
//
// What is known of contacts is known by their family: the lines of the DE-9 port (TIA-574) and the pairs of
// the 8P8C plug (TIA-568). See catalogue/lines.h.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "catalogue/family.h"
#include "model/harness.h"

namespace plugward {

/// Contacts that are one net: ascending, of the first end and of the last. Contacts without a lead are in
/// none.
struct CableGroup {
  std::vector<int> a, b;
  friend bool operator==(const CableGroup&, const CableGroup&) = default;
};

struct CableMap {
  const Plug* a = nullptr;         ///< first plug of the first cable
  const Plug* b = nullptr;         ///< second plug of the last cable
  std::vector<CableGroup> groups;  ///< by their lowest contact, those of the first end first

  /// What meets contact `number` of the first end at the last.
  std::vector<int> across(int number) const;
};

/// Why a chain cannot be judged; "" when it can. A cable has two plugs, and its leads go to `cable` elements
/// or to devices of nothing but joins; the plugs that meet between two cables are of families that mate, with
/// as many positions.
std::string chain_fault(const std::vector<const Harness*>&, const Catalogue&);

/// REQUIRES: chain_fault() is "".
CableMap cable_map(const std::vector<const Harness*>&);

enum class CableKind {
  Nothing,        ///< no contact reaches the other end
  Straight,       ///< every contact to the one of its own number
  Turned,         ///< k to N + 1 - k: one end turned by 180 degrees, or the flat cable laid the other way
  RowsExchanged,  ///< two rows: 1 with 2, 3 with 4 ...
  NullModem,      ///< DE-9 to DE-9: transmitted data to received data both ways
  Crossover,      ///< 8P8C to 8P8C: 1-3, 2-6, all others straight: T568A at one end, T568B at the other
  RibbonOrder,    ///< DE-9 to two rows of five in the order of the ribbon: 1-1, 6-2, 2-3, 7-4 ...
  Other
};

/// Of a null modem: lines beside the data and the ground.
enum class Handshake { None, InPart, Full };

/// Two contacts of a plug that should share a pair of their cable and do not.
struct SplitPair {
  int cable = 0;  ///< of the chain, from 0
  bool at_b = false;
  int one = 0, other = 0;
  friend bool operator==(const SplitPair&, const SplitPair&) = default;
};

/// What a pair of contacts carries from one end to the other, where both its ends are pairs.
struct CarriedPair {
  std::pair<int, int> a, b;
  friend bool operator==(const CarriedPair&, const CarriedPair&) = default;
};

struct CableJudgement {
  CableKind kind = CableKind::Other;
  Handshake handshake = Handshake::None;  ///< of CableKind::NullModem
  std::vector<int> open_a, open_b;        ///< contacts with a lead that reach nothing at the other end
  std::vector<CableGroup> joined;         ///< groups with several contacts at one end
  std::vector<SplitPair> split;           ///< only where the cable states its pairs
  std::vector<CarriedPair> pairs;         ///< of families whose pairs are known
  bool pairs_matter = false;              ///< some plug of the chain is of a family whose pairs are known
  bool pairs_stated = false;              ///< every cable of the chain says which cores are twisted
  /// DE-9 to DE-9: contacts of the first end where an output faces an output.
  std::vector<int> clash_between_dte;  ///< ... between two DTE
  std::vector<int> clash_dte_to_dce;   ///< ... with a DTE at the first end and a DCE at the last
};

CableJudgement judge_cable(const CableMap&, const std::vector<const Harness*>&);

/// "T568A", "T568B", or "" when the colours at this plug are those of neither.
std::string wiring_scheme(const Plug&);

/// "straight", "turned end for end", "null modem" ...
std::string_view to_words(CableKind);
/// "straight", "turned", "null-modem" ...: for programs.
std::string_view to_word(CableKind);

}  // namespace plugward
