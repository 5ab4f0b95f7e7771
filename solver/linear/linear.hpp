// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <memory>
#include <span>
#include <vector>

namespace quoin::solver {

/// A symmetric five-point conductance network on a tensor grid of nx by ny nodes.
/// Node (i, j) has index j * nx + i. Row n of the system reads
///   (ground[n] + sum of the conductances to its neighbours) T[n] - sum(conductance * T[neighbour])
///   = rhs[n].
/// All conductances in W/(m K), never negative. A node without any conductance is inactive (a void,
/// or a node of fixed temperature that assembly has moved to the right-hand side): its solution is
/// 0, its right-hand side ignored.
/// Shape: east, north, ground hold nx * ny values each; east is 0 at i = nx - 1, north at
/// j = ny - 1.
struct FivePointOperator {
  std::size_t nx = 0;
  std::size_t ny = 0;
  std::vector<double> east;    ///< between (i, j) and (i + 1, j)
  std::vector<double> north;   ///< between (i, j) and (i, j + 1)
  std::vector<double> ground;  ///< from (i, j) to the fixed temperatures around the section

  [[nodiscard]] std::size_t size() const { return nx * ny; }
};

/// A conductance between two nodes of any numbers, W/(m K).
struct Link {
  std::size_t one = 0;
  std::size_t other = 0;
  double conductance = 0.0;
};

enum class LinearMethod { multigrid, direct };

struct LinearOptions {
  LinearMethod method = LinearMethod::multigrid;
  /// On |rhs - A T| / |rhs|, Euclidean; where rounding T to double alone leaves more, that counts.
  double tolerance = 1e-12;
  int iteration_limit = 200;
  /// Up to so many nodes the direct method takes over where multigrid fails. Beyond, its factors
  /// would take gigabytes.
  std::size_t direct_limit = 2'000'000;
  int threads = 1;  ///< the answer is the same to the last bit for any number
  /// Of the registers used, at most; those that the machine lacks are not. The answer is the same.
  std::size_t register_bytes = 64;
};

/// How one solve went.
struct LinearReport {
  int iterations = 0;             ///< of multigrid, even if in vain; 0 for the direct method
  double residual = 0.0;          ///< |rhs - A T| / |rhs| reached, computed afresh from the answer
  bool single_precision = false;  ///< the preconditioner worked in single precision to the end
  bool fell_back = false;         ///< multigrid failed, even in double; the direct method answered
};

/// A system made ready for any number of right-hand sides.
class LinearSolver {
 public:
  virtual ~LinearSolver() = default;

  /// Solves for one or several right-hand sides at once.
  /// Shape: rhs and temperatures hold k * operator.size() values, one right-hand side after
  /// another. Temperatures are the first guess on entry, the answer on return. Inactive nodes get
  /// 0. Returns one report for each right-hand side. Throws: SolveError where the tolerance is not
  /// reached, or the system is singular.
  [[nodiscard]] virtual std::vector<LinearReport> solve(std::span<const double> rhs,
                                                        std::span<double> temperatures) = 0;
};

/// The solver of a network; keeps its own copy of what it needs of the operator.
/// Throws: SolveError where a connected part of the network has no way to ground; invalid_argument
/// where shapes do not fit or a value is negative or not finite.
[[nodiscard]] std::unique_ptr<LinearSolver> linear_solver(const FivePointOperator& network,
                                                          const LinearOptions& options);

/// rhs - A T for one right-hand side. Shape: all nx * ny.
void write_residual(const FivePointOperator& network, std::span<const double> rhs,
                    std::span<const double> temperatures, std::span<double> residual);

}  // namespace quoin::solver
