// SPDX-License-Identifier: MIT
// 'plugward find' on made boards against reading the same boards and dropping them, on one thread and on two;
// whole processes, wall and processor time, most memory held. Bars: at most 2 times the time of reading
// alone; two threads at least 1.7 times as fast as one (on two idle cores); memory that does not grow with
// the boards.
//
//   find_bench PLUGWARD SOURCE_DIR [BOARDS ...]      prints the figures for so many boards each, ascending
//   find_bench --read THREADS FOLDER                 reads alone; what the figures compare with
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <vector>

#include "base/file.h"
#include "base/format.h"
#include "cli/find_files.h"
#include "cli/in_order.h"
#include "reader/descriptions.h"
#include "support/bench_row.h"
#include "support/many_boards.h"
#include "support/process.h"

namespace {

int read_alone(int threads, const std::string& folder) {
  const std::vector<std::string> files = plugward::description_files({folder});
  plugward::Catalogue builtin;
  plugward::add_builtin_families(builtin);
  std::size_t boards = 0;
  plugward::in_order<bool>(
      files.size(), threads,
      [&] {
        return [&files, catalogue = builtin](std::size_t i) mutable {
          plugward::Sources sources;
          plugward::Diagnostics diagnostics;
          const plugward::FileId file = sources.add(files[i], plugward::read_file(files[i]));
          return plugward::read_description(sources, file, catalogue, diagnostics).board != nullptr;
        };
      },
      [&](std::size_t, bool board) { boards += board ? 1 : 0; });
  return boards == files.size() ? 0 : 1;
}

/// Not by write_file(), which waits for the disk after each: 100,000 of them would take an hour.
void write_boards(const std::filesystem::path& folder, std::uint32_t makers, int from, int to) {
  for (int i = from; i < to; ++i) {
    const auto part = folder / plugward::format("{:02}", i % 16);
    std::filesystem::create_directories(part);
    std::ofstream(part / plugward::format("board-{:06}.xml", i))
        << plugward::test::board_text({.makers = makers}, static_cast<std::uint32_t>(i));
  }
}

/// The most memory that 'find' held, in kB.
long measure(const std::string& self, const std::string& program, const std::string& harness,
             const std::string& folder, int count, const char* world) {
  using plugward::test::least_of;
  using plugward::test::Spent;
  constexpr int rounds = 3;
  const Spent read1 = least_of(rounds, {self, "--read", "1", folder});
  const auto find = [&](const char* threads) {
    return least_of(rounds, {program, "find", harness, "--in", folder, "--threads", threads});
  };
  const Spent find1 = find("1"), find2 = find("2");
  const std::string what = plugward::format("find {} in {} boards, {}",
                                            std::filesystem::path(harness).stem().string(), count, world);
  plugward::test::bench_row(what, "reading them alone", find1.processor / read1.processor, "at most 2");
  plugward::test::bench_row("the same on one thread", "on two", find1.wall / find2.wall, "at least 1.7");
  plugward::test::bench_detail(plugward::format("{:.3f} s and {:.1f} MB; reading {:.3f} s and {:.1f} MB",
                                                find1.processor, static_cast<double>(find1.memory) / 1024,
                                                read1.processor, static_cast<double>(read1.memory) / 1024));
  return std::max(find1.memory, find2.memory);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc == 4 && std::string(argv[1]) == "--read") return read_alone(std::atoi(argv[2]), argv[3]);
  if (argc < 3) {
    std::fprintf(stderr, "usage: find_bench PLUGWARD SOURCE_DIR [BOARDS ...]\n");
    return 2;
  }
  std::vector<int> counts;
  for (int i = 3; i < argc; ++i) counts.push_back(std::atoi(argv[i]));
  if (counts.empty()) counts = {1000, 10000};
  std::string name = (std::filesystem::temp_directory_path() / "find_bench-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) return 2;
  const std::string self = std::filesystem::read_symlink("/proc/self/exe").string();
  const std::string harnesses = std::string(argv[2]) + "/harnesses/";
  for (const std::uint32_t makers : {100U, 0U}) {
    const char* world = makers == 0 ? "all different" : "of 100 makers";
    const auto folder = std::filesystem::path(name) / plugward::format("{}", makers);
    int written = 0;
    std::vector<long> memory;
    for (const int count : counts) {
      write_boards(folder, makers, written, count);
      written = count;
      memory.push_back(0);
      for (const char* harness : {"kite-probe.xml", "x-motor.xml", "fan-12v.xml"}) {
        memory.back() = std::max(memory.back(),
                                 measure(self, argv[1], harnesses + harness, folder.string(), count, world));
      }
    }
    plugward::test::bench_row(plugward::format("memory for {} boards, {}", counts.back(), world),
                              plugward::format("for {}", counts.front()),
                              static_cast<double>(memory.back()) / static_cast<double>(memory.front()),
                              "told only");
    std::filesystem::remove_all(folder);
  }
  std::filesystem::remove_all(name);
  return 0;
}
