// SPDX-License-Identifier: MIT
// Rules as listed in the GNU gettext manual, "Additional functions for plural forms".
#include "base/plural_rule.h"

#include <doctest/doctest.h>

#include <vector>

using namespace plugward;

TEST_CASE("rules of real languages") {
  const struct {
    const char* rule;
    std::vector<int> forms;  ///< of 0, 1, 2, 3, 5, 11, 12, 21, 101
  } cases[] = {
      {"nplurals=1; plural=0;", {0, 0, 0, 0, 0, 0, 0, 0, 0}},            // Japanese
      {"nplurals=2; plural=n != 1;", {1, 0, 1, 1, 1, 1, 1, 1, 1}},       // German
      {"nplurals=2; plural=n>1;", {0, 0, 1, 1, 1, 1, 1, 1, 1}},          // French
      {"nplurals=3; plural=n%10==1 && n%100!=11 ? 0 : n != 0 ? 1 : 2;",  // Latvian
       {2, 0, 1, 1, 1, 1, 1, 0, 0}},
      {"nplurals=3; plural=(n==1) ? 0 : (n>=2 && n<=4) ? 1 : 2;",  // Czech
       {2, 0, 1, 1, 2, 2, 2, 2, 2}},
      {"nplurals=4; plural=n%100==1 ? 0 : n%100==2 ? 1 : n%100==3 || n%100==4 ? 2 : 3;",  // Slovenian
       {3, 0, 1, 2, 3, 3, 3, 3, 0}},
  };
  const std::vector<unsigned long> counts{0, 1, 2, 3, 5, 11, 12, 21, 101};
  for (const auto& one : cases) {
    CAPTURE(one.rule);
    const auto rule = PluralRule::parse(one.rule);
    REQUIRE(rule);
    std::vector<int> forms;
    for (const unsigned long n : counts) forms.push_back(rule->form(n));
    CHECK(forms == one.forms);
  }
}

TEST_CASE("operators bind as in C") {
  const auto rule = PluralRule::parse("nplurals=6; plural=!n + 2*n%3 - (n>4)*n*0;");
  REQUIRE(rule);
  CHECK(rule->form(0) == 1);
  CHECK(rule->form(1) == 2);
  CHECK(rule->form(5) == 1);
}

TEST_CASE("what is no rule is refused") {
  for (const char* text : {"", "nplurals=2;", " plural=n;", "nplurals=2; plural=;", "nplurals=2; plural=n",
                           "nplurals=2; plural=x;", "nplurals=2; plural=(n;", "nplurals=2; plural=n ? 1;",
                           "nplurals=2; plural=1/0;", "nplurals=0; plural=0;", "nplurals=9; plural=0;",
                           "nplurals=2; plural=1 1;"}) {
    CAPTURE(text);
    CHECK_FALSE(PluralRule::parse(text));
  }
  CHECK_FALSE(
      PluralRule::parse("nplurals=2; plural=" + std::string(200, '(') + "n" + std::string(200, ')') + ";"));
}
