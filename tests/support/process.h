// SPDX-License-Identifier: MIT
// What a whole process takes. For benchmarks: its output is thrown away.
//
//   const Spent one = run_process({"xmllint", "--noout", "a.xml"});
//   const Spent best = least_of(5, {"plugward", "lint", "a.xml"});
#pragma once

#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

extern char** environ;

namespace plugward::test {

struct Spent {
  double wall = 0, processor = 0;  ///< seconds
  long memory = 0;                 ///< most that was held, kB
  int status = 0;                  ///< as waitpid gives it
};

/// Ends the benchmark when the program cannot be started.
inline Spent run_process(const std::vector<std::string>& command) {
  std::vector<char*> argv;
  for (const std::string& word : command) argv.push_back(const_cast<char*>(word.c_str()));
  argv.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
  posix_spawn_file_actions_addopen(&actions, 2, "/dev/null", O_WRONLY, 0);
  const auto begin = std::chrono::steady_clock::now();
  pid_t child = 0;
  if (posix_spawnp(&child, argv[0], &actions, nullptr, argv.data(), environ) != 0) {
    std::fprintf(stderr, "cannot run %s\n", argv[0]);
    std::exit(2);
  }
  Spent spent;
  struct rusage usage {};
  wait4(child, &spent.status, 0, &usage);
  spent.wall = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  posix_spawn_file_actions_destroy(&actions);
  const auto seconds = [](const timeval& t) {
    return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec);
  };
  spent.processor = seconds(usage.ru_utime) + seconds(usage.ru_stime);
  spent.memory = usage.ru_maxrss;
  return spent;
}

/// The least of several runs, and the most memory: what else the machine does only adds. Ends the benchmark
/// when a run fails.
inline Spent least_of(int rounds, const std::vector<std::string>& command) {
  Spent best;
  for (int i = 0; i < rounds; ++i) {
    const Spent one = run_process(command);
    if (one.status != 0) {
      std::fprintf(stderr, "%s failed\n", command.front().c_str());
      std::exit(2);
    }
    if (i == 0) best = one;
    best.wall = std::min(best.wall, one.wall);
    best.processor = std::min(best.processor, one.processor);
    best.memory = std::max(best.memory, one.memory);
  }
  return best;
}

}  // namespace plugward::test
