// SPDX-License-Identifier: MIT
// Many random pairs of board and harness, and for each: does what is advised hold? (property.h)
//
//   trial COUNT [FIRST]     pairs FIRST .. FIRST + COUNT - 1; exit status 1 when a property is broken
//
// A broken pair is cut down and printed; `trial 1 SEED` shows it again.
#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <map>

#include "base/format.h"
#include "outside/trial/change.h"
#include "outside/trial/property.h"

namespace {

using namespace plugward;
using namespace plugward::test;

constexpr std::uint64_t place_every = 10;
constexpr int most_shown = 5;  ///< of one property

/// What a smaller pair must still show: the same property, and of a verdict that changes the same change.
std::string symptom(const std::string& broken) {
  const std::string line = broken.substr(0, broken.find('\n'));
  return line.find("becomes") == std::string::npos ? property_name(line) : line;
}

void show(std::uint64_t seed, const RandomWorld& world, const PropertyOptions& options,
          const std::string& broken) {
  // What cannot be read is soon unreadable for another reason.
  const RandomWorld small =
      property_name(broken) == "unreadable" ? world : shrunk(world, [&](const RandomWorld& candidate) {
        return symptom(property_broken(candidate, options)) == symptom(broken);
      });
  std::printf("seed %llu\n%s\n%s\n", static_cast<unsigned long long>(seed),
              property_broken(small, options).c_str(), to_text(small).c_str());
  std::fflush(stdout);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 2) {
    std::fprintf(stderr, "usage: trial COUNT [FIRST]\n");
    return 2;
  }
  const std::uint64_t count = std::strtoull(argv[1], nullptr, 10);
  const std::uint64_t first = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 1;
  std::array<int, 5> verdicts{};
  std::map<std::string, int> broken_ones;
  for (std::uint64_t seed = first; seed < first + count; ++seed) {
    const RandomWorld world = random_world(seed);
    const PropertyOptions options{.twins = true, .place = seed % place_every == 0};
    Verdict verdict{};
    const std::string broken = property_broken(world, options, &verdict);
    ++verdicts[static_cast<std::size_t>(verdict)];
    if (broken.empty()) continue;
    if (++broken_ones[property_name(broken)] <= most_shown) show(seed, world, options, broken);
  }
  std::printf("%llu pairs:", static_cast<unsigned long long>(count));
  for (std::size_t v = 0; v < verdicts.size(); ++v) {
    std::printf(" %s %d", std::string(to_word(static_cast<Verdict>(v))).c_str(), verdicts[v]);
  }
  int faults = 0;
  for (const auto& [name, times] : broken_ones) {
    std::printf("; '%s' broken %d times", name.c_str(), times);
    faults += times;
  }
  std::printf("; %d faults\n", faults);
  return faults == 0 ? 0 : 1;
}
