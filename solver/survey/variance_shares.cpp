// SPDX-License-Identifier: Apache-2.0
#include "solver/survey/variance_shares.hpp"

#include <cmath>

#include "solver/survey/quasi_random.hpp"

namespace quoin::solver {

VarianceShares variance_shares(std::size_t dimensions, std::size_t points,
                               const std::function<double(std::span<const double>)>& function) {
  // Each point is two places, of which one lends the other a coordinate.
  const std::vector<double> pairs = even_points(points, 2 * dimensions);
  std::vector<double> one(points), other(points);
  double mean = 0.0;
  for (std::size_t k = 0; k < points; ++k) {
    const std::span<const double> pair(pairs.data() + 2 * k * dimensions, 2 * dimensions);
    one[k] = function(pair.first(dimensions));
    other[k] = function(pair.last(dimensions));
    mean += (one[k] + other[k]) / 2;
  }
  mean /= static_cast<double>(points);
  double variance = 0.0;
  for (std::size_t k = 0; k < points; ++k)
    variance += (std::pow(one[k] - mean, 2) + std::pow(other[k] - mean, 2)) / 2;
  VarianceShares shares;
  std::vector<double> mixed(dimensions);
  for (std::size_t d = 0; d < dimensions; ++d) {
    double alone = 0.0, total = 0.0;
    for (std::size_t k = 0; k < points; ++k) {
      const double* pair = pairs.data() + 2 * k * dimensions;
      mixed.assign(pair, pair + dimensions);
      mixed[d] = pair[dimensions + d];
      const double value = function(mixed);
      alone += (other[k] - mean) * (value - one[k]);
      total += std::pow(one[k] - value, 2) / 2;
    }
    shares.alone.push_back(variance > 0.0 ? alone / variance : 0.0);
    shares.total.push_back(variance > 0.0 ? total / variance : 0.0);
  }
  return shares;
}

}  // namespace quoin::solver
