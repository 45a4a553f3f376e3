// SPDX-License-Identifier: MIT
// Tested in tests/unit/base/language_test.cpp; msgfmt checks the shipped files in tests/words.
#include "base/language.h"

#include <algorithm>
#include <array>

#include "base/format.h"

namespace plugward {
namespace {

std::string key_of(std::string_view context, std::string_view english) {
  std::string key(context);
  if (!context.empty()) key += '\4';
  return key += english;
}

/// Only texts with a letter outside their places are a language's; the others are layout.
bool has_words(std::string_view text) {
  int depth = 0;
  for (const char c : text) {
    if (c == '{') ++depth;
    if (c == '}') --depth;
    if (depth == 0 && ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'))) return true;
  }
  return false;
}

}  // namespace

const std::vector<std::string>* Language::forms_of(std::string_view context, std::string_view english) const {
  if (!has_words(english)) return nullptr;
  const auto found = context.empty() ? texts_.find(english) : texts_.find(key_of(context, english));
  if (found != texts_.end()) return &found->second;
  if (missing_) missing_(context, english);
  return nullptr;
}

const std::string* Language::find(std::string_view context, std::string_view english) const {
  const auto* forms = forms_of(context, english);
  return forms == nullptr ? nullptr : &forms->front();
}

const std::string* Language::find_count(unsigned long n, std::string_view one) const {
  const auto* forms = forms_of("", one);
  if (forms == nullptr) return nullptr;
  const auto form = static_cast<std::size_t>(plural_.form(n));
  return form < forms->size() ? &(*forms)[form] : nullptr;
}

std::optional<std::vector<std::string>> places_of(std::string_view text) {
  std::vector<std::string> places;
  int automatic = 0;
  bool numbered = false;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] != '{' && text[at] != '}') continue;
    if (at + 1 < text.size() && text[at + 1] == text[at]) {
      ++at;  // "{{" stands for a brace
      continue;
    }
    const std::size_t end = text.find('}', at);
    if (text[at] == '}' || end == std::string_view::npos) return std::nullopt;
    const std::string_view inside = text.substr(at + 1, end - at - 1);
    const std::size_t colon = std::min(inside.find(':'), inside.size());
    std::string number(inside.substr(0, colon));
    if (!std::all_of(number.begin(), number.end(), [](char c) { return c >= '0' && c <= '9'; }))
      return std::nullopt;
    if (number.empty()) {
      number = std::to_string(automatic++);
    } else {
      numbered = true;
    }
    places.push_back(number + std::string(inside.substr(colon)));
    at = end;
  }
  if (numbered && automatic > 0) return std::nullopt;  // the formatting library takes one way or the other
  std::sort(places.begin(), places.end());
  return places;
}

/// One line at a time; an entry is taken in when the next one begins.
class PoParser {
 public:
  PoReading read(std::string_view text) {
    while (!text.empty()) {
      const std::size_t end = std::min(text.find('\n'), text.size());
      ++line_;
      line(text.substr(0, end));
      text.remove_prefix(std::min(end + 1, text.size()));
    }
    finish();
    if (!header_) fault(1, "no header: an entry with an empty msgid that names Language and Plural-Forms");
    return std::move(result_);
  }

 private:
  struct Entry {
    int line = 0;
    std::optional<std::string> context, english, plural;
    std::vector<std::string> said;
    bool fuzzy = false;
  };

  void fault(int line, std::string message) { result_.faults.push_back({line, std::move(message)}); }

  void line(std::string_view text) {
    if (text.ends_with('\r')) text.remove_suffix(1);
    if (text.empty()) return;
    if (text.front() == '#') return comment(text);
    if (text.front() == '"') return more(text);
    for (const std::string_view word : {"msgctxt", "msgid_plural", "msgid", "msgstr"}) {
      if (text.starts_with(word)) return keyword(word, text.substr(word.size()));
    }
    fault(line_, "this line begins with none of #, \", msgctxt, msgid, msgid_plural, msgstr");
  }

  void comment(std::string_view text) {
    if (!entry_.said.empty()) finish();
    if (text.starts_with("#,") && text.find("fuzzy") != std::string_view::npos) entry_.fuzzy = true;
  }

