// SPDX-License-Identifier: MIT
// Parses the command line, runs one command, writes what it made. Commands print nothing themselves.
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <exception>
#include <string>
#include <vector>

#include "base/file.h"
#include "base/format.h"
#include "base/utf8.h"
#include "cli/command.h"
#include "cli/complete.h"
#include "cli/data_folders.h"
#include "cli/manual.h"
#include "cli/options.h"
#include "cli/watch.h"

namespace plugward {
namespace {

void write_stdout(const std::string& bytes) {
  const bool written = std::fwrite(bytes.data(), 1, bytes.size(), stdout) == bytes.size();
  if (!written || std::fflush(stdout) != 0) {
    throw WorldError(format("cannot write standard output: {}", std::strerror(errno)));
  }
}

void write_stderr(const std::string& bytes) {
  std::fwrite(bytes.data(), 1, bytes.size(), stderr);
}

/// Runs the command and writes what it made.
ExitStatus run_once(const Options& options) {
  const Outcome outcome = options.command->run(options);
  write_stderr(outcome.diagnostics);
  if (options.to_stdout()) {
    write_stdout(outcome.product);
  } else if (!outcome.product.empty()) {
    write_file(options.output, outcome.product);
  }
  return outcome.status;
}

/// What shells and the build ask for; "" when `arguments` are none of it.
std::string hidden_word(const std::vector<std::string>& arguments) {
  if (arguments.size() == 1 && arguments[0] == "manual") return manual_page(all_commands());
  if (arguments.size() < 2 || arguments[0] != "complete") return "";
  return completions({arguments.begin() + 1, arguments.end()}, all_commands(),
                     data_folders(read_data_environment()));
}

ExitStatus run(const std::vector<std::string>& arguments) {
  if (!arguments.empty() && (arguments[0] == "complete" || arguments[0] == "manual")) {
    write_stdout(hidden_word(arguments));
    return ExitStatus::Fine;
  }
  auto parsed = parse_command_line(arguments, all_commands());
  if (const auto* information = std::get_if<Information>(&parsed)) {
    write_stdout(information->text);
    return ExitStatus::Fine;
  }
  Options& options = std::get<Options>(parsed);
  const ColourEnvironment environment = read_colour_environment();
  options.colour_out =
      use_colour(options.colour, options.to_stdout() && ::isatty(STDOUT_FILENO) != 0, environment);
  options.colour_err = use_colour(options.colour, ::isatty(STDERR_FILENO) != 0, environment);

  options.terminal_err = ::isatty(STDERR_FILENO) != 0;
  options.stream_err = [](std::string_view bytes) { write_stderr(std::string(bytes)); };
  if (options.to_stdout()) {
    options.stream_out = [](std::string_view bytes) { write_stdout(std::string(bytes)); };
  }

  locate_files(options, data_folders(read_data_environment()));
  if (options.watch) return watch(options, [&] { run_once(options); });
  return run_once(options);
}

}  // namespace
}  // namespace plugward

int main(int argc, char** argv) {
  using plugward::ExitStatus;
  try {
    return static_cast<int>(plugward::run(std::vector<std::string>(argv + (argc > 0 ? 1 : 0), argv + argc)));
  } catch (const std::exception& error) {
    plugward::write_stderr(plugward::format("plugward: error: {}\n", plugward::printable(error.what())));
  }
  return static_cast<int>(ExitStatus::NoJudgement);
}
