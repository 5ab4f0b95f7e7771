// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

namespace quoin::solver {

/// Points spread evenly over the unit cube, none of whose coordinates is 0 or 1: a Sobol sequence,
/// each coordinate shifted by fixed digits, so that the same call gives the same bits.
/// Shape: points by dimensions, a point after another.
[[nodiscard]] std::vector<double> even_points(std::size_t points, std::size_t dimensions);

/// The value that a standard normal variable stays below with a probability above 0 and below 1.
[[nodiscard]] double normal_quantile(double probability);

/// The probability that a standard normal variable stays below a value.
[[nodiscard]] double normal_share(double value);

/// The same value of Student's t.
[[nodiscard]] double student_quantile(double probability, double degrees);

/// The same value of chi squared.
[[nodiscard]] double chi_squared_quantile(double probability, double degrees);

/// Standard normal variables at `even_points`.
[[nodiscard]] std::vector<double> even_normals(std::size_t points, std::size_t dimensions);

}  // namespace quoin::solver
