// SPDX-License-Identifier: MIT
// Tested in tests/unit/base/plural_rule_test.cpp.
//
// The expression is evaluated anew for each count by descent, one function for each rank of operators:
// "n%10==1 && n%100!=11 ? 0 : 1" is a choice over an "and" over two comparisons over two remainders. Sheets
// count a few hundred things, so no tree is kept.
#include "base/plural_rule.h"

#include <array>
#include <charconv>
#include <vector>

namespace plugward {
namespace {

constexpr int deepest = 50;  ///< of nested brackets and choices; real rules have three

class Evaluation {
 public:
  Evaluation(std::string_view text, unsigned long n) : text_(text), n_(n) {}

  std::optional<unsigned long> whole() {
    const unsigned long value = choice();
    skip();
    if (failed_ || !text_.empty()) return std::nullopt;
    return value;
  }

 private:
  struct Operator {
    std::string_view sign;
    int rank;
  };
  /// Longer signs before those that begin them; a higher rank binds tighter.
  static constexpr std::array<Operator, 13> operators{{{"||", 0},
                                                       {"&&", 1},
                                                       {"==", 2},
                                                       {"!=", 2},
                                                       {"<=", 3},
                                                       {">=", 3},
                                                       {"<", 3},
                                                       {">", 3},
                                                       {"+", 4},
                                                       {"-", 4},
                                                       {"*", 5},
                                                       {"/", 5},
                                                       {"%", 5}}};

  void skip() {
    while (!text_.empty() && (text_.front() == ' ' || text_.front() == '\t')) text_.remove_prefix(1);
  }
  bool take(std::string_view sign) {
    skip();
    if (!text_.starts_with(sign)) return false;
    text_.remove_prefix(sign.size());
    return true;
  }
  unsigned long fail() {
    failed_ = true;
    text_ = {};
    return 0;
  }

  unsigned long choice() {
    if (++depth_ > deepest) return fail();
    const unsigned long condition = binary(0);
    unsigned long value = condition;
    if (take("?")) {
      const unsigned long yes = choice();
      if (!take(":")) return fail();
      const unsigned long no = choice();
      value = condition != 0 ? yes : no;
    }
    --depth_;
    return value;
  }

  const Operator* next(int rank) {
    skip();
    for (const Operator& one : operators) {
      if (text_.starts_with(one.sign)) return one.rank == rank ? &one : nullptr;
    }
    return nullptr;
  }

  unsigned long binary(int rank) {
    if (rank > 5) return unary();
    unsigned long left = binary(rank + 1);
    while (const Operator* sign = next(rank)) {
      text_.remove_prefix(sign->sign.size());
      left = joined(sign->sign, left, binary(rank + 1));
    }
    return left;
  }

  unsigned long joined(std::string_view sign, unsigned long a, unsigned long b) {
    if (sign == "||") return (a != 0 || b != 0) ? 1 : 0;
    if (sign == "&&") return (a != 0 && b != 0) ? 1 : 0;
    if (sign == "==") return a == b ? 1 : 0;
    if (sign == "!=") return a != b ? 1 : 0;
    if (sign == "<=") return a <= b ? 1 : 0;
    if (sign == ">=") return a >= b ? 1 : 0;
    if (sign == "<") return a < b ? 1 : 0;
    if (sign == ">") return a > b ? 1 : 0;
    if (sign == "+") return a + b;
    if (sign == "-") return a - b;
    if (sign == "*") return a * b;
    if (b == 0) return fail();
    return sign == "/" ? a / b : a % b;
  }

  unsigned long unary() {
    if (take("!")) return unary() == 0 ? 1 : 0;
    if (take("(")) {
      const unsigned long value = choice();
      return take(")") ? value : fail();
    }
    if (take("n")) return n_;
    unsigned long value = 0;
    const auto [end, error] = std::from_chars(text_.data(), text_.data() + text_.size(), value);
    if (error != std::errc{}) return fail();
    text_.remove_prefix(static_cast<std::size_t>(end - text_.data()));
    return value;
  }

  std::string_view text_;
  unsigned long n_;
  int depth_ = 0;
  bool failed_ = false;
};

/// What stands between `name` and the next semicolon.
std::optional<std::string_view> value_of(std::string_view text, std::string_view name) {
  const std::size_t at = text.find(name);
  if (at == std::string_view::npos) return std::nullopt;
  const std::string_view rest = text.substr(at + name.size());
  return rest.substr(0, rest.find(';'));
}

}  // namespace

std::optional<PluralRule> PluralRule::parse(std::string_view text) {
  const auto forms = value_of(text, "nplurals=");
  const auto expression = value_of(text, " plural=");
  if (!forms || !expression) return std::nullopt;
  PluralRule rule;
  const auto [end, error] = std::from_chars(forms->data(), forms->data() + forms->size(), rule.forms_);
  if (error != std::errc{} || end != forms->data() + forms->size() || rule.forms_ < 1 || rule.forms_ > 6)
    return std::nullopt;
  rule.expression_ = *expression;
  for (unsigned long n = 0; n <= 1000; ++n) {
    const auto form = Evaluation(rule.expression_, n).whole();
    if (!form || *form >= static_cast<unsigned long>(rule.forms_)) return std::nullopt;
  }
  return rule;
}

int PluralRule::form(unsigned long n) const {
  const auto form = Evaluation(expression_, n).whole();
  return form && *form < static_cast<unsigned long>(forms_) ? static_cast<int>(*form) : 0;
}

}  // namespace plugward
