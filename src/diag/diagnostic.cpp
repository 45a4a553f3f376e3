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

std::size_t Diagnostics::warnings() const { return list_.size() - errors(); }

bool Diagnostics::has_errors() const { return errors() != 0; }

void Diagnostics::sort() {
  const auto place = [](const Diagnostic& d) { return std::tuple(d.span.file, d.span.begin); };
  std::stable_sort(list_.begin(), list_.end(),
                   [&](const Diagnostic& a, const Diagnostic& b) { return place(a) < place(b); });
  const auto same = [](const Diagnostic& a, const Diagnostic& b) {
    return a.rule == b.rule && a.span == b.span && a.message == b.message;
  };
  list_.erase(std::unique(list_.begin(), list_.end(), same), list_.end());
}

}  // namespace plugward
