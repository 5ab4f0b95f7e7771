// SPDX-License-Identifier: Apache-2.0
#include "solver/survey/quasi_random.hpp"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <boost/random/sobol.hpp>
#include <cmath>
#include <cstdint>
#include <random>

namespace quoin::solver {
namespace {

/// Reckoned in double alone: in long double it is five times slower here, and far more where that
/// is made of software, for a last digit.
using Normal = boost::math::normal_distribution<
    double, boost::math::policies::policy<boost::math::policies::promote_double<false>>>;

}  // namespace

std::vector<double> even_points(std::size_t points, std::size_t dimensions) {
  std::vector<double> result;
  if (dimensions == 0) return result;
  boost::random::sobol sequence(dimensions);
  std::mt19937_64 digits(20'240'101);  // any, always the same
  std::vector<std::uint64_t> shift(dimensions);
  for (std::uint64_t& one : shift) one = digits();
  result.reserve(points * dimensions);
  for (std::size_t p = 0; p < points; ++p) {
    for (std::size_t d = 0; d < dimensions; ++d) {
      const std::uint64_t shifted = static_cast<std::uint64_t>(sequence()) ^ shift[d];
      // 52 bits and a half: neither end is met.
      result.push_back((static_cast<double>(shifted >> 12U) + 0.5) * 0x1p-52);
    }
  }
  return result;
}

double normal_quantile(double probability) { return boost::math::quantile(Normal(), probability); }

double normal_share(double value) { return boost::math::cdf(Normal(), value); }

double student_quantile(double probability, double degrees) {
  if (degrees == 4.0) {  // closed form; the one that surveys ask for by the million
    const double spread = std::sqrt(4.0 * probability * (1.0 - probability));
    const double size =
        2.0 * std::sqrt(std::max(0.0, std::cos(std::acos(spread) / 3.0) / spread - 1.0));
    return probability < 0.5 ? -size : size;
  }
  return boost::math::quantile(boost::math::students_t(degrees), probability);
}

double chi_squared_quantile(double probability, double degrees) {
  return boost::math::quantile(boost::math::chi_squared(degrees), probability);
}

std::vector<double> even_normals(std::size_t points, std::size_t dimensions) {
  std::vector<double> result = even_points(points, dimensions);
  for (double& value : result) value = normal_quantile(value);
  return result;
}

}  // namespace quoin::solver
