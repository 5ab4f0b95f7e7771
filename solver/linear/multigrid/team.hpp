// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <cstddef>
#include <version>
#if defined(__cpp_lib_jthread) && defined(__cpp_lib_barrier)
#include <barrier>
#include <thread>
#include <vector>
#endif

namespace quoin::solver {

#if defined(__cpp_lib_jthread) && defined(__cpp_lib_barrier)
using Barrier = std::barrier<>;
#else
/// Where the standard library has no threads all teams have one member, who waits for nobody.
struct Barrier {
  void arrive_and_wait() const {}
};
#endif

/// One of the threads that do the same work on different panels, in step.
class Member {
 public:
  Member(std::size_t index, std::size_t count, Barrier* barrier)
      : index_(index), count_(count), barrier_(barrier) {}

  /// Half-open range of panels.
  struct Range {
    std::size_t begin = 0;
    std::size_t end = 0;
    [[nodiscard]] bool empty() const { return begin == end; }
  };

  /// This member's share of n panels: consecutive, and empty for some where there are few.
  [[nodiscard]] Range share(std::size_t n) const {
    return {n * index_ / count_, n * (index_ + 1) / count_};
  }

  /// Waits until all members are here.
  void meet() const {
    if (barrier_ != nullptr) barrier_->arrive_and_wait();
  }

  [[nodiscard]] std::size_t index() const { return index_; }

  /// Whether this one does what only one may do.
  [[nodiscard]] bool leads() const { return index_ == 0; }

 private:
  std::size_t index_;
  std::size_t count_;
  Barrier* barrier_;
};

/// Runs work(member) on so many threads and waits for all. The work must not throw.
template <typename Work>
void run_team(int threads, const Work& work) {
  const auto count = static_cast<std::size_t>(std::max(threads, 1));
  if (count == 1) return work(Member(0, 1, nullptr));
#if defined(__cpp_lib_jthread) && defined(__cpp_lib_barrier)
  Barrier barrier(static_cast<std::ptrdiff_t>(count));
  std::vector<std::jthread> others;
  for (std::size_t index = 1; index < count; ++index) {
    others.emplace_back([&, index] { work(Member(index, count, &barrier)); });
  }
  work(Member(0, count, &barrier));
#else
  work(Member(0, 1, nullptr));
#endif
}

}  // namespace quoin::solver
