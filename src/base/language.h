// SPDX-License-Identifier: MIT
// The texts of one language: a PO file of GNU gettext, whose msgid is the English text.
//
//   PoReading read = parse_po(text);
//   for (const PoFault& fault : read.faults) ... fault.line, fault.message
//   read.language.find("", "wrong seatings")              // nullptr: not translated
//   read.language.find_count(3, "{} plug")
//
// Read strictly: what is not a PO file is a fault with its line, and so is a translation that does not take
// exactly the places ("{}", "{0:.2f}") of its English text. Fuzzy, obsolete and empty entries count as not
// translated, as msgfmt takes them. Source of the format: GNU gettext manual, "The Format of PO Files".
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/plural_rule.h"

namespace plugward {

class Language {
 public:
  /// Told of every text that is asked for and not there, with its context; set by tests.
  using Missing = std::function<void(std::string_view context, std::string_view english)>;

  const std::string& code() const { return code_; }  ///< BCP 47, of the header's "Language"
  std::size_t size() const { return texts_.size(); }

  const std::string* find(std::string_view context, std::string_view english) const;
  const std::string* find_count(unsigned long n, std::string_view one) const;

  void on_missing(Missing missing) { missing_ = std::move(missing); }

 private:
  friend class PoParser;

  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
  };

  const std::vector<std::string>* forms_of(std::string_view context, std::string_view english) const;

  std::string code_ = "en";
  PluralRule plural_;
  /// Key: the English text, behind its context and U+0004 where it has one.
  std::unordered_map<std::string, std::vector<std::string>, Hash, std::equal_to<>> texts_;
  Missing missing_;
};

struct PoFault {
  int line = 0;
  std::string message;
};

struct PoReading {
  Language language;
  std::vector<PoFault> faults;
};

PoReading parse_po(std::string_view text);

/// The places of a text by number, each with how it is written: "{} of {:.1f}" gives "0", "1:.1f". Sorted;
/// nullopt: not a text that can be filled in.
std::optional<std::vector<std::string>> places_of(std::string_view text);

}  // namespace plugward
