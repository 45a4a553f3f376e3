// SPDX-License-Identifier: MIT
// 'plugward check' on the two demo files against 'xmllint --noout' on the same files, wall time of whole
// processes, run in turn so that both see the same machine; and against a process that does nothing.
//
//   check_bench PLUGWARD SOURCE_DIR [ROUNDS]
#include <unistd.h>

#include "base/format.h"
#include "support/bench_row.h"
#include "support/process.h"

namespace {

double median(std::vector<double> times) {
  std::nth_element(times.begin(), times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2), times.end());
  return times[times.size() / 2];
}

}  // namespace

int main(int argc, char** argv) {
  using namespace plugward;
  if (argc < 3) {
    std::fprintf(stderr, "usage: check_bench PLUGWARD SOURCE_DIR [ROUNDS]\n");
    return 2;
  }
  const int rounds = argc > 3 ? std::atoi(argv[3]) : 200;
  if (chdir(argv[2]) != 0) return 2;
  const std::string board = "boards/heron-m7.xml", harness = "harnesses/kite-probe.xml";
  const std::vector<std::string> check{argv[1],      "check", board,         harness,    "--at",
                                       "control=J9", "--at",  "trigger=J10", "--jumper", "JP2=5V"};
  std::vector<double> ours, theirs, starts;
  for (int i = 0; i < rounds; ++i) {
    ours.push_back(test::run_process(check).wall);
    theirs.push_back(test::run_process({"xmllint", "--noout", board, harness}).wall);
    starts.push_back(test::run_process({argv[1], "--version"}).wall);
  }
  test::bench_row("check of the demo's two files, whole process", "xmllint --noout on them",
                  median(ours) / median(theirs), "at most 3");
  test::bench_row("the same", "the process's start alone (--version)", median(ours) / median(starts), "none");
  test::bench_detail(format("{:.0f} us; xmllint {:.0f} us, start {:.0f} us, medians of {}",
                            1e6 * median(ours), 1e6 * median(theirs), 1e6 * median(starts), rounds));
}
