// SPDX-License-Identifier: MIT
// What is wrong in the user's files, as data. Writers (report/) turn it into text, JSON, SARIF.
//
//   diagnostics.add(Rule::UnknownElement, span, "unknown element 'hedder'")
//       .help("did you mean 'header'?");
#pragma once

#include <string>
#include <vector>

#include "diag/rule.h"
#include "diag/source.h"

namespace plugward {

/// Another place, or a fact, that belongs to a diagnostic.
struct Note {
  Span span{};  ///< may be unknown: then only the message is shown
  std::string message;
};

struct Diagnostic {
  Rule rule{};
  Severity severity = Severity::Error;
  Span span{};          ///< smallest span that shows the fault
  std::string message;  ///< starts lower case, no full stop, names in '...'
  std::vector<Note> notes;
  std::vector<std::string> helps;  ///< what to do

  Diagnostic& note(Span where, std::string text);
  Diagnostic& help(std::string text);
};

/// Everything that was found in one run.
class Diagnostics {
 public:
  Diagnostic& add(Rule, Span, std::string message);  ///< severity from the rule table
  const std::vector<Diagnostic>& all() const { return list_; }
  bool has_errors() const;
  std::size_t errors() const;
  std::size_t warnings() const;

  /// Sorts by (file, offset), stable, and drops repetitions of the same message at the same place.
  void sort();

 private:
  std::vector<Diagnostic> list_;
};

}  // namespace plugward
