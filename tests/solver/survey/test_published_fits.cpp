// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "solver/survey/posterior.hpp"
#include "solver/survey/quasi_random.hpp"
#include "solver/survey/variance_shares.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::WithinAbs;
using testing::WithinRel;

/// As good as nothing is known before: sd of the unknowns, in units of their start.
constexpr double vague = 1e5;

/// Least squares by the minimiser of surveys: two unknowns, each its start times 1 + vague z.
struct Fit {
  std::array<double, 2> at{}, sd{};  ///< sd from the scatter of the readings
  double correlation = 0.0;
  double residual = 0.0;  ///< sum of squares
};

template <class Model>
Fit fit(const std::vector<double>& x, const std::vector<double>& y, std::array<double, 2> start,
        std::array<double, 2> size, Model model) {
  Inference inference;
  inference.unknowns = 2;
  inference.read = y;
  inference.scale.assign(y.size(), 1e-2 * std::abs(y.back()));
  inference.degrees = std::numeric_limits<double>::infinity();
  inference.scale_spread = 0.0;
  inference.model = [&](std::span<const double> z, std::span<double> predicted, Table* slopes) {
    const std::array<double, 2> at{start[0] + vague * size[0] * z[0],
                                   start[1] + vague * size[1] * z[1]};
    for (std::size_t j = 0; j < x.size(); ++j) {
      std::array<double, 2> slope{};
      predicted[j] = model(x[j], at, slope);
      for (std::size_t u = 0; slopes != nullptr && u < 2; ++u)
        (*slopes)(j, u) = slope[u] * vague * size[u];
    }
  };
  const Mode mode = mode_of(inference, {0, 0});
  Fit result;
  std::vector<double> predicted(y.size());
  inference.model(mode.at, predicted, nullptr);
  for (std::size_t j = 0; j < y.size(); ++j) result.residual += std::pow(y[j] - predicted[j], 2);
  const double scatter =
      std::sqrt(result.residual / static_cast<double>(y.size() - 2)) / inference.scale[0];
  for (std::size_t u = 0; u < 2; ++u) {
    result.at[u] = start[u] + vague * size[u] * mode.at[u];
    result.sd[u] = vague * size[u] * std::sqrt(mode.covariance(u, u)) * scatter;
  }
  result.correlation =
      mode.covariance(0, 1) / std::sqrt(mode.covariance(0, 0) * mode.covariance(1, 1));
  return result;
}

double line(double x, const std::array<double, 2>& at, std::array<double, 2>& slope) {
  slope = {1.0, x};
  return at[0] + at[1] * x;
}

}  // namespace

TEST_CASE("the calibration of a thermometer published with the guide to uncertainty") {
  // Source: JCGM 100:2008 H.3 (data and values from memory, the agreement confirms both).
  const std::vector<double> t{21.521, 22.012, 22.512, 23.003, 23.507, 23.999,
                              24.513, 25.002, 25.503, 26.010, 26.511};
  const std::vector<double> correction{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165,
                                       -0.156, -0.157, -0.159, -0.161, -0.160};
  std::vector<double> above;
  for (const double one : t) above.push_back(one - 20.0);
  const Fit found = fit(above, correction, {-0.1, 0.01}, {0.1, 0.01}, line);
  CHECK(found.at[0] == WithinAbs{-0.1712, 5e-5});
  CHECK(found.sd[0] == WithinAbs{0.0029, 5e-5});
  CHECK(found.at[1] == WithinAbs{0.00218, 5e-6});
  CHECK(found.sd[1] == WithinAbs{0.00067, 5e-6});
  CHECK(found.correlation == WithinAbs{-0.930, 5e-4});
  CHECK(std::sqrt(found.residual / 9) == WithinAbs{0.0035, 5e-5});
  CHECK(found.at[0] + 10 * found.at[1] == WithinAbs{-0.1494, 5e-5});
}

