// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include "solver/survey/narrowing.hpp"
#include "solver/survey/posterior.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::WithinAbs;
using testing::WithinRel;

constexpr double infinite = std::numeric_limits<double>::infinity();

/// A model that is a weighted sum: predicted = constant + slopes z.
Inference straight(std::vector<double> constant, Table slopes, std::vector<double> read,
                   std::vector<double> scale) {
  Inference inference;
  inference.unknowns = slopes.columns;
  inference.read = std::move(read);
  inference.scale = std::move(scale);
  inference.degrees = infinite;
  inference.scale_spread = 0.0;
  inference.model = [constant = std::move(constant), slopes = std::move(slopes)](
                        std::span<const double> at, std::span<double> predicted, Table* out) {
    for (std::size_t j = 0; j < slopes.rows; ++j) {
      predicted[j] = constant[j];
      for (std::size_t u = 0; u < slopes.columns; ++u) predicted[j] += slopes(j, u) * at[u];
    }
    if (out != nullptr) *out = slopes;
  };
  return inference;
}

/// Two airs and the offset of a thermometer, three readings; in standard normal stand-ins.
struct TwoAirs {
  std::array<double, 3> mean{18.5, 2.0, 0.0}, sd{0.3, 0.5, 0.3};
  std::array<std::array<double, 3>, 3> rows{{{0.7, 0.3, 1.0}, {0.7, 0.3, 1.0}, {0.3, 0.7, 1.0}}};

  [[nodiscard]] Inference inference() const {
    Table slopes(3, 3);
    std::vector<double> constant(3, 0.0);
    for (std::size_t j = 0; j < 3; ++j) {
      for (std::size_t u = 0; u < 3; ++u) {
        slopes(j, u) = rows[j][u] * sd[u];
        constant[j] += rows[j][u] * mean[u];
      }
    }
    return straight(constant, slopes, {13.0, 13.4, 7.9}, {0.2, 0.2, 0.3});
  }
};

StandardDraws standard_draws() { return {4096, 3, 5.0}; }

struct Moments {
  double mean = 0.0;
  double sd = 0.0;
};

Moments moments(const Sample& sample, std::size_t column) {
  Moments result;
  for (std::size_t k = 0; k < sample.draws.rows; ++k)
    result.mean += sample.weights[k] * sample.draws(k, column);
  for (std::size_t k = 0; k < sample.draws.rows; ++k)
    result.sd += sample.weights[k] * std::pow(sample.draws(k, column) - result.mean, 2);
  result.sd = std::sqrt(result.sd);
  return result;
}

std::vector<double> quantiles(const Sample& sample, std::size_t column) {
  std::vector<double> values;
  for (std::size_t k = 0; k < sample.draws.rows; ++k) values.push_back(sample.draws(k, column));
  const std::array<double, 3> at{0.05, 0.5, 0.95};
  return weighted_quantiles(values, sample.weights, at);
}

}  // namespace

TEST_CASE("the mode of straight models with normal errors is the closed form") {
  const TwoAirs airs;
  const Mode mode = mode_of(airs.inference(), {0, 0, 0});
  // Source: own derivation, normal equations by hand.
  const std::array<double, 3> mean{18.13705645441289, 2.6802478994514276, -0.11805430178459744};
  const std::array<double, 3> sd{0.24858114137710424, 0.385566532885261, 0.20920255905350135};
  for (std::size_t u = 0; u < 3; ++u) {
    CHECK(airs.mean[u] + airs.sd[u] * mode.at[u] == WithinRel{mean[u], 1e-9});
    CHECK(airs.sd[u] * std::sqrt(mode.covariance(u, u)) == WithinRel{sd[u], 1e-9});
  }
  CHECK(mode.covariance(0, 2) / std::sqrt(mode.covariance(0, 0) * mode.covariance(2, 2)) ==
        WithinRel{-0.5894591320528026, 1e-9});
  // The evidence: the density at the mode times what the distribution about it covers.
  const double log_two_pi = std::log(2 * 3.14159265358979323846);
  const double determinant =
      mode.covariance(0, 0) * (mode.covariance(1, 1) * mode.covariance(2, 2) -
                               mode.covariance(1, 2) * mode.covariance(2, 1)) -
      mode.covariance(0, 1) * (mode.covariance(1, 0) * mode.covariance(2, 2) -
                               mode.covariance(1, 2) * mode.covariance(2, 0)) +
      mode.covariance(0, 2) * (mode.covariance(1, 0) * mode.covariance(2, 1) -
                               mode.covariance(1, 1) * mode.covariance(2, 0));
  CHECK(mode.log_density + 1.5 * log_two_pi + 0.5 * std::log(determinant) ==
        WithinRel{-6.010918231571762, 1e-9});
  // One more reading of inside air and offset, sd 0.1.
  Table more(1, 3);
  more(0, 0) = airs.sd[0];
  more(0, 2) = airs.sd[2];
  const std::array<double, 1> variance{0.01};
  const Table after = narrowed(mode.covariance, more, variance);
  const std::array<double, 3> offset{0, 0, airs.sd[2]};
  CHECK(spread_along(after, offset) == WithinRel{0.20148646649466173, 1e-9});
}

