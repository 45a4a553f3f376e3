// SPDX-License-Identifier: MIT
#include "diag/diagnostic.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace plugward {

Diagnostic& Diagnostic::note(Span where, std::string text) {
  notes.push_back({where, std::move(text)});
  return *this;
}

Diagnostic& Diagnostic::help(std::string text) {
  helps.push_back(std::move(text));
  return *this;
}

Diagnostic& Diagnostics::add(Rule rule, Span span, std::string message) {
  list_.push_back({rule, rule_info(rule).severity, span, std::move(message), {}, {}});
  return list_.back();
}

std::size_t Diagnostics::errors() const {
  return static_cast<std::size_t>(std::count_if(
      list_.begin(), list_.end(), [](const Diagnostic& d) { return d.severity == Severity::Error; }));
}

std::size_t Diagnostics::warnings() const {
  return list_.size() - errors();
}

bool Diagnostics::has_errors() const {
  return errors() != 0;
}

void Diagnostics::sort() {
  const auto place = [](const Diagnostic& d) { return std::tuple(d.span.file, d.span.begin); };
  std::stable_sort(list_.begin(), list_.end(),
                   [&](const Diagnostic& a, const Diagnostic& b) { return place(a) < place(b); });
  // Repetitions share their place, so they are among the entries since the last change of place.
  std::vector<Diagnostic> kept;
  std::size_t group = 0;
  for (Diagnostic& next : list_) {
    if (!kept.empty() && place(kept.back()) != place(next)) group = kept.size();
    const bool repeated =
        std::any_of(kept.begin() + static_cast<std::ptrdiff_t>(group), kept.end(), [&](const Diagnostic& d) {
          return d.rule == next.rule && d.span == next.span && d.message == next.message;
        });
    if (!repeated) kept.push_back(std::move(next));
  }
  list_ = std::move(kept);
}

}  // namespace plugward
