// SPDX-License-Identifier: Apache-2.0
#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>

#include "solver/survey/posterior.hpp"

namespace quoin::solver {
namespace {

constexpr int most_iterations = 200;

/// The model about a point, in units of the scales.
struct Linearised {
  Eigen::MatrixXd slopes;  ///< readings by unknowns, each row divided by its scale
  Eigen::VectorXd off;     ///< of the readings, in units of their scale
};

Linearised linearised(const Inference& inference, std::span<const double> at, double common) {
  const std::size_t readings = inference.read.size();
  std::vector<double> predicted(readings);
  Table slopes(readings, inference.unknowns);
  inference.model(at.first(inference.unknowns), predicted, &slopes);
  Linearised result{Eigen::MatrixXd(readings, inference.unknowns), Eigen::VectorXd(readings)};
  for (std::size_t j = 0; j < readings; ++j) {
    const double scale = common * inference.scale[j];
    const auto row = Eigen::Index(j);
    result.off[row] = (inference.read[j] - predicted[j]) / scale;
    for (std::size_t u = 0; u < inference.unknowns; ++u)
      result.slopes(row, Eigen::Index(u)) = slopes(j, u) / scale;
  }
  return result;
}

double common_factor(const Inference& inference, std::span<const double> at) {
  return inference.scale_spread > 0.0 ? std::exp(inference.scale_spread * at[inference.unknowns])
                                      : 1.0;
}

/// What one reading is expected to tell of the common factor of the scales, per reading.
double expected_of_scale(const Inference& inference) {
  const double nu = inference.degrees;
  const double about_log = std::isinf(nu) ? 2.0 : 2.0 * nu / (nu + 3.0);
  return about_log * inference.scale_spread * inference.scale_spread;
}

/// Gradient of the log density and an information matrix about a point: weighted as the readings
/// lie for the way to the mode, or as they are expected to lie.
void write_local(const Inference& inference, std::span<const double> at, bool expected,
                 Eigen::VectorXd& gradient, Eigen::MatrixXd& information) {
  const double nu = inference.degrees;
  const auto n = Eigen::Index(inference.unknowns);
  const auto dimensions = Eigen::Index(inference.dimensions());
  const Linearised local = linearised(inference, at, common_factor(inference, at));
  Eigen::VectorXd weight = Eigen::VectorXd::Ones(local.off.size());
  if (!std::isinf(nu)) weight = (nu + 1) / (nu + local.off.array().square());
  const double usual = std::isinf(nu) ? 1.0 : (nu + 1) / (nu + 3);
  const Eigen::VectorXd taken =
      expected ? Eigen::VectorXd(Eigen::VectorXd::Constant(local.off.size(), usual)) : weight;
  information = Eigen::MatrixXd::Identity(dimensions, dimensions);
  information.topLeftCorner(n, n) += local.slopes.transpose() * taken.asDiagonal() * local.slopes;
  gradient = -Eigen::Map<const Eigen::VectorXd>(at.data(), dimensions);
  gradient.head(n) += local.slopes.transpose() * (weight.cwiseProduct(local.off));
  if (dimensions > n) {
    const auto readings = static_cast<double>(local.off.size());
    const double excess = weight.cwiseProduct(local.off.cwiseAbs2()).sum() - readings;
    gradient[n] += inference.scale_spread * excess;
    information(n, n) += readings * expected_of_scale(inference);
  }
}

}  // namespace

Mode mode_of(const Inference& inference, std::vector<double> start) {
  const auto dimensions = Eigen::Index(inference.dimensions());
  Mode mode;
  mode.at = std::move(start);
  mode.log_density = log_density(inference, mode.at);
  double damping = 1e-3;
  Eigen::VectorXd gradient;
  Eigen::MatrixXd information;
  for (; mode.iterations < most_iterations; ++mode.iterations) {
    write_local(inference, mode.at, false, gradient, information);
    bool moved = false;
    double step_size = 0.0;
    while (!moved && damping < 1e12) {
      Eigen::MatrixXd damped = information;
      damped.diagonal() *= 1.0 + damping;
      const Eigen::VectorXd step = damped.llt().solve(gradient);
      std::vector<double> next = mode.at;
      for (Eigen::Index u = 0; u < dimensions; ++u) next[std::size_t(u)] += step[u];
      const double density = log_density(inference, next);
      moved = density >= mode.log_density;
      if (moved) {
        step_size = step.norm();
        mode.at = std::move(next);
        mode.log_density = density;
        damping = std::max(damping / 10, 1e-12);
      } else {
        damping *= 10;
        if (step.norm() <
            1e-12 * (1.0 + Eigen::Map<Eigen::VectorXd>(mode.at.data(), dimensions).norm()))
          break;
      }
    }
    if (!moved || step_size < 1e-9) break;
  }
  write_local(inference, mode.at, true, gradient, information);
  const Eigen::MatrixXd covariance =
      information.llt().solve(Eigen::MatrixXd::Identity(dimensions, dimensions));
  mode.covariance = Table(inference.dimensions(), inference.dimensions());
  for (Eigen::Index i = 0; i < dimensions; ++i) {
    for (Eigen::Index j = 0; j < dimensions; ++j)
      mode.covariance(std::size_t(i), std::size_t(j)) = covariance(i, j);
  }
  return mode;
}

}  // namespace quoin::solver