TEST_CASE("the certified line through the readings of an ozone monitor") {
  // Source: NIST StRD, Norris (data and values from memory, the agreement confirms both).
  const std::vector<double> x{.2,    337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6,
                              777.0, 558.2, .4,    .6,    775.5, 666.9, 338.0, 447.5, 11.6,
                              556.0, 228.1, 995.8, 887.6, 120.2, .3,    .3,    556.8, 339.1,
                              887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, .5};
  const std::vector<double> y{.1,    338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1,
                              778.9, 559.2, .3,    .1,    778.1, 668.8, 339.3, 448.9, 10.8,
                              557.7, 228.3, 998.0, 888.8, 119.6, .3,    .6,    557.6, 339.3,
                              888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, .2};
  const Fit found = fit(x, y, {0.1, 0.9}, {1.0, 1.0}, line);
  CHECK(found.at[0] == WithinRel{-0.262323073774029, 1e-7});
  CHECK(found.at[1] == WithinRel{1.00211681802045, 1e-9});
  CHECK(std::sqrt(found.residual / 34) == WithinRel{0.884796396144373, 1e-9});
}

TEST_CASE("the certified saturation curve of a dental gauge") {
  // Source: NIST StRD, Misra1a (data and values from memory, the agreement confirms both).
  const std::vector<double> x{77.6,  114.9, 141.1, 190.8, 239.9, 289.0, 332.8,
                              378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0};
  const std::vector<double> y{10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02,
                              44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78};
  const Fit found =
      fit(x, y, {250.0, 5e-4}, {250.0, 5e-4},
          [](double at_x, const std::array<double, 2>& at, std::array<double, 2>& slope) {
            const double decay = std::exp(-at[1] * at_x);
            slope = {1.0 - decay, at[0] * at_x * decay};
            return at[0] * (1.0 - decay);
          });
  CHECK(found.at[0] == WithinRel{238.94212918, 1e-6});
  CHECK(found.sd[0] == WithinRel{2.7070075241, 1e-5});
  CHECK(found.at[1] == WithinRel{5.5015643181e-4, 1e-6});
  CHECK(found.sd[1] == WithinRel{7.2668688436e-6, 1e-5});
  CHECK(found.residual == WithinRel{0.12455138894, 1e-7});
}

TEST_CASE("four rectangular errors together stay within 3.88 standard deviations of one") {
  // Source: JCGM 101:2008 9.2.3 (memory): 3.88; exact by the Irwin-Hall distribution 3.8794.
  constexpr std::size_t draws = 1U << 16U;
  const std::vector<double> points = even_points(draws, 4);
  std::vector<double> sums;
  for (std::size_t k = 0; k < draws; ++k) {
    double sum = 0.0;
    for (std::size_t d = 0; d < 4; ++d) sum += (2 * points[4 * k + d] - 1) * std::sqrt(3.0);
    sums.push_back(sum);
  }
  const std::vector<double> weights(draws, 1.0 / draws);
  const std::array<double, 2> ends{0.025, 0.975};
  const std::vector<double> found = weighted_quantiles(sums, weights, ends);
  CHECK((found[1] - found[0]) / 2 == WithinAbs{3.88, 0.02});
  // Twin: normal errors of the same spread reach 3.92.
  CHECK((found[1] - found[0]) / 2 < 3.91);
}

TEST_CASE("shares of the variance of a function that has them in closed form") {
  // Source: the function of Ishigami with a 7 and b 0.1; shares by integration, analytic.
  const VarianceShares found = variance_shares(3, 1U << 13U, [](std::span<const double> at) {
    const auto angle = [&](std::size_t d) { return (2 * at[d] - 1) * std::numbers::pi; };
    return std::sin(angle(0)) + 7 * std::pow(std::sin(angle(1)), 2) +
           0.1 * std::pow(angle(2), 4) * std::sin(angle(0));
  });
  CHECK(found.alone[0] == WithinAbs{0.3139, 0.02});
  CHECK(found.alone[1] == WithinAbs{0.4424, 0.02});
  CHECK(found.alone[2] == WithinAbs{0.0, 0.02});
  CHECK(found.total[2] == WithinAbs{0.2437, 0.02});
}

}  // namespace quoin::solver
