// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tests/benchmarks/linear/networks.hpp"

namespace quoin::benchmarks {

/// The active nodes of a sample as a matrix in rows, both triangles, columns in order: what general
/// solvers take.
struct Packed {
  explicit Packed(const Sample& sample);

  std::vector<int> row_start;
  std::vector<int> column;
  std::vector<double> value;
  std::vector<double> rhs;
  std::vector<std::size_t> node;  ///< of each row

  [[nodiscard]] int rows() const { return static_cast<int>(rhs.size()); }
};

/// What one solver did with one sample. Times are of the processor, not of the wall: they bear a
/// busy machine.
struct Outcome {
  double setup = 0.0;  ///< s
  double solve = 0.0;  ///< s
  int iterations = 0;
  double bytes = 0.0;            ///< held when solved, beyond the sample
  std::vector<double> solution;  ///< Shape: rows of Packed
};

/// Time of the processor spent by this process so far, in s.
[[nodiscard]] double processor_time();
/// Bytes in use by this process.
struct Memory {
  Memory();
  double handed_out;  ///< by malloc
  double resident;    ///< mapped straight from the system, too
};
/// What came on top: of the two measures the larger one.
[[nodiscard]] double bytes_since(const Memory& before);

/// |b - A x| / |b|.
[[nodiscard]] double relative_residual(const Packed& system, const std::vector<double>& solution);

inline constexpr double tolerance = 1e-10;

[[nodiscard]] Outcome eigen_ldlt(const Packed& system);
[[nodiscard]] Outcome eigen_incomplete_cholesky(const Packed& system);
[[nodiscard]] Outcome cholmod(const Packed& system);
[[nodiscard]] Outcome boomer_amg(const Packed& system);

}  // namespace quoin::benchmarks
