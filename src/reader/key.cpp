// SPDX-License-Identifier: MIT
// A hash table that the compiler fills: 512 slots, open addressing, hash of the length and three letters. The
// multipliers were found by trying: with today's names no two share a slot. A new name costs at most one more
// probe. Alternative not taken: a generator of perfect hashes, one more tool in the build.
#include "reader/key.h"

#include <cstring>

namespace plugward {
namespace {

constexpr std::size_t slots = 512;
constexpr std::uint8_t vacant = 0xFF;
static_assert(key_count < vacant);

constexpr std::size_t hash(std::string_view name) {
  const auto letter = [&](std::size_t i) {
    return static_cast<std::size_t>(static_cast<unsigned char>(name[i]));
  };
  return (name.size() * 416 + letter(0) * 450 + letter(name.size() - 1) * 167 +
          letter(name.size() / 2) * 423) %
         slots;
}

constexpr auto table = [] {
  std::array<std::uint8_t, slots> made{};
  made.fill(vacant);
  for (std::size_t i = 0; i < key_count; ++i) {
    std::size_t at = hash(key_names[i]);
    while (made[at] != vacant) at = (at + 1) % slots;
    made[at] = static_cast<std::uint8_t>(i);
  }
  return made;
}();

/// memcmp without the call: names are short, and most fit one overlapping pair of words.
bool same_letters(const char* a, const char* b, std::size_t size) {
  const auto difference = [&]<class Word>(Word, std::size_t at) {
    Word x{};
    Word y{};
    std::memcpy(&x, a + at, sizeof x);
    std::memcpy(&y, b + at, sizeof y);
    return static_cast<std::uint64_t>(x ^ y);
  };
  if (size > 16) return std::memcmp(a, b, size) == 0;
  if (size >= 8) return (difference(std::uint64_t{}, 0) | difference(std::uint64_t{}, size - 8)) == 0;
  if (size >= 4) return (difference(std::uint32_t{}, 0) | difference(std::uint32_t{}, size - 4)) == 0;
  if (size >= 2) return (difference(std::uint16_t{}, 0) | difference(std::uint16_t{}, size - 2)) == 0;
  return a[0] == b[0];
}

constexpr auto examples = std::to_array<std::string_view>({
#define PLUGWARD_KEY(name, text, example) example,
#include "reader/key.def"
#undef PLUGWARD_KEY
});

}  // namespace

std::string_view key_example(Key key) {
  return examples[static_cast<std::size_t>(key)];
}

std::optional<Key> find_key(std::string_view name) {
  if (name.empty()) return std::nullopt;
  for (std::size_t at = hash(name); table[at] != vacant; at = (at + 1) % slots) {
    const std::string_view known = key_names[table[at]];
    if (known.size() == name.size() && same_letters(known.data(), name.data(), name.size()))
      return static_cast<Key>(table[at]);
  }
  return std::nullopt;
}

}  // namespace plugward
