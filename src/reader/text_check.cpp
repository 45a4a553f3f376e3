// SPDX-License-Identifier: MIT
// Tested in tests/unit/reader/tree_test.cpp. The rules are those of XML 1.0, fifth edition (W3C): productions
// [2] Char, [23] XMLDecl, [66] CharRef, [68] EntityRef.
#include "reader/text_check.h"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <string>

#include "base/format.h"
#include "base/utf8.h"

namespace plugward {
namespace {

Span place(FileId file, std::size_t begin, std::size_t end) {
  return {file, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
}

/// Control characters that XML has no place for. Tab, line feed and carriage return are allowed.
constexpr bool is_control(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return (byte < 0x20) & (byte != 0x09) & (byte != 0x0A) & (byte != 0x0D);
}

/// U+FFFE and U+FFFF, the two code points that valid UTF-8 can carry and XML cannot.
std::size_t find_noncharacter(std::string_view text) {
  for (std::size_t at = text.find("\xEF\xBF"); at != text.npos; at = text.find("\xEF\xBF", at + 2)) {
    if (at + 2 < text.size() && (text[at + 2] == '\xBE' || text[at + 2] == '\xBF')) return at;
  }
  return text.npos;
}

/// Reads the pseudo-attributes of an XML declaration one after another.
class DeclarationText {
 public:
  explicit DeclarationText(std::string_view text) : text_(text) {}

  /// Skips blanks; true when there was at least one.
  bool blank() {
    const std::size_t before = at_;
    while (at_ < text_.size() && std::string_view(" \t\r\n").find(text_[at_]) != std::string_view::npos)
      ++at_;
    return at_ > before;
  }
  /// The value of `name = "value"`, or nothing (and stays where it is) when something else stands here.
  std::optional<std::string_view> value_of(std::string_view name) {
    const std::size_t before = at_;
    if (text_.substr(at_).starts_with(name)) {
      at_ += name.size();
      blank();
      if (at_ < text_.size() && text_[at_] == '=') {
        ++at_;
        blank();
        if (at_ < text_.size() && (text_[at_] == '"' || text_[at_] == '\'')) {
          const std::size_t end = text_.find(text_[at_], at_ + 1);
          if (end != text_.npos) {
            const std::string_view value = text_.substr(at_ + 1, end - at_ - 1);
            begin_ = at_ + 1;
            at_ = end + 1;
            return value;
          }
        }
      }
    }
    at_ = before;
    return std::nullopt;
  }
  bool done() const { return at_ == text_.size(); }
  std::size_t at() const { return at_; }
  std::size_t value_begin() const { return begin_; }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
  std::size_t begin_ = 0;
};

bool is_utf8_name(std::string_view name) {
  const auto same = [](char a, char b) { return (a | 0x20) == (b | 0x20); };
  const std::string_view utf8 = "utf-8";
  return name.size() == utf8.size() && std::equal(name.begin(), name.end(), utf8.begin(), same) &&
         name[3] == '-';
}

/// `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>`, the last two optional. True when fine or
/// absent.
bool check_declaration(std::string_view text, std::size_t begin, FileId file, Diagnostics& diagnostics) {
  constexpr std::string_view opening = "<?xml";
  const std::string_view body = text.substr(begin);
  if (!body.starts_with(opening) || body.size() <= opening.size()) return true;
  if (std::string_view(" \t\r\n?").find(body[opening.size()]) == std::string_view::npos) return true;
  const std::size_t end = body.find("?>");
  const auto bad = [&](Rule rule, std::size_t from, std::size_t to, std::string message) -> Diagnostic& {
    return diagnostics.add(rule, place(file, from, to), std::move(message));
  };
  if (end == body.npos) {
    bad(Rule::NotWellFormed, begin, begin + opening.size(), "the XML declaration does not end with '?>'");
    return false;
  }
  const std::size_t inside = begin + opening.size();
  DeclarationText declaration(text.substr(inside, end - opening.size()));
  declaration.blank();
  const auto version = declaration.value_of("version");
  if (!version || *version != "1.0") {
    const std::size_t from = inside + (version ? declaration.value_begin() : declaration.at());
    bad(Rule::NotWellFormed, from, version ? from + std::max<std::size_t>(version->size(), 1) : begin + end,
        "the XML declaration must begin with version=\"1.0\"")
        .help("write <?xml version=\"1.0\" encoding=\"UTF-8\"?> or leave the declaration out");
    return false;
  }
  bool gap = declaration.blank();
  if (const auto encoding = gap ? declaration.value_of("encoding") : std::nullopt) {
    if (!is_utf8_name(*encoding)) {
      const std::size_t from = inside + declaration.value_begin();
      bad(Rule::Encoding, from, from + encoding->size(),
          format("the file declares the encoding '{}'; descriptions are UTF-8", *encoding))
          .help("save the file as UTF-8 and declare encoding=\"UTF-8\"");
      return false;
    }
    gap = declaration.blank();
  }
  if (const auto alone = gap ? declaration.value_of("standalone") : std::nullopt) {
    if (*alone != "yes" && *alone != "no") {
      const std::size_t from = inside + declaration.value_begin();
      bad(Rule::NotWellFormed, from, from + std::max<std::size_t>(alone->size(), 1),
          "standalone is 'yes' or 'no'");
      return false;
    }
    declaration.blank();
  }
  if (!declaration.done()) {
    bad(Rule::NotWellFormed, inside + declaration.at(), begin + end,
        "the XML declaration holds something else")
        .help(
            "it holds version, then encoding, then standalone, each with a blank before it, and nothing "
            "more");
    return false;
  }
  return true;
}

}  // namespace

std::optional<std::size_t> check_text(const Sources& sources, FileId file, const ReaderLimits& limits,
                                      Diagnostics& diagnostics) {
  const std::string_view text = sources.file(file).text;
  const auto bad = [&](Rule rule, std::size_t begin, std::size_t end, std::string message) -> Diagnostic& {
    return diagnostics.add(rule, place(file, begin, end), std::move(message));
  };
  if (text.size() > limits.bytes) {
    bad(Rule::TooLarge, 0, 0,
        format("the file has {} bytes; at most {} are read", text.size(), limits.bytes));
    return std::nullopt;
  }
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
    bad(Rule::Encoding, 0, 2, "the file is UTF-16; descriptions are UTF-8").help("save the file as UTF-8");
    return std::nullopt;
  }
  // One plain loop that the compiler turns into vector code finds out whether there is anything to look at
  // closely.
  unsigned char controls = 0;
  unsigned char bits = 0;
  for (const char c : text) {
    controls = static_cast<unsigned char>(controls | static_cast<unsigned char>(is_control(c)));
    bits = static_cast<unsigned char>(bits | static_cast<unsigned char>(c));
  }
  const bool ascii = bits < 0x80;
  if (const auto fault = ascii ? std::nullopt : first_invalid_utf8(text)) {
    bad(Rule::Encoding, *fault, *fault + 1,
        format("byte 0x{:02X} is not UTF-8 here", static_cast<unsigned char>(text[*fault])))
        .help("save the file as UTF-8");
    return std::nullopt;
  }
  if (controls != 0) {
    const auto at =
        static_cast<std::size_t>(std::find_if(text.begin(), text.end(), is_control) - text.begin());
    bad(Rule::NotWellFormed, at, at + 1,
        format("control character U+{:04X}", static_cast<unsigned>(text[at])))
        .help("delete it");
    return std::nullopt;
  }
  if (const std::size_t at = ascii ? text.npos : find_noncharacter(text); at != text.npos) {
    bad(Rule::NotWellFormed, at, at + 3,
        text[at + 2] == '\xBE' ? "U+FFFE is not a character" : "U+FFFF is not a character")
        .help("delete it");
    return std::nullopt;
  }
  const std::size_t begin = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  if (!check_declaration(text, begin, file, diagnostics)) return std::nullopt;
  return begin;
}

std::optional<TextFault> check_references(std::string_view raw) {
  for (std::size_t at = raw.find('&'); at != raw.npos; at = raw.find('&', at + 1)) {
    const std::size_t end = raw.find(';', at);
    if (end == raw.npos || end == at + 1) {
      return TextFault{at, at + 1, "'&' begins a reference that has no end",
                       "write '&amp;' for the sign itself"};
    }
    const std::string_view whole = raw.substr(at, end - at + 1);
    const std::string_view name = raw.substr(at + 1, end - at - 1);
    if (name[0] != '#') {
      if (name == "lt" || name == "gt" || name == "amp" || name == "quot" || name == "apos") continue;
      const std::size_t stop = std::min(end + 1, at + 40);
      return TextFault{at, stop, format("unknown reference '{}'", raw.substr(at, stop - at)),
                       "XML knows &lt; &gt; &amp; &quot; &apos;; write '&amp;' for the sign '&' itself"};
    }
    const bool hex = name.size() > 1 && name[1] == 'x';
    const std::string_view digits = name.substr(hex ? 2 : 1);
    std::uint32_t code = 0;
    const auto [stop, error] =
        std::from_chars(digits.data(), digits.data() + digits.size(), code, hex ? 16 : 10);
    const bool number = error == std::errc() && stop == digits.data() + digits.size();
    const bool character = (code >= 0x20 && code < 0xD800) || (code >= 0xE000 && code <= 0x10FFFF);
    if (number && (code == 0x09 || code == 0x0A || code == 0x0D)) {
      return TextFault{at, end + 1, format("'{}' is a line break or tab; every value is one line", whole),
                       "delete it"};
    }
    if (!number || !character || code == 0xFFFE || code == 0xFFFF) {
      const std::size_t last = std::min(end + 1, at + 40);
      return TextFault{at, last, format("'{}' is no character", raw.substr(at, last - at)),
                       "write the character itself"};
    }
  }
  return std::nullopt;
}

}  // namespace plugward
