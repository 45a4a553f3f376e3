// SPDX-License-Identifier: MIT
// The attributes of one element, checked against what the element takes, read as typed values. Every fault is
// reported with the attribute's value as its place.
//
//   const Attributes a(reading, node, {Key::Id, Key::Volt}, {Key::Limit});
//   rail.id = a.id(Key::Id);
//   rail.volts = a.range<Volts>(Key::Volt).value_or(Range<Volts>{});
//   rail.limit = a.quantity<Amps>(Key::Limit, Sign::Positive);
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "quantity/colour.h"
#include "quantity/gauge.h"
#include "quantity/quantity.h"
#include "reader/key.h"
#include "reader/reading.h"

namespace plugward {

/// Which values of a quantity make sense.
enum class Sign { Any, NotNegative, Positive };

class Attributes {
 public:
  /// Reports unknown, doubled and missing attributes. One that is misspelt is not missing as well.
  Attributes(const Reading&, const XmlNode&, KeySet required, KeySet optional = {});

  bool has(Key key) const { return slots_[static_cast<std::size_t>(key)] != 0; }
  const KeySet& present() const { return present_; }
  /// Those that an unknown attribute was taken for in its message: there, though not to be read.
  const KeySet& misspelt() const { return misspelt_; }
  bool written(Key key) const { return present_.has(key) || misspelt_.has(key); }

  /// The attribute's value as a place; the element's name when the attribute is not there.
  Span span(Key) const;
  Span element_span() const { return reading_.tree.span(node_); }
  Span name_span() const { return reading_.tree.name_span(node_); }
  std::string_view element() const { return node_.name; }

  std::string_view raw(Key key) const { return has(key) ? value(key) : std::string_view(); }  ///< unchecked
  // Each getter gives nothing ("" for texts) when the attribute is absent or bad; bad ones are reported.
  std::string_view text(Key) const;  ///< as it is; an empty value is reported
  std::string_view id(Key) const;    ///< an id: [A-Za-z0-9][A-Za-z0-9._+-]{0,39}
  std::string_view word(Key) const;  ///< a word of the trade: [a-z0-9][a-z0-9-]{0,39}
  std::string_view date(Key) const;  ///< a day of the calendar, "2026-03-02"
  std::optional<int> number(Key, int least, int most) const;
  std::optional<double> share(Key) const;  ///< above 0, below 1
  std::optional<double> part_of_whole(Key) const;  ///< "40 %" or "0.4": above 0, at most 1
  std::optional<bool> yes_no(Key) const;
  std::optional<WireColour> colour(Key) const;
  std::optional<Gauge> gauge(Key) const;
  template <class Q>
  std::optional<Q> quantity(Key, Sign = Sign::Any) const;
  template <class Q>
  std::optional<Range<Q>> range(Key, Sign = Sign::Any) const;

  template <class Value, std::size_t N>
  std::optional<Value> one_of(Key key, const std::array<Word<Value>, N>& words) const {
    if (!has(key)) return std::nullopt;
    const std::string_view written = value(key);
    for (const Word<Value>& word : words) {
      if (word.text.size() != written.size() || written.empty() || word.text[0] != written[0]) continue;
      if (word.text == written) return word.value;
    }
    std::array<std::string_view, N> texts;
    for (std::size_t i = 0; i < N; ++i) texts[i] = words[i].text;
    bad_word(key, texts);
    return std::nullopt;
  }

  /// Reports that attribute `key` and the facts of the element do not go together.
  Diagnostic& conflict(Key key, std::string message) const;

 private:
  std::string_view value(Key key) const { return attribute(key).value; }
  const XmlAttribute& attribute(Key key) const {
    return reading_.tree.attributes(node_)[slots_[static_cast<std::size_t>(key)] - 1U];
  }
  void bad_word(Key, std::span<const std::string_view> words) const;
  void refuse_unknown(const XmlAttribute&, const KeySet& allowed);
  void refuse_doubled(const XmlAttribute&, Key) const;
  void tell_missing(const KeySet& missing) const;
  Diagnostic& bad_value(Rule, Key, const Fault&) const;
  template <class Q>
  bool fits(Key, Q value, Sign) const;

  const Reading& reading_;
  const XmlNode& node_;
  std::array<std::uint8_t, key_count> slots_{};  ///< position among the element's attributes + 1
  KeySet present_;
  KeySet misspelt_;
};

/// "'volts'", "'volts' and 'limit'", "'a', 'b' and 'c'": the names of the keys.
std::string key_list(const KeySet&);

/// `volts="24 V" limit="1.5 A"`: how the keys could read.
std::string key_examples(const KeySet&);

/// True when `text` may be an id.
bool is_id(std::string_view text);

}  // namespace plugward