  void keyword(std::string_view word, std::string_view rest) {
    if (word != "msgstr" && !entry_.said.empty()) finish();
    std::optional<std::string>* into = word == "msgctxt"        ? &entry_.context
                                       : word == "msgid"        ? &entry_.english
                                       : word == "msgid_plural" ? &entry_.plural
                                                                : nullptr;
    if (into == nullptr) {
      if (!entry_.english) return fault(line_, "msgstr without a msgid before it");
      const std::string index = entry_.plural ? verbatim("[{}]", entry_.said.size()) : "";
      if (!rest.starts_with(index)) return fault(line_, verbatim("'msgstr{}' is due here", index));
      rest.remove_prefix(index.size());
      target_ = &entry_.said.emplace_back();
    } else {
      if (*into) return fault(line_, verbatim("a second {} in one entry", word));
      target_ = &into->emplace();
      if (word == "msgid") entry_.line = line_;
    }
    if (rest.empty() || rest.front() != ' ') return fault(line_, "a space is due before the text");
    more(rest.substr(1));
  }

  void more(std::string_view quoted) {
    if (target_ == nullptr) return fault(line_, "a text that belongs to nothing");
    if (quoted.size() < 2 || quoted.front() != '"' || quoted.back() != '"')
      return fault(line_, "the text does not stand in one pair of quotes");
    quoted = quoted.substr(1, quoted.size() - 2);
    static constexpr std::array<std::pair<char, char>, 4> escapes{
        {{'n', '\n'}, {'t', '\t'}, {'"', '"'}, {'\\', '\\'}}};
    for (std::size_t at = 0; at < quoted.size(); ++at) {
      if (quoted[at] == '"') return fault(line_, "a quote inside the text is written \\\"");
      if (quoted[at] != '\\') {
        *target_ += quoted[at];
        continue;
      }
      const char letter = ++at < quoted.size() ? quoted[at] : '\0';
      const auto found = std::find_if(escapes.begin(), escapes.end(),
                                      [letter](const auto& escape) { return escape.first == letter; });
      if (found == escapes.end()) return fault(line_, "of the escapes only \\n \\t \\\" \\\\ are taken");
      *target_ += found->second;
    }
  }

  /// "de" of "Language: de\n".
  static std::string field(const std::string& header, std::string_view name) {
    const std::size_t at = header.find(name);
    if (at == std::string::npos) return "";
    const std::size_t from = at + name.size();
    return header.substr(from, header.find('\n', from) - from);
  }

  void take_header(const Entry& entry) {
    header_ = true;
    if (entry.said.empty()) return fault(entry.line, "the header has no msgstr");
    const std::string& text = entry.said.front();
    result_.language.code_ = field(text, "Language: ");
    if (result_.language.code_.empty()) fault(entry.line, "the header names no Language");
    const auto rule = PluralRule::parse(" " + field(text, "Plural-Forms: "));
    if (!rule) return fault(entry.line, "the header's Plural-Forms is missing or no rule");
    result_.language.plural_ = *rule;
  }

  void finish() {
    Entry entry = std::move(entry_);
    entry_ = {};
    target_ = nullptr;
    if (!entry.english) return;
    if (entry.english->empty() && !entry.context) return take_header(entry);
    if (!header_) return fault(entry.line, "an entry before the header");
    const std::size_t due = entry.plural ? static_cast<std::size_t>(result_.language.plural_.forms()) : 1;
    if (entry.said.size() != due)
      return fault(entry.line, verbatim("{} of msgstr where {} are due", entry.said.size(), due));
    std::string key = key_of(entry.context.value_or(""), *entry.english);
    if (!seen_.emplace(key, entry.line).second)
      return fault(entry.line, verbatim("the same text stands in line {}", seen_.at(key)));
    if (entry.fuzzy) return;
    for (const std::string& said : entry.said) {
      if (said.empty()) return;
      // "measure once" beside "measure {} times": a form takes the places of either.
      if (places_of(said) != places_of(*entry.english) &&
          !(entry.plural && places_of(said) == places_of(*entry.plural)))
        return fault(entry.line, "the translation does not take exactly the places {...} of its text");
    }
    result_.language.texts_.emplace(std::move(key), std::move(entry.said));
  }

  PoReading result_;
  Entry entry_;
  std::string* target_ = nullptr;
  std::unordered_map<std::string, int> seen_;
  int line_ = 0;
  bool header_ = false;
};

PoReading parse_po(std::string_view text) {
  return PoParser().read(text);
}

}  // namespace plugward
