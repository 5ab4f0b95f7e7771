// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/workers.hpp"

#include <chrono>
#include <system_error>
#include <utility>

namespace quoin::tools {
namespace {

constexpr auto between_looks = std::chrono::milliseconds(100);

}  // namespace

Workers::Workers(const SweepRun& run, const std::vector<SweepColumn>& columns, const Rows& rows)
    : rows_(rows), next_(rows.from(0)) {
  const std::lock_guard guard(mutex_);
  for (std::size_t w = 0; w < run.workers; ++w) {
    try {
      threads_.emplace_back([this, &run, columns] { work(run, columns); });
    } catch (const std::system_error&) {
      if (threads_.empty()) throw;
      break;
    }
    ++working_;
  }
}

Workers::~Workers() {
  stop();
  for (std::thread& thread : threads_) thread.join();
}

bool Workers::take(SolvedRows& solved) {
  solved = {};
  std::unique_lock guard(mutex_);
  news_.wait_for(guard, between_looks, [&] { return working_ == 0; });
  std::swap(solved, solved_);
  if (failure_ && solved.rows.empty()) std::rethrow_exception(failure_);
  return !solved.rows.empty() || working_ > 0;
}

void Workers::work(const SweepRun& run, const std::vector<SweepColumn>& columns) {
  std::exception_ptr failure;
  try {
    SweepSolver solver(run.vary, columns, run.files, run.effort);
    while (work_on_block(solver)) continue;
  } catch (...) {
    failure = std::current_exception();
  }
  const std::lock_guard guard(mutex_);
  if (failure) {
    failure_ = failure;
    stopping_ = true;  // the others hand over what they have
  }
  --working_;
  news_.notify_one();
}

bool Workers::work_on_block(SweepSolver& solver) {
  std::uint64_t row = 0;
  {
    const std::lock_guard guard(mutex_);
    row = next_;
    next_ = rows_.from((next_ / rows_of_a_block + 1) * rows_of_a_block);
  }
  const std::uint64_t end = std::min((row / rows_of_a_block + 1) * rows_of_a_block, rows_.all());
  if (row >= end) return false;
  for (; row < end; ++row) {
    if (stopping_) return false;
    if (rows_.is_done(row)) continue;
    SweepCase read = solver.read(row);
    SweepAnswer answer = solver.answer(read);
    const std::lock_guard guard(mutex_);
    solved_.rows.push_back(
        {row, std::move(read.key), std::move(answer.cells), std::move(answer.fault), answer.end});
    solved_.tables.merge(read.tables);
  }
  return true;
}

}  // namespace quoin::tools
