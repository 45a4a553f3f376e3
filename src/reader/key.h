// SPDX-License-Identifier: MIT
// Attribute names as numbers, so that an element's attributes are told apart, found and checked against a set
// without comparing strings more than once each.
//
//   find_key("pull-ohms") == Key::PullOhms
//   constexpr KeySet required{Key::Id, Key::Volt};
#pragma once

#include <array>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string_view>

namespace plugward {

enum class Key : std::uint8_t {
#define PLUGWARD_KEY(name, text, example) name,
#include "reader/key.def"
#undef PLUGWARD_KEY
};

inline constexpr auto key_names = std::to_array<std::string_view>({
#define PLUGWARD_KEY(name, text, example) text,
#include "reader/key.def"
#undef PLUGWARD_KEY
});
inline constexpr std::size_t key_count = key_names.size();

constexpr std::string_view key_name(Key key) {
  return key_names[static_cast<std::size_t>(key)];
}

/// What a missing attribute could read: "24 V" for 'volts'.
std::string_view key_example(Key key);

/// The key with this name. One hash, one comparison in most cases.
std::optional<Key> find_key(std::string_view name);

class KeySet {
 public:
  constexpr KeySet() = default;
  constexpr KeySet(std::initializer_list<Key> keys) {
    for (const Key key : keys) add(key);
  }
  constexpr void add(Key key) { words_[index(key)] |= bit(key); }
  constexpr void remove(Key key) { words_[index(key)] &= ~bit(key); }
  constexpr bool has(Key key) const { return (words_[index(key)] & bit(key)) != 0; }
  constexpr bool empty() const { return (words_[0] | words_[1]) == 0; }
  friend constexpr KeySet operator|(KeySet a, const KeySet& b) {
    a.words_[0] |= b.words_[0];
    a.words_[1] |= b.words_[1];
    return a;
  }
  /// What is in `a` and not in `b`.
  friend constexpr KeySet operator-(KeySet a, const KeySet& b) {
    a.words_[0] &= ~b.words_[0];
    a.words_[1] &= ~b.words_[1];
    return a;
  }

 private:
  static constexpr std::size_t index(Key key) { return static_cast<std::size_t>(key) / 64; }
  static constexpr std::uint64_t bit(Key key) {
    return std::uint64_t{1} << (static_cast<unsigned>(key) % 64);
  }
  std::array<std::uint64_t, 2> words_{};
};
static_assert(key_count <= 128);

}  // namespace plugward
