// SPDX-License-Identifier: MIT
// On what the figures were taken, and the head of their table.
#include <sys/utsname.h>

#include <cstdio>
#include <fstream>
#include <string>
#include <thread>

int main() {
  std::string model = "unknown processor";
  std::ifstream info("/proc/cpuinfo");
  for (std::string line; std::getline(info, line);) {
    if (!line.starts_with("model name")) continue;
    model = line.substr(line.find(':') + 2);
    break;
  }
  double load = 0;
  std::ifstream("/proc/loadavg") >> load;
  utsname system{};
  uname(&system);
  std::printf("%s, %u threads, load %.1f, %s %s, compiled by g++ %s\n\n", model.c_str(),
              std::thread::hardware_concurrency(), load, system.sysname, system.release, __VERSION__);
  std::printf("%-58s | %-44s | %8s | %s\n", "what", "against", "ratio", "bar");
}
