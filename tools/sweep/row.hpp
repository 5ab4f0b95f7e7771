// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <string>
#include <vector>

#include "cases/vary.hpp"
#include "solver/solution.hpp"
#include "tools/sweep/columns.hpp"
#include "tools/sweep/store.hpp"

namespace quoin::tools {

/// A row of a sweep as it is read: its case, complete in itself, and the key that it is known by.
struct SweepCase {
  std::string text;   ///< the merged case
  std::string key;    ///< sha256 of that text, and of the tables that the case names; hexadecimal
  cases::Case read;   ///< without variants where `fault` is said
  std::string fault;  ///< why it is no case; empty: it is one
  std::map<std::string, std::string> tables;  ///< digest of each that the case names
};

/// Digest of a file that a case names; other words where it is missing.
[[nodiscard]] std::string digest_of_table(const cases::Files& files, const std::string& name);

/// A row as it comes out.
struct SweepAnswer {
  std::vector<Cell> cells;  ///< Shape: the columns; empty where `fault` is said
  std::string fault;        ///< in one line; empty: none
  RowEnd end = RowEnd::solved;
};

/// Reads and solves rows one after another. Of rows that differ in the air alone the section is
/// solved once; what comes out is what `quoin solve` finds, to the last bit. One for each thread.
class SweepSolver {
 public:
  /// The sweep must outlive it.
  SweepSolver(const cases::Vary& vary, std::vector<SweepColumn> columns, cases::Files files,
              const solver::Effort& effort);

  [[nodiscard]] SweepCase read(std::uint64_t row);
  [[nodiscard]] SweepAnswer answer(const SweepCase& row);

 private:
  /// A question, and its answer for spaces from 0 to 1.
  struct Known {
    solver::Question question;
    solver::Solution between;
  };
  [[nodiscard]] solver::Solution solution(const solver::Question& question,
                                          const solver::Effort& effort);
  [[nodiscard]] std::vector<Cell> cells(const cases::Case& read);

  const cases::Vary& vary_;
  cases::Files files_;
  solver::Effort effort_;
  std::vector<SweepColumn> columns_;
  bool outcome_ = false;  ///< some column tells it
  bool chance_ = false;
  std::vector<Known> known_;  ///< the last few
  std::size_t next_ = 0;      ///< the one to forget
};

}  // namespace quoin::tools
