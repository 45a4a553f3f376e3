// SPDX-License-Identifier: MIT
// Runs a command and prints the most memory that it held, in bytes, and its exit status:
//
//   most_memory plugward lint b.xml
//
// The system counts what a process held before it became the command, so whoever starts it must be small
// itself.
#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <initializer_list>

int main(int argc, char** argv) {
  if (argc < 2) return 2;
  const pid_t child = ::fork();
  if (child == 0) {
    const int nowhere = ::open("/dev/null", O_RDWR);
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) ::dup2(nowhere, stream);
    ::execv(argv[1], argv + 1);
    ::_exit(127);
  }
  int status = 0;
  rusage used{};
  if (child < 0 || ::wait4(child, &status, 0, &used) != child) return 2;
  std::printf("%ld %d\n", used.ru_maxrss * 1024, WIFEXITED(status) ? WEXITSTATUS(status) : -1);
  return 0;
}
