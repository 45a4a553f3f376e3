// SPDX-License-Identifier: MIT
// The description of a board made from a few words: its headers, of whose pins nothing is known yet.
//
//   board_draft_text({"heron-x", "Heron X", "2026-11-25", {read_header_word("J5:xh-2.50:3:limit")}})
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace plugward {

struct HeaderDraft {
  std::string id;
  std::string family = "unknown";
  int positions = 1;
  std::string use = "spare";  ///< of a header that suits everything
};

struct BoardDraft {
  std::string id;
  std::string title;
  std::string date;  ///< of the evidence; "" none
  std::vector<HeaderDraft> headers;
};

/// "J5:xh-2.50:3" or "J5:2.5:3:fan": id, family or pitch ('?' not known), positions, and what it is for.
/// Throws UsageError.
HeaderDraft read_header_word(std::string_view word);

std::string board_draft_text(const BoardDraft&);

}  // namespace plugward
