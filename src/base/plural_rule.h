// SPDX-License-Identifier: MIT
// Which plural form a count takes, as the header of a PO file states it: an expression of C over n.
//
//   const auto rule = PluralRule::parse("nplurals=2; plural=n != 1;");
//   rule->form(1)   // 0
//   rule->form(5)   // 1
//
// Source: GNU gettext manual, "Additional functions for plural forms".
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace plugward {

class PluralRule {
 public:
  /// nullopt: not such an expression, or it gives a form that is not there for a count up to 1000.
  static std::optional<PluralRule> parse(std::string_view header_value);

  int forms() const { return forms_; }
  int form(unsigned long n) const;

 private:
  int forms_ = 2;
  std::string expression_;
};

}  // namespace plugward
