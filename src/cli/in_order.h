// SPDX-License-Identifier: MIT
// Work on numbered things by several threads, results taken in the order of their numbers.
//
//   in_order<int>(files.size(), 2, [&] { return [&](std::size_t i) { return length(files[i]); }; },
//                 [&](std::size_t i, int length) { print(i, length); });
//
// A thread that is far ahead waits, so that no more than `most_ahead` results a thread are held, whatever the
// count. `take` is called by one thread at a time.
#pragma once

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <cstddef>
#include <exception>
#include <map>
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

namespace plugward {

/// Holds results back until all before them were taken.
template <class Result, class Take>
class InOrder {
 public:
  InOrder(std::size_t most_held, Take& take) : most_held_(most_held), take_(take) {}

  void put(std::size_t index, Result result) {
    std::unique_lock lock(mutex_);
    room_.wait(lock, [&] { return index < next_ + most_held_ || failure_; });
    if (failure_) return;
    held_.emplace(index, std::move(result));
    while (!held_.empty() && held_.begin()->first == next_) {
      const auto first = held_.extract(held_.begin());
      take_(next_++, std::move(first.mapped()));
    }
    room_.notify_all();
  }

  /// The first failure ends the work.
  void fail(std::exception_ptr failure) {
    const std::lock_guard lock(mutex_);
    if (!failure_) failure_ = std::move(failure);
    stopped = true;
    room_.notify_all();
  }

  void rethrow() const {
    if (failure_) std::rethrow_exception(failure_);
  }

  std::atomic<bool> stopped{false};

 private:
  std::size_t most_held_;
  Take& take_;
  std::mutex mutex_;
  std::condition_variable room_;
  std::map<std::size_t, Result> held_;
  std::size_t next_ = 0;
  std::exception_ptr failure_;
};

/// `make_worker()` is called once in each thread and gives a function from number to result. What any of them
/// throws is thrown here, when all threads have ended.
template <class Result, class MakeWorker, class Take>
void in_order(std::size_t count, int threads, MakeWorker make_worker, Take take) {
  constexpr std::size_t most_ahead = 64;
  const auto crew = static_cast<std::size_t>(std::max(threads, 1));
  InOrder<Result, Take> order(most_ahead * crew, take);
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    try {
      auto worker = make_worker();
      for (std::size_t i = next++; i < count && !order.stopped; i = next++) order.put(i, worker(i));
    } catch (...) {
      order.fail(std::current_exception());
    }
  };
  {
    std::vector<std::jthread> others;
    for (std::size_t i = 1; i < std::min(crew, count); ++i) others.emplace_back(work);
    work();
  }
  order.rethrow();
}

}  // namespace plugward