TEST_CASE("importance sampling finds mean and spread and evidence of the closed form") {
  const TwoAirs airs;
  const Inference inference = airs.inference();
  const Sample sample = sample_of(inference, mode_of(inference, {0, 0, 0}), standard_draws());
  const std::array<double, 3> mean{18.13705645441289, 2.6802478994514276, -0.11805430178459744};
  const std::array<double, 3> sd{0.24858114137710424, 0.385566532885261, 0.20920255905350135};
  for (std::size_t u = 0; u < 3; ++u) {
    const Moments found = moments(sample, u);
    CHECK(airs.mean[u] + airs.sd[u] * found.mean == WithinAbs{mean[u], 0.02 * sd[u]});
    CHECK(airs.sd[u] * found.sd == WithinRel{sd[u], 0.02});
  }
  CHECK(std::exp(sample.log_evidence) == WithinRel{std::exp(-6.010918231571762), 0.01});
}

TEST_CASE("a reading far off counts little and the range stays skewed towards what was known") {
  // One unknown, standard normal; read 3.0, scale 0.5, Student's t with 4 degrees.
  Table slope(1, 1);
  slope(0, 0) = 1.0;
  Inference inference = straight({0.0}, slope, {3.0}, {0.5});
  inference.degrees = 4.0;
  const Sample sample = sample_of(inference, mode_of(inference, {0.0}), standard_draws());
  // Source: own quadrature, exact to all digits.
  const double sd = 0.8675849506387509;
  const Moments found = moments(sample, 0);
  CHECK(found.mean == WithinAbs{1.8504708983034288, 0.02 * sd});
  CHECK(found.sd == WithinRel{sd, 0.02});
  CHECK(std::exp(sample.log_evidence) == WithinRel{0.015094782829395166, 0.01});
  const std::vector<double> ends = quantiles(sample, 0);
  CHECK(ends[0] == WithinAbs{0.21144097317269853, 0.02 * sd});
  CHECK(ends[1] == WithinAbs{1.9918216658003618, 0.02 * sd});
  CHECK(ends[2] == WithinAbs{3.017310971860736, 0.02 * sd});
  // Twin: with normal errors the mean is the closed form, which is another.
  inference.degrees = infinite;
  CHECK(moments(sample_of(inference, mode_of(inference, {0.0}), standard_draws()), 0).mean ==
        WithinAbs{2.4, 0.02 * sd});
}

TEST_CASE("without readings sampling gives back what was known before") {
  Inference inference = straight({}, Table(0, 2), {}, {});
  inference.degrees = 4.0;
  inference.scale_spread = 0.35;
  const Sample sample =
      sample_of(inference, mode_of(inference, {0.3, -0.2, 0.1}), standard_draws());
  for (std::size_t u = 0; u < 3; ++u) {
    CHECK(moments(sample, u).mean == WithinAbs{0.0, 0.02});
    CHECK(moments(sample, u).sd == WithinRel{1.0, 0.02});
  }
  CHECK(sample.log_evidence == WithinAbs{0.0, 0.01});
}

TEST_CASE("a range that would hold any reading tells as much as none") {
  const TwoAirs airs;
  Inference inference = airs.inference();
  inference.degrees = 4.0;
  inference.scale = {0.2, 0.2, 1e6};
  Inference without = airs.inference();
  without.degrees = 4.0;
  without.read.pop_back();
  without.scale.pop_back();
  const auto all = inference.model;
  without.model = [all](std::span<const double> at, std::span<double> predicted, Table* slopes) {
    std::array<double, 3> whole{};
    Table whole_slopes;
    all(at, whole, slopes != nullptr ? &whole_slopes : nullptr);
    for (std::size_t j = 0; j < 2; ++j) {
      predicted[j] = whole[j];
      for (std::size_t u = 0; slopes != nullptr && u < 3; ++u) (*slopes)(j, u) = whole_slopes(j, u);
    }
  };
  const Mode one = mode_of(inference, {0, 0, 0}), other = mode_of(without, {0, 0, 0});
  for (std::size_t u = 0; u < 3; ++u) CHECK(one.at[u] == WithinAbs{other.at[u], 1e-6});
}

TEST_CASE("readings that follow the model agree and readings that contradict each other do not") {
  const TwoAirs airs;
  Inference inference = airs.inference();
  inference.model(std::array<double, 3>{0, 0, 0}, inference.read, nullptr);
  const Sample fits = sample_of(inference, mode_of(inference, {0, 0, 0}), standard_draws());
  CHECK(agreement(inference, fits) > 0.2);
  inference.read = {13.0, 16.0, 7.9};  // the same place twice, 3 K apart
  const Sample apart = sample_of(inference, mode_of(inference, {0, 0, 0}), standard_draws());
  CHECK(agreement(inference, apart) < 0.001);
}

TEST_CASE("ends of ranges lie between the values and follow their weights") {
  const std::vector<double> values{3.0, 1.0, 2.0}, weights{0.25, 0.25, 0.5};
  const std::array<double, 3> at{0.001, 0.5, 0.999};
  const std::vector<double> found = weighted_quantiles(values, weights, at);
  CHECK(found[0] == 1.0);
  CHECK(found[1] == WithinAbs{2.0, 1e-12});
  CHECK(found[2] == 3.0);
}

}  // namespace quoin::solver
