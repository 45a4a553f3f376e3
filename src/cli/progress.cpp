// SPDX-License-Identifier: MIT
// Tested in tests/shell/progress_test.py.
#include "cli/progress.h"

#include "base/format.h"

namespace plugward {
namespace {

constexpr std::chrono::milliseconds between{200}, patience{500};

bool somebody_watches(const Options& options) {
  return options.terminal_err && options.stream_err;
}

}  // namespace

bool Progress::due() {
  return somebody_watches(options_) && std::chrono::steady_clock::now() - told_ >= between;
}

void Progress::tell(std::string_view text) {
  if (!somebody_watches(options_)) return;
  options_.stream_err(format("\r\x1b[K{}", text));
  told_ = std::chrono::steady_clock::now();
  shown_ = true;
}

void Progress::wipe() {
  if (shown_) options_.stream_err("\r\x1b[K");
  shown_ = false;
}

Stage::Stage(const Options& options, std::string_view name) : options_(options), name_(name) {
  if (somebody_watches(options)) watcher_ = std::jthread([this](std::stop_token stop) { watch(stop); });
}

Stage::~Stage() = default;  // the watcher is asked to stop, wipes its line and is waited for

void Stage::watch(std::stop_token stop) {
  const auto begin = std::chrono::steady_clock::now();
  Progress progress(options_);
  std::unique_lock lock(mutex_);
  auto pause = patience;
  while (!ended_.wait_for(lock, stop, pause, [&] { return stop.stop_requested(); })) {
    const auto spent =
        std::chrono::duration_cast<std::chrono::seconds>(std::chrono::steady_clock::now() - begin);
    progress.tell(spent.count() == 0 ? format("{} ...", name_) : format("{}: {} s", name_, spent.count()));
    pause = std::chrono::seconds(1);
  }
}

}  // namespace plugward
