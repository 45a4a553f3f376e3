// SPDX-License-Identifier: MIT
// Long work tells a person at the terminal that it goes on: one line of standard error, rewritten in place
// and wiped at the end. Nothing at all goes into a pipe or a file.
//
//   Progress progress(options);
//   progress.tell("1200 of 10000 files");
//   const Stage stage(options, "planning the move");      // "planning the move: 3 s"
#pragma once

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <string>
#include <string_view>
#include <thread>

#include "cli/options.h"

namespace plugward {

/// Told by the work itself, which knows how much is done.
class Progress {
 public:
  explicit Progress(const Options& options) : options_(options) {}
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress() { wipe(); }

  /// Whether it is time to tell something: not before 0.2 s, and not more often.
  bool due();
  void tell(std::string_view text);
  void wipe();

 private:
  const Options& options_;
  std::chrono::steady_clock::time_point told_ = std::chrono::steady_clock::now();
  bool shown_ = false;
};

/// For work that cannot say how far it is: while the stage stands, how long it has been at it, from half a
/// second on. `name` lives longer than the stage.
class Stage {
 public:
  Stage(const Options&, std::string_view name);
  Stage(const Stage&) = delete;
  Stage& operator=(const Stage&) = delete;
  ~Stage();

 private:
  void watch(std::stop_token);

  const Options& options_;
  std::string_view name_;
  std::mutex mutex_;
  std::condition_variable_any ended_;
  std::jthread watcher_;
};

}  // namespace plugward
