// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <vector>

namespace quoin::solver {

/// A symmetric positive definite system of linear equations, put together entry by entry and solved
/// by a sparse Cholesky factorisation.
class SymmetricSystem {
 public:
  explicit SymmetricSystem(std::size_t unknowns);
  ~SymmetricSystem();
  SymmetricSystem(SymmetricSystem&&) noexcept;
  SymmetricSystem& operator=(SymmetricSystem&&) noexcept;

  /// Adds to an entry and to its mirror image; sums up. Only before `factorise`.
  void add(std::uint32_t row, std::uint32_t column, double value);

  /// Throws: SolveError where the matrix is not positive definite.
  void factorise();

  /// One step of iterative refinement included. Shape: unknowns
  [[nodiscard]] std::vector<double> solve(const std::vector<double>& rhs) const;

  [[nodiscard]] std::size_t unknowns() const { return unknowns_; }

 private:
  struct Inside;
  std::size_t unknowns_;
  std::unique_ptr<Inside> inside_;
};

}  // namespace quoin::solver
