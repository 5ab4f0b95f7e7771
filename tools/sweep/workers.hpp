// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <cstdint>
#include <exception>
#include <map>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

#include "tools/sweep/row.hpp"
#include "tools/sweep/sweep.hpp"

namespace quoin::tools {

/// The rows of a part, and which are done.
class Rows {
 public:
  Rows(std::uint64_t all, const SweepPart& part) : all_(all), part_(part), done_(all, false) {
    for (std::uint64_t row = from(0); row < all; row = from(row + 1)) ++count_;
  }

  [[nodiscard]] std::uint64_t all() const { return all_; }
  [[nodiscard]] std::uint64_t count() const { return count_; }
  [[nodiscard]] bool is_done(std::uint64_t row) const { return done_[row]; }
  /// Whether that is news of this part.
  bool note_done(std::uint64_t row) {
    if (row >= all_ || from(row) != row || done_[row]) return false;
    done_[row] = true;
    return true;
  }
  /// The first row of the part from this one on; `all` where there is none.
  [[nodiscard]] std::uint64_t from(std::uint64_t row) const {
    while (row < all_ && row / rows_of_a_block % part_.of != part_.number - 1)
      row = (row / rows_of_a_block + 1) * rows_of_a_block;
    return std::min(row, all_);
  }

 private:
  std::uint64_t all_;
  SweepPart part_;
  std::vector<bool> done_;
  std::uint64_t count_ = 0;
};

/// What was solved since one asked last.
struct SolvedRows {
  std::vector<StoredRow> rows;
  std::map<std::string, std::string> tables;  ///< digest of each that one of them names
};

/// Workers that solve blocks of rows, each block by one of them, and hand the rows over.
class Workers {
 public:
  /// Where the system gives fewer threads than asked for, those there are do the work. Throws:
  /// std::system_error where it gives none.
  Workers(const SweepRun& run, const std::vector<SweepColumn>& columns, const Rows& rows);
  Workers(const Workers&) = delete;
  Workers& operator=(const Workers&) = delete;
  ~Workers();

  void stop() { stopping_ = true; }

  /// What has been solved since, after a while. False once all is handed over. Throws what a worker
  /// threw.
  bool take(SolvedRows& solved);

 private:
  void work(const SweepRun& run, const std::vector<SweepColumn>& columns);
  /// Whether there was one to work on.
  bool work_on_block(SweepSolver& solver);

  const Rows& rows_;
  std::uint64_t next_;
  std::size_t working_ = 0;
  std::vector<std::thread> threads_;
  std::mutex mutex_;
  std::condition_variable news_;
  SolvedRows solved_;
  std::exception_ptr failure_;
  std::atomic<bool> stopping_ = false;
};

}  // namespace quoin::tools
