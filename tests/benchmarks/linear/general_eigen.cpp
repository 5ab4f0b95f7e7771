// SPDX-License-Identifier: Apache-2.0
#include <Eigen/IterativeLinearSolvers>
#include <Eigen/SparseCholesky>
#include <stdexcept>

#include "tests/benchmarks/linear/packed.hpp"

namespace quoin::benchmarks {

namespace {

using Matrix = Eigen::SparseMatrix<double>;

template <typename Solver>
Outcome solved(const Packed& system, Solver& solver, const Memory& memory_before) {
  const Eigen::Map<const Matrix> matrix(
      system.rows(), system.rows(), static_cast<int>(system.value.size()), system.row_start.data(),
      system.column.data(), system.value.data());
  const Eigen::Map<const Eigen::VectorXd> rhs(system.rhs.data(), system.rows());
  Outcome outcome;
  const double start = processor_time();
  solver.compute(matrix);
  if (solver.info() != Eigen::Success) throw std::runtime_error("the setup failed");
  const double middle = processor_time();
  const Eigen::VectorXd solution = solver.solve(rhs);
  outcome.setup = middle - start;
  outcome.solve = processor_time() - middle;
  outcome.bytes = bytes_since(memory_before);
  outcome.solution.assign(solution.begin(), solution.end());
  return outcome;
}

}  // namespace

Outcome eigen_ldlt(const Packed& system) {
  const Memory before;
  Eigen::SimplicialLDLT<Matrix> solver;
  return solved(system, solver, before);
}

Outcome eigen_incomplete_cholesky(const Packed& system) {
  const Memory before;
  Eigen::ConjugateGradient<Matrix, Eigen::Lower, Eigen::IncompleteCholesky<double>> solver;
  solver.setTolerance(tolerance);
  solver.setMaxIterations(20'000);
  Outcome outcome = solved(system, solver, before);
  outcome.iterations = static_cast<int>(solver.iterations());
  return outcome;
}

}  // namespace quoin::benchmarks
