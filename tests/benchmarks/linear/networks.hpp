// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "solver/linear/linear.hpp"

namespace quoin::benchmarks {

/// A system to solve: one space at 1, all others at 0.
struct Sample {
  std::string name;
  solver::FivePointOperator network;
  std::vector<double> rhs;
};

/// How grid lines lie between the lines that must be there.
struct Grading {
  double aspect = 1.0;  ///< largest over smallest spacing within one stretch; 1 is uniform
};

/// Corner of a 300 mm brick wall (0.7 W/(m K)), 1.3 m long on each inner side; the outer quadrant.
[[nodiscard]] Sample corner(std::size_t nodes, const Grading& grading);

/// A window reveal in a 300 mm brick wall, with insulation (0.04) and an aluminium strip
/// (160 W/(m K)) 3 mm thick through it.
[[nodiscard]] Sample reveal(std::size_t nodes, const Grading& grading);

/// Case 2 of annex A of EN ISO 10211:2007: aluminium 230 W/(m K) against insulation 0.029.
[[nodiscard]] Sample case_2(std::size_t nodes, const Grading& grading);

}  // namespace quoin::benchmarks
