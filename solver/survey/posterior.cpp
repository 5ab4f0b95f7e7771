// SPDX-License-Identifier: Apache-2.0
#include "solver/survey/posterior.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "solver/survey/quasi_random.hpp"

namespace quoin::solver {
namespace {

const double log_root_two_pi = 0.5 * std::log(2.0 * std::numbers::pi);

/// The logarithm of the density of a disagreement in units of its scale.
double log_disagreement(double degrees, double off) {
  if (std::isinf(degrees)) return -log_root_two_pi - off * off / 2;
  return std::lgamma((degrees + 1) / 2) - std::lgamma(degrees / 2) -
         0.5 * std::log(degrees * std::numbers::pi) -
         (degrees + 1) / 2 * std::log1p(off * off / degrees);
}

/// What a misfit counts, so that larger means worse.
double cost(double degrees, double off) {
  return std::isinf(degrees) ? off * off : std::log1p(off * off / degrees);
}

}  // namespace

double log_density(const Inference& inference, std::span<const double> at,
                   std::span<double> predicted) {
  inference.model(at.first(inference.unknowns), predicted, nullptr);
  const double log_common =
      inference.scale_spread > 0.0 ? inference.scale_spread * at[inference.unknowns] : 0.0;
  const double common = std::exp(log_common);
  double sum = 0.0;
  for (const double value : at) sum -= log_root_two_pi + value * value / 2;
  for (std::size_t j = 0; j < predicted.size(); ++j) {
    const double scale = common * inference.scale[j];
    sum += log_disagreement(inference.degrees, (inference.read[j] - predicted[j]) / scale) -
           std::log(scale);
  }
  return sum;
}

double log_density(const Inference& inference, std::span<const double> at) {
  std::vector<double> predicted(inference.read.size());
  return log_density(inference, at, predicted);
}

std::vector<double> weighted_quantiles(std::span<const double> values,
                                       std::span<const double> weights,
                                       std::span<const double> probabilities) {
  std::vector<std::pair<double, double>> order;  // value and weight, side by side to sort quickly
  order.reserve(values.size());
  for (std::size_t k = 0; k < values.size(); ++k) order.emplace_back(values[k], weights[k]);
  std::sort(order.begin(), order.end());
  std::vector<double> result;
  for (const double probability : probabilities) {
    // Each value stands for the middle of its weight; straight lines between.
    double before = 0.0, last_middle = 0.0, last_value = order.front().first;
    double found = order.back().first;
    for (const auto& [value, weight] : order) {
      const double middle = before + weight / 2;
      if (middle >= probability) {
        const double share =
            middle > last_middle ? (probability - last_middle) / (middle - last_middle) : 1.0;
        found = last_value + share * (value - last_value);
        break;
      }
      before += weight;
      last_middle = middle;
      last_value = value;
    }
    result.push_back(found);
  }
  return result;
}

double agreement(const Inference& inference, const Sample& sample) {
  constexpr std::size_t replicas = 2048;
  const std::size_t readings = inference.read.size();
  if (readings == 0) return 1.0;
  std::vector<double> replicated(replicas, 0.0);
  const std::vector<double> points = even_points(replicas, readings);
  for (std::size_t r = 0; r < replicas; ++r) {
    for (std::size_t j = 0; j < readings; ++j) {
      const double share = points[r * readings + j];
      const double off = std::isinf(inference.degrees) ? normal_quantile(share)
                                                       : student_quantile(share, inference.degrees);
      replicated[r] += cost(inference.degrees, off);
    }
  }
  std::sort(replicated.begin(), replicated.end());
  double larger = 0.0;
  for (std::size_t k = 0; k < sample.draws.rows; ++k) {
    if (sample.weights[k] == 0.0) continue;
    const double common =
        inference.scale_spread > 0.0
            ? std::exp(inference.scale_spread * sample.draws(k, inference.unknowns))
            : 1.0;
    double misfit = 0.0;
    for (std::size_t j = 0; j < readings; ++j)
      misfit += cost(inference.degrees,
                     (inference.read[j] - sample.predicted(k, j)) / (common * inference.scale[j]));
    const auto above =
        replicated.end() - std::upper_bound(replicated.begin(), replicated.end(), misfit);
    larger += sample.weights[k] * static_cast<double>(above) / static_cast<double>(replicas);
  }
  return larger;
}

}  // namespace quoin::solver
