// SPDX-License-Identifier: MIT
// 'plugward find' on made boards against reading the same boards and dropping them, on one thread and on two;
// whole processes, wall and processor time, most memory held. Bars: at most 2 times the time of reading
// alone; two threads at least 1.7 times as fast as one (on two idle cores); memory that does not grow with
// the boards.
//
//   find_bench PLUGWARD SOURCE_DIR [BOARDS]          prints the figures
//   find_bench --read THREADS FOLDER                 reads alone; what the figures compare with
#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "base/file.h"
#include "base/format.h"
#include "cli/find_files.h"
#include "cli/in_order.h"
#include "reader/descriptions.h"
#include "support/many_boards.h"

extern char** environ;

namespace {

struct Spent {
  double wall = 0, processor = 0;  ///< seconds
  long memory = 0;                 ///< kB
};

Spent run(const std::vector<std::string>& command) {
  std::vector<char*> argv;
  for (const std::string& word : command) argv.push_back(const_cast<char*>(word.c_str()));
  argv.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
  const auto begin = std::chrono::steady_clock::now();
  pid_t child = 0;
  if (posix_spawnp(&child, argv[0], &actions, nullptr, argv.data(), environ) != 0) {
    std::fprintf(stderr, "cannot run %s\n", argv[0]);
    std::exit(2);
  }
  int status = 0;
  struct rusage usage {};
  wait4(child, &status, 0, &usage);
  posix_spawn_file_actions_destroy(&actions);
  if (status != 0) {
    std::fprintf(stderr, "%s failed\n", argv[0]);
    std::exit(2);
  }
  const auto seconds = [](const timeval& t) {
    return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec);
  };
  return {std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count(),
          seconds(usage.ru_utime) + seconds(usage.ru_stime), usage.ru_maxrss};
}

/// The least of several runs: what else the machine does only adds.
Spent least(const std::vector<std::string>& command, int rounds) {
  Spent best = run(command);
  for (int i = 1; i < rounds; ++i) {
    const Spent one = run(command);
    best.wall = std::min(best.wall, one.wall);
    best.processor = std::min(best.processor, one.processor);
    best.memory = std::max(best.memory, one.memory);
  }
  return best;
}

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

void write_boards(const std::filesystem::path& folder, std::uint32_t makers, int from, int to) {
  for (int i = from; i < to; ++i) {
    const auto part = folder / plugward::format("{:02}", i % 16);
    std::filesystem::create_directories(part);
    plugward::write_file((part / plugward::format("board-{:05}.xml", i)).string(),
                         plugward::test::board_text({.makers = makers}, static_cast<std::uint32_t>(i)));
  }
}

void measure(const std::string& self, const std::string& program, const std::string& harness,
             const std::string& folder, int count) {
  constexpr int rounds = 3;
  const Spent read1 = least({self, "--read", "1", folder}, rounds);
  const Spent read2 = least({self, "--read", "2", folder}, rounds);
  const auto find = [&](const char* threads) {
    return least({program, "find", harness, "--in", folder, "--threads", threads}, rounds);
  };
  const Spent find1 = find("1");
  const Spent find2 = find("2");
  const auto line = [&](const char* what, const Spent& s) {
    std::printf("  %-18s %7.3f s wall  %7.3f s processor  %6.1f MB\n", what, s.wall, s.processor,
                static_cast<double>(s.memory) / 1024);
  };
  std::printf("%d boards, %s\n", count, std::filesystem::path(harness).filename().c_str());
  line("read, 1 thread", read1), line("read, 2 threads", read2);
  line("find, 1 thread", find1), line("find, 2 threads", find2);
  std::printf("  find / read: %.2f wall, %.2f processor (bar: at most 2)\n", find1.wall / read1.wall,
              find1.processor / read1.processor);
  std::printf("  1 thread / 2 threads: %.2f wall (bar: at least 1.7)\n", find1.wall / find2.wall);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc == 4 && std::string(argv[1]) == "--read") return read_alone(std::atoi(argv[2]), argv[3]);
  if (argc < 3) {
    std::fprintf(stderr, "usage: find_bench PLUGWARD SOURCE_DIR [BOARDS]\n");
    return 2;
  }
  const int most = argc > 3 ? std::atoi(argv[3]) : 10000;
  std::string name = (std::filesystem::temp_directory_path() / "find_bench-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) return 2;
  const std::string self = std::filesystem::read_symlink("/proc/self/exe").string();
  const std::string harnesses = std::string(argv[2]) + "/harnesses/";
  for (const std::uint32_t makers : {100U, 0U}) {
    const auto folder = std::filesystem::path(name) / plugward::format("{}", makers);
    std::puts(makers == 0 ? "Every board with pin orders and figures of its own"
                          : "Boards of 100 makers who keep to two pin orders a kind of header");
    int written = 0;
    for (const int count : {most / 10, most}) {
      write_boards(folder, makers, written, count);
      written = count;
      for (const char* harness : {"kite-probe.xml", "x-motor.xml", "fan-12v.xml"})
        measure(self, argv[1], harnesses + harness, folder.string(), count);
    }
  }
  std::filesystem::remove_all(name);
  return 0;
}
