// SPDX-License-Identifier: MIT
// Tested through board_reader_test.cpp and the broken files in tests/unit/reader/broken.
#include "reader/attributes.h"

#include <algorithm>
#include <charconv>
#include <vector>

#include "base/format.h"
#include "reader/quick_quantity.h"

namespace plugward {
namespace {

constexpr std::size_t longest_id = 40;

constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
constexpr bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// The characters of an id and where they may stand: 2 anywhere, 1 not first.
constexpr auto id_characters = [] {
  std::array<unsigned char, 256> table{};
  for (std::size_t c = 0; c < table.size(); ++c)
    table[c] = is_letter(static_cast<char>(c)) || is_digit(static_cast<char>(c)) ? 2 : 0;
  for (const char c : std::string_view("-_.+")) table[static_cast<unsigned char>(c)] = 1;
  return table;
}();

bool is_word(std::string_view text) {
  const auto fine = [](char c) { return (c >= 'a' && c <= 'z') || is_digit(c); };
  return !text.empty() && text.size() <= longest_id && fine(text[0]) &&
         std::all_of(text.begin(), text.end(), [&](char c) { return fine(c) || c == '-'; });
}

/// The whole of `text` as a number of type T.
template <class T>
std::optional<T> whole(std::string_view text) {
  T value{};
  const auto [stop, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || stop != text.data() + text.size()) return std::nullopt;
  return value;
}

bool is_day(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (const std::size_t i : {0U, 1U, 2U, 3U, 5U, 6U, 8U, 9U}) {
    if (!is_digit(text[i])) return false;
  }
  const int year = whole<int>(text.substr(0, 4)).value_or(0);
  const int month = whole<int>(text.substr(5, 2)).value_or(0);
  const int day = whole<int>(text.substr(8, 2)).value_or(0);
  if (year < 1900 || year > 2199 || month < 1 || month > 12 || day < 1) return false;
  constexpr std::array days{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  return day <= days[static_cast<std::size_t>(month) - 1] + (leap && month == 2 ? 1 : 0);
}

}  // namespace

bool is_id(std::string_view text) {
  const auto kind = [](char c) { return id_characters[static_cast<unsigned char>(c)]; };
  if (text.empty() || text.size() > longest_id || kind(text[0]) != 2) return false;
  for (const char c : text) {
    if (kind(c) == 0) return false;
  }
  return true;
}

std::string key_list(const KeySet& keys) {
  std::string text;
  std::size_t left = 0;
  for (std::size_t i = 0; i < key_count; ++i) left += keys.has(static_cast<Key>(i)) ? 1U : 0U;
  for (std::size_t i = 0; i < key_count; ++i) {
    if (!keys.has(static_cast<Key>(i))) continue;
    text += format("'{}'", key_names[i]);
    --left;
    if (left > 0) text += left == 1 ? " and " : ", ";
  }
  return text;
}

std::string key_examples(const KeySet& keys) {
  std::string text;
  for (std::size_t i = 0; i < key_count; ++i) {
    const Key key = static_cast<Key>(i);
    if (keys.has(key))
      text += format("{}{}=\"{}\"", text.empty() ? "" : " ", key_name(key), key_example(key));
  }
  return text;
}

Attributes::Attributes(const Reading& reading, const XmlNode& node, KeySet required, KeySet optional)
    : reading_(reading), node_(node) {
  const KeySet allowed = required | optional;
  KeySet missing = required;
  std::uint8_t position = 0;
  for (const XmlAttribute& it : reading.tree.attributes(node)) {
    ++position;
    const std::optional<Key> key = find_key(it.name);
    if (!key || !allowed.has(*key)) {
      refuse_unknown(it, allowed);
    } else if (has(*key)) {
      refuse_doubled(it, *key);
    } else {
      slots_[static_cast<std::size_t>(*key)] = position;
      present_.add(*key);
      missing.remove(*key);
    }
    if (position == 0xFF) break;  // more than there are keys: the file is refused already
  }
  missing = missing - misspelt_;
  if (!missing.empty()) tell_missing(missing);
}

void Attributes::refuse_unknown(const XmlAttribute& it, const KeySet& allowed) {
  std::vector<std::string_view> names;
  for (std::size_t i = 0; i < key_count; ++i) {
    const bool schema = static_cast<Key>(i) == Key::SchemaPlace || static_cast<Key>(i) == Key::SchemaPrefix;
    if (allowed.has(static_cast<Key>(i)) && !schema) names.push_back(key_names[i]);
  }
  Diagnostic& diagnostic = reading_.fault(Rule::UnknownAttribute, reading_.tree.name_span(it),
                                          format("unknown attribute '{}' of '{}'", it.name, node_.name));
  const std::string meant = suggest(diagnostic, it.name, names, format("'{}' takes", node_.name));
  if (const auto key = find_key(meant)) misspelt_.add(*key);
}

void Attributes::refuse_doubled(const XmlAttribute& it, Key key) const {
  reading_
      .fault(Rule::DoubledAttribute, reading_.tree.name_span(it),
             format("'{}' stands twice in one '{}'", it.name, node_.name))
      .note(reading_.tree.name_span(attribute(key)), "first here")
      .help("delete one of the two");
}

void Attributes::tell_missing(const KeySet& missing) const {
  const bool named = has(Key::Id) && is_id(value(Key::Id));
  const std::string who = named ? format("{} '{}'", node_.name, value(Key::Id)) : format("'{}'", node_.name);
  reading_.fault(Rule::MissingAttribute, name_span(), format("{} needs {}", who, key_list(missing)))
      .help(format("add {}", key_examples(missing)));
}

Span Attributes::span(Key key) const {
  return has(key) ? reading_.tree.value_span(attribute(key)) : name_span();
}

Diagnostic& Attributes::conflict(Key key, std::string message) const {
  return reading_.fault(Rule::Conflict, span(key), std::move(message));
}

void Attributes::bad_word(Key key, std::span<const std::string_view> words) const {
  const std::string message = value(key).empty()
                                  ? format("'{}' of '{}' is empty", key_name(key), node_.name)
                                  : format("'{}' is no value of '{}'", value(key), key_name(key));
  Diagnostic& diagnostic = reading_.fault(Rule::BadWord, span(key), message);
  suggest(diagnostic, value(key), words, format("'{}' is one of", key_name(key)));
}

/// A fault of a value's text, narrowed to the bytes at fault when the value stands in the file as it reads.
Diagnostic& Attributes::bad_value(Rule rule, Key key, const Fault& fault) const {
  Span place = span(key);
  const bool verbatim = place.end - place.begin == value(key).size();
  if (verbatim && fault.begin < fault.end && fault.end <= value(key).size()) {
    place.end = place.begin + static_cast<std::uint32_t>(fault.end);
    place.begin += static_cast<std::uint32_t>(fault.begin);
  }
  return reading_.fault(rule, place, format("{}: {}", key_name(key), fault.message));
}

std::string_view Attributes::text(Key key) const {
  if (!has(key)) return "";
  const std::string_view written = value(key);
  if (written.empty()) {
    reading_.fault(Rule::BadWord, span(key), format("'{}' of '{}' is empty", key_name(key), node_.name))
        .help("fill it in, or leave the attribute out");
  }
  return written;
}

std::string_view Attributes::id(Key key) const {
  if (!has(key)) return "";
  const std::string_view written = value(key);
  if (is_id(written)) return written;
  const std::string message =
      written.empty() ? format("'{}' of '{}' is empty", key_name(key), node_.name)
      : written.size() > longest_id
          ? format("the id '{}...' has more than {} letters", written.substr(0, 20), longest_id)
          : format("'{}' is no id", written);
  reading_.fault(Rule::BadId, span(key), message)
      .help("an id is letters, digits, '-', '_', '.' and '+', first a letter or digit, at most 40");
  return "";
}

std::string_view Attributes::word(Key key) const {
  if (!has(key)) return "";
  const std::string_view written = value(key);
  if (is_word(written)) return written;
  std::string small(written);
  for (char& c : small) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  Diagnostic& fault =
      reading_.fault(Rule::BadWord, span(key), format("'{}' is no word for '{}'", written, key_name(key)));
  if (is_word(small)) fault.help(format("write '{}'", small));
  fault.help("a word is small letters, digits and '-', first a letter or digit, at most 40");
  return "";
}

std::string_view Attributes::date(Key key) const {
  if (!has(key)) return "";
  if (is_day(value(key))) return value(key);
  reading_.fault(Rule::BadDate, span(key), format("'{}' is no day of the calendar", value(key)))
      .help("write year-month-day, like 2026-03-02");
  return "";
}

std::optional<int> Attributes::number(Key key, int least, int most) const {
  if (!has(key)) return std::nullopt;
  const std::string_view written = value(key);
  const bool digits = !written.empty() && std::all_of(written.begin(), written.end(), is_digit);
  if (!digits || (written.size() > 1 && written[0] == '0')) {
    reading_.fault(Rule::BadNumber, span(key), format("{}: '{}' is no whole number", key_name(key), written))
        .help(format("write a number from {} to {}, digits only", least, most));
    return std::nullopt;
  }
  const std::optional<int> number = whole<int>(written);
  if (!number || *number < least || *number > most) {
    reading_.fault(Rule::BadNumber, span(key),
                   format("{}: {} is not from {} to {}", key_name(key), written, least, most));
    return std::nullopt;
  }
  return number;
}

std::optional<double> Attributes::share(Key key) const {
  if (!has(key)) return std::nullopt;
  const std::string_view written = value(key);
  const bool plain = written.size() >= 3 && written.size() <= 8 && written.starts_with("0.") &&
                     std::all_of(written.begin() + 2, written.end(), is_digit);
  const std::optional<double> number = plain ? whole<double>(written) : std::nullopt;
  if (number && *number > 0.0) return number;
  reading_
      .fault(Rule::BadNumber, span(key), format("{}: '{}' is no share of the supply", key_name(key), written))
      .help("write a number between 0 and 1, like 0.7");
  return std::nullopt;
}

std::optional<double> Attributes::part_of_whole(Key key) const {
  if (!has(key)) return std::nullopt;
  const std::string_view written = value(key);
  std::string_view number = written;
  const bool percent = number.ends_with('%');
  if (percent) {
    number.remove_suffix(1);
    if (number.ends_with(' ')) number.remove_suffix(1);
  }
  // "0.4", "40 %", "12.5 %": at most three digits before the point and six behind it.
  const std::size_t point = std::min(number.find('.'), number.size());
  const std::string_view whole_part = number.substr(0, point);
  const std::string_view rest = number.substr(std::min(point + 1, number.size()));
  const auto digits = [](std::string_view text) { return std::all_of(text.begin(), text.end(), is_digit); };
  const bool plain = !whole_part.empty() && whole_part.size() <= 3 && rest.size() <= 6 &&
                     digits(whole_part) && digits(rest) &&
                     (point == number.size() ? percent : !rest.empty()) && (percent || whole_part == "0");
  const std::optional<double> read = plain ? whole<double>(number) : std::nullopt;
  const double share = read.value_or(0.0) / (percent ? 100.0 : 1.0);
  if (share > 0.0 && share <= 1.0) return share;
  reading_.fault(Rule::BadNumber, span(key), format("{}: '{}' is no part of a whole", key_name(key), written))
      .help("write it like '40 %' or '0.4': above 0, at most 100 %");
  return std::nullopt;
}

std::optional<bool> Attributes::yes_no(Key key) const {
  static constexpr std::array<Word<bool>, 2> words{{{"yes", true}, {"no", false}}};
  return one_of(key, words);
}

std::optional<WireColour> Attributes::colour(Key key) const {
  if (!has(key)) return std::nullopt;
  const Parsed<WireColour> parsed = parse_colour(value(key));
  if (const auto* colour = std::get_if<WireColour>(&parsed)) {
    if (is_protective_earth(*colour)) {
      reading_
          .fault(Rule::ReservedColour, span(key), "green and yellow are kept for the protective conductor")
          .help("if this lead is at mains, stop: that is for a qualified person; otherwise mark it");
    }
    return *colour;
  }
  bad_value(Rule::BadColour, key, std::get<Fault>(parsed));
  return std::nullopt;
}

std::optional<Gauge> Attributes::gauge(Key key) const {
  if (!has(key)) return std::nullopt;
  const Parsed<Gauge> parsed = parse_gauge(value(key));
  if (const auto* gauge = std::get_if<Gauge>(&parsed)) return *gauge;
  bad_value(Rule::BadQuantity, key, std::get<Fault>(parsed));
  return std::nullopt;
}

template <class Q>
bool Attributes::fits(Key key, Q number, Sign sign) const {
  const bool bad =
      (sign == Sign::NotNegative && number.value < 0.0) || (sign == Sign::Positive && number.value <= 0.0);
  if (bad) {
    reading_.fault(Rule::BadQuantity, span(key),
                   format("{}: '{}' must be {}", key_name(key), value(key),
                          sign == Sign::Positive ? "more than 0" : "at least 0"));
  }
  return !bad;
}

template <class Unit>
constexpr std::string_view symbol_of(Quantity<Unit>) {
  return Unit::symbol;
}

template <class Q>
std::optional<Q> Attributes::quantity(Key key, Sign sign) const {
  if (!has(key)) return std::nullopt;
  Q number;
  if (const auto quick = quick_quantity(value(key), symbol_of(Q()), false)) {
    number = Q(quick->min);
  } else {
    const Parsed<Q> parsed = parse_quantity<Q>(value(key));
    if (const auto* fault = std::get_if<Fault>(&parsed)) {
      bad_value(Rule::BadQuantity, key, *fault);
      return std::nullopt;
    }
    number = std::get<Q>(parsed);
  }
  return fits(key, number, sign) ? std::optional(number) : std::nullopt;
}

template <class Q>
std::optional<Range<Q>> Attributes::range(Key key, Sign sign) const {
  if (!has(key)) return std::nullopt;
  Range<Q> both;
  if (const auto quick = quick_quantity(value(key), symbol_of(Q()), true)) {
    both = {Q(quick->min), Q(quick->max)};
  } else {
    const Parsed<Range<Q>> parsed = parse_range<Q>(value(key));
    if (const auto* fault = std::get_if<Fault>(&parsed)) {
      bad_value(Rule::BadQuantity, key, *fault);
      return std::nullopt;
    }
    both = std::get<Range<Q>>(parsed);
  }
  return fits(key, both.min, sign) ? std::optional(both) : std::nullopt;
}

#define PLUGWARD_INSTANTIATE(Q)                                       \
  template std::optional<Q> Attributes::quantity<Q>(Key, Sign) const; \
  template std::optional<Range<Q>> Attributes::range<Q>(Key, Sign) const;
PLUGWARD_INSTANTIATE(Volts)
PLUGWARD_INSTANTIATE(Amps)
PLUGWARD_INSTANTIATE(Ohms)
PLUGWARD_INSTANTIATE(Watts)
PLUGWARD_INSTANTIATE(Millimetres)
PLUGWARD_INSTANTIATE(Kelvins)
#undef PLUGWARD_INSTANTIATE

}  // namespace plugward
