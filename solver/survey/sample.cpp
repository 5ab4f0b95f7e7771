// SPDX-License-Identifier: Apache-2.0
#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "solver/survey/posterior.hpp"
#include "solver/survey/quasi_random.hpp"

namespace quoin::solver {

namespace {

/// A multivariate t with which draws are proposed.
struct Proposal {
  Eigen::VectorXd centre;
  Eigen::MatrixXd root;  ///< lower triangle; root * root' is its scale squared
  double degrees = 5.0;
  double log_constant = 0.0;
};

Proposal proposal_of(const Eigen::VectorXd& centre, const Eigen::MatrixXd& covariance,
                     double degrees) {
  Proposal result{centre, covariance.llt().matrixL(), degrees, 0.0};
  const auto d = static_cast<double>(centre.size());
  result.log_constant = std::lgamma((degrees + d) / 2) - std::lgamma(degrees / 2) -
                        d / 2 * std::log(degrees * std::numbers::pi) -
                        result.root.diagonal().array().log().sum();
  return result;
}

/// Fills draws, predictions and normalised weights of a sample from a proposal.
void draw(const Inference& inference, const Proposal& proposal, const StandardDraws& standard,
          Sample& sample) {
  const std::size_t draws = standard.normals.rows, dimensions = inference.dimensions();
  sample.draws = Table(draws, dimensions);
  sample.predicted = Table(draws, inference.read.size());
  std::vector<double> log_weight(draws);
  for (std::size_t k = 0; k < draws; ++k) {
    const Eigen::VectorXd t =
        standard.stretch[k] *
        Eigen::Map<const Eigen::VectorXd>(standard.normals.row(k).data(), Eigen::Index(dimensions));
    Eigen::Map<Eigen::VectorXd> z(sample.draws.row(k).data(), Eigen::Index(dimensions));
    z = proposal.centre + proposal.root.triangularView<Eigen::Lower>() * t;
    const double log_proposed =
        proposal.log_constant - (proposal.degrees + static_cast<double>(dimensions)) / 2 *
                                    std::log1p(t.squaredNorm() / proposal.degrees);
    log_weight[k] =
        log_density(inference, sample.draws.row(k), sample.predicted.row(k)) - log_proposed;
  }
  const double most = *std::max_element(log_weight.begin(), log_weight.end());
  double sum = 0.0, squares = 0.0;
  sample.weights.resize(draws);
  for (std::size_t k = 0; k < draws; ++k) {
    sample.weights[k] = std::exp(log_weight[k] - most);
    sum += sample.weights[k];
    squares += sample.weights[k] * sample.weights[k];
  }
  for (double& weight : sample.weights) weight /= sum;
  const auto count = static_cast<double>(draws);
  sample.effective = sum * sum / squares;
  sample.log_evidence = most + std::log(sum / count);
  sample.evidence_error = std::sqrt(std::max(0.0, count / sample.effective - 1.0) / count);
}

/// A proposal fitted to the square roots of the weights.
Proposal refitted(const Sample& sample, const Proposal& before) {
  const auto dimensions = before.centre.size();
  Eigen::VectorXd mean = Eigen::VectorXd::Zero(dimensions);
  Eigen::MatrixXd second = Eigen::MatrixXd::Zero(dimensions, dimensions);
  double sum = 0.0;
  for (std::size_t k = 0; k < sample.draws.rows; ++k) {
    const Eigen::Map<const Eigen::VectorXd> z(sample.draws.row(k).data(), dimensions);
    const double weight = std::sqrt(sample.weights[k]);
    sum += weight;
    mean += weight * z;
    second += weight * z * z.transpose();
  }
  mean /= sum;
  const Eigen::MatrixXd covariance = second / sum - mean * mean.transpose() +
                                     1e-9 * Eigen::MatrixXd::Identity(dimensions, dimensions);
  return proposal_of(mean, covariance, before.degrees);
}

}  // namespace

StandardDraws::StandardDraws(std::size_t draws, std::size_t dimensions, double degrees_)
    : degrees(degrees_), normals(draws, dimensions) {
  const std::vector<double> points = even_points(draws, dimensions + 1);
  for (std::size_t k = 0; k < draws; ++k) {
    const double* point = points.data() + k * (dimensions + 1);
    stretch.push_back(std::sqrt(degrees / chi_squared_quantile(point[0], degrees)));
    for (std::size_t u = 0; u < dimensions; ++u) normals(k, u) = normal_quantile(point[u + 1]);
  }
}

Sample sample_of(const Inference& inference, const Mode& mode, const StandardDraws& standard,
                 const Sampling& sampling) {
  const std::size_t dimensions = inference.dimensions();
  const auto n = Eigen::Index(dimensions);
  Eigen::MatrixXd covariance(n, n);
  for (std::size_t i = 0; i < dimensions; ++i) {
    for (std::size_t j = 0; j < dimensions; ++j)
      covariance(Eigen::Index(i), Eigen::Index(j)) =
          mode.covariance(i, j) * sampling.widened * sampling.widened;
  }
  const Proposal proposal = proposal_of(Eigen::Map<const Eigen::VectorXd>(mode.at.data(), n),
                                        covariance, standard.degrees);
  Sample sample;
  draw(inference, proposal, standard, sample);
  if (sample.effective < sampling.least_share * static_cast<double>(standard.normals.rows)) {
    Sample again;
    draw(inference, refitted(sample, proposal), standard, again);
    if (again.effective > sample.effective) sample = std::move(again);
  }
  return sample;
}

}  // namespace quoin::solver
