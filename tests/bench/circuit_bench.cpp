// SPDX-License-Identifier: MIT
// The DC solution of networks against ngspice, which gets all of them in one batch run. Bar: at least 200
// times its throughput.
//
//   circuit_bench [NETWORKS]
#include <chrono>
#include <cstdlib>
#include <random>

#include "base/format.h"
#include "support/bench_row.h"
#include "support/random_network.h"
#include "support/spice.h"

namespace plugward {
namespace {

double seconds_of(const auto& work) {
  const auto begin = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

}  // namespace
}  // namespace plugward

int main(int argc, char** argv) {
  using namespace plugward;
  const std::size_t count = argc > 1 ? std::strtoul(argv[1], nullptr, 10) : 2000;
  std::mt19937 random(20260302);
  std::vector<Network> networks;
  for (std::size_t i = 0; i < count; ++i) networks.push_back(test::random_network(random, 12, 8));

  double sum = 0;  // keeps the work from being left out
  constexpr int rounds = 20;
  const double ours = seconds_of([&] {
                        for (int round = 0; round < rounds; ++round) {
                          for (const Network& network : networks) sum += solve(network).volts.back();
                        }
                      }) /
                      rounds;
  std::vector<std::vector<double>> volts;
  const double writing = seconds_of([&] {
    for (const Network& network : networks) sum += static_cast<double>(test::netlist(network).size());
  });
  const double whole = seconds_of([&] { volts = test::solve_with_ngspice(networks, "bench"); });
  std::size_t answered = 0;
  for (const auto& one : volts) answered += one.empty() ? 0U : 1U;
  if (answered == 0 || sum == 0) {
    std::puts("ngspice gave no answer");
    return 2;
  }
  test::bench_row(format("DC solution of {} networks of up to 16 nodes", count), "ngspice, one batch run",
                  (whole - writing) / ours, "at least 200");
  test::bench_detail(format("{:.1f} us a network; ngspice {:.0f} us, {} of them answered",
                            1e6 * ours / static_cast<double>(count),
                            1e6 * (whole - writing) / static_cast<double>(count), answered));
}
