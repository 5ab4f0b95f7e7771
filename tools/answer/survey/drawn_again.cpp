// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/drawn_again.hpp"

#include <cmath>
#include <utility>

namespace quoin::tools {
namespace {

/// Where to draw next from: the middle and the spread of a sample with the roots of its weights,
/// half way from where it was drawn to where it should have been.
solver::Mode drawn_towards(const solver::Sample& sample) {
  const std::size_t n = sample.draws.columns;
  solver::Mode result;
  result.at.assign(n, 0.0);
  result.covariance = solver::Table(n, n);
  double sum = 0.0;
  for (std::size_t k = 0; k < sample.draws.rows; ++k) {
    const double weight = std::sqrt(sample.weights[k]);
    sum += weight;
    for (std::size_t i = 0; i < n; ++i) result.at[i] += weight * sample.draws(k, i);
  }
  for (double& at : result.at) at /= sum;
  for (std::size_t k = 0; k < sample.draws.rows; ++k) {
    const double share = std::sqrt(sample.weights[k]) / sum;
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = 0; j < n; ++j)
        result.covariance(i, j) +=
            share * (sample.draws(k, i) - result.at[i]) * (sample.draws(k, j) - result.at[j]);
    }
  }
  return result;
}

}  // namespace

void draw_again(const solver::Inference& inference, const solver::StandardDraws& standard,
                solver::Sample& sample) {
  constexpr double fair = 0.15;
  constexpr int rounds = 3;
  for (int round = 0; round < rounds; ++round) {
    if (sample.effective >= fair * static_cast<double>(sample.draws.rows)) return;
    solver::Sample again = solver::sample_of(inference, drawn_towards(sample), standard);
    if (again.effective <= sample.effective) return;
    sample = std::move(again);
  }
}

}  // namespace quoin::tools
