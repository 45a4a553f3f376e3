// SPDX-License-Identifier: MIT
// 'plugward check' on the two demo files against 'xmllint --noout' on the same files, wall time of whole
// processes, run in turn so that both see the same machine.
//
//   check_bench PLUGWARD SOURCE_DIR [ROUNDS]
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

extern char** environ;

namespace {

using Clock = std::chrono::steady_clock;

/// Wall time of one run in microseconds; its output goes to /dev/null.
double run(const std::vector<std::string>& command) {
  std::vector<char*> argv;
  for (const std::string& word : command) argv.push_back(const_cast<char*>(word.c_str()));
  argv.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
  const auto begin = Clock::now();
  pid_t child = 0;
  if (posix_spawnp(&child, argv[0], &actions, nullptr, argv.data(), environ) != 0) {
    std::fprintf(stderr, "cannot run %s\n", argv[0]);
    std::exit(2);
  }
  int status = 0;
  waitpid(child, &status, 0);
  const auto end = Clock::now();
  posix_spawn_file_actions_destroy(&actions);
  return std::chrono::duration<double, std::micro>(end - begin).count();
}

double median(std::vector<double> times) {
  std::nth_element(times.begin(), times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2), times.end());
  return times[times.size() / 2];
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 3) {
    std::fprintf(stderr, "usage: check_bench PLUGWARD SOURCE_DIR [ROUNDS]\n");
    return 2;
  }
  const std::string program = argv[1];
  const int rounds = argc > 3 ? std::atoi(argv[3]) : 200;
  if (chdir(argv[2]) != 0) return 2;
  const std::string board = "boards/heron-m7.xml";
  const std::string harness = "harnesses/kite-probe.xml";
  std::vector<double> check;
  std::vector<double> lint;
  for (int i = 0; i < rounds; ++i) {
    check.push_back(run({program, "check", board, harness, "--at", "control=J9", "--at", "trigger=J10",
                         "--jumper", "JP2=5V"}));
    lint.push_back(run({"xmllint", "--noout", board, harness}));
  }
  std::printf("check %.0f us, xmllint --noout %.0f us, ratio %.2f (bar: at most 3), median of %d\n",
              median(check), median(lint), median(check) / median(lint), rounds);
  return 0;
}
