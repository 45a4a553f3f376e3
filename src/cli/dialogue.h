// SPDX-License-Identifier: MIT
// A description by question and answer. Each question says what answers there are; nothing but Enter is "not
// known".
//
//   CableDraft draft = ask_draft({}, ask);     // ask(question) gives the answer, without its line end
#pragma once

#include <functional>
#include <string>

#include "cli/draft.h"

namespace plugward {

/// Shows the question and waits for a line. Throws UsageError when there is none to come.
using Ask = std::function<std::string(const std::string& question)>;

/// What was said on the command line already, and is not asked.
struct Said {
  std::string kind;
  std::string seen;
  std::string housing;
  std::string view;
  std::vector<NamedValue> known;
};

/// An answer that cannot be understood is told what is wrong with it and asked again.
CableDraft ask_draft(const Said&, const Ask&);

}  // namespace plugward
