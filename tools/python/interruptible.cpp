// SPDX-License-Identifier: Apache-2.0
#include "tools/python/interruptible.hpp"

#include <pybind11/pybind11.h>

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <exception>
#include <memory>
#include <mutex>
#include <thread>
#include <utility>
#include <vector>

namespace quoin::python {
namespace {

constexpr auto between_looks = std::chrono::milliseconds(20);

/// What the thread that works and the one that waits share.
struct Shared {
  std::mutex mutex;
  std::condition_variable ended;
  bool done = false;
  std::atomic<bool> left = false;
  std::exception_ptr thrown;
};

/// Threads that were left; Python's lock guards them.
std::vector<std::thread>& left_threads() {
  static std::vector<std::thread> threads;
  return threads;
}

}  // namespace

void run_interruptible(std::function<void(const std::function<bool()>& left)> work) {
  const auto shared = std::make_shared<Shared>();
  std::thread thread([shared, work = std::move(work)] {
    std::exception_ptr thrown;
    try {
      work([shared] { return shared->left.load(); });
    } catch (...) {
      thrown = std::current_exception();
    }
    const std::lock_guard guard(shared->mutex);
    shared->thrown = thrown;
    shared->done = true;
    shared->ended.notify_one();
  });
  for (bool done = false; !done;) {
    {
      const pybind11::gil_scoped_release unlocked;
      std::unique_lock guard(shared->mutex);
      done = shared->ended.wait_for(guard, between_looks, [&] { return shared->done; });
    }
    if (!done && PyErr_CheckSignals() != 0) {
      shared->left = true;
      left_threads().push_back(std::move(thread));
      throw pybind11::error_already_set();
    }
  }
  thread.join();
  if (shared->thrown) std::rethrow_exception(shared->thrown);
}

void wait_for_left_work() {
  std::vector<std::thread> threads = std::exchange(left_threads(), {});
  const pybind11::gil_scoped_release unlocked;
  for (std::thread& thread : threads) thread.join();
}

}  // namespace quoin::python
